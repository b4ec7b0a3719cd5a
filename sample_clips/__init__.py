"""The virtual person, the clips that it made, and their truth. Imports none of the others."""
