"""Values of a column end at one place and their ranges begin at one, whatever their figures."""

from itertools import pairwise

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QImage, QPainter

from gui.drawing.pair_words import bold, first_width, paint_pair, pair_width, parted, parted_day
from gui.style.appearance import Appearance


@pytest.mark.parametrize(
    ("words", "parts"),
    [
        ("124° (118 to 130)", ("124°", " (118 to 130)")),
        ("53° (47 to 59), practice", ("53°", " (47 to 59), practice")),
        ("no result", ("", "no result")),
        ("T12 to T7", ("", "T12 to T7")),
    ],
)
def test_a_reading_has_a_value_and_a_range(words: str, parts: tuple[str, str]) -> None:
    assert parted(words) == parts


def test_a_day_has_a_number_and_a_month() -> None:
    assert parted_day("9 Nov 2026") == ("9", " Nov 2026")


@pytest.mark.parametrize("readings", [("111° (1)", "88° (1)"), ("7° (1)", "160° (1)")])
def test_values_end_and_ranges_begin_at_one_place(
    appearance: Appearance, readings: tuple[str, str]
) -> None:
    font = appearance.font(40)
    fonts, pairs = (bold(font), font), [parted(words) for words in readings]
    first_px = first_width(pairs, fonts[0])
    inked = [_inked(pair, fonts, first_px) for pair in pairs]
    # The last of both ends with the bracket of the same range.
    assert inked[0][-1] == inked[1][-1]
    between = [max(b - a for a, b in pairwise(at)) for at in inked]
    assert between[0] == between[1]
    for pair, at in zip(pairs, inked, strict=True):
        assert at[-1] < pair_width(pair, fonts, first_px)


def _inked(pair: tuple[str, str], fonts: tuple[QFont, QFont], first_px: float) -> list[int]:
    """Return the columns of pixels from which a line begins and on which it has ink."""
    image = QImage(400, 80, QImage.Format.Format_Grayscale8)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    paint_pair(painter, QRectF(0, 0, 400, 80), pair, fonts, first_px)
    painter.end()
    return [
        x
        for x in range(image.width())
        if any(image.pixelColor(x, y).lightness() < 128 for y in range(image.height()))
    ]
