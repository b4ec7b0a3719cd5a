"""Repository of goals and their ratings: a part of the store."""

import datetime as dt
import sqlite3
from collections.abc import Callable
from contextlib import AbstractContextManager

from measure.domain.goal_records import MOST_GOALS, Goal, GoalRating, open_goals
from measure.errors import InputError
from measure.storage.person_rows import person_number

_GOAL = "goal.id, person.id, words, goal.first_day, last_day"
_RATING = "goal_rating.id, person.id, goal.id, day, rating"

_Guard = Callable[[], AbstractContextManager[None]]


class GoalRepository:
    """Goals of everybody in the store.

    Parameters
    ----------
    reading, writing
        Guard a read, and a transaction.
    """

    def __init__(self, connection: sqlite3.Connection, reading: _Guard, writing: _Guard) -> None:
        self._connection, self._reading, self._writing = connection, reading, writing

    def of(self, person_id: str) -> list[Goal]:
        """Return a person's goals, the earliest first."""
        with self._reading():
            return goals_of(self._connection, person_id)

    def save(self, goal: Goal) -> None:
        """Add a goal, or change the one with the same id.

        Raises
        ------
        InputError
            When it would be one open goal too many.
        """
        with self._writing():
            others = [
                item for item in goals_of(self._connection, goal.person_id) if item.id != goal.id
            ]
            if goal.last_day is None and len(open_goals(others)) >= MOST_GOALS:
                raise InputError(f"There are already {MOST_GOALS} goals. End one of them first.")
            write_goal(self._connection, goal)

    def ratings(self, person_id: str) -> list[GoalRating]:
        """Return a person's ratings of all their goals, the earliest first."""
        with self._reading():
            return ratings_by(self._connection, person_id)

    def save_rating(self, rating: GoalRating) -> None:
        """Save a rating in place of that of the same goal and day."""
        with self._writing():
            self._connection.execute(
                "DELETE FROM goal_rating WHERE day = ? AND id <> ? "
                "AND goal = (SELECT number FROM goal WHERE id = ?)",
                (rating.day.isoformat(), rating.id, rating.goal_id),
            )
            write_rating(self._connection, rating)

    def delete(self, goal_id: str) -> None:
        """Delete a goal with its ratings."""
        with self._writing():
            self._connection.execute("DELETE FROM goal WHERE id = ?", (goal_id,))


def goals_of(connection: sqlite3.Connection, person_id: str) -> list[Goal]:
    """Return a person's goals by their first day, later entered last among equals."""
    rows = connection.execute(
        f"SELECT {_GOAL} FROM goal JOIN person ON person.number = goal.person "
        "WHERE person.id = ? ORDER BY goal.first_day, goal.number",
        (person_id,),
    )
    return [
        Goal(
            id=identifier,
            person_id=person,
            words=words,
            first_day=dt.date.fromisoformat(first_day),
            last_day=dt.date.fromisoformat(last_day) if last_day else None,
        )
        for identifier, person, words, first_day, last_day in rows
    ]


def write_goal(connection: sqlite3.Connection, goal: Goal) -> None:
    """Insert a goal, or change the one with the same id."""
    connection.execute(
        "INSERT INTO goal (id, person, words, first_day, last_day) "
        "VALUES (:id, :person, :words, :first_day, :last_day) "
        "ON CONFLICT (id) DO UPDATE SET words = :words, first_day = :first_day, "
        "last_day = :last_day WHERE person = :person",
        {
            "id": goal.id,
            "person": person_number(connection, goal.person_id),
            "words": goal.words,
            "first_day": goal.first_day.isoformat(),
            "last_day": goal.last_day.isoformat() if goal.last_day else None,
        },
    )


def ratings_by(connection: sqlite3.Connection, person_id: str) -> list[GoalRating]:
    """Return a person's ratings by their day, later entered last among equals."""
    rows = connection.execute(
        f"SELECT {_RATING} FROM goal_rating JOIN goal ON goal.number = goal_rating.goal "
        "JOIN person ON person.number = goal.person "
        "WHERE person.id = ? ORDER BY day, goal_rating.number",
        (person_id,),
    )
    return [
        GoalRating(
            id=identifier,
            person_id=person,
            goal_id=goal,
            day=dt.date.fromisoformat(day),
            rating=rating,
        )
        for identifier, person, goal, day, rating in rows
    ]


def write_rating(connection: sqlite3.Connection, rating: GoalRating) -> None:
    """Insert a rating, or change the one with the same id.

    Raises
    ------
    InputError
        When its goal is not in the store.
    """
    row = connection.execute("SELECT number FROM goal WHERE id = ?", (rating.goal_id,)).fetchone()
    if row is None:
        raise InputError("This goal is no longer in the store. Choose another one.")
    connection.execute(
        "INSERT INTO goal_rating (id, goal, day, rating) VALUES (:id, :goal, :day, :rating) "
        "ON CONFLICT (id) DO UPDATE SET day = :day, rating = :rating WHERE goal = :goal",
        {
            "id": rating.id,
            "goal": row[0],
            "day": rating.day.isoformat(),
            "rating": int(rating.rating),
        },
    )
