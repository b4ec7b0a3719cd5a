"""Comparison of a session's measurements: of both sides, and with the time before."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History, MeasurementRecord


@dataclass(frozen=True, slots=True, kw_only=True)
class SideDifference:
    """How much less one side moves than the other, with its 95 % interval, in the unit.

    The intervals of both readings are joined as if they were independent; what errs alike on both
    sides makes the true interval narrower, not wider.
    """

    less: Side
    value: float
    low: float
    high: float


def side_difference(left: Measurement, right: Measurement) -> SideDifference | None:
    """Return the difference of two readings of a movement, or None where one is refused."""
    of_left, of_right = _value_and_half(left), _value_and_half(right)
    if of_left is None or of_right is None:
        return None
    half = math.hypot(of_left[1], of_right[1])
    value = abs(of_right[0] - of_left[0])
    return SideDifference(
        less=Side.LEFT if of_left[0] <= of_right[0] else Side.RIGHT,
        value=value,
        low=value - half,
        high=value + half,
    )


def last_readings(
    history: History, conduct: AssessmentCondition
) -> dict[tuple[Movement, Side], MeasurementRecord]:
    """Return the latest reading of each movement and side that was done in this way."""
    return {
        (record.measurement.movement, record.measurement.side): record
        for record in history.measurements
        if record.conduct == conduct and record.measurement.status is Status.READING
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


def _value_and_half(measurement: Measurement) -> tuple[float, float] | None:
    """Return a reading's value and the half width of its interval, or None."""
    value, low, high = measurement.value, measurement.low, measurement.high
    if value is None or low is None or high is None:
        return None
    return value, (high - low) / 2
