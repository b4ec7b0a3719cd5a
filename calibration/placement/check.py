"""Comparison of a person's place in a measurement with the stored one."""

import datetime as dt

from calibration.placement.placement import (
    PlacementChange,
    PlacementDrift,
    placement_changes,
    placement_of,
    stored_placement,
)
from measure.domain.calibration_records import Placement
from measure.domain.measurements import Measurement, Status
from measure.domain.standing_pose import standing_in
from measure.storage.store import Store


def placement_from_measurement(
    store: Store, measurement: Measurement, person_id: str, today: dt.date
) -> Placement | None:
    """Return where the person stood for a measurement, or None where that was not seen."""
    neutral = standing_in(measurement.provenance.source)
    if neutral is None:
        return None
    record = store.body(person_id)
    camera = measurement.provenance.setup.camera
    return placement_of(
        neutral,
        person_id=person_id,
        movement=measurement.movement,
        side=measurement.side,
        camera_name=camera.name,
        taken=today,
        shoulder_width=None if record is None else record.network_shoulder_width,
        roll_deg=camera.roll_deg,
    )


def compare_placement(
    store: Store, measurement: Measurement, person_id: str, today: dt.date
) -> tuple[PlacementChange, ...]:
    """Return the differences from the stored place that exceed the limits.

    Empty where no place is stored, or where the person was not seen standing.

    Raises
    ------
    DataError, MachineError
        When the stored place cannot be read.
    """
    placed = placement_from_measurement(store, measurement, person_id, today)
    stored = None if placed is None else stored_placement(store, placed)
    return () if placed is None or stored is None else placement_changes(stored, placed)


def save_placement(store: Store, measurement: Measurement, person_id: str, today: dt.date) -> bool:
    """Store where the person stood for a measurement, replacing the place before that camera.

    Returns
    -------
    Whether there was a place to store.

    Raises
    ------
    DataError, MachineError
        When it cannot be stored.
    """
    placed = placement_from_measurement(store, measurement, person_id, today)
    if placed is not None:
        store.save_placement(placed)
    return placed is not None


def compare_or_save_placement(
    store: Store, measurement: Measurement, person_id: str, today: dt.date
) -> tuple[PlacementChange, ...]:
    """Compare the place of a measurement; store that of the first reading before a camera.

    The first and not the last: a place that drifts a little from session to session would never
    be noticed otherwise.
    """
    placed = placement_from_measurement(store, measurement, person_id, today)
    if placed is None:
        return ()
    stored = stored_placement(store, placed)
    changes = () if stored is None else placement_changes(stored, placed)
    is_new = stored is None or any(
        change.drift is PlacementDrift.OTHER_CAMERA for change in changes
    )
    if is_new and measurement.status is Status.READING:
        store.save_placement(placed)
    return changes
