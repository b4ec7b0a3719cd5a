"""Neutral pose: where and how the person stands before moving, as medians over frames."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import Landmark, Side
from measure.domain.tracks import FrameState, Track
from measure.kinematics.angles import direction_deg, length
from measure.kinematics.keypoints import arm_keypoints

#: Fewest frames that a neutral pose needs. [project]
FEWEST_FRAMES = 3
#: How long a neutral pose must be seen, seconds. [project]
SHORTEST_S = 0.5
#: What the trunk line is made of.
TRUNK_MARKS = (
    Landmark.LEFT_SHOULDER,
    Landmark.RIGHT_SHOULDER,
    Landmark.LEFT_HIP,
    Landmark.RIGHT_HIP,
)
#: Share of the frames that must show a landmark for its median to count. [project]
LEAST_SHOWN = 0.5
#: A person who moves by more than this share of the trunk does not stand. [project]
MOST_WANDER = 0.08
#: Trunks shorter than this, pixels, are too far away. [project]
SHORTEST_TRUNK_PX = 40.0
#: Shoulder width over trunk length where the person's own is unknown. [project]
USUAL_SHOULDER_WIDTH = 0.68
#: Narrowest shoulders, over the trunk, of a person facing the camera or seen from the back.
#: [project]
FACING_WIDTH = 0.5
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


def neutral_of(track: Track) -> Neutral | str:
    """Return the neutral pose of a track of a standing person, or why there is none.

    Where the lens is known the track should be an ideal camera's
    (:func:`measure.kinematics.camera_geometry.undistort_track`).
    """
    seen = track.frames(track.state == FrameState.SEEN)
    keypoints = arm_keypoints(seen, Side.RIGHT)
    visible = inside(seen)[:, TRUNK_MARKS].all(axis=1)
    if visible.sum() < FEWEST_FRAMES or np.ptp(seen.time_s[visible]) < SHORTEST_S:
        return (
            "Shoulders and hips were not seen for half a second. Stand where the camera sees "
            "you from head to hips, in good light."
        )
    trunk = float(np.median(keypoints.trunk_px[visible]))
    if trunk < SHORTEST_TRUNK_PX:
        return "The person is too far away. Step closer."
    middle = ((keypoints.mid_shoulder + keypoints.mid_hip) / 2)[visible]
    wander = length(middle - np.median(middle, axis=0))
    if float(np.percentile(wander, 90)) > MOST_WANDER * trunk:
        return "The person moved about. Stand still for a second."
    lean = direction_deg(keypoints.trunk[visible]) - 90.0
    across, down = np.median(middle, axis=0) * [1.0, -1.0]
    return Neutral(
        trunk_px=trunk,
        middle_px=(float(across), float(down)),
        lean_deg=float(np.median(lean)),
        width_over_trunk=-float(np.median((keypoints.separation)[visible])),
        frames=int(visible.sum()),
        width_px=track.width_px,
        height_px=track.height_px,
    )


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
    return neutral if all(map(math.isfinite, numbers)) and neutral.trunk_px > 0 else None


def inside(track: Track) -> NDArray[np.bool_]:
    """Return which landmarks lie inside the frame, shape (n, 33).

    The network places all 33 always, those beyond the rim by guess.
    """
    last = np.array([track.width_px - 1, track.height_px - 1])
    within = (track.points_px >= 0) & (track.points_px <= last)
    return within[..., 0] & within[..., 1]


def median_points(track: Track) -> dict[Landmark, tuple[float, float]]:
    """Return where each landmark was, the median over the frames that show it.

    Landmarks that fewer than half of the frames show are left out.
    """
    seen = track.frames(track.state == FrameState.SEEN)
    shown = inside(seen)
    points = {}
    for mark in Landmark:
        if len(seen) and np.mean(shown[:, mark]) >= LEAST_SHOWN:
            x, y = np.median(seen.points_px[shown[:, mark], mark], axis=0)
            points[mark] = (float(x), float(y))
    return points
