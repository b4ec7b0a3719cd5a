"""A reading in a line of a table: its value in bold, then its range.

Values end at one place and their ranges begin at one; so do the number of a day and its month.
Figures have one width: they stand below each other.
"""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont, QFontMetricsF, QPainter

from gui.drawing.tabular_figures import paint_tabular, tabular_width


def parted(words: str) -> tuple[str, str]:
    """Return a reading's value and its range in brackets; words without one have no value."""
    value, bracket, rest = words.partition(" (")
    return (value, f"{bracket}{rest}") if bracket else ("", words)


def parted_day(words: str) -> tuple[str, str]:
    """Return the number of a day, and its month and year."""
    number, space, rest = words.partition(" ")
    return number, f"{space}{rest}"


def first_width(pairs: Iterable[tuple[str, str]], font: QFont) -> float:
    """Return the width of the widest first part in a font, pixels."""
    return max((tabular_width(first, font) for first, _ in pairs if first), default=0.0)


def pair_width(pair: tuple[str, str], fonts: tuple[QFont, QFont], first_px: float) -> float:
    """Return the width of a line whose first part has so much room, pixels.

    Parameters
    ----------
    fonts
        Of the first part, and of the other.
    """
    first, rest = pair
    return (first_px if first else 0.0) + tabular_width(rest, fonts[1])


def paint_pair(
    painter: QPainter,
    place: QRectF,
    pair: tuple[str, str],
    fonts: tuple[QFont, QFont],
    first_px: float,
) -> None:
    """Paint both parts in the middle of a place's height, in the colour of the pen."""
    (first, rest), (first_font, rest_font) = pair, fonts
    metrics = QFontMetricsF(rest_font)
    base = place.center().y() + (metrics.ascent() - metrics.descent()) / 2
    left = place.left() + (first_px if first else 0.0)
    if first:
        begin = left - tabular_width(first, first_font)
        paint_tabular(painter, QPointF(begin, base), first, first_font)
    paint_tabular(painter, QPointF(left, base), rest, rest_font)


def bold(font: QFont) -> QFont:
    """Return a font in bold."""
    made = QFont(font)
    made.setBold(True)
    return made
