"""What may be known about camera, body and instrument. "Unknown" is None, an honest value.

Calibration makes these values; measuring uses them and stores them beside each reading.
No file access here.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from measure.domain.movements import Movement

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
