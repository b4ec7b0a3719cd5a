"""Rows of answers to the safety questions."""

import datetime as dt
import sqlite3

from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome, ScreeningRecord
from measure.storage.person_rows import person_number


def screenings_of(connection: sqlite3.Connection, person_id: str) -> list[ScreeningRecord]:
    """Return a person's runs through the questions by their day, later entered last."""
    rows = connection.execute(
        "SELECT screening.id, person.id, day, occasion, outcome FROM screening "
        "JOIN person ON person.number = screening.person "
        "WHERE person.id = ? ORDER BY day, screening.number",
        (person_id,),
    )
    return [
        ScreeningRecord(
            id=identifier,
            person_id=person,
            day=dt.date.fromisoformat(day),
            occasion=ScreeningOccasion(occasion),
            outcome=ScreeningOutcome(outcome),
        )
        for identifier, person, day, occasion, outcome in rows
    ]


def write_screening(connection: sqlite3.Connection, screening: ScreeningRecord) -> None:
    """Insert a run through the questions, or change the one with the same id."""
    connection.execute(
        "INSERT INTO screening (id, person, day, occasion, outcome) "
        "VALUES (:id, :person, :day, :occasion, :outcome) "
        "ON CONFLICT (id) DO UPDATE SET day = :day, occasion = :occasion, outcome = :outcome "
        "WHERE person = :person",
        {
            "id": screening.id,
            "person": person_number(connection, screening.person_id),
            "day": screening.day.isoformat(),
            "occasion": screening.occasion.value,
            "outcome": screening.outcome.value,
        },
    )
