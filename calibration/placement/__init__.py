"""Where the camera stands: level, distance, viewpoint, and checks against the last session.

Public names:

    check: compare_or_save_placement, compare_placement, save_placement
    level: CameraOrientation, PlumbLine, orientation_from_plumb_lines
    placement: PlacementChange
    standing: WithUncertainty, estimate_from_standing
    viewpoint: PinholeView
"""
