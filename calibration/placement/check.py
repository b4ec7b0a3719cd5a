"""Today's place of a person, taken from a reading, against the one that is kept."""

import datetime as dt

from calibration.placement.placement import (
    PLACEMENTS,
    Placement,
    PlacementChange,
    PlacementDrift,
    placement_changes,
    placement_of,
    stored_placement,
)
from calibration.repository.bodies import BODIES, network_shoulder_width
from measure.domain.measurements import Measurement, Status
from measure.kinematics.neutral_pose import standing_in


def placement_from_measurement(
    measurement: Measurement, person_id: str, today: dt.date
) -> Placement | None:
    """Return where the person stood for a reading, or None where that was not seen."""
    neutral = standing_in(measurement.provenance.source)
    if neutral is None:
        return None
    record = BODIES.get(person_id)
    camera = measurement.provenance.setup.camera
    return placement_of(
        neutral,
        person_id=person_id,
        movement=measurement.movement,
        side=measurement.side,
        camera_name=camera.name,
        taken=today,
        shoulder_width=None if record is None else network_shoulder_width(record),
        roll_deg=camera.roll_deg,
    )


def compare_placement(
    measurement: Measurement, person_id: str, today: dt.date
) -> tuple[PlacementChange, ...]:
    """Return what differs too much from where the person stood when the place was kept.

    Nothing where no place is kept, or where nobody was seen standing.

    Raises
    ------
    DataError, MachineError
        When what is kept cannot be read.
    """
    placed = placement_from_measurement(measurement, person_id, today)
    kept = None if placed is None else stored_placement(placed)
    return () if placed is None or kept is None else placement_changes(kept, placed)


def save_placement(measurement: Measurement, person_id: str, today: dt.date) -> bool:
    """Keep where the person stood for a reading, in place of what was kept before that camera.

    Returns whether there was anything to keep.

    Raises
    ------
    DataError, MachineError
        When it cannot be kept.
    """
    placed = placement_from_measurement(measurement, person_id, today)
    if placed is not None:
        PLACEMENTS.put(placed)
    return placed is not None


def compare_or_save_placement(
    measurement: Measurement, person_id: str, today: dt.date
) -> tuple[PlacementChange, ...]:
    """Check the place of a measurement; that of the first reading before a camera is kept.

    The first and not the last: a place that creeps by a little from session to session would
    else never be noticed.
    """
    placed = placement_from_measurement(measurement, person_id, today)
    if placed is None:
        return ()
    kept = stored_placement(placed)
    found = () if kept is None else placement_changes(kept, placed)
    is_new = kept is None or any(each.drift is PlacementDrift.OTHER_CAMERA for each in found)
    if is_new and measurement.status is Status.READING:
        PLACEMENTS.put(placed)
    return found
