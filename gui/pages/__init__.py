"""The pages of the window and their parts."""
