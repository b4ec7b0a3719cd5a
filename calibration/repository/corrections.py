"""Corrections that agreement studies offered, each for one camera and movement, on or off.

A correction is off until a person switches it on. Readings made with it carry it in their
set-up, so switching starts a new series.
"""

import dataclasses
from dataclasses import dataclass

from calibration.repository.shelf import JsonRepository
from measure.domain.acquisition import Correction, MovementCorrection, check_correction, check_name
from measure.domain.movements import MOVEMENTS, Movement
from measure.errors import InputError


@dataclass(frozen=True, slots=True, kw_only=True)
class StoredCorrection:
    """A correction for one camera and movement.

    Attributes
    ----------
    camera_name
        Of the camera that the study was made with.
    switched_on
        Whether readings use it.
    """

    camera_name: str
    movement: Movement
    correction: Correction
    switched_on: bool = False


def check_stored_correction(kept: StoredCorrection) -> None:
    """Raise InputError unless a correction keeps within the bounds that a study keeps to."""
    check_name(kept.camera_name)
    check_correction(kept.movement, kept.correction)


CORRECTIONS: JsonRepository[StoredCorrection] = JsonRepository(
    "corrections",
    StoredCorrection,
    key=lambda kept: (kept.camera_name, kept.movement),
    check=check_stored_correction,
    most=200,
)


def set_correction_enabled(camera_name: str, movement: Movement, *, on: bool) -> StoredCorrection:
    """Switch a kept correction on or off.

    Raises
    ------
    InputError
        When none is kept for that camera and movement.
    """
    kept = CORRECTIONS.get((camera_name, movement))
    if kept is None:
        raise InputError(
            f"No correction is kept for {MOVEMENTS[movement].name.lower()} with the camera "
            f"{camera_name}. An agreement study offers one when it has enough pairs."
        )
    changed = dataclasses.replace(kept, switched_on=on)
    CORRECTIONS.put(changed)
    return changed


def corrections_for(camera_name: str | None) -> tuple[MovementCorrection, ...]:
    """Return a camera's corrections that are switched on."""
    return tuple(
        MovementCorrection(movement=kept.movement, correction=kept.correction)
        for kept in CORRECTIONS.all()
        if kept.camera_name == camera_name and kept.switched_on
    )
