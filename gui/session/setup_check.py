"""Set-up check: three lines about the place, and the result of the raised hand."""

from enum import StrEnum

from gui.text.session_wording import hint_sentence
from gui.text.wording import tr
from measure.domain.landmarks import Side
from measure.live.events import LiveFrame, SetupHint

#: Sign of what is not right yet.
AMISS = "\u2717"
#: Sign of what is as it should be.
GOOD = "\u2713"


class SetupAspect(StrEnum):
    DISTANCE = "distance"
    LEVEL = "level"
    LIGHT = "light"


class SideCheck(StrEnum):
    """What the raised hand told about the source."""

    AS_EXPECTED = "as-expected"
    EXCHANGED = "exchanged"


_HINTS = {
    SetupAspect.DISTANCE: (
        SetupHint.STEP_BACK,
        SetupHint.COME_CLOSER,
        SetupHint.STEP_LEFT,
        SetupHint.STEP_RIGHT,
    ),
    SetupAspect.LEVEL: (SetupHint.RAISE_SCREEN, SetupHint.LOWER_SCREEN, SetupHint.LEVEL_CAMERA),
    SetupAspect.LIGHT: (SetupHint.MORE_LIGHT, SetupHint.LIGHT_FROM_FRONT),
}


#: The line in the picture that is not kept: 0 for the head, 1 for the hips. [technical]
_LINES = {SetupHint.RAISE_SCREEN: 0, SetupHint.LOWER_SCREEN: 1}


def line_amiss(frame: LiveFrame | None) -> int | None:
    """Return which line in the picture the sentence is about: 0 the head, 1 the hips, or none."""
    return _LINES.get(frame.setup_hints[0]) if frame and frame.setup_hints else None


def aspect_text(place: SetupAspect, frame: LiveFrame | None) -> tuple[str, str]:
    """Return a sign, and a line: what is looked at, and how it is."""
    unseen, good = {
        SetupAspect.DISTANCE: (tr("Distance: not seen yet"), tr("Distance: good")),
        SetupAspect.LEVEL: (tr("Height and level: not seen yet"), tr("Height and level: good")),
        SetupAspect.LIGHT: (tr("Light: not seen yet"), tr("Light: good")),
    }[place]
    if frame is None or (frame.points_px is None and place is not SetupAspect.LIGHT):
        return "\u25cb", unseen
    for hint in frame.setup_hints:
        if hint in _HINTS[place]:
            return AMISS, _amiss(hint)
    return GOOD, good


def _amiss(hint: SetupHint) -> str:
    """Return what is not right yet; what to do about it is the page's sentence."""
    return {
        SetupHint.STEP_BACK: tr("Distance: too close"),
        SetupHint.COME_CLOSER: tr("Distance: too far away"),
        SetupHint.STEP_LEFT: tr("Distance: not in the middle"),
        SetupHint.STEP_RIGHT: tr("Distance: not in the middle"),
        SetupHint.RAISE_SCREEN: tr("Height: no room above your head"),
        SetupHint.LOWER_SCREEN: tr("Height: your hips are below the line"),
        SetupHint.LEVEL_CAMERA: tr("Level: tilted"),
        SetupHint.MORE_LIGHT: tr("Light: too dark"),
        SetupHint.LIGHT_FROM_FRONT: tr("Light: from behind you"),
    }[hint]


def setup_sentence(hint: SetupHint) -> str:
    """Return what to change, and how where that is not plain: it is read close to the camera."""
    how = {
        SetupHint.RAISE_SCREEN: tr("Raise the screen. Put books under it."),
        SetupHint.LOWER_SCREEN: tr("Lower the screen. Use a lower table."),
        SetupHint.MORE_LIGHT: tr("More light, please. Switch on a lamp."),
    }
    return how.get(hint, hint_sentence(hint))


def raise_sentence(side: Side) -> str:
    """Return the request to raise a hand."""
    if side is Side.RIGHT:
        return tr("Raise your right hand.")
    return tr("Raise your left hand.")


def side_check_text(check: SideCheck) -> str:
    """Return what was found out about left and right."""
    if check is SideCheck.AS_EXPECTED:
        return tr("✓  The hand was seen on its own side. Left and right are correct.")
    return tr("✓  The camera shows a mirror image. From now on Thawline corrects this.")
