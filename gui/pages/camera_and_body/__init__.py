"""Pages for lens, level, body and agreement.

Public names:

    calibration_pages: CalibrationPages
"""
