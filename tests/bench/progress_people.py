"""Made-up series whose truth is known, to find out how often a verdict is wrong.

Shared by the bench and by the tests. Degrees of flexion throughout.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from measure.progress.series import Series, practice_days
from measure.progress.trend_line import DAYS_A_MONTH

#: A Monday.
FIRST_DAY = 739_600
_DAYS_OF_WEEK = {1: (0,), 2: (0, 3), 3: (0, 2, 4), 7: tuple(range(7))}


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """What truly happens to a shoulder, and how it is measured.

    Attributes
    ----------
    a_month
        Steady change, degrees a month.
    quick
        Front-loaded gain on top: (degrees in the end, days after which 63 % of it is there).
    step
        Jump of the readings in the middle of the course, degrees: a set-up that was moved.
    spread
        Standard deviation of one session about the truth, degrees.
    related
        Autocorrelation from one planned session to the next.
    odd
        Share of sessions that read 20 degrees low.
    missed
        Share of planned sessions that do not take place.
    a_week
        Planned sessions a week.
    """

    a_month: float = 0.0
    quick: tuple[float, float] | None = None
    step: float = 0.0
    weeks: int = 12
    spread: float = 5.0
    related: float = 0.0
    odd: float = 0.0
    missed: float = 0.0
    a_week: int = 3

    def truth(self, day: FloatArray) -> FloatArray:
        """Return the truth on days after the first, shape (n,), degrees."""
        found = 90.0 + self.a_month * day / DAYS_A_MONTH
        if self.quick:
            found = found + self.quick[0] * (1 - np.exp(-day / self.quick[1]))
        return found + np.where(day >= self.weeks * 7 / 2, self.step, 0.0)


def planned_days(course: Course) -> FloatArray:
    """Return the days after the first on which sessions are planned, shape (n,)."""
    week = _DAYS_OF_WEEK[course.a_week]
    return np.array([7.0 * number + each for number in range(course.weeks) for each in week])


def series_of(course: Course, random: np.random.Generator, side: Side = Side.LEFT) -> Series:
    """Return one made-up series of a course."""
    day = planned_days(course)
    noise = np.empty(len(day))
    fresh = random.normal(size=len(day))
    noise[0] = fresh[0]
    for k in range(1, len(day)):
        noise[k] = course.related * noise[k - 1] + math.sqrt(1 - course.related**2) * fresh[k]
    value = course.truth(day) + course.spread * noise
    value = value - 20.0 * (random.random(len(day)) < course.odd)
    kept = random.random(len(day)) >= course.missed
    kept[0] = True
    return plain_series(day[kept] + FIRST_DAY, value[kept], side)


def plain_series(
    day: FloatArray,
    value: FloatArray,
    side: Side = Side.LEFT,
    movement: Movement = Movement.FLEXION,
) -> Series:
    """Return a series without breaks whose readings reach 8 degrees either way."""
    return Series(
        movement=movement,
        side=side,
        conduct=AssessmentCondition(),
        day=np.array(day, dtype=np.float64),
        value=np.array(value, dtype=np.float64),
        low=np.array(value, dtype=np.float64) - 8.0,
        high=np.array(value, dtype=np.float64) + 8.0,
        segment=np.zeros(len(day), dtype=np.int64),
        instrument=np.zeros(len(day), dtype=np.int64),
        practice=practice_days(np.zeros(len(day), dtype=np.int64)),
    )


def many(course: Course, people: int, seed: int) -> Iterator[Series]:
    """Yield series of so many people; the same seed gives the same ones."""
    random = np.random.default_rng(seed)
    for _ in range(people):
        yield series_of(course, random)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """How often, and when, something was first said about people of one course.

    Attributes
    ----------
    weeks
        For each person the week in which it was first said; infinite for never.
    """

    weeks: FloatArray

    @property
    def share(self) -> float:
        return float(np.isfinite(self.weeks).mean())

    @property
    def median_week(self) -> float:
        """The week by which half of all people were told; infinite where fewer ever were."""
        return float(np.sort(self.weeks)[(len(self.weeks) - 1) // 2])


def first_weeks(
    course: Course, people: int, seed: int, said: Callable[[Series], Sequence[float]]
) -> tuple[Outcome, ...]:
    """Return an outcome for each thing that `said` gives the week of, over so many people."""
    weeks = np.array([said(series) for series in many(course, people, seed)])
    return tuple(Outcome(weeks=column) for column in weeks.T)
