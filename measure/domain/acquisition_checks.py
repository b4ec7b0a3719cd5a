"""What a set-up from a file may hold: it decides about numbers, so its own are bounded.

Everything here raises InputError with the end of a sentence, such as "a number of the lens is
missing"; who reads the file says which file it is. Bounds without a source are ours.
"""

import dataclasses
import math

from measure.domain.acquisition import BodySetup, CameraSetup, Correction, KnownSetup, LensProfile
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.errors import InputError

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
