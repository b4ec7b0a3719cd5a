"""Neutral pose: where and how the person stands before moving, as medians over frames."""

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import Landmark, Side
from measure.domain.standing_pose import Neutral
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
#: Narrowest shoulders, over the trunk, of a person facing the camera or seen from the back.
#: [project]
FACING_WIDTH = 0.5


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
        return "The person moved. Stand still for a second."
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
