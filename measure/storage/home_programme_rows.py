"""Rows of plans, of exercises done and of the mornings after."""

import datetime as dt
import sqlite3
from typing import Any

from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import (
    ComparedWithLast,
    ExerciseLog,
    NextMorning,
    Plan,
    PlannedExercise,
)
from measure.domain.movements import Movement
from measure.storage.columns import as_int, moment_of
from measure.storage.person_rows import person_number
from measure.system.json_codec import json_reader, to_json, utc_text

_read_exercises = json_reader(tuple[PlannedExercise, ...])
_read_movements = json_reader(tuple[Movement, ...])

_PLAN = "plan.id, person.id, first_day, exercises, pain_limit, chosen_by, review, primary_movements"
_DONE = (
    "exercise_done.id, person.id, exercise, own, done_utc, done_offset_min, done_zone, pain, "
    "compared, repetitions"
)
_MORNING = "next_morning.id, person.id, day, eased"


def plans_of(connection: sqlite3.Connection, person_id: str) -> list[Plan]:
    """Return a person's plans by their first day, later entered last among equals."""
    rows = connection.execute(
        f"SELECT {_PLAN} FROM plan JOIN person ON person.number = plan.person "
        "WHERE person.id = ? ORDER BY first_day, plan.number",
        (person_id,),
    )
    return [
        Plan(
            id=identifier,
            person_id=person,
            first_day=dt.date.fromisoformat(first_day),
            exercises=_read_exercises(exercises),
            pain_limit=pain_limit,
            chosen_by=chosen_by,
            review=dt.date.fromisoformat(review) if review else None,
            primary=_read_movements(primary),
        )
        for identifier, person, first_day, exercises, pain_limit, chosen_by, review, primary in rows
    ]


def write_plan(connection: sqlite3.Connection, plan: Plan) -> None:
    """Insert a plan, or change the one with the same id."""
    connection.execute(
        "INSERT INTO plan (id, person, first_day, exercises, pain_limit, chosen_by, review, "
        "primary_movements) VALUES (:id, :person, :first_day, :exercises, :pain_limit, "
        ":chosen_by, :review, :primary_movements) "
        "ON CONFLICT (id) DO UPDATE SET first_day = :first_day, exercises = :exercises, "
        "pain_limit = :pain_limit, chosen_by = :chosen_by, review = :review, "
        "primary_movements = :primary_movements "
        "WHERE person = :person",
        {
            "id": plan.id,
            "person": person_number(connection, plan.person_id),
            "first_day": plan.first_day.isoformat(),
            "exercises": to_json(plan.exercises),
            "pain_limit": int(plan.pain_limit),
            "chosen_by": plan.chosen_by,
            "review": plan.review.isoformat() if plan.review else None,
            "primary_movements": to_json(plan.primary),
        },
    )


def exercises_done_by(connection: sqlite3.Connection, person_id: str) -> list[ExerciseLog]:
    """Return the exercises a person did by their time, later entered last among equals."""
    rows = connection.execute(
        f"SELECT {_DONE} FROM exercise_done JOIN person ON person.number = exercise_done.person "
        "WHERE person.id = ? ORDER BY done_utc, exercise_done.number",
        (person_id,),
    )
    return [_log(row) for row in rows]


def write_exercise_log(connection: sqlite3.Connection, log: ExerciseLog) -> None:
    """Insert an exercise that was done, or change the one with the same id."""
    exercise = log.exercise
    connection.execute(
        "INSERT INTO exercise_done (id, person, exercise, own, done_utc, done_offset_min, "
        "done_zone, pain, compared, repetitions) VALUES (:id, :person, :exercise, :own, :utc, "
        ":offset_min, :zone, :pain, :compared, :repetitions) "
        "ON CONFLICT (id) DO UPDATE SET exercise = :exercise, own = :own, done_utc = :utc, "
        "done_offset_min = :offset_min, done_zone = :zone, pain = :pain, compared = :compared, "
        "repetitions = :repetitions WHERE person = :person",
        {
            "id": log.id,
            "person": person_number(connection, log.person_id),
            "exercise": exercise.listed.value if exercise.listed else exercise.own_name,
            "own": int(exercise.listed is None),
            "utc": utc_text(log.done.utc),
            "offset_min": log.done.offset_min,
            "zone": log.done.zone,
            "pain": as_int(log.pain),
            "compared": log.compared.value if log.compared else None,
            "repetitions": as_int(log.repetitions),
        },
    )


def erase_exercise_log(connection: sqlite3.Connection, log_id: str) -> None:
    connection.execute("DELETE FROM exercise_done WHERE id = ?", (log_id,))


def next_mornings_of(connection: sqlite3.Connection, person_id: str) -> list[NextMorning]:
    """Return a person's mornings after exercises by their day, later entered last."""
    rows = connection.execute(
        f"SELECT {_MORNING} FROM next_morning JOIN person ON person.number = next_morning.person "
        "WHERE person.id = ? ORDER BY day, next_morning.number",
        (person_id,),
    )
    return [
        NextMorning(
            id=identifier,
            person_id=person,
            day=dt.date.fromisoformat(day),
            eased=bool(eased),
        )
        for identifier, person, day, eased in rows
    ]


def write_next_morning(connection: sqlite3.Connection, morning: NextMorning) -> None:
    """Insert an answer, or change the one with the same id."""
    connection.execute(
        "INSERT INTO next_morning (id, person, day, eased) "
        "VALUES (:id, :person, :day, :eased) "
        "ON CONFLICT (id) DO UPDATE SET day = :day, eased = :eased WHERE person = :person",
        {
            "id": morning.id,
            "person": person_number(connection, morning.person_id),
            "day": morning.day.isoformat(),
            "eased": int(morning.eased),
        },
    )


def _log(row: tuple[Any, ...]) -> ExerciseLog:
    identifier, person, name, own, utc, offset_min, zone, pain, compared, repetitions = row
    return ExerciseLog(
        id=identifier,
        person_id=person,
        exercise=Exercise(own_name=name) if own else Exercise(listed=ListedExercise(name)),
        done=moment_of(utc, offset_min, zone),
        pain=pain,
        compared=ComparedWithLast(compared) if compared else None,
        repetitions=repetitions,
    )
