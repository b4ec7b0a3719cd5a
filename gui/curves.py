"""A person's records sorted into what may share a curve. No Qt, no statistics."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from measure.body import Side
from measure.history import History
from measure.moments import Moment
from measure.movements import Movement
from measure.readings import Reference, Status
from measure.records import Conduct, MeasurementRecord


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
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
class Curve:
    """Readings of one movement on one side that were made alike, the earliest first."""

    side: Side
    conduct: Conduct
    reference: Reference
    model: str
    points: tuple[Point, ...]

    @property
    def readings(self) -> tuple[Point, ...]:
        return tuple(point for point in self.points if point.value is not None)


def movements_of(history: History) -> tuple[Movement, ...]:
    """Return the movements that were ever measured, in the table's order."""
    seen = {record.measurement.movement for record in history.measurements}
    return tuple(movement for movement in Movement if movement in seen)


def conducts_of(history: History, movement: Movement) -> tuple[Conduct, ...]:
    """Return how a movement was done, the most frequent first."""
    counts: dict[Conduct, int] = defaultdict(int)
    for record in history.measurements:
        if record.measurement.movement is movement:
            counts[record.conduct] += 1
    return tuple(sorted(counts, key=lambda conduct: -counts[conduct]))


def curves(history: History, movement: Movement, conduct: Conduct) -> tuple[Curve, ...]:
    """Return the curves of one movement done in one way.

    A change of reference or of the deciding model begins another curve: their numbers are not
    to be compared.
    """
    groups: dict[tuple[Side, Reference, str], list[MeasurementRecord]] = defaultdict(list)
    for record in history.measurements:
        found = record.measurement
        if found.movement is movement and record.conduct == conduct:
            groups[found.side, found.reference, found.provenance.model].append(record)
    return tuple(
        Curve(
            side=side,
            conduct=conduct,
            reference=reference,
            model=model,
            points=tuple(_points(records)),
        )
        for (side, reference, model), records in sorted(groups.items())
    )


def seconds(moment: Moment) -> float:
    """Return seconds since 1970, UTC."""
    return moment.utc.timestamp()


def _points(records: Iterable[MeasurementRecord]) -> Iterable[Point]:
    for record in sorted(records, key=lambda each: each.taken.utc):
        found = record.measurement
        known = found.status is Status.READING
        yield Point(
            time_s=seconds(record.taken),
            value=found.value if known else None,
            low=found.low if known else None,
            high=found.high if known else None,
            pain=record.pain_during,
            record=record,
        )
