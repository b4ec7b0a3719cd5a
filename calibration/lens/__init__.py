"""The lens of a camera: board, capture, fit."""
