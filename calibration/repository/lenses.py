"""Lens profiles by camera name and picture size, kept in the data folder."""

from collections.abc import Sequence

from calibration.message import TranslatableMessage
from calibration.repository.shelf import JsonRepository
from measure.domain.acquisition import LensProfile, check_profile

LENSES: JsonRepository[LensProfile] = JsonRepository(
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


def lenses_of(camera_name: str | None) -> tuple[LensProfile, ...]:
    """Return a camera's profiles of all picture sizes, the newest last."""
    return tuple(each for each in LENSES.all() if each.camera_name == camera_name)


def newest_lens(
    camera_name: str | None, size_px: tuple[int, int] | None = None
) -> LensProfile | None:
    """Return a camera's newest profile, of a picture size or of any; None without one."""
    found = [each for each in lenses_of(camera_name) if size_px in (None, each.size_px)]
    return found[-1] if found else None


def other_size_message(
    lenses: Sequence[LensProfile], size_px: tuple[int, int]
) -> TranslatableMessage | None:
    """Return what to say when a camera has profiles and none for a picture size; else None."""
    if not lenses or any(each.size_px == size_px for each in lenses):
        return None
    sizes = dict.fromkeys(each.size_px for each in reversed(lenses))
    return TranslatableMessage(
        "The lens was calibrated at {made} pixels and does not hold at {here}; a usual field of "
        "view is assumed. Calibrate the lens at this size too.",
        {
            "made": ", ".join(f"{width} x {height}" for width, height in sizes),
            "here": f"{size_px[0]} x {size_px[1]}",
        },
    )
