"""The lens of a camera: board, capture, fit.

Public names:

    board: MARKER_MM, SQUARES, SQUARE_MM
    board_sheet: PAPERS, RULER_MM, save_board_sheet
    capture: CaptureGuidance, ENOUGH_VIEWS, LensCapture, ViewOutcome, capture_clip, capture_folder
    fit: COVERAGE_CELLS, FEWEST_VIEWS, LensFit, horizontal_field_of_view_deg
    profiles: lens_for, lenses_of, newest_lens, other_size_message
"""
