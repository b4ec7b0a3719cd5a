"""Widgets of our own, one concept a file. They show what they are given and decide nothing."""
