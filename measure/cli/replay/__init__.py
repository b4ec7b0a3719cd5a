"""The command `thawline replay`: its options, its output files, and carrying on where it stopped.

Public names:

    command: configure
"""
