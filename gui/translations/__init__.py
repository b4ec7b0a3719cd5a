"""The window's texts in other languages, and the command that brings them up to date."""
