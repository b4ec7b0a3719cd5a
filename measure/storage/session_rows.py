"""Rows of sessions and events."""

import datetime as dt
import sqlite3
from typing import Any

from measure.domain.landmarks import Side
from measure.domain.records import Event, EventKind, Pain, SessionRecord
from measure.errors import InputError
from measure.storage.columns import as_int, checked_row, conduct_of, moment_of
from measure.system.json_codec import utc_text

_SESSION = (
    "session.id, person.id, started_utc, started_offset_min, started_zone, help, posture, "
    "pain_rest, pain_night, pain_worst_24h, note, duration_s, finished"
)
_EVENT = "event.id, person.id, day, kind, side, note"


def sessions_of(connection: sqlite3.Connection, person_id: str) -> list[SessionRecord]:
    """Return a person's sessions by their start, earlier entered first among equals."""
    rows = connection.execute(
        f"SELECT {_SESSION} FROM session JOIN person ON person.number = session.person "
        "WHERE person.id = ? ORDER BY started_utc, session.number",
        (person_id,),
    )
    return [_session(row) for row in rows]


def session_by_id(connection: sqlite3.Connection, session_id: str) -> SessionRecord | None:
    row = connection.execute(
        f"SELECT {_SESSION} FROM session JOIN person ON person.number = session.person "
        "WHERE session.id = ?",
        (session_id,),
    ).fetchone()
    return _session(row) if row else None


def write_session(connection: sqlite3.Connection, session: SessionRecord) -> None:
    """Insert a session, or change the one with the same id."""
    connection.execute(
        "INSERT INTO session (id, person, started_utc, started_offset_min, started_zone, help, "
        "posture, pain_rest, pain_night, pain_worst_24h, note, duration_s, finished) "
        "VALUES (:id, :person, :utc, :offset_min, :zone, :help, :posture, :rest, :night, "
        ":worst_24h, :note, :duration_s, :finished) "
        "ON CONFLICT (id) DO UPDATE SET started_utc = :utc, started_offset_min = :offset_min, "
        "started_zone = :zone, help = :help, posture = :posture, pain_rest = :rest, "
        "pain_night = :night, pain_worst_24h = :worst_24h, note = :note, "
        "duration_s = :duration_s, finished = :finished WHERE person = :person",
        {
            "id": session.id,
            "person": person_number(connection, session.person_id),
            "utc": utc_text(session.started.utc),
            "offset_min": session.started.offset_min,
            "zone": session.started.zone,
            "help": session.conduct.help.value,
            "posture": session.conduct.posture.value,
            "rest": as_int(session.pain.rest),
            "night": as_int(session.pain.night),
            "worst_24h": as_int(session.pain.worst_24h),
            "note": session.note,
            "duration_s": None if session.duration_s is None else float(session.duration_s),
            "finished": int(session.finished),
        },
    )


def erase_session(connection: sqlite3.Connection, session_id: str) -> None:
    connection.execute("DELETE FROM session WHERE id = ?", (session_id,))


def events_of(connection: sqlite3.Connection, person_id: str) -> list[Event]:
    """Return a person's events by their day, earlier entered first among equals."""
    rows = connection.execute(
        f"SELECT {_EVENT} FROM event JOIN person ON person.number = event.person "
        "WHERE person.id = ? ORDER BY day, event.number",
        (person_id,),
    )
    return [
        Event(
            id=identifier,
            person_id=person,
            day=dt.date.fromisoformat(day),
            kind=EventKind(kind),
            side=Side(side) if side else None,
            note=note,
        )
        for identifier, person, day, kind, side, note in rows
    ]


def write_event(connection: sqlite3.Connection, event: Event) -> None:
    """Insert an event, or change the one with the same id."""
    connection.execute(
        "INSERT INTO event (id, person, day, kind, side, note) "
        "VALUES (:id, :person, :day, :kind, :side, :note) "
        "ON CONFLICT (id) DO UPDATE SET day = :day, kind = :kind, side = :side, note = :note "
        "WHERE person = :person",
        {
            "id": event.id,
            "person": person_number(connection, event.person_id),
            "day": event.day.isoformat(),
            "kind": event.kind.value,
            "side": event.side.value if event.side else None,
            "note": event.note,
        },
    )


def erase_event(connection: sqlite3.Connection, event_id: str) -> None:
    connection.execute("DELETE FROM event WHERE id = ?", (event_id,))


def person_number(connection: sqlite3.Connection, person_id: str) -> int:
    """Return the key that rows of a person refer to.

    Raises
    ------
    InputError
        When there is no such person (any more).
    """
    row = connection.execute("SELECT number FROM person WHERE id = ?", (person_id,)).fetchone()
    if not row:
        raise InputError("This person is no longer in the store. Choose or add another one.")
    return int(row[0])


def _session(row: tuple[Any, ...]) -> SessionRecord:
    identifier, person, utc, offset_min, zone, help_, posture, *rest = checked_row(row)
    *pain, note, duration, done = rest
    return SessionRecord(
        id=identifier,
        person_id=person,
        started=moment_of(utc, offset_min, zone),
        conduct=conduct_of(help_, posture),
        pain=Pain(rest=pain[0], night=pain[1], worst_24h=pain[2]),
        note=note,
        duration_s=duration,
        finished=bool(done),
    )
