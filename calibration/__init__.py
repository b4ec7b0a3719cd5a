"""How to find out what is known: lens, level, body, and agreement with a goniometer.

Makes the values that :mod:`measure.domain.acquisition` defines. Nothing here imports Qt.

Public names:

    known_setup: CalibratedSetup, load_calibrated_setup
"""
