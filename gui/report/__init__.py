"""The report as a file or on paper.

Public names:

    command: configure
    files: chosen_printer, print_report, report_name, write_report
"""
