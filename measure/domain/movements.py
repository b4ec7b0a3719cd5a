"""The one table of movements: what each is, how it is filmed, where its zero lies.

What adding a movement touches besides is listed in DEVELOPERS.md.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class Movement(StrEnum):
    FLEXION = "flexion"
    EXTENSION = "extension"
    ABDUCTION = "abduction"
    EXTERNAL_ROTATION = "external-rotation"
    HAND_BEHIND_BACK = "hand-behind-back"


class View(StrEnum):
    """What the camera sees of the person."""

    FRONT = "front"
    BACK = "back"
    SIDE = "side"
    OBLIQUE = "oblique"


class Unit(StrEnum):
    """Unit of a value: an angle, or a height over the line from mid-hip to mid-shoulder."""

    DEGREES = "deg"
    FRACTION = "fraction"


class Family(StrEnum):
    """How a movement is estimated and judged; see :mod:`measure.trials.movement_model`."""

    ELEVATION = "elevation"
    ROTATION = "rotation"
    REACH = "reach"


class Direction(StrEnum):
    """Where arm, forearm or thumb go, seen from the person."""

    FORWARDS = "forwards"
    BACKWARDS = "backwards"
    OUTWARDS = "outwards"
    UPWARDS = "upwards"


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementFacts:
    """What is fixed about one movement.

    Attributes
    ----------
    name
        The trade's name, as shown to people.
    family, direction
        How it is estimated, and where the arm goes.
    plane
        The plane the angle lies in.
    zero
        The position that counts as zero, in words.
    views
        Accepted views, the preferred one first.
    unit
        Unit of its value.
    usual
        Usual active range of adults with healthy shoulders, (low, high), in its unit.
        Coarse on purpose; the person's other shoulder is the better reference.
        Sources: Gill 2020, Vairo 2012, Boone & Azen 1979 for the angles; the reach from
        Ernst 2013 levels T5 to T12. Limits are ours.
    possible
        Values outside (low, high) cannot be; they are refused. Ours.
    rest
        Value with the arm in the movement's neutral position, and how far from it still
        counts as neutral, both in its unit. Ours.
    least_travel
        A move smaller than this is no trial, in its unit. Ours.
    elbow_deg
        Accepted elbow angle (180 is straight), (low, high), or None. Ours.
    usual_spread
        Usual scatter of one person's days about their trend, in its unit. Ours.
    allowance
        Added to every interval for the real world, in its unit. Ours, until checked on real
        people; see :mod:`measure.kinematics.uncertainty`.
    cues
        One sentence a step, spoken and shown: neutral, move, hold, return.
    """

    name: str
    family: Family
    direction: Direction
    plane: str
    zero: str
    views: tuple[View, ...]
    unit: Unit
    usual: tuple[float, float]
    possible: tuple[float, float]
    rest: tuple[float, float]
    least_travel: float
    elbow_deg: tuple[float, float] | None
    usual_spread: float
    allowance: float
    cues: tuple[str, str, str, str]

    @property
    def behind_back(self) -> bool:
        """Whether the hand goes behind the back.

        There the smaller models take the back for the front and lose the hand, and the hand
        cannot be seen surely; the value is also told as a vertebral level.
        """
        return self.family is Family.REACH


MOVEMENTS: Mapping[Movement, MovementFacts] = {
    Movement.FLEXION: MovementFacts(
        name="Flexion",
        family=Family.ELEVATION,
        direction=Direction.FORWARDS,
        plane="sagittal, forwards",
        zero="arm hanging at the side, along the trunk axis",
        views=(View.SIDE,),
        unit=Unit.DEGREES,
        usual=(145, 175),
        possible=(-20, 200),
        rest=(0, 25),
        least_travel=15,
        elbow_deg=(145, 180),
        usual_spread=5.0,
        allowance=3.0,
        cues=(
            "Stand sideways, arm hanging, elbow straight.",
            "Raise the arm slowly in front of you. Stop before it becomes painful.",
            "Hold it there, gently.",
            "Lower the arm and rest.",
        ),
    ),
    Movement.EXTENSION: MovementFacts(
        name="Extension",
        family=Family.ELEVATION,
        direction=Direction.BACKWARDS,
        plane="sagittal, backwards",
        zero="arm hanging at the side, along the trunk axis",
        views=(View.SIDE,),
        unit=Unit.DEGREES,
        usual=(45, 65),
        possible=(-20, 100),
        rest=(0, 15),
        least_travel=8,
        elbow_deg=(145, 180),
        usual_spread=6.0,
        allowance=3.0,
        cues=(
            "Stand sideways, arm hanging, elbow straight.",
            "Move the arm slowly backwards, trunk upright. Stop before it becomes painful.",
            "Hold it there, gently.",
            "Let the arm come back and rest.",
        ),
    ),
    Movement.ABDUCTION: MovementFacts(
        name="Abduction",
        family=Family.ELEVATION,
        direction=Direction.OUTWARDS,
        plane="frontal, to the side",
        zero="arm hanging at the side, along the trunk axis",
        views=(View.FRONT, View.BACK),
        unit=Unit.DEGREES,
        usual=(135, 175),
        possible=(-20, 200),
        rest=(5, 25),
        least_travel=15,
        elbow_deg=(145, 180),
        usual_spread=5.0,
        allowance=3.0,
        cues=(
            "Face the camera, arm hanging, elbow straight, thumb turned out.",
            "Raise the arm slowly to the side. Stop before it becomes painful.",
            "Hold it there, gently.",
            "Lower the arm and rest.",
        ),
    ),
    Movement.EXTERNAL_ROTATION: MovementFacts(
        name="External rotation at the side",
        family=Family.ROTATION,
        direction=Direction.OUTWARDS,
        plane="transverse, outwards",
        zero="elbow bent to 90 degrees at the side, forearm straight ahead of the chest",
        views=(View.OBLIQUE,),
        unit=Unit.DEGREES,
        usual=(55, 85),
        possible=(-40, 110),
        rest=(0, 15),
        least_travel=8,
        elbow_deg=(60, 120),
        usual_spread=6.0,
        allowance=4.0,
        cues=(
            "Face the camera for a second, then turn halfway towards the arm being measured. "
            "Elbow at your side, forearm straight ahead.",
            "Turn the forearm slowly outwards, elbow at your side. Stop before it becomes painful.",
            "Hold it there, gently.",
            "Bring the forearm back and rest.",
        ),
    ),
    Movement.HAND_BEHIND_BACK: MovementFacts(
        name="Hand behind back",
        family=Family.REACH,
        direction=Direction.UPWARDS,
        plane="a reach, not an angle",
        zero="thumb tip level with the middle of the hips",
        views=(View.BACK, View.SIDE),
        unit=Unit.FRACTION,
        usual=(0.55, 0.8),
        possible=(-0.5, 1.1),
        rest=(-0.15, 0.27),
        least_travel=0.06,
        elbow_deg=None,
        usual_spread=0.06,
        allowance=0.06,
        cues=(
            "Turn your back to the camera, arms hanging.",
            "Slide the thumb slowly up your back. Stop before it becomes painful.",
            "Hold it there, gently.",
            "Let the hand come down and rest.",
        ),
    ),
}
