"""Colours, fonts and style sheet."""
