"""A guided round in a process that is killed: its store, its start, and what must be left.

The process itself is :mod:`tests.support.gui.killed_round`.
"""

import datetime as dt
import os
import subprocess
import sys
from pathlib import Path

from measure.domain.exercise_rounds import day_of_exercises
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.storage.store import Store
from tests.support.gui import killed_round
from tests.support.record_samples import person, some_id

ROOT = Path(__file__).parents[3]
PENDULUM = Exercise(listed=ListedExercise.PENDULUM)
TOWEL = Exercise(listed=ListedExercise.TOWEL)
#: Repetitions of each of the two exercises.
REPETITIONS = 5

WHO = person("Rosa")
PLAN = Plan(
    id=some_id("plan"),
    person_id=WHO.id,
    first_day=dt.date(2026, 1, 1),
    exercises=tuple(
        PlannedExercise(exercise=exercise, repetitions=REPETITIONS, hold_s=2, times_a_day=2)
        for exercise in (PENDULUM, TOWEL)
    ),
    pain_limit=4,
)


def begin_store(folder: Path) -> None:
    """Begin a store in which somebody has a programme of two exercises."""
    with Store.open(folder / "sessions.sqlite") as store:
        store.save_person(WHO)
        store.save_plan(PLAN)


def start_round(folder: Path) -> "subprocess.Popen[str]":
    """Start a window that leads a round; it prints `saved` for each repetition in the store."""
    return subprocess.Popen(
        [sys.executable, killed_round.__file__, str(folder)],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)},
    )


def lost(folder: Path, told: int) -> list[str]:
    """Return what is wrong in the store of a round that was killed after it told so many times."""
    with Store.open(folder / "sessions.sqlite") as store:
        logs, now = store.exercises_done(WHO.id), store.now()
    # A whole dose is kept as None. More may have been done between the last word and the end.
    counts = {log.exercise: log.repetitions or REPETITIONS for log in logs}
    done = counts.get(PENDULUM, 0), counts.get(TOWEL, 0)
    wanted = min(told, REPETITIONS), max(0, told - REPETITIONS)
    due = [planned.exercise for planned in day_of_exercises(PLAN, logs, now).due]
    found = []
    if len(logs) != len(counts):
        found.append(f"{len(logs)} entries of {len(counts)} exercises")
    if done[0] < wanted[0] or done[1] < wanted[1]:
        found.append(f"{told} repetitions were told, {done} are saved")
    # The next start goes on with what is left of the round, or with the day's second one.
    if due != ([TOWEL] if len(counts) == 1 else [PENDULUM, TOWEL]):
        found.append(f"{done} are saved, and {due} would come next")
    return found
