"""Corrections that agreement studies offered, each for one camera and movement, on or off.

A correction is off until a person switches it on. Readings made with it carry it in their
set-up, so switching starts a new series.
"""

import dataclasses
import math
from dataclasses import dataclass

from calibration.correction import LARGEST_BIAS_DEG, LARGEST_CHANGE_DEG, LARGEST_GAIN
from calibration.shelf import Shelf
from measure.errors import InputError
from measure.movements import MOVEMENTS, Movement, Unit
from measure.setup import Correction


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptCorrection:
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


def check_correction(kept: KeptCorrection) -> None:
    """Raise InputError unless a correction keeps within the bounds that a study keeps to."""
    if not kept.camera_name.strip() or len(kept.camera_name) > 200:
        raise InputError("the camera's name is empty or too long")
    if MOVEMENTS[kept.movement].unit is not Unit.DEGREES:
        raise InputError("only angles are corrected")
    one = kept.correction
    ends = (one.lowest_deg, one.highest_deg)
    if None in ends:
        raise InputError("the studied range is missing")
    numbers = [one.bias_deg, one.gain, one.centre_deg, *(each or 0.0 for each in ends)]
    if not all(map(math.isfinite, numbers)) or one.pairs < 1 or len(one.study) > 200:
        raise InputError("a number of the correction cannot be")
    if abs(one.bias_deg) > LARGEST_BIAS_DEG or abs(one.gain) > LARGEST_GAIN:
        raise InputError("the correction is larger than any study may make")
    if any(abs(one.corrected_deg(end or 0.0) - (end or 0.0)) > LARGEST_CHANGE_DEG for end in ends):
        raise InputError("the correction changes the ends of its range too much")


CORRECTIONS: Shelf[KeptCorrection] = Shelf(
    "corrections",
    KeptCorrection,
    key=lambda kept: (kept.camera_name, kept.movement),
    check=check_correction,
    most=200,
)


def switch(camera_name: str, movement: Movement, *, on: bool) -> KeptCorrection:
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


def correction_for(camera_name: str | None, movement: Movement) -> Correction | None:
    """Return the correction that is switched on, or None."""
    if camera_name is None:
        return None
    kept = CORRECTIONS.get((camera_name, movement))
    return kept.correction if kept is not None and kept.switched_on else None
