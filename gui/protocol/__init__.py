"""Rules of a session: its plan, the red flags, the return to the starting place.

Public names:

    exercise_round: CueKind, ExerciseResult, ExerciseRound, RoundCue, RoundPhase, RoundTask,
        duration_s, tasks_of
    plan: Attempt, AttemptState, HOME_MOVEMENTS, MovementTask, NextAction, SessionMode,
        SessionPlan, SessionStep, TaskResult, baseline_tasks, faces_away_from_screen, home_tasks,
        limit_to_dose, planned_tasks, without_practice
    red_flags: HIGH_PAIN, RedFlagScreening, ScreeningAnswer, ScreeningPage,
        corrected_pain_requires_screening, pain_requires_screening, screening_due,
        todays_high_pain, todays_pain_requiring_screening, told_pain_requires_screening
    reminders: reminder_due, times_in
    return_detector: ReturnDetector
"""
