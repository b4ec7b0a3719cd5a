"""Reading a whole history out of the store, and merging one into it by identifiers."""

import dataclasses
import sqlite3
from collections.abc import Callable
from typing import Any

from measure.domain.record_checks import LONGEST_NAME
from measure.domain.records import History, Merged, Person
from measure.errors import DataError
from measure.message import TranslatableMessage
from measure.storage import (
    calibration_rows,
    goal_repository,
    home_programme_rows,
    measurement_rows,
    person_rows,
    screening_rows,
)
from measure.storage.columns import sanitized

_Write = Callable[[sqlite3.Connection, Any], None]


def history_of(connection: sqlite3.Connection, person: Person) -> History:
    """Return everything that is kept about a person."""
    return History(
        person=person,
        sessions=tuple(person_rows.sessions_of(connection, person.id)),
        measurements=tuple(
            measurement_rows.measurements_of(connection, person.id, None, None, None)
        ),
        events=tuple(person_rows.events_of(connection, person.id)),
        plans=tuple(home_programme_rows.plans_of(connection, person.id)),
        exercises_done=tuple(home_programme_rows.exercises_done_by(connection, person.id)),
        next_mornings=tuple(home_programme_rows.next_mornings_of(connection, person.id)),
        goals=tuple(goal_repository.goals_of(connection, person.id)),
        goal_ratings=tuple(goal_repository.ratings_by(connection, person.id)),
        screenings=tuple(screening_rows.screenings_of(connection, person.id)),
        body=calibration_rows.body_of(connection, person.id),
        places=tuple(calibration_rows.placements_of(connection, person.id)),
    )


def merge(connection: sqlite3.Connection, history: History) -> Merged:
    """Add what the store lacks, inside the caller's transaction; see ``Store.merge``."""
    person = person_rows.person_by_id(connection, history.person.id)
    new_person = person is None
    if person is None:
        person = _with_free_name(connection, history.person)
        person_rows.write_person(connection, person)
    here = history_of(connection, person)
    measurements = tuple(
        dataclasses.replace(record, measurement=sanitized(record.measurement))
        for record in history.measurements
    )
    added = same = kept = 0
    for table, present, coming, write in (
        ("session", here.sessions, history.sessions, person_rows.write_session),
        ("measurement", here.measurements, measurements, measurement_rows.write_measurement),
        ("event", here.events, history.events, person_rows.write_event),
        ("plan", here.plans, history.plans, home_programme_rows.write_plan),
        (
            "exercise_done",
            here.exercises_done,
            history.exercises_done,
            home_programme_rows.write_exercise_log,
        ),
        (
            "next_morning",
            here.next_mornings,
            history.next_mornings,
            home_programme_rows.write_next_morning,
        ),
        ("goal", here.goals, history.goals, goal_repository.write_goal),
        (
            "goal_rating",
            here.goal_ratings,
            history.goal_ratings,
            goal_repository.write_rating,
        ),
        ("screening", here.screenings, history.screenings, screening_rows.write_screening),
    ):
        counts = _merge_kind(connection, table, present, coming, write)
        added, same, kept = added + counts[0], same + counts[1], kept + counts[2]
    counts = _merge_calibration(connection, here, history)
    added, same, kept = added + counts[0], same + counts[1], kept + counts[2]
    return Merged(person=person, new_person=new_person, added=added, same=same, kept=kept)


def _merge_kind(
    connection: sqlite3.Connection,
    table: str,
    present: tuple[Any, ...],
    coming: tuple[Any, ...],
    write: _Write,
) -> tuple[int, int, int]:
    """Merge the records of one kind; return how many were added, alike, and kept."""
    by_id = {record.id: record for record in present}
    added = same = 0
    for record in coming:
        if record.id in by_id:
            same += record == by_id[record.id]
            continue
        # Not this person's, but perhaps another's: then the file is not what it says.
        if connection.execute(f"SELECT 1 FROM {table} WHERE id = ?", (record.id,)).fetchone():
            raise DataError(
                TranslatableMessage(
                    "The record {id} belongs to another person here. Nothing was imported. Check "
                    "where this file comes from.",
                    {"id": record.id},
                )
            )
        write(connection, record)
        added += 1
    return added, same, len(coming) - added - same


def _merge_calibration(
    connection: sqlite3.Connection, here: History, history: History
) -> tuple[int, int, int]:
    """Merge a person's body and places; return how many were added, alike, and kept."""
    added = same = kept = 0
    if history.body is not None:
        if here.body is None:
            calibration_rows.write_body(connection, history.body)
        added += here.body is None
        same += here.body == history.body
        kept += here.body not in (None, history.body)
    present = {place.key: place for place in here.places}
    for place in history.places:
        if place.key not in present:
            calibration_rows.write_placement(connection, place)
        added += place.key not in present
        same += present.get(place.key) == place
        kept += present.get(place.key, place) != place
    return added, same, kept


def _with_free_name(connection: sqlite3.Connection, person: Person) -> Person:
    """Return the person under a pseudonym that nobody here has: "Rosa", or "Rosa (2)"."""
    name, count = person.pseudonym, 1
    while person_rows.person_by_name(connection, name):
        count += 1
        suffix = f" ({count})"
        name = person.pseudonym[: LONGEST_NAME - len(suffix)].rstrip() + suffix
    return dataclasses.replace(person, pseudonym=name)
