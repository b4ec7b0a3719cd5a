"""Palettes of the two colour schemes, and the type scale.

Every text colour stands at 4.5:1 or more on every ground it is used on (WCAG 2.2, 1.4.3). Blue
and ochre, the two colours that carry a meaning, stay apart for colour-blind eyes in hue and in
lightness, and never stand without a word or a shape.
"""

from dataclasses import dataclass, fields
from enum import StrEnum

#: Size of running text, device-independent pixels at 100 %. [technical]
BODY_PX = 17
#: Sizes by role, relative to running text. [technical]
TITLE = 1.75
LEAD = 1.3
NOTICE = 1.1
SMALL = 0.92
#: Space between things, device-independent pixels. [technical]
GAP_PX = 8


class Scheme(StrEnum):
    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True, slots=True, kw_only=True)
class Palette:
    """Colours as "#rrggbb".

    Attributes
    ----------
    ground, raised, sunken
        The page, what lies on it, and what is let into it.
    line
        Hairlines and frames that carry no meaning.
    edge
        Frames of things to press or fill in; 3:1 or more on all grounds.
    ink, quiet
        Text, and text that steps back.
    body
        The drawn person, apart from the measured arm.
    arm, on_arm
        The measured arm, readings, the main button; and text on it.
    hold
        The hold, and what needs attention.
    left, right
        The two shoulders in curves; drawn as disc and square besides.
    alarm
        Emergency wording only.
    """

    ground: str
    raised: str
    sunken: str
    line: str
    edge: str
    ink: str
    quiet: str
    body: str
    arm: str
    on_arm: str
    hold: str
    left: str
    right: str
    alarm: str


LIGHT = Palette(
    ground="#f4f1e9",
    raised="#fdfcf8",
    sunken="#e9e4d7",
    line="#d3ccbb",
    edge="#6f7672",
    ink="#1b2a2f",
    quiet="#48575b",
    body="#868f8a",
    arm="#0b5a77",
    on_arm="#ffffff",
    hold="#874900",
    left="#0b5a77",
    right="#9a4a10",
    alarm="#8e1b13",
)

DARK = Palette(
    ground="#10191c",
    raised="#1a262a",
    sunken="#0a1113",
    line="#34444a",
    edge="#86969a",
    ink="#edf0ea",
    quiet="#b5c1c1",
    body="#64767b",
    arm="#83cbe4",
    on_arm="#06222c",
    hold="#f0b65e",
    left="#83cbe4",
    right="#f0a878",
    alarm="#ffb3a6",
)


def colours(palette: Palette) -> dict[str, str]:
    """Return the palette's colours by name."""
    return {field.name: getattr(palette, field.name) for field in fields(palette)}
