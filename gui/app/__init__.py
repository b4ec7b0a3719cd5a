"""The application: start, main window, crash report, about page.

Public names:

    command: configure
"""
