"""Reasons why a frame, a trial or a measurement is doubtful or refused: codes and sentences."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class Reason(StrEnum):
    """Codes, stored and exported unchanged: part of the command line's contract."""

    NOBODY = "nobody"
    OTHER_PERSON = "other-person"
    TWO_PEOPLE = "two-people"
    PERSON_LOST = "person-lost"
    UNREADABLE_FRAMES = "unreadable-frames"
    LOW_FRAME_RATE = "low-frame-rate"
    TURNED_PICTURE = "turned-picture"
    WRONG_VIEW = "wrong-view"
    FAR_ARM = "far-arm"
    OUT_OF_PICTURE = "out-of-picture"
    HIDDEN = "hidden"
    LIMB_LENGTH = "limb-length"
    SIDES_EXCHANGED = "sides-exchanged"
    ELBOW_BENT = "elbow-bent"
    ELBOW_NOT_SQUARE = "elbow-not-square"
    ELBOW_OFF_TRUNK = "elbow-off-trunk"
    TRUNK_LEAN = "trunk-lean"
    TRUNK_TURNED = "trunk-turned"
    OUT_OF_PLANE = "out-of-plane"
    SHRUG = "shrug"
    NO_FACING_STANCE = "no-facing-stance"
    NO_NEUTRAL = "no-neutral"
    NO_MOVE = "no-move"
    NO_HOLD = "no-hold"
    UNSTEADY_HOLD = "unsteady-hold"
    PASSES_DISAGREE = "passes-disagree"
    TOO_UNCERTAIN = "too-uncertain"
    IMPOSSIBLE_VALUE = "impossible-value"
    FEW_TRIALS = "few-trials"
    SPREAD_TRIALS = "spread-trials"


#: What was seen, then what to do, by reason.
SENTENCES: Mapping[Reason, str] = {
    Reason.NOBODY: "Nobody was in view. Stand where the camera sees you from head to hips.",
    Reason.OTHER_PERSON: "Another person was measured for a while. "
    "Ask others to step out of the picture.",
    Reason.TWO_PEOPLE: "Two people were in view. Ask others to step out of the picture.",
    Reason.PERSON_LOST: "The person was lost during the movement. "
    "Stay in the picture and add some light.",
    Reason.UNREADABLE_FRAMES: "Part of the recording is damaged. Record it again.",
    Reason.LOW_FRAME_RATE: "Too few pictures a second. Add light or choose a smaller picture.",
    Reason.TURNED_PICTURE: "The picture seems to be turned: the head is not above the hips. "
    "Turn the picture upright.",
    Reason.WRONG_VIEW: "The camera sees the body from the wrong direction for this movement. "
    "Stand as the drawing shows.",
    Reason.FAR_ARM: "The arm is on the far side of the body. "
    "Turn round so that it is next to the camera.",
    Reason.OUT_OF_PICTURE: "Shoulder, hand or hips left the picture. Step back or move the camera.",
    Reason.HIDDEN: "Shoulder, arm or hips were hidden. Move what is in the way; "
    "wear something close-fitting.",
    Reason.LIMB_LENGTH: "The arm seemed to change its length, so its points cannot be trusted. "
    "Wear something close-fitting and add light.",
    Reason.SIDES_EXCHANGED: "Left and right arm could not be told apart. Record it again.",
    Reason.ELBOW_BENT: "The elbow seemed bent. Keep it as straight as is comfortable.",
    Reason.ELBOW_NOT_SQUARE: "The elbow was not at a right angle. Keep it bent to 90 degrees.",
    Reason.ELBOW_OFF_TRUNK: "The elbow left the side. Keep it on the rolled towel.",
    Reason.TRUNK_LEAN: "The trunk leaned. Stay upright and let only the arm move.",
    Reason.TRUNK_TURNED: "The trunk turned. Keep the chest still.",
    Reason.OUT_OF_PLANE: "The arm moved out of its plane. Move it as the drawing shows.",
    Reason.SHRUG: "The shoulder rose with the arm. This is common; it is only noted.",
    Reason.NO_FACING_STANCE: "No facing stance was seen at the start. "
    "Face the camera for a second, then turn.",
    Reason.NO_NEUTRAL: "The arm did not start in its neutral position. "
    "Begin with a second of rest.",
    Reason.NO_MOVE: "No movement of this kind was seen.",
    Reason.NO_HOLD: "No still hold of a second was seen. Hold the end position a little longer.",
    Reason.UNSTEADY_HOLD: "The hold was unsteady.",
    Reason.PASSES_DISAGREE: "Repeated looks at the same pictures disagree. "
    "Try closer-fitting clothes, more light or a plainer background.",
    Reason.TOO_UNCERTAIN: "The interval would be too wide to mean anything. "
    "Try closer-fitting clothes, more light or a plainer background.",
    Reason.IMPOSSIBLE_VALUE: "The value found is not possible for a shoulder.",
    Reason.FEW_TRIALS: "Fewer than three trials were scored.",
    Reason.SPREAD_TRIALS: "The trials differ from each other more than usual.",
}


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


def refuse(*reasons: Reason) -> GateResult:
    return GateResult(refused_for=reasons)


def note(*reasons: Reason) -> GateResult:
    return GateResult(notes=reasons)
