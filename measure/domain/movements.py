"""Movements: what each is, how it is filmed, where its zero lies, its words and drawing.

The table holds all that is special to one movement; its estimator and gates are those of its
family. What adding a movement touches besides is listed in DEVELOPERS.md.
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


@dataclass(frozen=True, slots=True)
class Drawing:
    """How a movement is drawn for people, degrees; no measurement and no target.

    Attributes
    ----------
    turn_deg
        How far the person turned from facing the camera, positive to the own left, for the left
        arm; the right arm takes the opposite.
    end_deg
        The drawn end position, well inside what is usual; 1 for the reach, which has no angle.
    from_above_deg
        How far the drawing looks down.
    """

    turn_deg: float
    end_deg: float
    from_above_deg: float = 0.0


@dataclass(frozen=True, slots=True)
class EverydayTask:
    """An everyday task, to be read after "Range for:", and the range that it usually needs.

    Attributes
    ----------
    needs
        An angle in degrees, or a vertebral level.
    """

    words: str
    needs: float | str


@dataclass(frozen=True, slots=True)
class LoincCode:
    """A LOINC number, and whether it was seen in public use."""

    number: str
    seen: bool = False


@dataclass(frozen=True, slots=True)
class LoincCodes:
    """LOINC numbers of a movement's active range: without the side, and of each side."""

    unsided: LoincCode
    left: LoincCode
    right: LoincCode


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementFacts:
    """What is fixed about one movement: all that the rest of the program asks about it.

    English sentences are translated where they are shown
    (:mod:`gui.translations.texts_of_measure` collects them).

    Attributes
    ----------
    name
        The trade's name, as shown to people.
    plain_name
        In everyday words.
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
        Ernst 2013 levels T12 to T5: 0.43 and 0.77. Limits: [project]
    possible
        Values outside (low, high) cannot be; they are refused. [project]
    rest
        Value with the arm in the movement's neutral position, and how far from it still
        counts as neutral, both in its unit. [project]
    least_travel
        A move smaller than this is no trial of the usual size, in its unit. [project]
    least_step
        A held step smaller than this cannot be told from standing still, in its unit; see
        :mod:`measure.trials.little_movement`. [project]
    usual_spread
        Usual scatter of one person's days about their trend, in its unit. [project]
    allowance
        Added to an interval that rests on virtual people, for what they lack, in its unit; 0
        where it rests on real ones. See :mod:`measure.kinematics.uncertainty`. [project]
    start
        How to stand, for the left arm and for the right one: whole sentences, since in other
        languages the side's word bends with its noun. For the rotation the body turns away from
        the measured side, so that the measured arm comes nearer to the camera.
    move
        How to move: short, as it is read while moving, and without urging.
    drawing
        How it is drawn.
    tasks
        Everyday tasks, the easiest first, set after what healthy people use: Namdari 2012 (ten
        tasks: flexion 121, extension 46, abduction 128, external rotation 59 degrees, some of it
        more than a task needs), Oosterwijk 2018 (66 tasks: flexion up to 130), Gates 2016; levels
        behind the back after common clinical use. A healthy shoulder at the lower end of the
        usual range passes them, its interval included, but for the strap behind the back, whose
        interval is too wide for that. To be confirmed by a physiotherapist. [project]
    loinc
        Its codes in health records, or None where none exists. Those that were not seen in
        public use were inferred from their neighbours in the list.
    """

    name: str
    plain_name: str
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
    least_step: float
    usual_spread: float
    allowance: float
    start: tuple[str, str]
    move: str
    drawing: Drawing
    tasks: tuple[EverydayTask, ...] = ()
    loinc: LoincCodes | None = None

    @property
    def behind_back(self) -> bool:
        """Whether the hand goes behind the back.

        There the smaller models take the back for the front and lose the hand, and the hand
        cannot be seen surely; the value is also given as a vertebral level.
        """
        return self.family is Family.REACH


_SIDEWAYS = (
    "Left side to the camera, arm hanging.",
    "Right side to the camera, arm hanging.",
)

MOVEMENTS: Mapping[Movement, MovementFacts] = {
    Movement.FLEXION: MovementFacts(
        name="Flexion",
        plain_name="arm forwards and up",
        family=Family.ELEVATION,
        direction=Direction.FORWARDS,
        plane="sagittal, forwards",
        zero="arm hanging at the side, along the trunk axis",
        views=(View.SIDE,),
        unit=Unit.DEGREES,
        usual=(145, 175),
        possible=(-20, 190),
        rest=(0, 25),
        least_travel=15,
        least_step=6,
        usual_spread=5.0,
        allowance=0.0,
        start=_SIDEWAYS,
        move="Slowly forwards and up. Stop before it becomes painful.",
        drawing=Drawing(turn_deg=-90.0, end_deg=95.0),
        tasks=(
            EverydayTask("reach a shelf at shoulder height", 90),
            EverydayTask("reach a shelf above the head", 120),
            EverydayTask("reach up high, as to the top of a cupboard", 130),
        ),
        loinc=LoincCodes(
            LoincCode("41389-8", seen=True), LoincCode("41295-7"), LoincCode("41307-0")
        ),
    ),
    Movement.EXTENSION: MovementFacts(
        name="Extension",
        plain_name="arm backwards",
        family=Family.ELEVATION,
        direction=Direction.BACKWARDS,
        plane="sagittal, backwards",
        zero="arm hanging at the side, along the trunk axis",
        views=(View.SIDE,),
        unit=Unit.DEGREES,
        usual=(45, 65),
        possible=(-20, 90),
        rest=(0, 15),
        least_travel=8,
        least_step=3,
        usual_spread=6.0,
        allowance=3.0,
        start=_SIDEWAYS,
        move="Slowly backwards. Stop before it becomes painful.",
        drawing=Drawing(turn_deg=-90.0, end_deg=35.0),
        tasks=(EverydayTask("bring the elbow back, as into a coat sleeve", 30),),
        loinc=LoincCodes(LoincCode("41385-6"), LoincCode("41297-3"), LoincCode("41309-6")),
    ),
    Movement.ABDUCTION: MovementFacts(
        name="Abduction",
        plain_name="arm sideways and up",
        family=Family.ELEVATION,
        direction=Direction.OUTWARDS,
        plane="frontal, to the side",
        zero="arm hanging at the side, along the trunk axis",
        views=(View.FRONT, View.BACK),
        unit=Unit.DEGREES,
        usual=(135, 175),
        possible=(-20, 190),
        rest=(5, 25),
        least_travel=15,
        least_step=6,
        usual_spread=5.0,
        allowance=0.0,
        start=("Face the camera, arms down, thumbs out.",) * 2,
        move="Slowly sideways and up. Stop before it becomes painful.",
        drawing=Drawing(turn_deg=0.0, end_deg=90.0),
        tasks=(
            EverydayTask("lift the arm sideways to shoulder height", 90),
            EverydayTask("reach up sideways, as to a high hook", 120),
        ),
        loinc=LoincCodes(
            LoincCode("41381-5", seen=True), LoincCode("41299-9"), LoincCode("41311-2")
        ),
    ),
    Movement.EXTERNAL_ROTATION: MovementFacts(
        name="External rotation at the side",
        plain_name="forearm outwards",
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
        least_step=3,
        usual_spread=6.0,
        allowance=4.0,
        start=(
            "Face the camera, then turn half right. Forearm ahead.",
            "Face the camera, then turn half left. Forearm ahead.",
        ),
        move="Forearm slowly outwards. Stop before it becomes painful.",
        drawing=Drawing(turn_deg=-45.0, end_deg=55.0, from_above_deg=32.0),
        tasks=(
            EverydayTask("slide a door aside, elbow at the side", 20),
            EverydayTask("take something that stands beside you, elbow at the side", 35),
        ),
        loinc=LoincCodes(
            LoincCode("41387-2", seen=True), LoincCode("41305-4"), LoincCode("41317-9")
        ),
    ),
    Movement.HAND_BEHIND_BACK: MovementFacts(
        name="Hand behind back",
        plain_name="thumb up the back",
        family=Family.REACH,
        direction=Direction.UPWARDS,
        plane="a reach, not an angle",
        zero="thumb tip level with the middle of the hips",
        views=(View.BACK, View.SIDE),
        unit=Unit.FRACTION,
        usual=(0.43, 0.77),
        possible=(-0.3, 1.0),
        rest=(-0.15, 0.27),
        least_travel=0.06,
        least_step=0.03,
        usual_spread=0.06,
        allowance=0.06,
        start=(
            "Back to the camera. Left hand behind you.",
            "Back to the camera. Right hand behind you.",
        ),
        move="Slide the thumb slowly up. Stop before it becomes painful.",
        drawing=Drawing(turn_deg=180.0, end_deg=1.0),
        tasks=(
            EverydayTask("reach a back pocket", "buttock"),
            EverydayTask("reach the waistband behind", "sacrum"),
            EverydayTask("tuck a shirt in behind", "L4"),
            EverydayTask("fasten a strap behind the back", "L1"),
        ),
    ),
}
