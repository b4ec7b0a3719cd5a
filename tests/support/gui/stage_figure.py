"""Points of the person that is filmed in drawn pictures: one skeleton, turned and projected.

Lengths in body heights.
"""

import math
from dataclasses import dataclass

from gui.drawing.shown_movements import facing_angle_deg
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Direction, Family, Movement

Point2D = tuple[float, float]
#: (to the person's left, up, forwards), in body heights from the middle of the hips.
Point3D = tuple[float, float, float]

_SHOULDER_UP, _SHOULDER_OUT, _HIP_OUT = 0.30, 0.115, 0.07
_UPPER_ARM, _FOREARM, _LEG = 0.165, 0.155, 0.47
#: Where an elevated arm goes: to the measured side, and forwards. [technical]
_ELEVATION_TO = {
    Direction.FORWARDS: (0.0, 1.0),
    Direction.BACKWARDS: (0.0, -1.0),
    Direction.OUTWARDS: (1.0, 0.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyFigure:
    """What to draw: points to the right and down, in body heights; the hips lie at (0, 0).

    Attributes
    ----------
    head, nose
        Centre of the head, and where the nose points; the nose shows the view.
    trunk
        From the hips' middle to the shoulders' middle.
    shoulders, hips
        Both ends, the measured side first.
    legs
        Hip, foot and toes of both.
    other_arm, start_arm, end_arm
        Shoulder, elbow, wrist.
    path
        The way of the hand from start to end.
    turned_away
        True when the person sees no screen.
    """

    head: Point2D
    nose: Point2D
    trunk: tuple[Point2D, Point2D]
    shoulders: tuple[Point2D, Point2D]
    hips: tuple[Point2D, Point2D]
    legs: tuple[tuple[Point2D, Point2D, Point2D], tuple[Point2D, Point2D, Point2D]]
    other_arm: tuple[Point2D, Point2D, Point2D]
    start_arm: tuple[Point2D, Point2D, Point2D]
    end_arm: tuple[Point2D, Point2D, Point2D]
    path: tuple[Point2D, ...]
    turned_away: bool


def body_figure(
    movement: Movement, side: Side, *, mirrored: bool, share: float = 1.0
) -> BodyFigure:
    """Return the figure for a movement as the camera sees it, or as a mirror shows it.

    Parameters
    ----------
    share
        How much of the drawn movement the end position has done.
    """
    turn = math.radians(facing_angle_deg(movement, side))
    down = math.radians(MOVEMENTS[movement].drawing.from_above_deg)
    out = 1.0 if side is Side.LEFT else -1.0
    flip = -1.0 if mirrored else 1.0

    def seen(place: Point3D) -> Point2D:
        left, up, forwards = place
        across = left * math.cos(turn) + forwards * math.sin(turn)
        nearer = forwards * math.cos(turn) - left * math.sin(turn)
        return flip * across, -up * math.cos(down) + nearer * math.sin(down)

    def arm(share: float, sign: float) -> tuple[Point3D, Point3D, Point3D]:
        return _arm(movement, share, sign)

    def line(places: tuple[Point3D, Point3D, Point3D]) -> tuple[Point2D, Point2D, Point2D]:
        return seen(places[0]), seen(places[1]), seen(places[2])

    def leg(sign: float) -> tuple[Point2D, Point2D, Point2D]:
        hip = (sign * _HIP_OUT, 0.0, 0.0)
        foot = (sign * _HIP_OUT, -_LEG, 0.0)
        return seen(hip), seen(foot), seen((foot[0], foot[1], 0.07))

    hanging = (
        (-out * _SHOULDER_OUT, _SHOULDER_UP, 0.0),
        (-out * (_SHOULDER_OUT + 0.015), _SHOULDER_UP - _UPPER_ARM, 0.0),
        (-out * (_SHOULDER_OUT + 0.02), _SHOULDER_UP - _UPPER_ARM - _FOREARM, 0.02),
    )
    return BodyFigure(
        head=seen((0, 0.435, 0.015)),
        nose=seen((0, 0.43, 0.085)),
        trunk=(seen((0, 0, 0)), seen((0, _SHOULDER_UP, 0))),
        shoulders=(
            seen((out * _SHOULDER_OUT, _SHOULDER_UP, 0)),
            seen((-out * _SHOULDER_OUT, _SHOULDER_UP, 0)),
        ),
        hips=(seen((out * _HIP_OUT, 0, 0)), seen((-out * _HIP_OUT, 0, 0))),
        legs=(leg(out), leg(-out)),
        other_arm=line(hanging),
        start_arm=line(arm(0.0, out)),
        end_arm=line(arm(share, out)),
        path=tuple(seen(arm(share * step / 24, out)[2]) for step in range(25)),
        turned_away=abs(MOVEMENTS[movement].drawing.turn_deg) > 90,
    )


def _arm(movement: Movement, share: float, out: float) -> tuple[Point3D, Point3D, Point3D]:
    """Return shoulder, elbow and wrist with the movement done to a share of what is shown."""
    facts = MOVEMENTS[movement]
    shoulder = (out * _SHOULDER_OUT, _SHOULDER_UP, 0.0)
    angle = math.radians(facts.drawing.end_deg * share)
    if facts.family is Family.ROTATION:
        elbow = (shoulder[0], _SHOULDER_UP - _UPPER_ARM, 0.0)
        ahead = (out * _FOREARM * math.sin(angle), 0.0, _FOREARM * math.cos(angle))
        return shoulder, elbow, _plus(elbow, ahead)
    if facts.family is Family.REACH:
        wrist = (out * 0.03, -0.03 + 0.15 * share, -0.07)
        return shoulder, (out * (_SHOULDER_OUT + 0.06), 0.12 + 0.03 * share, -0.08), wrist
    left, forwards = _ELEVATION_TO[facts.direction]
    direction = (out * left * math.sin(angle), -math.cos(angle), forwards * math.sin(angle))
    elbow = _plus(shoulder, _times(direction, _UPPER_ARM))
    return shoulder, elbow, _plus(shoulder, _times(direction, _UPPER_ARM + _FOREARM))


def _plus(start: Point3D, offset: Point3D) -> Point3D:
    return start[0] + offset[0], start[1] + offset[1], start[2] + offset[2]


def _times(direction: Point3D, length: float) -> Point3D:
    return direction[0] * length, direction[1] * length, direction[2] * length
