"""Set-up check: three lines about the place, and the result of the raised hand."""

from enum import StrEnum

from gui.text.session_wording import hint_sentence
from gui.text.wording import tr
from measure.live.events import LiveFrame, SetupHint


class SetupAspect(StrEnum):
    DISTANCE = "distance"
    LEVEL = "level"
    LIGHT = "light"


class SideCheck(StrEnum):
    """What the raised right hand told about the source."""

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


def aspect_text(place: SetupAspect, frame: LiveFrame | None) -> str:
    """Return one line: a sign, what is looked at, and what to do about it."""
    name = {
        SetupAspect.DISTANCE: tr("Distance"),
        SetupAspect.LEVEL: tr("Height and level"),
        SetupAspect.LIGHT: tr("Light"),
    }[place]
    if frame is None or (frame.points_px is None and place is not SetupAspect.LIGHT):
        return tr("\u25cb  {name}: not seen yet").format(name=name)
    for hint in frame.setup_hints:
        if hint in _HINTS[place]:
            return f"\u25b6  {hint_sentence(hint)}"
    return tr("\u2713  {name}: good").format(name=name)


def side_check_text(check: SideCheck) -> str:
    """Return what was found out about left and right."""
    if check is SideCheck.AS_EXPECTED:
        return tr("✓  Your right hand was seen as the right one. Left and right are correct.")
    return tr("▶  The camera shows a mirror image. From now on Thawline corrects this.")
