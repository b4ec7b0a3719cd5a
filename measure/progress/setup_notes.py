"""Lasting changes of the set-up, by movement and side, for a person's whole history."""

from collections import defaultdict
from collections.abc import Mapping

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History, MeasurementRecord
from measure.domain.setup_changes import SetupChange, Standing, lasting_change, standing_of
from measure.progress.series import instrument_of


def lasting_setup_changes(history: History) -> Mapping[tuple[Movement, Side], SetupChange]:
    """Return what differs now from the first readings, for sides of which something does.

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
    changes = {
        (movement, side): lasting_change(movement, _poses(records))
        for (movement, side), records in groups.items()
    }
    return {of: change for of, change in changes.items() if change is not None}


def _poses(records: list[MeasurementRecord]) -> list[Standing]:
    """Return how the person stood in the readings of the latest instrument."""
    latest = instrument_of(records[-1].measurement)
    poses = (
        standing_of(record.measurement.provenance.source)
        for record in records
        if instrument_of(record.measurement) == latest
    )
    return [pose for pose in poses if pose is not None]
