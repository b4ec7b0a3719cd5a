"""Scenario of a clip: every choice in one frozen value, so that it can be made again.

Nothing here is drawn at random; ``casting`` makes scenarios by seed.
"""

from dataclasses import dataclass, field
from enum import StrEnum


class Movement(StrEnum):
    FLEXION = "flexion"
    EXTENSION = "extension"
    ABDUCTION = "abduction"
    EXTERNAL_ROTATION = "external-rotation"
    HAND_BEHIND_BACK = "hand-behind-back"


class Side(StrEnum):
    """The person's own left or right."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def outward(self) -> int:
        """Sign of the outward direction along x of the body: +1 left, -1 right."""
        return 1 if self is Side.LEFT else -1

    @property
    def other(self) -> "Side":
        return Side.RIGHT if self is Side.LEFT else Side.LEFT

    @property
    def suffix(self) -> str:
        """Ending of the bone names of this side."""
        return ".L" if self is Side.LEFT else ".R"


class View(StrEnum):
    FRONT = "front"
    BACK = "back"
    SIDE = "side"
    OBLIQUE = "oblique"


class ExtraEvent(StrEnum):
    """What happens besides the movement."""

    ORDINARY = "ordinary"
    WALKS_OFF = "walks-off"
    SECOND_CROSSES = "second-crosses"


class HandPosture(StrEnum):
    """Posture of the fingers."""

    RELAXED = "relaxed"
    FLAT = "flat"
    FIST = "fist"
    POINTING = "pointing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Camera:
    """A virtual webcam and where it stands.

    Attributes
    ----------
    width, height, fps
        Picture size in pixels and frames a second.
    hfov_deg
        Horizontal field of view of the undistorted picture.
    distance_m
        Level distance to the person.
    pitch_deg
        Positive looks up.
    roll_deg
        Positive turns what is seen clockwise.
    aside_m
        How far the person stands right of the middle of the picture.
    aim_m
        Height above the floor that the middle of the picture shows at the person's distance;
        None takes the middle of what matters, so that it fits the picture.
    barrel
        Distortion: undistorted = distorted * (1 + barrel * r²), r = 1 at half the width.
    """

    width: int = 640
    height: int = 480
    fps: int = 15
    hfov_deg: float = 65.0
    distance_m: float = 2.5
    pitch_deg: float = 0.0
    roll_deg: float = 0.0
    aside_m: float = 0.0
    aim_m: float | None = None
    barrel: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Compensation:
    """How the body cheats while the arm is at its end, in degrees.

    Attributes
    ----------
    elbow_bend_deg
        Bend of an elbow that should be straight (or offset from 90 in external rotation).
    lean_deg
        Trunk lean: backwards in flexion, forwards in extension and reaching behind, away from
        the arm in abduction.
    shrug_deg
        Extra lift of the shoulder girdle.
    out_of_plane_deg
        Arm out of its plane: outwards in flexion and extension, forwards in abduction.
    trunk_turn_deg
        Turn of the trunk towards the measured side.
    """

    elbow_bend_deg: float = 5.0
    lean_deg: float = 0.0
    shrug_deg: float = 0.0
    out_of_plane_deg: float = 0.0
    trunk_turn_deg: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Posture:
    """How the arms are built and held apart from the movement, in degrees.

    Attributes
    ----------
    carrying_deg
        Carrying angle: how far the straight forearm points outwards from the upper arm's line
        with the palm forwards.
    hang_deg
        How far hanging arms stand off the side beyond what clears the hips.
    twist_deg
        Turn of the upper arm about its own line at the end of flexion or extension, positive
        outwards. It turns the plane in which a bent elbow bends.
    other_arm
        How far the other arm goes along, as a share of the measured one's peak; 0 hangs.
    """

    carrying_deg: float = 0.0
    hang_deg: float = 0.0
    twist_deg: float = 0.0
    other_arm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Tempo:
    """How long each part of a trial takes, in seconds."""

    facing_s: float = 1.1
    turn_s: float = 1.0
    neutral_s: float = 1.2
    move_s: float = 1.6
    hold_s: float = 1.6
    return_s: float = 1.4


@dataclass(frozen=True, slots=True, kw_only=True)
class Scenario:
    """One clip.

    Attributes
    ----------
    name
        File name without its ending.
    movement, side, view
        What the clip is declared to be.
    body
        Number of the body (``body.shape_of``).
    seed
        Outfit, room, light, sway.
    peak
        Value asked for in the hold: degrees, or the fraction of the reach. The truth is what the
        posed joints then show, which differs by a few degrees.
    heading_deg
        Turn of the person during the measurement: 0 faces the camera, positive is to the
        person's left.
    expected
        ("reading",) or the codes of acceptable refusals.
    rhythm
        Humeral degrees to one scapular degree in raising the arm.
    loose_m
        How far the clothes stand off the skin beyond a close fit.
    unfamiliar
        Whether it shows something that clips for fitting never show.
    peers
        Peaks of further repeats relative to the first, in its unit.
    """

    name: str
    movement: Movement
    side: Side
    view: View
    body: int
    seed: int
    peak: float
    heading_deg: float
    expected: tuple[str, ...] = ("reading",)
    camera: Camera = field(default_factory=Camera)
    tempo: Tempo = field(default_factory=Tempo)
    compensation: Compensation = field(default_factory=Compensation)
    posture: Posture = field(default_factory=Posture)
    peers: tuple[float, ...] = ()
    rhythm: float = 2.0
    loose_m: float = 0.0
    hand: HandPosture = HandPosture.RELAXED
    story: ExtraEvent = ExtraEvent.ORDINARY
    second_body: int | None = None
    unfamiliar: bool = False


def nominal_heading_deg(view: View, side: Side) -> float:
    """Heading that shows a view with the measured arm on the camera's side."""
    return {
        View.FRONT: 0.0,
        View.BACK: 180.0,
        View.SIDE: -90.0 * side.outward,
        View.OBLIQUE: -45.0 * side.outward,
    }[view]
