"""Comparison of a session's measurements: of both sides, and with the time before."""

import datetime as dt
import math
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement, Unit
from measure.domain.records import AssessmentCondition, History, MeasurementRecord
from measure.domain.session_facts import ExerciseTiming
from measure.domain.session_timing import timing_of

#: A value and the ends of its 95 % interval, in the movement's unit.
WithInterval = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class SideDifference:
    """How much less one side moves than the other, with its 95 % interval, in the unit.

    Attributes
    ----------
    shown
        The value to be shown beside the two readings.
    """

    less: Side
    value: float
    low: float
    high: float
    shown: float


def side_difference(left: Measurement, right: Measurement) -> SideDifference | None:
    """Return the difference of two readings of a movement, or None where one is refused."""
    of_left, of_right = _with_interval(left), _with_interval(right)
    if of_left is None or of_right is None:
        return None
    less = Side.LEFT if of_left[0] <= of_right[0] else Side.RIGHT
    this, other = (of_left, of_right) if less is Side.LEFT else (of_right, of_left)
    value, low, high = difference_between(this, other)
    shown = shown_difference(this[0], other[0], left.unit)
    return SideDifference(less=less, value=value, low=low, high=high, shown=shown)


def shown_difference(this: float, other: float, unit: Unit) -> float:
    """Return the other value minus this one as it is shown beside both.

    Of angles that is the difference of the whole degrees that are read: beside 149° and 80° no one
    expects 68°. It is at most a degree from the exact one, whose interval is many times as wide.
    """
    return float(round(other) - round(this)) if unit is Unit.DEGREES else other - this


def difference_between(this: WithInterval, other: WithInterval) -> WithInterval:
    """Return the other side minus this one.

    The intervals are joined as if they were independent; what errs alike on both sides makes the
    true interval narrower, not wider.
    """
    half = math.hypot(half_width(this), half_width(other))
    value = other[0] - this[0]
    return value, value - half, value + half


def half_width(estimate: WithInterval) -> float:
    """Return half of the width of an interval."""
    _, low, high = estimate
    return (high - low) / 2


def last_readings(
    history: History, conduct: AssessmentCondition
) -> dict[tuple[Movement, Side], MeasurementRecord]:
    """Return the latest reading of each movement and side that was done in this way."""
    return {
        (record.measurement.movement, record.measurement.side): record
        for record in history.measurements
        if record.conduct == conduct and record.measurement.status is Status.READING
    }


def readings_of_day(
    history: History, conduct: AssessmentCondition, day: dt.date
) -> dict[tuple[Movement, Side], Measurement]:
    """Return the latest readings that were done in this way on a local day."""
    return {
        task: record.measurement
        for task, record in last_readings(history, conduct).items()
        if record.taken.day == day
    }


def times_read(
    history: History, conduct: AssessmentCondition, day: dt.date, *, after_exercises: bool
) -> Counter[tuple[Movement, Side]]:
    """Return how often each movement and side was read in this way on a local day.

    Sessions after exercises and others are not counted together.
    """
    alike = {
        session.id
        for session in history.sessions
        if (timing_of(session, history.exercises_done) is ExerciseTiming.AFTER) is after_exercises
    }
    return Counter(
        (record.measurement.movement, record.measurement.side)
        for record in history.measurements
        if record.taken.day == day
        and record.conduct == conduct
        and record.session_id in alike
        and record.measurement.status is Status.READING
    )


def of_session(
    measurements: Iterable[Measurement | None],
) -> dict[tuple[Movement, Side], Measurement]:
    """Return what a session gave of each movement and side that was really tried.

    Of several the last reading counts, or the last refusal where there is no reading.
    """
    results: dict[tuple[Movement, Side], Measurement] = {}
    for measurement in measurements:
        if measurement is None or not measurement.trials:
            continue
        key = measurement.movement, measurement.side
        reading = measurement.status is Status.READING
        if reading or key not in results or results[key].status is not Status.READING:
            results[key] = measurement
    return results


def _with_interval(measurement: Measurement) -> WithInterval | None:
    """Return a reading's value and the ends of its interval, or None."""
    value, low, high = measurement.value, measurement.low, measurement.high
    return None if value is None or low is None or high is None else (value, low, high)
