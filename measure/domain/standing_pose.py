"""Standing pose before a movement: its numbers, and the text that is stored with a reading."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

#: Shoulder width over trunk length where the person's own is unknown. [project]
USUAL_SHOULDER_WIDTH = 0.68
#: Error of the shoulders' apparent width over the trunk's length. [project]
WIDTH_ERROR = 0.03


@dataclass(frozen=True, slots=True, kw_only=True)
class Neutral:
    """One person standing still.

    Attributes
    ----------
    trunk_px
        Length of the trunk line, mid-hip to mid-shoulder.
    middle_px
        Middle of the trunk in the image, (x, y), pixels, y down.
    lean_deg
        Direction of the trunk line against the image's vertical, anticlockwise positive.
    width_over_trunk
        Shoulders' apparent width over the trunk's length; positive facing the camera,
        negative with the back to it, near 0 from the side.
    frames
        Frames that it comes from.
    width_px, height_px
        Size of the upright frame.
    """

    trunk_px: float
    middle_px: tuple[float, float]
    lean_deg: float
    width_over_trunk: float
    frames: int
    width_px: int
    height_px: int


def facing_turn_deg(width_over_trunk: float, shoulder_width: float | None = None) -> float:
    """Return how far a person is turned from facing the camera, 0..180 degrees.

    90 is a side view, 180 the back. Near 0 and 180 the width hardly changes with the turn, so
    turns below about 17 degrees cannot be distinguished there.

    Parameters
    ----------
    width_over_trunk
        As in :class:`Neutral`.
    shoulder_width
        The person's own over trunk length, or None for the usual one.
    """
    share = width_over_trunk / (shoulder_width or USUAL_SHOULDER_WIDTH)
    return math.degrees(math.acos(min(1.0, max(-1.0, share))))


#: Name of the text in a reading's source that says how the person stood.
STANDING = "standing"


def standing_text(neutral: Neutral) -> str:
    """Return a neutral as the text that is stored with a reading: no point of the body."""
    return (
        f"trunk_px={neutral.trunk_px:.1f} shoulders={neutral.width_over_trunk:.3f} "
        f"lean_deg={neutral.lean_deg:.1f} frames={neutral.frames} "
        f"size={neutral.width_px}x{neutral.height_px}"
    )


def standing_in(source: Mapping[str, str]) -> Neutral | None:
    """Return the neutral in a reading's source, its middle not known; None where there is none
    that can be read.
    """
    parts = dict(part.partition("=")[::2] for part in source.get(STANDING, "").split())
    try:
        width_px, height_px = map(int, parts["size"].split("x"))
        neutral = Neutral(
            trunk_px=float(parts["trunk_px"]),
            middle_px=(math.nan, math.nan),
            lean_deg=float(parts["lean_deg"]),
            width_over_trunk=float(parts["shoulders"]),
            frames=int(parts["frames"]),
            width_px=width_px,
            height_px=height_px,
        )
    except (KeyError, ValueError):  # an older reading, or one from elsewhere
        return None
    numbers = (neutral.trunk_px, neutral.lean_deg, neutral.width_over_trunk)
    sizes = (neutral.trunk_px, width_px, height_px)
    return neutral if all(map(math.isfinite, numbers)) and min(sizes) > 0 else None
