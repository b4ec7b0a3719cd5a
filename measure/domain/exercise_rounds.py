"""Rounds of a home programme: what is left of a day, what was logged, which morning to ask of."""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan, PlannedExercise
from measure.system.clock import Timestamp

#: Exercises that lie no further apart than this belong to one round. [project]
ROUND_GAP = dt.timedelta(minutes=60)
#: Days after which nobody is asked any more how the next morning was. [project]
DAYS_REMEMBERED = 7
#: Hours of the local day at which the afternoon and the evening begin. [technical]
NOON_HOUR, EVENING_HOUR = 12, 18


class DayPart(StrEnum):
    """Part of a local day."""

    MORNING = "morning"
    AFTERNOON = "afternoon"
    EVENING = "evening"


@dataclass(frozen=True, slots=True, kw_only=True)
class DayOfExercises:
    """What is planned and logged on a local day.

    Attributes
    ----------
    due
        Exercises of the next round: none beyond its times a day, and none twice in one round.
    begun
        Whether `due` is the rest of a round that was begun.
    logged
        What was logged on that day, the earliest first.
    """

    due: tuple[PlannedExercise, ...]
    begun: bool
    logged: tuple[ExerciseLog, ...]

    @property
    def parts(self) -> tuple[DayPart, ...]:
        """Parts of the day in which something was logged, in their order."""
        return tuple(dict.fromkeys(day_part(log.done) for log in self.logged))

    def highest_pain(self) -> int | None:
        """Return the highest pain that was stated on this day, 0..10, or None."""
        return max((log.pain for log in self.logged if log.pain is not None), default=None)


def day_of_exercises(
    plan: Plan | None, logs: Iterable[ExerciseLog], now: Timestamp
) -> DayOfExercises:
    """Return what is planned and logged today.

    An exercise done in part counts as done: nothing more is asked for. One that was stopped
    before its first repetition was over does not, and is offered again.
    """
    logged = tuple(
        sorted((log for log in logs if log.done.day == now.day), key=lambda log: log.done.utc)
    )
    left = exercises_left(plan, logged, now.day)
    lately = {
        log.exercise
        for log in logged
        if log.repetitions != 0 and dt.timedelta() <= now.utc - log.done.utc < ROUND_GAP
    }
    rest = [planned for planned in left if planned.exercise not in lately]
    return DayOfExercises(due=tuple(rest or left), begun=0 < len(rest) < len(left), logged=logged)


def exercises_left(
    plan: Plan | None, logs: Iterable[ExerciseLog], day: dt.date
) -> list[PlannedExercise]:
    """Return the planned exercises that were done less often on a day than they are planned."""
    done = [log.exercise for log in logs if log.done.day == day and log.repetitions != 0]
    return [
        planned
        for planned in (plan.exercises if plan else ())
        if done.count(planned.exercise) < planned.times_a_day
    ]


def day_part(moment: Timestamp) -> DayPart:
    hour = moment.local.hour
    if hour < NOON_HOUR:
        return DayPart.MORNING
    return DayPart.AFTERNOON if hour < EVENING_HOUR else DayPart.EVENING


def unanswered_day(
    logs: Iterable[ExerciseLog], mornings: Sequence[NextMorning], today: dt.date
) -> dt.date | None:
    """Return the last day of exercises before today if its next morning was not answered yet."""
    last = max((log.done.day for log in logs if log.done.day < today), default=None)
    if last is None or (today - last).days > DAYS_REMEMBERED:
        return None
    return None if any(morning.day == last for morning in mornings) else last
