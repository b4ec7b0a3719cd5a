"""Lengths of a body, by tape or from landmarks marked by hand."""
