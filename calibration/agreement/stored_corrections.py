"""Corrections and studies in the store: switching one on or off, and those that a camera uses.

An agreement study offers a correction for one camera and movement. It is off until the user
switches it on. Readings made with it carry it in their set-up, so switching starts a new series.
"""

import dataclasses

from measure.domain.acquisition import MovementCorrection
from measure.domain.calibration_records import StoredCorrection
from measure.domain.error_sizes import MovementStudy
from measure.domain.movements import MOVEMENTS, Movement
from measure.errors import InputError
from measure.storage.store import Store


def set_correction_enabled(
    store: Store, camera_name: str, movement: Movement, *, on: bool
) -> StoredCorrection:
    """Switch a stored correction on or off.

    Raises
    ------
    InputError
        When none is kept for that camera and movement.
    """
    for stored in store.corrections():
        if (stored.camera_name, stored.movement) == (camera_name, movement):
            changed = dataclasses.replace(stored, switched_on=on)
            store.save_correction(changed)
            return changed
    raise InputError(
        f"There is no correction for {MOVEMENTS[movement].name.lower()} with the camera "
        f"{camera_name}. An agreement study offers one when it has enough pairs."
    )


def corrections_for(store: Store, camera_name: str | None) -> tuple[MovementCorrection, ...]:
    """Return a camera's corrections that are switched on."""
    return tuple(
        MovementCorrection(movement=stored.movement, correction=stored.correction)
        for stored in store.corrections()
        if stored.camera_name == camera_name and stored.switched_on
    )


def studies_for(store: Store, camera_name: str | None) -> tuple[MovementStudy, ...]:
    """Return the agreement studies of a camera, whose errors make its intervals."""
    return tuple(
        MovementStudy(movement=stored.movement, error=stored.error)
        for stored in store.studies()
        if stored.camera_name == camera_name
    )
