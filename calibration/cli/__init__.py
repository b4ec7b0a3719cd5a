"""The command line: one module for each command of `calibration`."""
