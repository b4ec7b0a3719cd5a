"""Curves of the history chart: a person's measurements grouped by comparability.

No Qt and no statistics.
"""

import bisect
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History, MeasurementRecord
from measure.progress.series import event_breaks, instrument_of
from measure.system.clock import Timestamp


@dataclass(frozen=True, slots=True, kw_only=True)
class CurvePoint:
    """One measurement of a curve; value and interval are None for a refusal.

    Attributes
    ----------
    time_s
        Seconds since 1970, UTC.
    """

    time_s: float
    value: float | None
    low: float | None
    high: float | None
    pain: int | None
    record: MeasurementRecord


@dataclass(frozen=True, slots=True, kw_only=True)
class HistoryCurve:
    """Comparable measurements of one movement on one side, the earliest first."""

    side: Side
    conduct: AssessmentCondition
    points: tuple[CurvePoint, ...]

    @property
    def readings(self) -> tuple[CurvePoint, ...]:
        return tuple(point for point in self.points if point.value is not None)


def movements_of(history: History) -> tuple[Movement, ...]:
    """Return the movements that were ever measured, in the table's order."""
    measured = {record.measurement.movement for record in history.measurements}
    return tuple(movement for movement in Movement if movement in measured)


def conducts_of(history: History, movement: Movement) -> tuple[AssessmentCondition, ...]:
    """Return the conditions under which a movement was measured, the most frequent first."""
    counts: dict[AssessmentCondition, int] = defaultdict(int)
    for record in history.measurements:
        if record.measurement.movement is movement:
            counts[record.conduct] += 1
    return tuple(sorted(counts, key=lambda conduct: -counts[conduct]))


def curves(
    history: History, movement: Movement, conduct: AssessmentCondition
) -> tuple[HistoryCurve, ...]:
    """Return the curves of one movement under one condition, the left shoulder's first.

    Anything that makes values incomparable (another model, camera, view, reference) starts another
    curve, and so does an event that breaks a series, such as an injection.
    """
    breaks = {
        side: sorted(point.day for point in event_breaks(history.events, side)) for side in Side
    }
    groups: dict[tuple[Side, tuple[object, ...], int], list[MeasurementRecord]] = defaultdict(list)
    for record in history.measurements:
        measurement = record.measurement
        if measurement.movement is movement and record.conduct == conduct:
            part = bisect.bisect_right(breaks[measurement.side], record.taken.day)
            groups[measurement.side, instrument_of(measurement), part].append(record)
    return tuple(
        HistoryCurve(side=key[0], conduct=conduct, points=tuple(_points(groups[key])))
        for key in sorted(groups, key=lambda key: (key[0], key[2]))
    )


def unix_time_s(moment: Timestamp) -> float:
    """Return seconds since 1970, UTC."""
    return moment.utc.timestamp()


def _points(records: Iterable[MeasurementRecord]) -> Iterable[CurvePoint]:
    for record in sorted(records, key=lambda record: record.taken.utc):
        measurement = record.measurement
        is_reading = measurement.status is Status.READING
        yield CurvePoint(
            time_s=unix_time_s(record.taken),
            value=measurement.value if is_reading else None,
            low=measurement.low if is_reading else None,
            high=measurement.high if is_reading else None,
            pain=record.pain_during,
            record=record,
        )
