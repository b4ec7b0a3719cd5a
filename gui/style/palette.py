"""Palettes of the two colour schemes.

Every text colour stands at 4.5:1 or more on every ground it is used on (WCAG 2.2, 1.4.3). Blue
and ochre, the two colours that carry a meaning, stay apart for colour-blind eyes in hue and in
lightness, in grey print too, and never stand without a word or a shape.
"""

from dataclasses import dataclass, fields
from enum import StrEnum


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
        Things drawn beside the person: table, wall, screen, the person seen from above.
    skin, shirt, trousers, outline
        The drawn person, apart from the measured arm; the outline is 3:1 or more on all grounds.
    arm, on_arm
        The measured arm, readings, the main button; and text on it.
    hold
        The hold, and what needs attention.
    left, right
        The two shoulders in curves; drawn as disc and square besides.
    alarm
        Emergency wording, and the frame of a button with which something is lost.
    """

    ground: str
    raised: str
    sunken: str
    line: str
    edge: str
    ink: str
    quiet: str
    body: str
    skin: str
    shirt: str
    trousers: str
    outline: str
    arm: str
    on_arm: str
    hold: str
    left: str
    right: str
    alarm: str


LIGHT = Palette(
    ground="#f6f3ec",
    raised="#fffdf9",
    sunken="#ebe6da",
    line="#dcd5c5",
    edge="#6c7470",
    ink="#17262c",
    quiet="#48575b",
    body="#868f8a",
    skin="#cdc2b1",
    shirt="#eae4d7",
    trousers="#8b9799",
    outline="#5b6666",
    arm="#08435f",
    on_arm="#ffffff",
    hold="#874900",
    left="#08435f",
    right="#9c500f",
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
    skin="#a79d8e",
    shirt="#5d6a6b",
    trousers="#3f4d51",
    outline="#8d9a9a",
    arm="#93d5ec",
    on_arm="#06222c",
    hold="#f0b65e",
    left="#93d5ec",
    right="#cf8146",
    alarm="#ffb3a6",
)


def colours(palette: Palette) -> dict[str, str]:
    """Return the palette's colours by name."""
    return {field.name: getattr(palette, field.name) for field in fields(palette)}


def mixed(ground: str, over: str, share: float) -> str:
    """Return a colour with a share of another one laid over it, both "#rrggbb"."""
    parts = (
        round(int(ground[at : at + 2], 16) * (1 - share) + int(over[at : at + 2], 16) * share)
        for at in (1, 3, 5)
    )
    return "#" + "".join(f"{part:02x}" for part in parts)
