"""Made-up people whose truth is known, to find out how often a verdict is wrong.

Shared by the bench and by the tests. Degrees throughout. A session's reading is the median of three
trials about the day's ability; days may be alike, read low, be missed, be learned, or hang on the
clothes of some weeks.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from measure.progress.series import Series, practice_days
from measure.trend.trend_line import DAYS_A_MONTH

#: A Monday.
FIRST_DAY = 739_600
_DAYS_OF_WEEK = {1: (0,), 2: (0, 3), 3: (0, 2, 4), 7: tuple(range(7))}
_TRIALS = 3
#: Variance of a median of three over that of one value (David & Nagaraja 2003, Order Statistics).
_MEDIAN_OF_THREE = 0.4487
#: A session that reads low does so by so many degrees.
_ODD_DEG = 20.0
#: Clothes are changed after so many weeks, at least and at most.
_CLOTHES_WEEKS = (2, 4)
#: The movements of one person, all taken as primary.
MOVEMENTS_OF_ONE = (Movement.FLEXION, Movement.ABDUCTION, Movement.EXTERNAL_ROTATION)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """What truly happens to a shoulder, and how it is measured.

    Attributes
    ----------
    a_month
        Steady change, degrees a month.
    then
        (week, change a month): from that week on it changes so instead.
    quick
        Front-loaded gain on top: (degrees in the end, days after which 63 % of it is there).
    loss
        (week, degrees): ability falls by so much at once.
    step
        Jump of the readings in the middle of the course, degrees: a set-up that was moved.
    creep
        Degrees a week by which the readings creep while the shoulder does not.
    day_sd, trial_sd
        Standard deviations of a day about the truth, and of a trial about its day.
    heavy
        True for days that scatter as Student's t with 3 degrees of freedom, same deviation.
    related
        Autocorrelation from one planned session to the next.
    shared
        Share of the days' variance that all movements of a person have in common.
    odd
        Share of sessions that read 20 degrees low.
    missed
        Share of planned sessions that do not take place.
    learning
        Degrees that the first session reads low; 63 % of it is gone after two more.
    learning_sessions
        With a number, learning is gone after so many sessions, in equal steps, instead.
    clothes
        Readings are off by up to so much, another amount every two to four weeks.
    a_week
        Planned sessions a week.
    """

    a_month: float = 0.0
    then: tuple[float, float] | None = None
    quick: tuple[float, float] | None = None
    loss: tuple[float, float] | None = None
    step: float = 0.0
    creep: float = 0.0
    weeks: int = 12
    day_sd: float = 4.5
    trial_sd: float = 3.0
    heavy: bool = False
    related: float = 0.0
    shared: float = 0.0
    odd: float = 0.0
    missed: float = 0.0
    learning: float = 0.0
    learning_sessions: int = 0
    clothes: float = 0.0
    a_week: int = 3

    @property
    def spread(self) -> float:
        """Standard deviation of one session about the truth, degrees."""
        return math.hypot(self.day_sd, self.trial_sd * math.sqrt(_MEDIAN_OF_THREE))

    def truth(self, day: FloatArray) -> FloatArray:
        """Return the truth on days after the first, shape (n,), degrees."""
        turned = 7 * self.then[0] if self.then else math.inf
        level = 90.0 + self.a_month * np.minimum(day, turned) / DAYS_A_MONTH
        if self.then:
            level = level + self.then[1] * np.maximum(day - turned, 0) / DAYS_A_MONTH
        if self.quick:
            level = level + self.quick[0] * (1 - np.exp(-day / self.quick[1]))
        if self.loss:
            level = level - np.where(day >= 7 * self.loss[0], self.loss[1], 0.0)
        return level

    def off(self, day: FloatArray) -> FloatArray:
        """Return by how much the set-up makes readings err on these days, shape (n,)."""
        return np.where(day >= self.weeks * 7 / 2, self.step, 0.0) + self.creep * day / 7


def planned_days(course: Course) -> FloatArray:
    """Return the days after the first on which sessions are planned, shape (n,)."""
    week = _DAYS_OF_WEEK[course.a_week]
    return np.array([7.0 * number + weekday for number in range(course.weeks) for weekday in week])


def person_of(
    course: Course,
    random: np.random.Generator,
    movements: Sequence[Movement] = MOVEMENTS_OF_ONE,
    side: Side = Side.LEFT,
) -> tuple[Series, ...]:
    """Return one made-up person: a series of each movement, measured in the same sessions."""
    day = planned_days(course)
    size = (len(movements), len(day))
    fresh = (
        random.standard_t(3, size=size) / math.sqrt(3) if course.heavy else random.normal(size=size)
    )
    if course.shared:
        common = random.normal(size=len(day))
        fresh = math.sqrt(course.shared) * common + math.sqrt(1 - course.shared) * fresh
    noise = fresh.copy()
    for k in range(1, len(day)):
        noise[:, k] = (
            course.related * noise[:, k - 1] + math.sqrt(1 - course.related**2) * fresh[:, k]
        )
    trials = course.trial_sd * np.median(random.normal(size=(*size, _TRIALS)), axis=2)
    value = course.truth(day) + course.off(day) + course.day_sd * noise + trials
    value = value - _ODD_DEG * (random.random(size) < course.odd)
    if course.clothes:
        value = value + _clothes(course, day, random, len(movements))
    kept = random.random(len(day)) >= course.missed
    kept[0] = True
    learned = _learned(course, int(kept.sum()))
    return tuple(
        plain_series(day[kept] + FIRST_DAY, row[kept] - learned, side, movement)
        for movement, row in zip(movements, value, strict=True)
    )


def _clothes(
    course: Course, day: FloatArray, random: np.random.Generator, movements: int
) -> FloatArray:
    """Return by how much clothes make readings err, shape (movements, days)."""
    off = np.zeros((movements, len(day)))
    week = 0
    while week < course.weeks:
        length = int(random.integers(_CLOTHES_WEEKS[0], _CLOTHES_WEEKS[1] + 1))
        worn = (day >= 7 * week) & (day < 7 * (week + length))
        off[:, worn] = random.uniform(-course.clothes, course.clothes, size=(movements, 1))
        week += length
    return off


def _learned(course: Course, sessions: int) -> FloatArray:
    """Return by how much each session still reads low for want of practice, shape (sessions,)."""
    number = np.arange(sessions)
    if course.learning_sessions:
        return course.learning * np.clip(1 - number / course.learning_sessions, 0.0, None)
    return course.learning * np.exp(-number / 2)


def series_of(course: Course, random: np.random.Generator, side: Side = Side.LEFT) -> Series:
    """Return one made-up series of a course, of a person who measures nothing else."""
    return person_of(course, random, (Movement.FLEXION,), side)[0]


def plain_series(
    day: FloatArray,
    value: FloatArray,
    side: Side = Side.LEFT,
    movement: Movement = Movement.FLEXION,
) -> Series:
    """Return a series without breaks whose readings reach 8 degrees either way."""
    instrument = np.zeros(len(day), dtype=np.int64)
    return Series(
        movement=movement,
        side=side,
        conduct=AssessmentCondition(),
        day=np.array(day, dtype=np.float64),
        value=np.array(value, dtype=np.float64),
        low=np.array(value, dtype=np.float64) - 8.0,
        high=np.array(value, dtype=np.float64) + 8.0,
        segment=instrument.copy(),
        instrument=instrument,
        practice=practice_days(instrument),
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
