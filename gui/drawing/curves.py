"""A person's records sorted into what may share a curve. No Qt, no statistics."""

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
    """One measurement in a curve; value and interval are None for a refusal.

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
    """Readings of one movement on one side that were made alike, the earliest first."""

    side: Side
    conduct: AssessmentCondition
    points: tuple[CurvePoint, ...]

    @property
    def readings(self) -> tuple[CurvePoint, ...]:
        return tuple(point for point in self.points if point.value is not None)


def movements_of(history: History) -> tuple[Movement, ...]:
    """Return the movements that were ever measured, in the table's order."""
    seen = {record.measurement.movement for record in history.measurements}
    return tuple(movement for movement in Movement if movement in seen)


def conducts_of(history: History, movement: Movement) -> tuple[AssessmentCondition, ...]:
    """Return how a movement was done, the most frequent first."""
    counts: dict[AssessmentCondition, int] = defaultdict(int)
    for record in history.measurements:
        if record.measurement.movement is movement:
            counts[record.conduct] += 1
    return tuple(sorted(counts, key=lambda conduct: -counts[conduct]))


def curves(
    history: History, movement: Movement, conduct: AssessmentCondition
) -> tuple[HistoryCurve, ...]:
    """Return the curves of one movement done in one way, the left shoulder's first.

    Whatever makes numbers incomparable (another model, camera, view, reference) begins another
    curve, and so does an event that breaks a series, such as an injection.
    """
    breaks = {
        side: sorted(each.day for each in event_breaks(history.events, side)) for side in Side
    }
    groups: dict[tuple[Side, tuple[object, ...], int], list[MeasurementRecord]] = defaultdict(list)
    for record in history.measurements:
        found = record.measurement
        if found.movement is movement and record.conduct == conduct:
            part = bisect.bisect_right(breaks[found.side], record.taken.day)
            groups[found.side, instrument_of(found), part].append(record)
    return tuple(
        HistoryCurve(side=key[0], conduct=conduct, points=tuple(_points(groups[key])))
        for key in sorted(groups, key=lambda key: (key[0], key[2]))
    )


def unix_time_s(moment: Timestamp) -> float:
    """Return seconds since 1970, UTC."""
    return moment.utc.timestamp()


def _points(records: Iterable[MeasurementRecord]) -> Iterable[CurvePoint]:
    for record in sorted(records, key=lambda each: each.taken.utc):
        found = record.measurement
        known = found.status is Status.READING
        yield CurvePoint(
            time_s=unix_time_s(record.taken),
            value=found.value if known else None,
            low=found.low if known else None,
            high=found.high if known else None,
            pain=record.pain_during,
            record=record,
        )
