"""Pages for the exercises: today's round, how it went, and the programme.

Public names:

    exercises_page: ExercisesPage
"""
