"""Figures of one width, so that numbers that stand below each other line up.

The typeface's own figures of one width have other, wider shapes, which look like a second typeface;
here those of the text stand in places of one width.
"""

import re
from statistics import median

from PySide6.QtCore import QPointF
from PySide6.QtGui import QFont, QFontMetricsF, QPainter

_FIGURES = "0123456789"
#: A figure, or what stands between figures.
_PART = re.compile(rf"[{_FIGURES}]|[^{_FIGURES}]+")


def tabular_width(words: str, font: QFont) -> float:
    """Return the width of words whose figures are all of one width, pixels."""
    metrics = QFontMetricsF(font)
    return sum(_width(part, metrics) for part in _PART.findall(words))


def figure_aside(words: str, font: QFont) -> float:
    """Return the room before the first figure in its place: without it words begin flush, pixels.

    Words that begin with no figure have none.
    """
    metrics, first = QFontMetricsF(font), words[:1]
    if first not in tuple(_FIGURES):
        return 0.0
    return max(0.0, (_width(first, metrics) - metrics.horizontalAdvance(first)) / 2)


def paint_tabular(painter: QPainter, start: QPointF, words: str, font: QFont) -> None:
    """Paint words from a place on their base line, each figure in the middle of its width."""
    metrics = QFontMetricsF(font)
    painter.setFont(font)
    left = start.x()
    for part in _PART.findall(words):
        wide = _width(part, metrics)
        beside = (wide - metrics.horizontalAdvance(part)) / 2
        painter.drawText(QPointF(left + beside, start.y()), part)
        left += wide


def _width(part: str, metrics: QFontMetricsF) -> float:
    if part in _FIGURES:
        # The middle width: with that of the widest, a nought, a row of ones would gape.
        return median(map(metrics.horizontalAdvance, _FIGURES))
    return metrics.horizontalAdvance(part)
