"""Rows of people, and the order in which one is found by what somebody typed."""

import sqlite3
import unicodedata
from typing import Any

from measure.domain.landmarks import Side
from measure.domain.records import Onset, Person
from measure.errors import InputError
from measure.system.json_codec import json_reader, to_data, to_json

_read_sides = json_reader(tuple[Side, ...])

_COLUMNS = "id, pseudonym, affected, dominant, since, onset, demo"


def name_key(pseudonym: str) -> str:
    """Return what two pseudonyms share when they are too alike to tell people apart."""
    return unicodedata.normalize("NFKC", pseudonym).casefold()


def all_people(connection: sqlite3.Connection) -> list[Person]:
    rows = connection.execute(f"SELECT {_COLUMNS} FROM person ORDER BY name_key")
    return [_person(row) for row in rows]


def person_by_id(connection: sqlite3.Connection, person_id: str) -> Person | None:
    row = connection.execute(f"SELECT {_COLUMNS} FROM person WHERE id = ?", (person_id,)).fetchone()
    return _person(row) if row else None


def person_by_name(connection: sqlite3.Connection, pseudonym: str) -> Person | None:
    row = connection.execute(
        f"SELECT {_COLUMNS} FROM person WHERE name_key = ?", (name_key(pseudonym),)
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
            f"Somebody is called {namesake.pseudonym} already. Choose another pseudonym."
        )
    connection.execute(
        "INSERT INTO person (id, pseudonym, name_key, affected, dominant, since, onset, demo) "
        "VALUES (:id, :pseudonym, :name_key, :affected, :dominant, :since, :onset, :demo) "
        "ON CONFLICT (id) DO UPDATE SET pseudonym = :pseudonym, name_key = :name_key, "
        "affected = :affected, dominant = :dominant, since = :since, onset = :onset, "
        "demo = :demo",
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
    identifier, pseudonym, affected, dominant, since, onset, demo = row
    return Person(
        id=identifier,
        pseudonym=pseudonym,
        affected=_read_sides(affected),
        dominant=Side(dominant) if dominant else None,
        since=since,
        onset=Onset(onset) if onset else None,
        demo=bool(demo),
    )
