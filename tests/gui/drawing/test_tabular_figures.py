"""Numbers that stand below each other line up, figure for figure."""

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QImage, QPainter

from gui.drawing.tabular_figures import paint_tabular, tabular_width
from gui.style.appearance import Appearance


@pytest.mark.parametrize("bold", [False, True])
def test_every_figure_has_one_width(appearance: Appearance, bold: bool) -> None:
    font = appearance.font(40, bold=bold)
    (width,) = {tabular_width(figure, font) for figure in "0123456789"}
    inked = [QFontMetricsF(font).tightBoundingRect(figure).width() for figure in "0123456789"]
    assert max(inked) < width


def test_words_between_figures_keep_their_width(appearance: Appearance) -> None:
    font = appearance.font(40)
    between = QFontMetricsF(font).horizontalAdvance("\N{DEGREE SIGN} to ")
    figure = tabular_width("0", font)
    assert tabular_width("118\N{DEGREE SIGN} to 7", font) == pytest.approx(4 * figure + between)
    assert tabular_width("", font) == 0


def test_what_follows_a_number_stands_at_one_place(appearance: Appearance) -> None:
    font = appearance.font(40)
    ends = {_last_inked(f"{number}|", font) for number in ("111", "704", "888")}
    assert len(ends) == 1
    assert ends.pop() > _last_inked("18|", font)


def _last_inked(words: str, font: QFont) -> int:
    """Return the last column of pixels in which painted words have ink."""
    image = QImage(300, 60, QImage.Format.Format_Grayscale8)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    paint_tabular(painter, QPointF(0, 45), words, font)
    painter.end()
    return max(x for x in range(300) for y in range(60) if image.pixelColor(x, y).lightness() < 128)
