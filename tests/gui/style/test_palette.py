"""Both colour schemes: contrast computed, and meaning kept for colour-blind eyes."""

import math
import operator

import pytest

from gui.style.measures import BODY_PX, SMALL
from gui.style.palette import DARK, LIGHT, Palette, colours
from gui.style.style_sheet import style_sheet

BOTH = pytest.mark.parametrize("palette", [LIGHT, DARK], ids=["light", "dark"])


def linear(colour: str) -> tuple[float, float, float]:
    """Return red, green and blue in linear light, 0..1."""

    def channel(place: int) -> float:
        value = int(colour[place : place + 2], 16) / 255
        return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4

    return channel(1), channel(3), channel(5)


def luminance(colour: str) -> float:
    red, green, blue = linear(colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the ratio of WCAG 2.2, 1..21."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_measure_itself() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


@BOTH
@pytest.mark.parametrize("text", ["ink", "quiet", "arm", "hold", "left", "right", "alarm"])
@pytest.mark.parametrize("ground", ["ground", "raised", "sunken"])
def test_text_stands_out_from_every_ground(palette: Palette, text: str, ground: str) -> None:
    found = colours(palette)
    assert contrast(found[text], found[ground]) >= 4.5


@BOTH
def test_text_on_the_main_button_stands_out(palette: Palette) -> None:
    assert contrast(palette.on_arm, palette.arm) >= 4.5


@BOTH
@pytest.mark.parametrize("ground", ["ground", "raised", "sunken"])
def test_frames_of_things_to_press_stand_out(palette: Palette, ground: str) -> None:
    assert contrast(palette.edge, colours(palette)[ground]) >= 3.0


#: Red-green blindness as matrices in linear light (Vienot, Brettel, Mollon 1999).
BLINDNESS = {
    "protan": ((0.11238, 0.88762, 0.0), (0.11238, 0.88762, 0.0), (0.00401, -0.00401, 1.0)),
    "deutan": ((0.29275, 0.70725, 0.0), (0.29275, 0.70725, 0.0), (-0.02234, 0.02234, 1.0)),
}


@BOTH
@pytest.mark.parametrize("kind", list(BLINDNESS))
@pytest.mark.parametrize(("one", "other"), [("left", "right"), ("arm", "hold")])
def test_colours_with_a_meaning_stay_apart_for_colour_blind_eyes(
    palette: Palette, kind: str, one: str, other: str
) -> None:
    def seen(colour: str) -> tuple[float, ...]:
        source = linear(colour)
        mixed = [sum(map(operator.mul, row, source)) for row in BLINDNESS[kind]]
        return tuple(max(0.0, part) ** (1 / 2.2) for part in mixed)

    found = colours(palette)
    assert math.dist(seen(found[one]), seen(found[other])) > 0.25


@BOTH
def test_left_and_right_differ_in_lightness_for_grey_print(palette: Palette) -> None:
    assert contrast(palette.left, palette.right) >= 1.8


@BOTH
@pytest.mark.parametrize("ground", ["ground", "raised"])
def test_the_drawn_person_stands_out(palette: Palette, ground: str) -> None:
    assert contrast(palette.outline, colours(palette)[ground]) >= 3.0


@BOTH
@pytest.mark.parametrize("percent", [100, 200])
def test_the_style_sheet_is_complete(palette: Palette, percent: int) -> None:
    sheet = style_sheet(palette, percent)
    assert "{" in sheet
    assert "{{" not in sheet
    assert f"font-size: {round(BODY_PX * SMALL * percent / 100)}px" in sheet
    for colour in (palette.ground, palette.ink, palette.arm):
        assert colour in sheet
