"""Rows of plans and of stretches that were done."""

import datetime as dt
import sqlite3

from measure.domain.records import Plan, PlannedStretch, Stretch, StretchLog
from measure.storage.columns import moment_of
from measure.storage.session_rows import person_number
from measure.system.json_codec import json_reader, to_json, utc_text

_read_stretches = json_reader(tuple[PlannedStretch, ...])

_PLAN = "plan.id, person.id, first_day, stretches, pain_limit, chosen_by"
_DONE = "stretch_done.id, person.id, stretch, done_utc, done_offset_min, done_zone"


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
            stretches=_read_stretches(stretches),
            pain_limit=pain_limit,
            chosen_by=chosen_by,
        )
        for identifier, person, first_day, stretches, pain_limit, chosen_by in rows
    ]


def write_plan(connection: sqlite3.Connection, plan: Plan) -> None:
    """Insert a plan, or change the one with the same id."""
    connection.execute(
        "INSERT INTO plan (id, person, first_day, stretches, pain_limit, chosen_by) "
        "VALUES (:id, :person, :first_day, :stretches, :pain_limit, :chosen_by) "
        "ON CONFLICT (id) DO UPDATE SET first_day = :first_day, stretches = :stretches, "
        "pain_limit = :pain_limit, chosen_by = :chosen_by WHERE person = :person",
        {
            "id": plan.id,
            "person": person_number(connection, plan.person_id),
            "first_day": plan.first_day.isoformat(),
            "stretches": to_json(plan.stretches),
            "pain_limit": int(plan.pain_limit),
            "chosen_by": plan.chosen_by,
        },
    )


def stretches_of(connection: sqlite3.Connection, person_id: str) -> list[StretchLog]:
    """Return the stretches a person did by their time, later entered last among equals."""
    rows = connection.execute(
        f"SELECT {_DONE} FROM stretch_done JOIN person ON person.number = stretch_done.person "
        "WHERE person.id = ? ORDER BY done_utc, stretch_done.number",
        (person_id,),
    )
    return [
        StretchLog(
            id=identifier,
            person_id=person,
            stretch=Stretch(stretch),
            done=moment_of(utc, offset_min, zone),
        )
        for identifier, person, stretch, utc, offset_min, zone in rows
    ]


def write_stretch(connection: sqlite3.Connection, log: StretchLog) -> None:
    connection.execute(
        "INSERT INTO stretch_done (id, person, stretch, done_utc, done_offset_min, done_zone) "
        "VALUES (?, ?, ?, ?, ?, ?)",
        (
            log.id,
            person_number(connection, log.person_id),
            log.stretch.value,
            utc_text(log.done.utc),
            log.done.offset_min,
            log.done.zone,
        ),
    )


def erase_stretch(connection: sqlite3.Connection, log_id: str) -> None:
    connection.execute("DELETE FROM stretch_done WHERE id = ?", (log_id,))
