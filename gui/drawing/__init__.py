"""Painters: posture figure, overlay on the picture, curves, interval band."""
