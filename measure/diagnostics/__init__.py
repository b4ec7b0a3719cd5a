"""What this computer lacks, and how to mend it.

Public names:

    checks: Finding, check_machine, ready
"""
