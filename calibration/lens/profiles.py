"""Lens profiles in the store, found by camera name and frame size."""

from collections.abc import Sequence

from measure.domain.acquisition import LensProfile
from measure.message import TranslatableMessage
from measure.storage.store import Store


def lens_for(
    store: Store, camera_name: str | None, width_px: int, height_px: int
) -> LensProfile | None:
    """Return the profile of a camera at a frame size, or None where it is unknown.

    Another size is another profile: cameras crop as well as scale.
    """
    return newest_lens(lenses_of(store, camera_name), (width_px, height_px))


def lenses_of(store: Store, camera_name: str | None) -> tuple[LensProfile, ...]:
    """Return a camera's profiles of all frame sizes, the newest last."""
    return tuple(profile for profile in store.lenses() if profile.camera_name == camera_name)


def newest_lens(
    lenses: Sequence[LensProfile], size_px: tuple[int, int] | None = None
) -> LensProfile | None:
    """Return the newest of a camera's profiles, of a frame size or of any; None without one."""
    fitting = [profile for profile in lenses if size_px in (None, profile.size_px)]
    return fitting[-1] if fitting else None


def other_size_message(
    lenses: Sequence[LensProfile], size_px: tuple[int, int]
) -> TranslatableMessage | None:
    """Return what to say when a camera has profiles and none for a frame size; else None."""
    if not lenses or any(profile.size_px == size_px for profile in lenses):
        return None
    sizes = dict.fromkeys(profile.size_px for profile in reversed(lenses))
    return TranslatableMessage(
        "The lens was calibrated at {made} pixels, which does not apply at {here}; a typical "
        "field of view is assumed. Calibrate the lens at this size too.",
        {
            "made": ", ".join(f"{width} x {height}" for width, height in sizes),
            "here": f"{size_px[0]} x {size_px[1]}",
        },
    )
