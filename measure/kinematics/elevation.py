"""Elevations (flexion, extension, abduction): the arm's line against the trunk axis, in the image.

As a goniometer's arm lies along the upper arm, the line shoulder -> elbow is read. The line
shoulder -> wrist is twice as long and its far end is found more exactly, so a share of its lead
over the elbow line is added, up to a limit: a larger lead is a bent elbow, not one found beside its
place. Forwards and backwards, as from the side the elbow is found worst, the share is all of it. A
hanging forearm swings free of the upper arm, so the wrist counts by degrees as the arm is raised.
The trunk axis is the frame's own line mid-shoulder -> mid-hip. Nothing is fitted: on real people no
correction read better than these lines. Extension alone is counted from where the arm hangs: its
few degrees read a third better so on virtual people, the only ones seen extending.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import MOVEMENTS, Direction, Family, Movement, View
from measure.kinematics.angles import direction_deg, median_over, nanmedian, wrap_deg
from measure.kinematics.keypoints import ArmKeypoints

#: Share of the wrist line's lead over the elbow line in the reading of a raised arm, by the
#: direction of the movement. [project]
WRIST_SHARE = {Direction.FORWARDS: 1.0, Direction.BACKWARDS: 1.0, Direction.OUTWARDS: 0.7}
#: How far the wrist line may lead the elbow line and still count, degrees. [project]
WRIST_LEAD_DEG = {Direction.FORWARDS: 8.0, Direction.BACKWARDS: 2.0, Direction.OUTWARDS: 3.0}
#: Elevation from which the wrist counts in full, degrees; at 0 it counts nothing. [project]
RAISED_DEG = {Direction.FORWARDS: 30.0, Direction.BACKWARDS: 30.0, Direction.OUTWARDS: 60.0}
#: Most of a hanging arm's line that extension is counted from, degrees: more is how the person
#: stands. [project]
MOST_REST_DEG = 5.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Elevation:
    """Angles of n frames, degrees, each of shape (n,); NaN where a landmark is missing.

    Attributes
    ----------
    value_deg
        The elbow line with the wrist's share: what is read.
    elbow_line_deg, wrist_line_deg
        Shoulder -> elbow and shoulder -> wrist against the trunk axis, positive in the
        movement's direction, in [-90, 270).
    vertical_deg
        The value against the picture's vertical.
    """

    value_deg: FloatArray
    elbow_line_deg: FloatArray
    wrist_line_deg: FloatArray
    vertical_deg: FloatArray


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


def elevation_of(keypoints: ArmKeypoints, movement: Movement, view: View) -> Elevation:
    """Return the angles of every frame."""
    axis = direction_deg(-keypoints.trunk)
    sign = sense(movement, view, keypoints.side)
    to_elbow = direction_deg(keypoints.elbow - keypoints.shoulder)
    to_wrist = direction_deg(keypoints.wrist - keypoints.shoulder)
    elbow_line = wrap_deg(sign * (to_elbow - axis), lowest=-90)
    lead = wrap_deg(sign * (to_wrist - axis) - elbow_line)
    direction = MOVEMENTS[movement].direction
    most = WRIST_LEAD_DEG[direction]
    share = WRIST_SHARE[direction] * np.clip(elbow_line / RAISED_DEG[direction], 0.0, 1.0)
    value = elbow_line + share * np.clip(lead, -most, most)
    return Elevation(
        value_deg=value,
        elbow_line_deg=elbow_line,
        wrist_line_deg=elbow_line + lead,
        vertical_deg=wrap_deg(value + sign * wrap_deg(axis - (-90.0)), lowest=-90),
    )


def hanging_part_deg(
    elevations: Sequence[Elevation], values_deg: FloatArray, rest: NDArray[np.bool_]
) -> FloatArray:
    """Return how much of values the hanging arm has already, degrees; shape as `values_deg`.

    The network's shoulder lies before or behind the joint, differently in each person and shirt,
    and turns the hanging arm's line; that of an arm moved by x degrees it turns by cos x as much.

    Parameters
    ----------
    elevations
        Of the passes, whose median counts.
    rest
        Shape (n,): the frames in which the arm hangs; with none it is taken to hang straight.
    """
    lines = [float(median_over(elevation.elbow_line_deg, rest)) for elevation in elevations]
    hanging = float(nanmedian(np.array(lines)))
    if not np.isfinite(hanging):
        return np.zeros_like(values_deg)
    part = min(max(hanging, -MOST_REST_DEG), MOST_REST_DEG)
    return np.asarray(part * np.cos(np.radians(values_deg)))
