"""What stands beside the curves: days with exercises, and findings worth showing."""

import datetime as dt
import string

import pytest

from gui.app.window_pages import MainPage
from gui.text.wording import tr
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog, Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.progress.clinician_prompts import PROMPT_WORDS, Prompt, PromptKind, prompt_text
from measure.system.clock import Timestamp, new_id
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY, WindowHarness


def test_adherence_stands_beside_the_curves(stage: WindowHarness) -> None:
    person = stage.history().person
    stage.store.merge(demo_history(person, TODAY, weeks=6))
    monday = TODAY - dt.timedelta(days=TODAY.weekday())
    towel = Exercise(listed=ListedExercise.TOWEL)
    plan = Plan(
        id=new_id(),
        person_id=person.id,
        first_day=monday,
        exercises=(PlannedExercise(exercise=towel, times_a_day=2, hold_s=10),),
        pain_limit=4,
    )
    stage.store.save_plan(plan)
    taps = [
        ExerciseLog(
            id=new_id(),
            person_id=person.id,
            exercise=Exercise(listed=ListedExercise.WALL_WALK),
            done=Timestamp(utc=dt.datetime.combine(monday, dt.time(9 + k), dt.UTC)),
        )
        for k in range(3)
    ]
    store = stage.store
    for log in store.exercises_done(person.id):
        store.delete_exercise_log(log.id)
    store.merge(History(person=person, exercises_done=tuple(taps)))
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    # Days alone: how much of the plan was done is no score to be shown to a person.
    overview = stage.window.progress.overview
    words = overview.exercises.text()
    assert words == "Days with exercises logged: 1 in the last week, 1 in the last four weeks."
    # Who wants to know it asks.
    assert not overview.exercises_done.isVisible()
    overview.by_exercise.click()
    assert overview.exercises_done.isVisible()
    done = overview.exercises_done.text()
    assert "Towel stretch 0 of " in done
    assert "%" not in done
    stage.window.go(MainPage.PROGRESS)
    stage.settle()


@pytest.mark.parametrize("kind", list(PromptKind))
def test_what_is_worth_showing_is_told_alike_in_window_and_report(kind: PromptKind) -> None:
    fields = {name for _, name, _, _ in string.Formatter().parse(PROMPT_WORDS[kind]) if name}
    about = "movement" in fields
    prompt = Prompt(
        kind=kind,
        movements=(Movement.FLEXION,) if about else (),
        side=Side.LEFT if about else None,
        numbers={name: f"<{name}>" for name in fields - {"movement", "side"}},
    )
    assert prompt_text(prompt, tr).lower() == prompt.text.lower()
    assert all(number in prompt.text for number in prompt.numbers.values())
