"""A program that is killed in the middle of a round: what was done is in the store."""

import datetime as dt
import os
import subprocess
import sys
from pathlib import Path

import pytest

from measure.domain.exercise_rounds import day_of_exercises
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.storage.store import Store
from tests.support.record_samples import person, some_id

SCRIPT = Path(__file__).parents[2] / "support" / "gui" / "killed_round.py"
ROOT = Path(__file__).parents[3]
PENDULUM = Exercise(listed=ListedExercise.PENDULUM)
TOWEL = Exercise(listed=ListedExercise.TOWEL)


@pytest.mark.parametrize("repetitions", [1, 3, 7])
def test_a_killed_round_is_kept_as_done_in_part(tmp_path: Path, repetitions: int) -> None:
    store_path, who = tmp_path / "sessions.sqlite", person("Rosa")
    plan = Plan(
        id=some_id("plan"),
        person_id=who.id,
        first_day=dt.date(2026, 1, 1),
        exercises=tuple(
            PlannedExercise(exercise=exercise, repetitions=5, hold_s=2, times_a_day=2)
            for exercise in (PENDULUM, TOWEL)
        ),
        pain_limit=4,
    )
    with Store.open(store_path) as store:
        store.save_person(who)
        store.save_plan(plan)
    child = subprocess.Popen(
        [sys.executable, str(SCRIPT), str(tmp_path)],
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)},
    )
    assert child.stdout is not None
    for _ in range(repetitions):
        assert child.stdout.readline() == "saved\n"
    child.kill()
    child.wait(30)
    child.stdout.close()
    with Store.open(store_path) as store:
        logs, now = store.exercises_done(who.id), store.now()
    done = {log.exercise: log.repetitions for log in logs}
    # More may have been done between the last line and the end.
    if repetitions < 5:
        assert (done[PENDULUM] or 5) >= repetitions
    else:
        assert done[PENDULUM] is None
        assert (done[TOWEL] or 5) >= repetitions - 5
    assert len(logs) == len(done)
    # The next start goes on with what is left of the round.
    due = [planned.exercise for planned in day_of_exercises(plan, logs, now).due]
    assert due == ([TOWEL] if len(done) == 1 else [PENDULUM, TOWEL])
