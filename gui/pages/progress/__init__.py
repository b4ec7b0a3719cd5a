"""Pages for history and events.

Public names:

    progress_page: ProgressPage
"""
