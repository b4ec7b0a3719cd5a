"""Elevations (flexion, extension, abduction): the arm's line against the trunk axis, in the image.

Two lines are read. The line shoulder -> wrist is twice as long as shoulder -> elbow and its
far end is found two to three times more exactly, so a straight arm is read mostly off it; a
bent elbow makes it a different line, so the elbow line keeps a share. Where the two lie far
apart the elbow must be bent, and the wrist counts no further.

The trunk axis lies between the mid-shoulder -> mid-hip line of the frame and that line at rest,
carried along by the other shoulder: raising an arm drags the network's shoulder (and so the
middle) with it, while a leaning trunk moves both shoulders. From the front both shoulders are
seen well and the carried line is taken; otherwise the middle of the two.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import MOVEMENTS, Direction, Family, Movement, View
from measure.kinematics.angles import (
    corner_deg,
    direction_deg,
    median_over,
    rotated,
    turn_deg,
    wrap_deg,
)
from measure.kinematics.keypoints import ArmKeypoints

#: Share of the wrist line in the reading of a straight arm; from the truth bench. [project]
WRIST_SHARE = 0.7
#: How far the wrist line may lead the elbow line and still count, degrees, by the direction of
#: the movement; forwards the elbow is seen too badly for it. From the truth bench. [project]
_WRIST_LEAD_DEG = {Direction.FORWARDS: math.inf, Direction.BACKWARDS: 3.5, Direction.OUTWARDS: 3.5}
#: Share of the line at rest, carried along, in the trunk axis; from the truth bench. [project]
_CARRIED_SHARE = {View.FRONT: 1.0, View.BACK: 0.5, View.SIDE: 0.5}


@dataclass(frozen=True, slots=True, kw_only=True)
class Elevation:
    """Angles of n frames, degrees, each of shape (n,); NaN where a landmark is missing.

    Attributes
    ----------
    raw_deg
        The blend of both lines, uncorrected.
    elbow_line_deg, wrist_line_deg
        Shoulder -> elbow and shoulder -> wrist against the trunk axis, positive in the
        movement's direction, in [-90, 270).
    vertical_deg
        The blend of the two against the picture's vertical.
    elbow_deg
        Apparent elbow angle in the picture, 180 straight.
    """

    raw_deg: FloatArray
    elbow_line_deg: FloatArray
    wrist_line_deg: FloatArray
    vertical_deg: FloatArray
    elbow_deg: FloatArray


def sense(movement: Movement, view: View, side: Side) -> float:
    """Return +1 where the movement turns anticlockwise in the image, otherwise -1.

    Raises
    ------
    ValueError
        When the movement is not an elevation.
    """
    facts = MOVEMENTS[movement]
    if facts.family is not Family.ELEVATION:
        raise ValueError(f"{movement} is not an elevation")
    if facts.direction is Direction.OUTWARDS:
        anticlockwise = (side is Side.LEFT) == (view is View.FRONT)
    else:
        anticlockwise = (side is Side.RIGHT) == (facts.direction is Direction.FORWARDS)
    return 1.0 if anticlockwise else -1.0


def trunk_axis_deg(keypoints: ArmKeypoints, view: View, rest: NDArray[np.bool_]) -> FloatArray:
    """Return the direction of the trunk axis, downwards, shape (n,), degrees.

    Parameters
    ----------
    rest
        Shape (n,): the frames in which the arm rests. With none, the frame's own line is used.
    """
    now = -keypoints.trunk
    at_rest = median_over(now, rest)
    if not np.all(np.isfinite(at_rest)):
        return direction_deg(now)
    lever = keypoints.other_shoulder - keypoints.mid_hip
    carried = rotated(at_rest, turn_deg(median_over(lever, rest), lever))
    apart = wrap_deg(direction_deg(carried) - direction_deg(now))
    return direction_deg(now) + _CARRIED_SHARE[view] * apart


def elevation_of(
    keypoints: ArmKeypoints, movement: Movement, view: View, rest: NDArray[np.bool_]
) -> Elevation:
    """Return the angles of every frame; `rest` as in :func:`trunk_axis_deg`."""
    axis = trunk_axis_deg(keypoints, view, rest)
    sign = sense(movement, view, keypoints.side)
    to_elbow = direction_deg(keypoints.elbow - keypoints.shoulder)
    to_wrist = direction_deg(keypoints.wrist - keypoints.shoulder)
    elbow_line = wrap_deg(sign * (to_elbow - axis), lowest=-90)
    lead = wrap_deg(wrap_deg(sign * (to_wrist - axis), lowest=-90) - elbow_line)
    most = _WRIST_LEAD_DEG[MOVEMENTS[movement].direction]
    raw = elbow_line + WRIST_SHARE * np.clip(lead, -most, most)
    return Elevation(
        raw_deg=raw,
        elbow_line_deg=elbow_line,
        wrist_line_deg=elbow_line + lead,
        vertical_deg=wrap_deg(raw + sign * wrap_deg(axis - (-90.0)), lowest=-90),
        elbow_deg=corner_deg(keypoints.shoulder, keypoints.elbow, keypoints.wrist),
    )
