"""Where the camera stands: level, distance, viewpoint, and checks against the last session."""
