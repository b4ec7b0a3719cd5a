"""Lasting changes of the set-up, by movement and side, for a person's whole history."""

from collections import defaultdict

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History, MeasurementRecord
from measure.domain.setup_changes import lasting_change, standing_of
from measure.progress.series import instrument_of


def setup_notes(history: History) -> tuple[str, ...]:
    """Return a sentence for each side of a movement whose set-up differs from what it was at first.

    Only readings of the latest instrument count, since the last noted change of camera or model:
    what was noted has begun a new series.
    """
    changed = [
        event.day
        for event in history.events
        if event.kind in (EventKind.CAMERA_CHANGED, EventKind.MODEL_CHANGED)
    ]
    groups: dict[tuple[Movement, Side], list[MeasurementRecord]] = defaultdict(list)
    for record in sorted(history.measurements, key=lambda item: item.taken.utc):
        if not changed or record.taken.day >= max(changed):
            groups[record.measurement.movement, record.measurement.side].append(record)
    notes = []
    for (movement, side), records in sorted(groups.items()):
        latest = instrument_of(records[-1].measurement)
        poses = [
            standing_of(record.measurement.provenance.source)
            for record in records
            if instrument_of(record.measurement) == latest
        ]
        change = lasting_change(movement, [pose for pose in poses if pose is not None])
        if change is not None:
            notes.append(f"{side.value.capitalize()} side. {change.sentence}")
    return tuple(notes)
