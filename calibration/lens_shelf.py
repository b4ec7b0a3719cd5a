"""Lens profiles by camera name and picture size, kept in the data folder."""

import math

from calibration.shelf import Shelf
from measure.errors import InputError
from measure.setup import LensProfile

#: Ours: no camera has a longer name or a larger picture.
LONGEST_NAME = 200
LARGEST_SIDE_PX = 16_384
#: A focal length outside these shares of the picture's longer side is no webcam's. Ours.
FOCAL_SHARES = (0.2, 20.0)
LARGEST_TERM = 100.0


def check_profile(profile: LensProfile) -> None:
    """Raise InputError unless the profile is of a lens that can be.

    A profile from a file decides about numbers, so its own are bounded here.
    """
    name = profile.camera_name
    if not name.strip() or len(name) > LONGEST_NAME or not name.isprintable():
        raise InputError("the camera's name is empty, too long or not printable")
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


LENSES: Shelf[LensProfile] = Shelf(
    "lens-profiles",
    LensProfile,
    key=lambda profile: (profile.camera_name, profile.width_px, profile.height_px),
    check=check_profile,
    most=100,
)


def lens_for(camera_name: str | None, width_px: int, height_px: int) -> LensProfile | None:
    """Return the profile of a camera at a picture size, or None where it is unknown.

    Another size is another profile: cameras crop as well as scale.
    """
    if camera_name is None:
        return None
    return LENSES.get((camera_name, width_px, height_px))
