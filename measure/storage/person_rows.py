"""Rows of people, their sessions and events."""

import datetime as dt
import sqlite3
import unicodedata
from typing import Any

from measure.domain.landmarks import Side
from measure.domain.records import (
    AgeBand,
    Event,
    EventKind,
    Onset,
    Pain,
    Person,
    SessionRecord,
)
from measure.domain.session_facts import ClinicianValue, ExerciseTiming, SessionState
from measure.errors import InputError
from measure.message import TranslatableMessage
from measure.storage.columns import as_int, checked_row, conduct_of, moment_of
from measure.system.json_codec import json_reader, to_data, to_json, utc_text

_read_sides = json_reader(tuple[Side, ...])
_read_clinician_values = json_reader(tuple[ClinicianValue, ...])

_PERSON = "id, pseudonym, affected, dominant, since, onset, age_band, diabetes, thyroid, demo"
_SESSION = (
    "session.id, person.id, started_utc, started_offset_min, started_zone, help, posture, "
    "pain_rest, pain_night, pain_worst_24h, note, duration_s, finished, exercise_timing, "
    "pain_relief, clinician_values"
)
_EVENT = "event.id, person.id, day, kind, side, note"


def name_key(pseudonym: str) -> str:
    """Return what two pseudonyms share when they are too alike to tell people apart."""
    return unicodedata.normalize("NFKC", pseudonym).casefold()


def all_people(connection: sqlite3.Connection) -> list[Person]:
    rows = connection.execute(f"SELECT {_PERSON} FROM person ORDER BY name_key")
    return [_person(row) for row in rows]


def person_by_id(connection: sqlite3.Connection, person_id: str) -> Person | None:
    row = connection.execute(f"SELECT {_PERSON} FROM person WHERE id = ?", (person_id,)).fetchone()
    return _person(row) if row else None


def person_by_name(connection: sqlite3.Connection, pseudonym: str) -> Person | None:
    row = connection.execute(
        f"SELECT {_PERSON} FROM person WHERE name_key = ?", (name_key(pseudonym),)
    ).fetchone()
    return _person(row) if row else None


def write_person(connection: sqlite3.Connection, person: Person) -> None:
    """Insert a person, or change the one with the same id.

    Raises
    ------
    InputError
        When another person has that pseudonym.
    """
    namesake = person_by_name(connection, person.pseudonym)
    if namesake and namesake.id != person.id:
        raise InputError(
            TranslatableMessage(
                "Another person is already called {name}. Choose another pseudonym.",
                {"name": namesake.pseudonym},
            )
        )
    connection.execute(
        "INSERT INTO person (id, pseudonym, name_key, affected, dominant, since, onset, age_band, "
        "diabetes, thyroid, demo) VALUES (:id, :pseudonym, :name_key, :affected, :dominant, "
        ":since, :onset, :age_band, :diabetes, :thyroid, :demo) "
        "ON CONFLICT (id) DO UPDATE SET pseudonym = :pseudonym, name_key = :name_key, "
        "affected = :affected, dominant = :dominant, since = :since, onset = :onset, "
        "age_band = :age_band, diabetes = :diabetes, thyroid = :thyroid, demo = :demo",
        to_data(person)
        | {"affected": to_json(person.affected), "name_key": name_key(person.pseudonym)},
    )


def erase_person(connection: sqlite3.Connection, person_id: str) -> None:
    """Delete a person and all that hangs on them, set-ups that only they used included."""
    connection.execute("DELETE FROM person WHERE id = ?", (person_id,))
    connection.execute(
        "DELETE FROM conditions WHERE number NOT IN (SELECT conditions FROM measurement)"
    )


def _person(row: tuple[Any, ...]) -> Person:
    identifier, pseudonym, affected, dominant, since, onset, age_band, *facts, demo = row
    diabetes, thyroid = (None if fact is None else bool(fact) for fact in facts)
    return Person(
        id=identifier,
        pseudonym=pseudonym,
        affected=_read_sides(affected),
        dominant=Side(dominant) if dominant else None,
        since=since,
        onset=Onset(onset) if onset else None,
        age_band=AgeBand(age_band) if age_band else None,
        diabetes=diabetes,
        thyroid=thyroid,
        demo=bool(demo),
    )


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
        "posture, pain_rest, pain_night, pain_worst_24h, note, duration_s, finished, "
        "exercise_timing, pain_relief, clinician_values) "
        "VALUES (:id, :person, :utc, :offset_min, :zone, :help, :posture, :rest, :night, "
        ":worst_24h, :note, :duration_s, :finished, :timing, :pain_relief, :clinician_values) "
        "ON CONFLICT (id) DO UPDATE SET started_utc = :utc, started_offset_min = :offset_min, "
        "started_zone = :zone, help = :help, posture = :posture, pain_rest = :rest, "
        "pain_night = :night, pain_worst_24h = :worst_24h, note = :note, "
        "duration_s = :duration_s, finished = :finished, exercise_timing = :timing, "
        "pain_relief = :pain_relief, clinician_values = :clinician_values "
        "WHERE person = :person",
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
            "timing": session.state.timing.value if session.state.timing else None,
            "pain_relief": as_int(session.state.pain_relief),
            "clinician_values": to_json(session.clinician_values),
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
        raise InputError(
            TranslatableMessage("This person is no longer saved here. Choose or add another one.")
        )
    return int(row[0])


def _session(row: tuple[Any, ...]) -> SessionRecord:
    identifier, person, utc, offset_min, zone, help_, posture, *rest = checked_row(row)
    *pain, note, duration, done, timing, pain_relief, clinician_values = rest
    return SessionRecord(
        id=identifier,
        person_id=person,
        started=moment_of(utc, offset_min, zone),
        conduct=conduct_of(help_, posture),
        pain=Pain(rest=pain[0], night=pain[1], worst_24h=pain[2]),
        note=note,
        duration_s=duration,
        finished=bool(done),
        state=SessionState(
            timing=ExerciseTiming(timing) if timing else None,
            pain_relief=None if pain_relief is None else bool(pain_relief),
        ),
        clinician_values=_read_clinician_values(clinician_values),
    )
