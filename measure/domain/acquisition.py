"""What is known beforehand about camera, body and corrections, and the bounds of such values.

"Unknown" is None. Calibration makes these values; measuring uses them and stores them beside each
measurement. The `check_*` functions bound values that come from a file: they raise InputError with
the end of a sentence, such as "a number of the lens is missing", and the reader of the file adds
its name. No file access here.
"""

import dataclasses
import math
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.errors import InputError

#: Assumed when a camera's field of view is unknown: a usual webcam. Ours.
ASSUMED_HORIZONTAL_FIELD_DEG = 65.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LensProfile:
    """A pinhole lens with distortion, for one size of the upright, unmirrored picture.

    Pixel centres are whole numbers. What uses it is :mod:`measure.kinematics.camera_geometry`.

    Attributes
    ----------
    camera_name
        As the system names it.
    width_px, height_px
        Picture size that the profile was made at.
    focal_px, centre_px
        (fx, fy) and (cx, cy), pixels.
    distortion
        (k1, k2, p1, p2, k3), OpenCV's model.
    reprojection_px
        Root mean square error of the fit, pixels.
    views
        How many pictures of the board it was made from.
    """

    camera_name: str
    width_px: int
    height_px: int
    focal_px: tuple[float, float]
    centre_px: tuple[float, float]
    distortion: tuple[float, float, float, float, float]
    reprojection_px: float
    views: int

    @property
    def size_px(self) -> tuple[int, int]:
        """Width and height of the pictures that it holds for."""
        return self.width_px, self.height_px


@dataclass(frozen=True, slots=True, kw_only=True)
class CameraSetup:
    """The camera as far as it is known.

    Attributes
    ----------
    name
        Camera name, or None for a clip of unknown origin.
    lens
        A calibrated lens, or None.
    roll_deg
        How far the camera is turned clockwise about its axis, or None when not measured.
    already_mirrored
        True when the source delivers a mirror image.
    quarter_turns
        Clockwise quarter turns that make the source's picture upright, 0..3.
    """

    name: str | None = None
    lens: LensProfile | None = None
    roll_deg: float | None = None
    already_mirrored: bool = False
    quarter_turns: int = 0


#: Nothing is known: what is measured with it is as if there were no calibration.
UNKNOWN_CAMERA = CameraSetup()


@dataclass(frozen=True, slots=True, kw_only=True)
class BodySetup:
    """Lengths as fractions of the trunk (mid-hip to mid-shoulder), or None where unknown.

    Attributes
    ----------
    upper_arm, forearm, shoulder_width
        Over trunk length.
    c7_height
        Height of C7 above mid-hip over trunk length, marked once in a back picture.
    iliac_spines
        The same of the posterior iliac spines (the dimples above the buttocks).
    """

    upper_arm: float | None = None
    forearm: float | None = None
    shoulder_width: float | None = None
    c7_height: float | None = None
    iliac_spines: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """A correction against a goniometer, made by an agreement study for one set-up.

    corrected = value - bias - gain * (value - centre); degrees. Outside the angles that were
    studied the correction stays what it is at their end.

    Attributes
    ----------
    pairs
        How many pairs of readings it was made from.
    study
        Name of the study.
    lowest_deg, highest_deg
        Smallest and largest camera value studied; None where the study does not say.
    """

    bias_deg: float
    gain: float
    centre_deg: float
    pairs: int
    study: str
    lowest_deg: float | None = None
    highest_deg: float | None = None

    def corrected_deg(self, value_deg: float) -> float:
        """Return a camera value with the correction applied."""
        studied = value_deg
        if self.lowest_deg is not None:
            studied = max(studied, self.lowest_deg)
        if self.highest_deg is not None:
            studied = min(studied, self.highest_deg)
        return value_deg - self.bias_deg - self.gain * (studied - self.centre_deg)


@dataclass(frozen=True, slots=True, kw_only=True)
class Setup:
    """All that is known beforehand and changes a number. Stored with every reading.

    Attributes
    ----------
    correction
        The one of the movement measured, if it is switched on.
    """

    camera: CameraSetup = field(default_factory=CameraSetup)
    body: BodySetup = field(default_factory=BodySetup)
    correction: Correction | None = None


def fit_for_picture(
    setup: Setup, width_px: int, height_px: int, lenses: Sequence[LensProfile] = ()
) -> tuple[Setup, str]:
    """Return what of a set-up holds for upright pictures of a size, and why not all does.

    A lens profile is for one picture size: cameras crop as well as scale. The words are empty
    when all holds.

    Parameters
    ----------
    lenses
        More profiles of the same camera; one that fits takes the place of one that does not.
    """
    lens = setup.camera.lens
    if lens is None or lens.size_px == (width_px, height_px):
        return setup, ""
    fitting = [each for each in lenses if each.size_px == (width_px, height_px)]
    if fitting:
        return replace(setup, camera=replace(setup.camera, lens=fitting[-1])), ""
    return (
        replace(setup, camera=replace(setup.camera, lens=None)),
        f"The lens profile of {lens.camera_name} was made at {lens.width_px} x {lens.height_px} "
        f"pixels and does not hold for pictures of {width_px} x {height_px}. Calibrate the lens "
        "at this size too, or leave the profile out.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementCorrection:
    """A correction that is switched on, and the movement that it was studied for."""

    movement: Movement
    correction: Correction


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownSetup:
    """What is known beforehand of one person before one camera, for any movement.

    Attributes
    ----------
    corrections
        Those that are switched on, at most one a movement.
    """

    camera: CameraSetup = field(default_factory=CameraSetup)
    body: BodySetup = field(default_factory=BodySetup)
    corrections: tuple[MovementCorrection, ...] = ()

    def of(self, movement: Movement) -> Setup:
        """Return what is known for one movement."""
        found = (each.correction for each in self.corrections if each.movement is movement)
        return Setup(camera=self.camera, body=self.body, correction=next(found, None))


#: No camera has a longer name or a larger picture; no study a longer name.
LONGEST_NAME = 200
LARGEST_SIDE_PX = 16_384
#: A focal length outside these shares of the picture's longer side is no webcam's.
FOCAL_SHARES = (0.2, 20.0)
LARGEST_TERM = 100.0
#: No camera is used turned farther about its axis, degrees.
LARGEST_ROLL_DEG = 45.0
#: A larger bias or gain is a fault of the set-up to be found, not to be hidden.
LARGEST_BIAS_DEG = 10.0
LARGEST_GAIN = 0.2
#: No studied angle may be changed by more, degrees.
LARGEST_CHANGE_DEG = 15.0
#: What a length over the trunk's may be: of adults, with the network's points.
POSSIBLE = {
    "upper_arm": (0.40, 0.85),
    "forearm": (0.35, 0.75),
    "shoulder_width": (0.45, 1.0),
    "c7_height": (1.02, 1.5),
    "iliac_spines": (0.0, 0.4),
}


def check_known(known: KnownSetup) -> None:
    """Raise InputError unless a whole set-up can be."""
    check_camera(known.camera)
    check_lengths(known.body)
    for each in known.corrections:
        check_correction(each.movement, each.correction)
    movements = [each.movement for each in known.corrections]
    if len(set(movements)) < len(movements):
        raise InputError("one movement has two corrections")


def check_camera(camera: CameraSetup) -> None:
    """Raise InputError unless the camera can be, with a lens profile of its own."""
    if camera.name is not None:
        check_name(camera.name)
    if camera.roll_deg is not None:
        check_roll(camera.roll_deg)
    if camera.quarter_turns not in range(4):
        raise InputError("a picture has 0 to 3 quarter turns")
    if camera.lens is not None:
        check_profile(camera.lens)
        if camera.lens.camera_name != camera.name:
            raise InputError(
                f"the lens profile is of the camera {camera.lens.camera_name}, and the camera is "
                f"said to be {camera.name or 'unknown'}; another camera's lens says nothing"
            )


def check_profile(profile: LensProfile) -> None:
    """Raise InputError unless the profile is of a lens that can be."""
    check_name(profile.camera_name)
    width, height = profile.width_px, profile.height_px
    if not (1 <= width <= LARGEST_SIDE_PX and 1 <= height <= LARGEST_SIDE_PX):
        raise InputError(f"a picture of {width} x {height} pixels cannot be")
    numbers = (*profile.focal_px, *profile.centre_px, *profile.distortion, profile.reprojection_px)
    if not all(map(math.isfinite, numbers)):
        raise InputError("a number of the lens is missing")
    longer = max(width, height)
    if not all(FOCAL_SHARES[0] <= each / longer <= FOCAL_SHARES[1] for each in profile.focal_px):
        raise InputError("the focal length is not that of a webcam")
    x, y = profile.centre_px
    if not (0 <= x <= width and 0 <= y <= height):
        raise InputError("the lens axis lies outside the picture")
    if max(map(abs, profile.distortion)) > LARGEST_TERM or profile.reprojection_px < 0:
        raise InputError("the distortion is not that of a lens")
    if profile.views < 1:
        raise InputError("it was made from no views")


def check_roll(roll_deg: float) -> None:
    """Raise InputError unless a camera can be turned so about its axis."""
    if not (math.isfinite(roll_deg) and abs(roll_deg) <= LARGEST_ROLL_DEG):
        raise InputError("no camera is used turned like that")


def check_lengths(body: BodySetup) -> None:
    """Raise InputError unless every length that is known can be."""
    for each in dataclasses.fields(body):
        value = getattr(body, each.name)
        if value is not None and not is_possible(each.name, value):
            raise InputError(f"the {each.name.replace('_', ' ')} {value:g} cannot be")


def is_possible(name: str, value: float) -> bool:
    """Tell whether a length over the trunk's can be; False for NaN."""
    low, high = POSSIBLE[name]
    return low <= value <= high


def check_correction(movement: Movement, one: Correction) -> None:
    """Raise InputError unless a correction keeps within the bounds that a study keeps to."""
    if MOVEMENTS[movement].unit is not Unit.DEGREES:
        raise InputError("only angles are corrected")
    ends = (one.lowest_deg, one.highest_deg)
    if None in ends:
        raise InputError("the studied range is missing")
    numbers = [one.bias_deg, one.gain, one.centre_deg, *(each or 0.0 for each in ends)]
    if not all(map(math.isfinite, numbers)) or one.pairs < 1 or len(one.study) > LONGEST_NAME:
        raise InputError("a number of the correction cannot be")
    if abs(one.bias_deg) > LARGEST_BIAS_DEG or abs(one.gain) > LARGEST_GAIN:
        raise InputError("the correction is larger than any study may make")
    if any(abs(one.corrected_deg(end or 0.0) - (end or 0.0)) > LARGEST_CHANGE_DEG for end in ends):
        raise InputError("the correction changes the ends of its range too much")


def check_name(name: str) -> None:
    """Raise InputError unless a camera can have this name."""
    if not name.strip() or len(name) > LONGEST_NAME or not name.isprintable():
        raise InputError("the camera's name is empty, too long or not printable")
