"""The drawn person: one body in human proportions, posed by angles or by where a hand is.

Lengths are in body heights, places in the room: across (to the right), up, and towards the viewer,
from the middle of the hips of somebody who stands still. A drawing, no measurement.
"""

import math
from dataclasses import dataclass, field, fields, replace
from typing import Any, TypeVar

from measure.domain.landmarks import Side

Point3D = tuple[float, float, float]

#: Proportions of an adult, in body heights (Drillis and Contini, by rounded lengths). [technical]
SHOULDER_UP, SHOULDER_OUT = 0.266, 0.097
UPPER_ARM, FOREARM = 0.172, 0.145
HIP_OUT, THIGH, SHANK, SOLE = 0.05, 0.235, 0.235, 0.035
HEAD_UP = 0.398


@dataclass(frozen=True, slots=True)
class ArmAngles:
    """Directions of upper arm and forearm, degrees.

    Raised from hanging, and towards where: 0 forwards, 90 outwards, 180 backwards, -90 inwards.
    """

    raised: float
    towards: float
    forearm_raised: float
    forearm_towards: float


@dataclass(frozen=True, slots=True)
class HandAt:
    """Where the wrist is in the room; the elbow follows.

    Across counts forwards of somebody seen from the side, else to the measured side. The elbow
    points down and backwards, or up and outwards when it is `lifted`.
    """

    across: float
    up: float
    nearer: float = 0.0
    lifted: float = 0.0


#: An arm that hangs at rest.
HANGING = ArmAngles(5, 90, 8, 40)
Arm = ArmAngles | HandAt


@dataclass(frozen=True, slots=True, kw_only=True)
class Pose:
    """A posture of the whole body.

    Attributes
    ----------
    turn
        How far the person turned from facing the viewer, degrees, to the measured side.
    lean, lean_aside
        How far the trunk leans forwards, and to the measured side, degrees.
    seated
        Whether the person sits.
    stride, shift
        How far apart the feet are in walking, and how far the body has gone; as with
        :class:`HandAt`.
    arm, other
        The measured arm, and the other one.
    """

    turn: float = 0.0
    lean: float = 0.0
    lean_aside: float = 0.0
    seated: bool = False
    stride: float = 0.0
    shift: float = 0.0
    arm: Arm = HANGING
    other: Arm = HANGING


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """A posed body's places in the room.

    Attributes
    ----------
    turn_deg
        From facing the viewer, positive to the person's own left.
    trunk
        Middle of the hips and of the shoulders.
    arm, other_arm
        Shoulder, elbow, wrist.
    legs
        Hip, knee, ankle, toes; the measured side first.
    floor
        How high the floor is.
    """

    turn_deg: float
    trunk: tuple[Point3D, Point3D]
    head: Point3D
    arm: tuple[Point3D, Point3D, Point3D]
    other_arm: tuple[Point3D, Point3D, Point3D]
    legs: tuple[tuple[Point3D, ...], tuple[Point3D, ...]]
    floor: float


Posed = TypeVar("Posed", Pose, ArmAngles, HandAt)


def between(start: Posed, end: Posed, share: float) -> Posed:
    """Return the pose on the way from one to another; both arms are given in the same manner."""
    changed: dict[str, Any] = {}
    for entry in fields(start):
        before, after = getattr(start, entry.name), getattr(end, entry.name)
        if isinstance(before, (ArmAngles, HandAt)):
            changed[entry.name] = between(before, after, share)
        elif not isinstance(before, bool):
            changed[entry.name] = before + (after - before) * share
    return replace(start, **changed)


@dataclass(frozen=True, slots=True)
class _Frame:
    """Turns places of the body (outwards on the left, up, forwards) into places of the room."""

    turn_deg: float
    origin: Point3D = field(default=(0.0, 0.0, 0.0))

    def direction(self, left: float, up: float, forwards: float) -> Point3D:
        turn = math.radians(self.turn_deg)
        across = left * math.cos(turn) + forwards * math.sin(turn)
        return across, up, forwards * math.cos(turn) - left * math.sin(turn)

    def place(self, left: float, up: float, forwards: float) -> Point3D:
        return plus(self.origin, self.direction(left, up, forwards))


def posed(pose: Pose, side: Side) -> Body:
    """Return the body in a pose, the measured arm being that of a side."""
    out = 1.0 if side is Side.LEFT else -1.0
    turn = pose.turn * out
    frame = _Frame(turn, (across_sign(turn, out) * pose.shift, 0.0, 0.0))
    lean, aside = math.radians(pose.lean), math.radians(pose.lean_aside)

    def of_trunk(left: float, up: float, forwards: float) -> Point3D:
        """Return a place that leans with the trunk."""
        up, forwards = (
            up * math.cos(lean) - forwards * math.sin(lean),
            up * math.sin(lean) + forwards * math.cos(lean),
        )
        left, up = (
            left * math.cos(aside) + out * up * math.sin(aside),
            up * math.cos(aside) - out * left * math.sin(aside),
        )
        return frame.place(left, up, forwards)

    shoulders = (of_trunk(sign * SHOULDER_OUT, SHOULDER_UP, 0.0) for sign in (out, -out))
    own, other = shoulders
    return Body(
        turn_deg=turn,
        trunk=(of_trunk(0, 0, 0), of_trunk(0, SHOULDER_UP, 0)),
        head=of_trunk(0, HEAD_UP, 0.014),
        arm=_arm(pose.arm, own, out, out, frame),
        other_arm=_arm(pose.other, other, -out, out, frame),
        legs=(_leg(pose, out, frame, 1.0), _leg(pose, -out, frame, -1.0)),
        floor=-(THIGH * (not pose.seated) + SHANK + SOLE),
    )


def _arm(
    arm: Arm, shoulder: Point3D, own: float, measured: float, frame: _Frame
) -> tuple[Point3D, Point3D, Point3D]:
    """Return shoulder, elbow and wrist; `own` is the arm's side, `measured` the measured one."""
    if isinstance(arm, HandAt):
        hint = frame.direction(own * (0.35 + arm.lifted), -1.0 + 2 * arm.lifted, -0.5)
        sign = across_sign(frame.turn_deg, measured)
        return _reached(shoulder, (sign * arm.across, arm.up, arm.nearer), hint)
    upper = frame.direction(*_direction(arm.raised, arm.towards, own))
    fore = frame.direction(*_direction(arm.forearm_raised, arm.forearm_towards, own))
    elbow = plus(shoulder, times(upper, UPPER_ARM))
    return shoulder, elbow, plus(elbow, times(fore, FOREARM))


def across_sign(turn_deg: float, measured: float) -> float:
    """Return whether what counts forwards, or to the measured side, lies to the right: 1 or -1."""
    forwards, facing = math.sin(math.radians(turn_deg)), math.cos(math.radians(turn_deg))
    if abs(forwards) > 0.8:
        return math.copysign(1.0, forwards)
    return math.copysign(measured, measured * facing)


def _direction(raised: float, towards: float, own: float) -> Point3D:
    up, way = math.radians(raised), math.radians(towards)
    return own * math.sin(up) * math.sin(way), -math.cos(up), math.sin(up) * math.cos(way)


def _reached(shoulder: Point3D, wrist: Point3D, hint: Point3D) -> tuple[Point3D, Point3D, Point3D]:
    """Return an arm from a shoulder to a wrist; one that is too far away is reached for."""
    way = minus(wrist, shoulder)
    far = length(way)
    reach = min(max(far, 1e-6), (UPPER_ARM + FOREARM) * 0.995)
    ahead = times(way, 1 / max(far, 1e-6))
    aside = minus(hint, times(ahead, dot(hint, ahead)))
    aside = times(aside, 1 / max(length(aside), 1e-6))
    along = (UPPER_ARM**2 - FOREARM**2 + reach**2) / (2 * reach)
    off = math.sqrt(max(0.0, UPPER_ARM**2 - along**2))
    elbow = plus(shoulder, plus(times(ahead, along), times(aside, off)))
    return shoulder, elbow, plus(shoulder, times(ahead, reach))


def _leg(pose: Pose, sign: float, frame: _Frame, step: float) -> tuple[Point3D, ...]:
    hip = (sign * HIP_OUT, -0.02, 0.0)
    if pose.seated:
        knee = (sign * HIP_OUT * 1.3, -0.02, THIGH)
        ankle = (sign * HIP_OUT * 1.3, -SHANK, THIGH - 0.02)
    else:
        knee = (sign * HIP_OUT * 1.06, -THIGH, 0.012 + step * pose.stride * 0.5)
        ankle = (sign * HIP_OUT * 1.1, -THIGH - SHANK, step * pose.stride)
    toes = (ankle[0] + sign * 0.012, ankle[1] - 0.012, ankle[2] + 0.095)
    return tuple(frame.place(*place) for place in (hip, knee, ankle, toes))


def plus(start: Point3D, offset: Point3D) -> Point3D:
    return start[0] + offset[0], start[1] + offset[1], start[2] + offset[2]


def minus(end: Point3D, start: Point3D) -> Point3D:
    return end[0] - start[0], end[1] - start[1], end[2] - start[2]


def times(direction: Point3D, factor: float) -> Point3D:
    return direction[0] * factor, direction[1] * factor, direction[2] * factor


def dot(first: Point3D, second: Point3D) -> float:
    return first[0] * second[0] + first[1] * second[1] + first[2] * second[2]


def length(direction: Point3D) -> float:
    return math.sqrt(dot(direction, direction))
