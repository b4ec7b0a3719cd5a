"""Lens profiles by camera name and picture size, kept in the data folder."""

from calibration.shelf import Shelf
from measure.setup import LensProfile
from measure.setup_checks import check_profile

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
    return newest_lens(camera_name, (width_px, height_px))


def newest_lens(
    camera_name: str | None, size_px: tuple[int, int] | None = None
) -> LensProfile | None:
    """Return a camera's newest profile, of a picture size or of any; None without one."""
    found = [
        each
        for each in LENSES.all()
        if each.camera_name == camera_name and size_px in (None, (each.width_px, each.height_px))
    ]
    return found[-1] if found else None
