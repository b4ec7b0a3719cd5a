"""Pages for history, home programme and events.

Public names:

    progress_page: ProgressPage
"""
