"""Reasons why a frame, a trial or a measurement is doubtful or refused: codes and sentences."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum


class Reason(StrEnum):
    """Codes, stored and exported unchanged: part of the command line's contract."""

    NOBODY = "nobody"
    OTHER_PERSON = "other-person"
    TWO_PEOPLE = "two-people"
    PERSON_LOST = "person-lost"
    MOVED_FAST = "moved-fast"
    UNREADABLE_FRAMES = "unreadable-frames"
    LOW_FRAME_RATE = "low-frame-rate"
    TURNED_PICTURE = "turned-picture"
    WRONG_VIEW = "wrong-view"
    FACING_CAMERA = "facing-camera"
    TRUNK_OBLIQUE = "trunk-oblique"
    WRONG_TURN = "wrong-turn"
    FAR_ARM = "far-arm"
    OUT_OF_PICTURE = "out-of-picture"
    HIDDEN = "hidden"
    HAND_NOT_BEHIND = "hand-not-behind"
    LIMB_LENGTH = "limb-length"
    SIDES_EXCHANGED = "sides-exchanged"
    ELBOW_BENT = "elbow-bent"
    ELBOW_NOT_SQUARE = "elbow-not-square"
    ELBOW_OFF_TRUNK = "elbow-off-trunk"
    TRUNK_LEAN = "trunk-lean"
    TRUNK_TURNED = "trunk-turned"
    OUT_OF_PLANE = "out-of-plane"
    SHRUG = "shrug"
    OTHER_ARM_RAISED = "other-arm-raised"
    NO_FACING_STANCE = "no-facing-stance"
    NO_ZERO_POSE = "no-zero-pose"
    NO_NEUTRAL = "no-neutral"
    NO_MOVE = "no-move"
    LITTLE_MOVEMENT = "little-movement"
    NO_HOLD = "no-hold"
    UNSTEADY_HOLD = "unsteady-hold"
    PASSES_DISAGREE = "passes-disagree"
    IMPOSSIBLE_VALUE = "impossible-value"
    TOO_UNCERTAIN = "too-uncertain"
    FEW_TRIALS = "few-trials"
    SPREAD_TRIALS = "spread-trials"


#: What was seen, then what to do, by reason.
SENTENCES: Mapping[Reason, str] = {
    Reason.NOBODY: "No one was in view. Stand or sit upright where the camera sees you from head "
    "to hips, and come closer if you look small in the picture.",
    Reason.OTHER_PERSON: "Someone else was followed for part of the time. "
    "Ask others to leave the picture.",
    Reason.TWO_PEOPLE: "Two people were in view. Ask others to leave the picture.",
    Reason.PERSON_LOST: (
        "You went out of view during the movement. Move slowly, stay upright and stay in the "
        "picture."
    ),
    Reason.MOVED_FAST: "You moved too fast to be followed, or did not stay upright. "
    "Move slowly, standing or sitting upright.",
    Reason.UNREADABLE_FRAMES: "Part of the recording is damaged. "
    "Use an undamaged copy, or record the movement again.",
    Reason.LOW_FRAME_RATE: "There were too few pictures per second. Add light or choose a smaller "
    "picture.",
    Reason.TURNED_PICTURE: "Your head was not above your hips: the picture is on its side, or you "
    "were lying or bending. Set the camera upright, and stand or sit upright.",
    Reason.WRONG_VIEW: "The camera saw you from the wrong direction for this movement. "
    "Stand as the drawing shows.",
    Reason.FACING_CAMERA: "The camera saw you from the front. Turn your back to the camera.",
    Reason.TRUNK_OBLIQUE: "Your body was turned to one side. "
    "Turn your chest, or your back, squarely to the camera.",
    Reason.WRONG_TURN: "Your body was not turned by about 45 degrees. Face the camera first, "
    "then turn halfway to the side, with the measured arm nearer to the camera.",
    Reason.FAR_ARM: "The arm was on the far side of your body. Turn your other side to the camera.",
    Reason.OUT_OF_PICTURE: "Your shoulder, hand or hips were outside the picture. "
    "Step back or move the camera.",
    Reason.HIDDEN: (
        "Your shoulder, arm or hips could not be seen clearly. Move anything that covers them, "
        "and wear close-fitting clothes."
    ),
    Reason.HAND_NOT_BEHIND: "The hand was not seen behind your back. "
    "Put the back of the hand against your back, with the thumb pointing up.",
    Reason.LIMB_LENGTH: "The arm seemed to change its length, so it was not seen reliably. "
    "Wear close-fitting clothes and add light.",
    Reason.SIDES_EXCHANGED: "The left and right sides were mixed up. "
    "Face the same way throughout, in front of a plain background.",
    Reason.ELBOW_BENT: "The elbow was bent. Keep it as straight as is comfortable.",
    Reason.ELBOW_NOT_SQUARE: "The elbow was not at a right angle. "
    "Bend it to about 90 degrees and keep the forearm level.",
    Reason.ELBOW_OFF_TRUNK: "The elbow moved away from your side. Keep it on the rolled towel.",
    Reason.TRUNK_LEAN: "Your body leaned. Stay upright and let only the arm move.",
    Reason.TRUNK_TURNED: "Your body turned during the movement. Keep your chest still.",
    Reason.OUT_OF_PLANE: "The arm moved towards or away from the camera. "
    "Move it as the drawing shows.",
    Reason.SHRUG: "The shoulder rose more than usual with the arm. "
    "This is common with a stiff shoulder; it is only noted.",
    Reason.OTHER_ARM_RAISED: "The other arm was raised too. "
    "Compare this reading only with others that were taken in the same way.",
    Reason.NO_FACING_STANCE: "You were not seen facing the camera first. "
    "Face the camera for a second with your arms hanging, then turn.",
    Reason.NO_ZERO_POSE: "The forearm did not start straight ahead of your chest. "
    "Begin with the elbow at your side and the forearm as straight ahead as is comfortable.",
    Reason.NO_NEUTRAL: "The movement did not begin from rest. "
    "Rest for a second in the starting position first.",
    Reason.NO_MOVE: "No movement of this kind was seen. "
    "If little movement is possible, go as far as is comfortable and pause there for two seconds.",
    Reason.LITTLE_MOVEMENT: "Hardly any movement was seen. "
    "The reading is of the position that was held.",
    Reason.NO_HOLD: "The arm was not still for one second. "
    "Next time, pause for a second wherever it is comfortable.",
    Reason.UNSTEADY_HOLD: "The arm was not quite still while it was held. "
    "Next time, pause for a second wherever it is comfortable.",
    Reason.PASSES_DISAGREE: "Repeated analyses of the same pictures disagreed. "
    "Try closer-fitting clothes, more light or a plainer background.",
    Reason.IMPOSSIBLE_VALUE: (
        "The calculated value is more than a shoulder can do. Check that the movement and side "
        "are right, and stand as the drawing shows."
    ),
    Reason.TOO_UNCERTAIN: "The result would be too uncertain to be of use. "
    "Try closer-fitting clothes, more light or a plainer background. If the trials differed, go to "
    "the same point each time; if a goniometer study of your own scatters widely, repeat it.",
    Reason.FEW_TRIALS: "Fewer than three trials were counted.",
    Reason.SPREAD_TRIALS: "The trials differed from each other more than usual.",
}


#: Faults of the recording, which cause others: what is hidden in a damaged picture is its damage.
#: [project]
_CAUSES = (Reason.UNREADABLE_FRAMES, Reason.LOW_FRAME_RATE, Reason.TURNED_PICTURE)


def causes_first(reasons: Iterable[Reason]) -> tuple[Reason, ...]:
    """Return reasons, each once: faults of the recording before what they lead to."""
    once = dict.fromkeys(reasons)
    return tuple(sorted(once, key=lambda reason: reason not in _CAUSES))


@dataclass(frozen=True, slots=True, kw_only=True)
class GateResult:
    """Result of quality gates: reasons in the order of importance, none twice."""

    refused_for: tuple[Reason, ...] = ()
    notes: tuple[Reason, ...] = ()

    def __add__(self, more: "GateResult") -> "GateResult":
        refused = tuple(dict.fromkeys(self.refused_for + more.refused_for))
        notes = tuple(dict.fromkeys(self.notes + more.notes))
        return GateResult(
            refused_for=refused, notes=tuple(note for note in notes if note not in refused)
        )

    def without(self, reason: Reason) -> "GateResult":
        """Return the result less one reason."""
        return GateResult(
            refused_for=tuple(item for item in self.refused_for if item is not reason),
            notes=tuple(item for item in self.notes if item is not reason),
        )


def refuse(*reasons: Reason) -> GateResult:
    return GateResult(refused_for=reasons)


def note(*reasons: Reason) -> GateResult:
    return GateResult(notes=reasons)
