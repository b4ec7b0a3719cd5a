"""From places to numbers: one module a family of movements, each a function of a posture."""
