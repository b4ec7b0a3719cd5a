"""Threads of the window."""
