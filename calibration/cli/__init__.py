"""The command line: one module for each command of `calibration`.

Public names:

    agreement: configure
    calibrate: configure
    repeatability: configure
    replay_comparisons: print_placement_changes, report_agreement
"""
