"""Calibration records: what is kept about cameras, and about people's bodies and places.

The store keeps them; :mod:`calibration` makes and judges them. Each kind has a check that raises
InputError with the end of a sentence, such as "the marks have no day"; the caller says where the
record came from.
"""

import datetime as dt
import math
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.acquisition import (
    LARGEST_ROLL_DEG,
    LARGEST_SIDE_PX,
    LONGEST_NAME,
    BodySetup,
    Correction,
    check_correction,
    check_lengths,
    check_name,
    check_roll,
)
from measure.domain.error_sizes import StudyError, check_study
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import InputError
from measure.system.clock import check_id


class BodySource(StrEnum):
    """Where a length came from."""

    POSES = "poses"
    TAPE = "tape"
    MARKS = "marks"


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyRecord:
    """A person's body as far as it is known.

    Attributes
    ----------
    person_id
        Identifier of the person in the store.
    lengths_from, lengths_day
        Where arm lengths and shoulder width came from, and when; None without any.
    marks_day
        When C7 and pelvis were marked; None when they were not.
    """

    person_id: str
    body: BodySetup
    lengths_from: BodySource | None = None
    lengths_day: dt.date | None = None
    marks_day: dt.date | None = None

    @property
    def network_shoulder_width(self) -> float | None:
        """Shoulder width over trunk length as the network sees it, or None.

        A tape measures that of the bones, a tenth wider.
        """
        return self.body.shoulder_width if self.lengths_from is BodySource.POSES else None


def check_body(record: BodyRecord) -> None:
    """Raise InputError unless every length can be and has a day."""
    check_id(record.person_id)
    check_lengths(record.body)
    lengths = (record.body.upper_arm, record.body.forearm, record.body.shoulder_width)
    if any(length is not None for length in lengths) and None in (
        record.lengths_day,
        record.lengths_from,
    ):
        raise InputError("the lengths have no day or source")
    if record.body.c7_height is not None and record.marks_day is None:
        raise InputError("the marks have no day")


@dataclass(frozen=True, slots=True, kw_only=True)
class CameraLevel:
    """The roll of one camera.

    Attributes
    ----------
    roll_deg, half_deg
        Turned clockwise about its axis, and half of the 95 % interval.
    day
        Local day it was measured.
    fixed
        True when the camera is fixed in place, as the user states.
    """

    camera_name: str
    roll_deg: float
    half_deg: float
    day: dt.date
    fixed: bool = False

    def holds_on(self, day: dt.date) -> bool:
        """Tell whether the level may be used on a day."""
        return self.fixed or self.day == day


def check_level(level: CameraLevel) -> None:
    """Raise InputError unless the level can be."""
    check_name(level.camera_name)
    check_roll(level.roll_deg)
    if not (math.isfinite(level.half_deg) and 0 <= level.half_deg <= LARGEST_ROLL_DEG):
        raise InputError("the interval of the roll cannot be")


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


@dataclass(frozen=True, slots=True, kw_only=True)
class StoredStudy:
    """An agreement study's errors for one camera and movement."""

    camera_name: str
    movement: Movement
    error: StudyError


def check_stored_study(stored: StoredStudy) -> None:
    """Raise InputError unless the study is of a camera and its errors can be."""
    check_name(stored.camera_name)
    if len(stored.error.study) > LONGEST_NAME:
        raise InputError("the study's name is too long")
    check_study(stored.movement, stored.error)


def check_stored_correction(stored: StoredCorrection) -> None:
    """Raise InputError unless a correction keeps within the bounds that a study keeps to."""
    check_name(stored.camera_name)
    check_correction(stored.movement, stored.correction)


@dataclass(frozen=True, slots=True, kw_only=True)
class Placement:
    """How one person stood before one camera for one movement of one side.

    Attributes
    ----------
    person_id
        Identifier of the person in the store.
    camera_name
        As the system names it; None for a clip of unknown origin.
    width_px, height_px
        Size of the upright picture.
    trunk_px, width_over_trunk, lean_deg
        As in :class:`measure.domain.standing_pose.Neutral`.
    shoulder_width
        The person's own over trunk length when this was taken, or None for the usual one.
    roll_deg
        The camera's roll where it was measured.
    taken
        Local day.
    """

    person_id: str
    movement: Movement
    side: Side
    camera_name: str | None
    width_px: int
    height_px: int
    trunk_px: float
    width_over_trunk: float
    lean_deg: float
    shoulder_width: float | None
    roll_deg: float | None
    taken: dt.date

    @property
    def key(self) -> tuple[str, Movement, Side, str | None, int, int]:
        """What only one kept placement has: person, movement, side, camera and frame size."""
        return (
            self.person_id,
            self.movement,
            self.side,
            self.camera_name,
            self.width_px,
            self.height_px,
        )


def check_placement(placement: Placement) -> None:
    """Raise InputError unless a placement can be."""
    check_id(placement.person_id)
    numbers = (placement.trunk_px, placement.width_over_trunk, placement.lean_deg)
    optional = (placement.shoulder_width, placement.roll_deg)
    given = [number for number in optional if number is not None]
    if not all(map(math.isfinite, (*numbers, *given))):
        raise InputError("a number of the placement is missing")
    if not 0 < placement.trunk_px <= 100_000 or not 0 < placement.height_px <= LARGEST_SIDE_PX:
        raise InputError("the trunk or the picture has no such size")
    if not 0 < placement.width_px <= LARGEST_SIDE_PX or abs(placement.width_over_trunk) > 5:
        raise InputError("the picture or the shoulders have no such width")
    if placement.shoulder_width is not None and not 0.2 <= placement.shoulder_width <= 2:
        raise InputError("the shoulders have no such width")
    if len(placement.camera_name or "") > LONGEST_NAME:
        raise InputError("the camera's name is too long")
