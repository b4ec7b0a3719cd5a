"""Test-retest repeatability of a person's stored sessions."""

from collections import defaultdict

from calibration.statistics.repeatability import (
    Repeatability,
    RetestSession,
    repeatability,
    repeatability_paragraph,
)
from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History, MeasurementRecord
from measure.progress.series import instrument_of


def repeatability_by_shoulder(history: History) -> dict[tuple[Movement, Side], Repeatability]:
    """Return the repeatability of each shoulder's sessions, by movement and side.

    Only sessions done and measured like the latest one: another way of doing it or another
    set-up is another instrument. Sessions of one day count as one.
    """
    groups: dict[tuple[Movement, Side], list[MeasurementRecord]] = defaultdict(list)
    for record in history.measurements:
        measurement = record.measurement
        if measurement.status is Status.READING and measurement.value is not None:
            groups[measurement.movement, measurement.side].append(record)
    order = list(Movement)
    return {
        key: repeatability(key[0], _sessions(groups[key]))
        for key in sorted(groups, key=lambda key: (order.index(key[0]), key[1]))
    }


def repeatability_report(history: History) -> str:
    """Return the paragraphs of all shoulders and movements, or a sentence that there are none."""
    series = repeatability_by_shoulder(history)
    if not series:
        return (
            "There are no readings yet. In several sessions, measure a shoulder that is not "
            "expected to change; from 8 sessions on, its own scatter is used."
        )
    return "\n\n".join(
        f"{side.capitalize()} shoulder. {repeatability_paragraph(result)}"
        for (_, side), result in series.items()
    )


def _sessions(records: list[MeasurementRecord]) -> list[RetestSession]:
    latest = max(records, key=lambda record: record.taken.utc)
    alike = _way(latest)
    days: dict[int, list[float]] = defaultdict(list)
    for record in records:
        if _way(record) == alike:
            days[record.taken.day.toordinal()] += _values(record)
    return [RetestSession(day=float(day), trials=tuple(values)) for day, values in days.items()]


def _values(record: MeasurementRecord) -> list[float]:
    """Return the scored trials, or the value itself where no trials are stored."""
    measurement = record.measurement
    scored = [trial.value for trial in measurement.trials if trial.scored]
    return [value for value in scored or [measurement.value] if value is not None]


def _way(record: MeasurementRecord) -> tuple[AssessmentCondition, tuple[object, ...]]:
    return record.conduct, instrument_of(record.measurement)
