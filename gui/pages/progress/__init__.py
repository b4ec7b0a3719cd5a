"""Pages for history and events.

Public names:

    events: EventEntries
    goals_page: GoalEntries
    progress_page: ProgressPage
"""
