"""What the drawn person does: key poses and props of each movement and each exercise.

The drawn ends are moderate on purpose, so that they are not taken for a target.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum, auto

from gui.drawing.person import HANGING, Arm, ArmAngles, HandAt, Pose, between
from measure.domain.exercises import ListedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Direction, Family, Movement

#: A turn of the loop: rest, way out, stay, way back, seconds. [technical]
REST_S, OUT_S, STAY_S, BACK_S = 0.9, 1.9, 1.1, 1.9
#: Turned from the viewer by less than this, somebody is drawn as in a mirror, degrees: from the
#: front and from the side, as the camera's picture is shown. [technical]
_AS_IN_MIRROR_DEG = 120
#: A round of a swinging arm, seconds. [technical]
SWING_S = 3.2


class PropKind(Enum):
    """A thing beside the person, drawn in line."""

    TABLE = auto()
    STOOL = auto()
    WALL = auto()
    HANDLE = auto()
    TOWEL = auto()
    CLOTH = auto()


@dataclass(frozen=True, slots=True)
class Prop:
    """A thing and where it is; across and nearer count as with :class:`HandAt`."""

    kind: PropKind
    across: float = 0.0
    up: float = 0.0
    nearer: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What is shown of a movement or exercise.

    Attributes
    ----------
    start, end
        Where the loop begins, and what it goes to.
    props
        Things beside the person.
    from_above_deg
        How far the drawing looks down.
    swinging
        The arm goes round without a stop.
    with_wedge
        Whether the opening between start and end is shown as a soft wedge.
    """

    start: Pose
    end: Pose
    props: tuple[Prop, ...] = ()
    from_above_deg: float = 0.0
    swinging: bool = False
    with_wedge: bool = False

    @property
    def round_s(self) -> float:
        """How long a turn of the loop lasts, seconds."""
        return SWING_S if self.swinging else REST_S + OUT_S + STAY_S + BACK_S

    @property
    def turning(self) -> bool:
        """Whether the body turns on the spot, as at a handle that holds the hand."""
        return self.start.turn != self.end.turn

    @property
    def as_in_mirror(self) -> bool:
        """Whether left and right are exchanged in a drawing beside which there is no camera.

        Whoever is seen from the front or the side is drawn as in a mirror, as in the camera's
        picture; from behind as others see them. So the left arm is on the left, and whoever shows
        the left side faces right.
        """
        return math.cos(math.radians(self.start.turn)) > math.cos(math.radians(_AS_IN_MIRROR_DEG))

    def share_at(self, time_s: float) -> float:
        """Return how much of the way is done at a moment of the loop."""
        now = time_s % self.round_s
        if self.swinging:
            return now / self.round_s
        if now < REST_S:
            return 0.0
        if now < REST_S + OUT_S:
            return _eased((now - REST_S) / OUT_S)
        if now < REST_S + OUT_S + STAY_S:
            return 1.0
        return 1.0 - _eased((now - REST_S - OUT_S - STAY_S) / BACK_S)

    def pose_at(self, time_s: float) -> Pose:
        """Return the pose at a moment of the loop."""
        return between(self.start, self.end, self.share_at(time_s))


def _eased(share: float) -> float:
    """Return a share that begins and ends calmly."""
    return (1 - math.cos(math.pi * share)) / 2


def facing_angle_deg(movement: Movement, side: Side) -> float:
    """Return how far the person turns from facing the camera, positive to the own left."""
    return MOVEMENTS[movement].drawing.turn_deg * (1 if side is Side.LEFT else -1)


def illustrated_angle_deg(movement: Movement) -> float:
    """Return the angle of the drawn end position; 1 for the reach, which has none."""
    return MOVEMENTS[movement].drawing.end_deg


def shown_movement(movement: Movement) -> Shown:
    """Return what is shown of a movement; its angles come from its table."""
    facts = MOVEMENTS[movement]
    turn, end = facts.drawing.turn_deg, facts.drawing.end_deg
    match facts.family:
        case Family.ROTATION:
            before, after = (ArmAngles(3, 90, 90, towards) for towards in (0.0, end))
        case Family.REACH:
            before, after = ArmAngles(20, 140, 66, -95), ArmAngles(32, 140, 122, -92)
        case Family.ELEVATION:
            towards = {
                Direction.FORWARDS: 0.0,
                Direction.BACKWARDS: 180.0,
                Direction.OUTWARDS: 90.0,
            }[facts.direction]
            before, after = (ArmAngles(raised, towards, raised, towards) for raised in (4.0, end))
    return Shown(
        start=Pose(turn=turn, arm=before),
        end=Pose(turn=turn, arm=after),
        from_above_deg=facts.drawing.from_above_deg,
        with_wedge=facts.family is Family.ELEVATION,
    )


#: A hand raised above the head: the gesture that the camera recognises, and no movement.
RAISED_HAND = Shown(
    start=Pose(arm=ArmAngles(4, 90, 4, 90)), end=Pose(arm=ArmAngles(115, 90, 176, 90))
)

_ON_THIGH = HandAt(0.16, 0.03)
_AT_SIDE = ArmAngles(3, 90, 90, 0)


def _from_the_side(arm: Arm, *, lean: float = 0.0, seated: bool = False, other: Arm) -> Pose:
    return Pose(turn=-90, lean=lean, seated=seated, arm=arm, other=other)


#: What is shown of each exercise of the list.
_EXERCISES: Mapping[ListedExercise, Shown] = {
    ListedExercise.TABLE_SLIDE_FORWARD: Shown(
        start=_from_the_side(HandAt(0.24, 0.125), lean=4, seated=True, other=_ON_THIGH),
        end=_from_the_side(HandAt(0.47, 0.125), lean=42, seated=True, other=_ON_THIGH),
        props=(
            Prop(PropKind.STOOL),
            Prop(PropKind.TABLE, 0.17, 0.10),
            Prop(PropKind.CLOTH, up=0.10),
        ),
    ),
    ListedExercise.TABLE_SLIDE_SIDEWAYS: Shown(
        start=Pose(seated=True, arm=HandAt(0.26, 0.125, 0.05), other=HANGING),
        end=Pose(seated=True, lean_aside=26, arm=HandAt(0.44, 0.125, 0.05), other=HANGING),
        props=(
            Prop(PropKind.STOOL),
            Prop(PropKind.TABLE, 0.19, 0.10),
            Prop(PropKind.CLOTH, up=0.10),
        ),
    ),
    ListedExercise.PENDULUM: Shown(
        start=Pose(
            turn=-90,
            lean=58,
            stride=0.05,
            arm=ArmAngles(13, 0, 15, 0),
            other=HandAt(0.36, -0.03),
        ),
        end=Pose(
            turn=-90,
            lean=58,
            stride=0.05,
            arm=ArmAngles(13, 360, 15, 360),
            other=HandAt(0.36, -0.03),
        ),
        props=(Prop(PropKind.TABLE, 0.33, -0.06),),
        swinging=True,
    ),
    ListedExercise.WALL_WALK: Shown(
        start=_from_the_side(HandAt(0.235, 0.16), other=HANGING),
        end=_from_the_side(HandAt(0.25, 0.43), other=HANGING),
        props=(Prop(PropKind.WALL, 0.315),),
    ),
    ListedExercise.EXTERNAL_ROTATION: Shown(
        start=Pose(turn=20, arm=HandAt(0.10, 0.10, 0.16)),
        end=Pose(turn=-32, arm=HandAt(0.10, 0.10, 0.16)),
        props=(Prop(PropKind.HANDLE, 0.10, 0.10, 0.22),),
        from_above_deg=32,
    ),
    ListedExercise.INTERNAL_ROTATION: Shown(
        start=Pose(turn=-20, arm=HandAt(0.14, 0.10, 0.15)),
        end=Pose(turn=38, arm=HandAt(0.14, 0.10, 0.15)),
        props=(Prop(PropKind.HANDLE, 0.15, 0.10, 0.21),),
        from_above_deg=32,
    ),
    ListedExercise.EXTENSION: Shown(
        start=Pose(turn=-90, shift=0.0, stride=0.03, arm=HandAt(-0.13, 0.06), other=HANGING),
        end=Pose(turn=-90, shift=0.12, stride=0.06, arm=HandAt(-0.13, 0.06), other=HANGING),
        props=(Prop(PropKind.HANDLE, -0.20, 0.06),),
    ),
    ListedExercise.BEHIND_BACK: Shown(
        start=Pose(turn=205, arm=HandAt(0.17, 0.0, 0.05), other=HANGING),
        end=Pose(turn=145, arm=HandAt(0.17, 0.0, 0.05), other=HANGING),
        props=(Prop(PropKind.HANDLE, 0.24, 0.0, 0.05),),
    ),
    ListedExercise.CROSS_BODY: Shown(
        start=Pose(arm=ArmAngles(58, 30, 62, -10), other=HandAt(-0.02, 0.15, 0.16)),
        end=Pose(arm=ArmAngles(84, -48, 88, -66), other=HandAt(-0.03, 0.21, 0.17)),
    ),
    ListedExercise.TOWEL: Shown(
        start=Pose(
            turn=180,
            arm=HandAt(-0.005, 0.05, 0.10),
            other=HandAt(-0.11, 0.36, 0.02, lifted=0.9),
        ),
        end=Pose(
            turn=180,
            arm=HandAt(-0.01, 0.12, 0.10),
            other=HandAt(-0.12, 0.44, 0.02, lifted=0.9),
        ),
        props=(Prop(PropKind.TOWEL),),
    ),
}


def shown_exercise(exercise: ListedExercise) -> Shown:
    """Return what is shown of an exercise of the list."""
    return _EXERCISES[exercise]
