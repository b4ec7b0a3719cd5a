"""A programme of three exercises on a stage, and what was logged of them."""

import datetime as dt

from gui.app.window_pages import MainPage
from gui.pages.exercises.exercises_page import ExercisesPage
from gui.protocol.exercise_round import RoundPhase
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog, Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.system.clock import new_id
from tests.support.gui.stage import TODAY, WindowHarness

PENDULUM = Exercise(listed=ListedExercise.PENDULUM)
WALL = Exercise(listed=ListedExercise.WALL_WALK)
LEAN = Exercise(own_name="Door lean")

EXERCISES = (
    PlannedExercise(exercise=PENDULUM, repetitions=3, hold_s=0, times_a_day=2, sides=(Side.LEFT,)),
    PlannedExercise(exercise=WALL, repetitions=2, hold_s=5, times_a_day=1, sides=(Side.LEFT,)),
    PlannedExercise(
        exercise=LEAN, repetitions=2, hold_s=0, times_a_day=1, note="Lean in a doorway."
    ),
)


def plan_exercises(
    stage: WindowHarness, exercises: tuple[PlannedExercise, ...] = EXERCISES
) -> None:
    """Save the programme, and show the exercises page."""
    stage.store.save_plan(
        Plan(
            id=new_id(),
            person_id=stage.history().person.id,
            first_day=TODAY - dt.timedelta(days=10),
            exercises=exercises,
            pain_limit=4,
            chosen_by="physiotherapist",
            review=TODAY + dt.timedelta(days=20),
        )
    )
    stage.window.go(MainPage.EXERCISES)
    stage.settle()


def page_of(stage: WindowHarness) -> ExercisesPage:
    return stage.window.exercises


def swinging(stage: WindowHarness) -> ExercisesPage:
    """Begin the round, and return the exercises page once the pendulum swings."""
    page = page_of(stage)
    page.today.start.click()
    stage.pass_until(RoundPhase.SWING)
    return page


def logs_of(stage: WindowHarness) -> dict[Exercise, ExerciseLog]:
    return {log.exercise: log for log in stage.history().exercises_done}
