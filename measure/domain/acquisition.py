"""What is known beforehand about camera, body and corrections, and the bounds of such values.

"Unknown" is None. Calibration makes these values; measuring uses them and stores them beside each
measurement. The `check_*` functions bound values that come from a file: they raise InputError with
the end of a sentence, such as "a number of the lens is missing", and the reader of the file adds
its name. No file access here.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from measure.domain.error_sizes import (
    MovementStudy,
    MovementTrialSd,
    StudyError,
    check_study,
    check_trial_sd,
)
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.errors import InputError

#: Assumed horizontal field of view where it is unknown, degrees: a usual webcam. [project]
ASSUMED_HORIZONTAL_FIELD_DEG = 65.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LensProfile:
    """Pinhole lens with distortion, for one size of the upright, unmirrored image.

    Pixel centres are whole numbers. Used by :mod:`measure.kinematics.camera_geometry`.

    Attributes
    ----------
    camera_name
        As the system names it.
    width_px, height_px
        Image size for which the profile was made.
    focal_px, centre_px
        (fx, fy) and (cx, cy), pixels.
    distortion
        (k1, k2, p1, p2, k3), OpenCV's model.
    reprojection_px
        Root mean square error of the fit, pixels.
    views
        Number of images of the board from which it was made.
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
        """Width and height of the images for which it holds."""
        return self.width_px, self.height_px


@dataclass(frozen=True, slots=True, kw_only=True)
class CameraSetup:
    """What is known about the camera.

    Attributes
    ----------
    name
        Camera name, or None for a clip of unknown origin.
    lens
        A calibrated lens, or None.
    roll_deg
        Clockwise turn of the camera about its axis, degrees; None where not measured.
    already_mirrored
        True when the source delivers a mirror image.
    quarter_turns
        Clockwise quarter turns that make the source's image upright, 0..3.
    """

    name: str | None = None
    lens: LensProfile | None = None
    roll_deg: float | None = None
    already_mirrored: bool = False
    quarter_turns: int = 0


#: Nothing is known: measuring as without calibration.
UNKNOWN_CAMERA = CameraSetup()


@dataclass(frozen=True, slots=True, kw_only=True)
class BodySetup:
    """Lengths of the body as fractions of the trunk (mid-hip to mid-shoulder); None where unknown.

    Attributes
    ----------
    upper_arm, forearm, shoulder_width
        Over trunk length.
    c7_height
        Height of C7 above mid-hip over trunk length, marked once in an image of the back.
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
    """Correction against a goniometer, made by an agreement study for one set-up.

    corrected = value - bias - gain * (value - centre), degrees. Outside the studied angles the
    correction stays at its value at their end.

    Attributes
    ----------
    pairs
        Number of pairs of readings from which it was made.
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
        low = -math.inf if self.lowest_deg is None else self.lowest_deg
        high = math.inf if self.highest_deg is None else self.highest_deg
        studied = min(max(value_deg, low), high)
        return value_deg - self.bias_deg - self.gain * (studied - self.centre_deg)


@dataclass(frozen=True, slots=True, kw_only=True)
class Setup:
    """What is known beforehand and changes a number. Stored with every measurement.

    Attributes
    ----------
    correction
        That of the measured movement, if it is switched on.
    study
        The camera's errors in an agreement study of the movement; None without one.
    trial_sd
        Standard deviation of the person's trials within a session, pooled over their sessions, in
        the movement's unit; None where the usual one is assumed.
    """

    camera: CameraSetup = field(default_factory=CameraSetup)
    body: BodySetup = field(default_factory=BodySetup)
    correction: Correction | None = None
    study: StudyError | None = None
    trial_sd: float | None = None


def fit_for_picture(
    setup: Setup, width_px: int, height_px: int, lenses: Sequence[LensProfile] = ()
) -> tuple[Setup, str]:
    """Return the part of a set-up that holds for upright images of a size, and why not all does.

    A lens profile holds for one image size: cameras crop as well as scale. The reason is empty
    when the whole set-up holds.

    Parameters
    ----------
    lenses
        More profiles of the same camera; one that fits replaces one that does not.
    """
    lens = setup.camera.lens
    if lens is None or lens.size_px == (width_px, height_px):
        return setup, ""
    fitting = [profile for profile in lenses if profile.size_px == (width_px, height_px)]
    if fitting:
        return replace(setup, camera=replace(setup.camera, lens=fitting[-1])), ""
    return (
        replace(setup, camera=replace(setup.camera, lens=None)),
        f"The lens profile of {lens.camera_name} was made at {lens.width_px} x {lens.height_px} "
        f"pixels and does not apply to pictures of {width_px} x {height_px}. Calibrate the lens "
        "at this size too, or leave the profile out.",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementCorrection:
    """A correction that is switched on, and the movement that it was studied for."""

    movement: Movement
    correction: Correction


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownSetup:
    """What is known beforehand of one person and one camera, for any movement.

    Attributes
    ----------
    corrections
        Those that are switched on, at most one a movement.
    studies
        Agreement studies of the camera, at most one a movement.
    trial_sds
        How the person's trials scatter, at most one a movement.
    """

    camera: CameraSetup = field(default_factory=CameraSetup)
    body: BodySetup = field(default_factory=BodySetup)
    corrections: tuple[MovementCorrection, ...] = ()
    studies: tuple[MovementStudy, ...] = ()
    trial_sds: tuple[MovementTrialSd, ...] = ()

    def of(self, movement: Movement) -> Setup:
        """Return the set-up of one movement."""
        corrections = {item.movement: item.correction for item in self.corrections}
        studies = {item.movement: item.error for item in self.studies}
        trial_sds = {item.movement: item.sd for item in self.trial_sds}
        return Setup(
            camera=self.camera,
            body=self.body,
            correction=corrections.get(movement),
            study=studies.get(movement),
            trial_sd=trial_sds.get(movement),
        )


#: Longest name of a camera or a study, characters. [technical]
LONGEST_NAME = 200
#: Largest side of an image, pixels. [technical]
LARGEST_SIDE_PX = 16_384
#: Least and largest focal length of a webcam, as shares of the image's longer side. [project]
FOCAL_SHARES = (0.2, 20.0)
#: Largest term of a lens distortion. [project]
LARGEST_TERM = 100.0
#: Largest turn of a camera about its axis, degrees. [project]
LARGEST_ROLL_DEG = 45.0
#: Largest bias of a correction, degrees: a larger one is a fault of the set-up to be found, not to
#: be hidden. [project]
LARGEST_BIAS_DEG = 10.0
#: Largest gain of a correction: a larger one is a fault of the set-up. [project]
LARGEST_GAIN = 0.2
#: Largest change of a studied angle by a correction, degrees. [project]
LARGEST_CHANGE_DEG = 15.0
#: Least and largest lengths of adults over the trunk's, with the network's points. [project]
POSSIBLE = {
    "upper_arm": (0.40, 0.85),
    "forearm": (0.35, 0.75),
    "shoulder_width": (0.45, 1.0),
    "c7_height": (1.02, 1.5),
    "iliac_spines": (0.0, 0.4),
}


def check_known(setup: KnownSetup) -> None:
    """Raise InputError unless a whole set-up is possible."""
    check_camera(setup.camera)
    check_lengths(setup.body)
    for item in setup.corrections:
        check_correction(item.movement, item.correction)
    for study in setup.studies:
        check_study(study.movement, study.error)
    for scatter in setup.trial_sds:
        check_trial_sd(scatter)
    for what, items in (
        ("corrections", setup.corrections),
        ("studies", setup.studies),
        ("scatters", setup.trial_sds),
    ):
        if len({item.movement for item in items}) < len(items):
            raise InputError(f"one movement has two {what}")


def check_camera(camera: CameraSetup) -> None:
    """Raise InputError unless the camera is possible, with a lens profile of its own."""
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
    """Raise InputError unless the profile is that of a possible lens."""
    check_name(profile.camera_name)
    width, height = profile.width_px, profile.height_px
    if not (1 <= width <= LARGEST_SIDE_PX and 1 <= height <= LARGEST_SIDE_PX):
        raise InputError(f"a picture of {width} x {height} pixels cannot be")
    numbers = (*profile.focal_px, *profile.centre_px, *profile.distortion, profile.reprojection_px)
    if not all(map(math.isfinite, numbers)):
        raise InputError("a number of the lens is missing")
    longer = max(width, height)
    least, largest = FOCAL_SHARES
    if not all(least <= focal / longer <= largest for focal in profile.focal_px):
        raise InputError("the focal length is not that of a webcam")
    x, y = profile.centre_px
    if not (0 <= x <= width and 0 <= y <= height):
        raise InputError("the lens axis lies outside the picture")
    if max(map(abs, profile.distortion)) > LARGEST_TERM or profile.reprojection_px < 0:
        raise InputError("the distortion is not that of a lens")
    if profile.views < 1:
        raise InputError("it was made from no views")


def check_roll(roll_deg: float) -> None:
    """Raise InputError unless a camera can have this turn about its axis."""
    if not (math.isfinite(roll_deg) and abs(roll_deg) <= LARGEST_ROLL_DEG):
        raise InputError("no camera is used turned like that")


def check_lengths(body: BodySetup) -> None:
    """Raise InputError unless every known length is possible."""
    for name in POSSIBLE:
        value = getattr(body, name)
        if value is not None and not is_possible(name, value):
            raise InputError(f"the {name.replace('_', ' ')} {value:g} cannot be")


def is_possible(name: str, value: float) -> bool:
    """Return whether a length over the trunk's is possible; False for NaN."""
    low, high = POSSIBLE[name]
    return low <= value <= high


def check_correction(movement: Movement, correction: Correction) -> None:
    """Raise InputError unless a correction keeps the bounds of an agreement study."""
    if MOVEMENTS[movement].unit is not Unit.DEGREES:
        raise InputError("only angles are corrected")
    low, high = correction.lowest_deg, correction.highest_deg
    if low is None or high is None:
        raise InputError("the studied range is missing")
    numbers = (correction.bias_deg, correction.gain, correction.centre_deg, low, high)
    if (
        not all(map(math.isfinite, numbers))
        or correction.pairs < 1
        or len(correction.study) > LONGEST_NAME
    ):
        raise InputError("a number of the correction cannot be")
    if abs(correction.bias_deg) > LARGEST_BIAS_DEG or abs(correction.gain) > LARGEST_GAIN:
        raise InputError("the correction is larger than any study may make")
    if any(abs(correction.corrected_deg(end) - end) > LARGEST_CHANGE_DEG for end in (low, high)):
        raise InputError("the correction changes the ends of its range too much")


def check_name(name: str) -> None:
    """Raise InputError unless a camera can have this name."""
    if not name.strip() or len(name) > LONGEST_NAME or not name.isprintable():
        raise InputError("the camera's name is empty, too long or not printable")
