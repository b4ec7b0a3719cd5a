"""The report as a file or on paper.

Public names:

    command: configure
    files: chosen_printer, print_report, report_bytes, report_name, write_report
"""
