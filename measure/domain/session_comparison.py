"""Comparison of a session's measurements: of both sides, and with the time before."""

import datetime as dt
import math
from collections.abc import Iterable
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History, MeasurementRecord

#: A value and the ends of its 95 % interval, in the movement's unit.
WithInterval = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class SideDifference:
    """How much less one side moves than the other, with its 95 % interval, in the unit."""

    less: Side
    value: float
    low: float
    high: float


def side_difference(left: Measurement, right: Measurement) -> SideDifference | None:
    """Return the difference of two readings of a movement, or None where one is refused."""
    of_left, of_right = _with_interval(left), _with_interval(right)
    if of_left is None or of_right is None:
        return None
    less = Side.LEFT if of_left[0] <= of_right[0] else Side.RIGHT
    this, other = (of_left, of_right) if less is Side.LEFT else (of_right, of_left)
    value, low, high = difference_between(this, other)
    return SideDifference(less=less, value=value, low=low, high=high)


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
