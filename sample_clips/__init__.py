"""The virtual person, the clips that it made, and their truth."""
