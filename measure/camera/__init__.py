"""Live cameras: capture, devices, health, faults, and playback of a clip as if it were a camera."""
