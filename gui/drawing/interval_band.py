"""Interval band: painting of a reading as a band over its interval with a mark at its value.

A narrow band is strong, a wide one pale; a refusal is an empty frame. Used on the live page and in
lists; the history chart draws upright bands of the same strength.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gui.style.appearance import Appearance
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import paleness, share_of_scale

#: Radius of the mark of a preliminary value, as a share of the place's height. [technical]
_GUIDE = 0.42


def band_opacity(low: float, high: float, unit: Unit) -> float:
    """Return the opacity of a band's fill, 0.25 (wide) to 0.85 (narrow)."""
    return 0.85 - 0.6 * paleness(low, high, unit)


def paint_scale(
    painter: QPainter, appearance: Appearance, place: QRectF, *, beyond_px: float = 0.0
) -> None:
    """Paint the hairline that a band lies on, with ends and quarters.

    Parameters
    ----------
    beyond_px
        How far the line goes on beyond both ends.
    """
    y = place.center().y()
    painter.setPen(QPen(appearance.colour("edge"), 1))
    painter.drawLine(QPointF(place.left() - beyond_px, y), QPointF(place.right() + beyond_px, y))
    for quarter in range(5):
        x = place.left() + place.width() * quarter / 4
        half = place.height() * (0.2 if quarter % 4 else 0.34)
        painter.drawLine(QPointF(x, y - half), QPointF(x, y + half))


def paint_band(
    painter: QPainter,
    appearance: Appearance,
    place: QRectF,
    movement: Movement,
    value: float,
    low: float,
    high: float,
) -> None:
    """Paint a band with its mark on the scale that fills `place`; values beyond are cut off."""

    def at(number: float) -> float:
        return place.left() + place.width() * share_of_scale(number, movement)

    band = QRectF(QPointF(at(low), place.top()), QPointF(at(high), place.bottom()))
    band.setWidth(max(band.width(), 3.0))
    full = band_opacity(low, high, MOVEMENTS[movement].unit)
    painter.setPen(QPen(appearance.colour("arm"), 1.5))
    painter.setBrush(appearance.colour("arm", full))
    painter.drawRoundedRect(band, 4, 4)
    mark = QRectF(at(value) - 2.5, place.top() - 5, 5, place.height() + 10)
    painter.setPen(QPen(appearance.colour("raised"), 1.5))
    painter.setBrush(appearance.colour("ink"))
    painter.drawRoundedRect(mark, 2, 2)


def paint_refusal(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
    """Paint the empty frame of a refusal."""
    pen = QPen(appearance.colour("edge"), 2, Qt.PenStyle.DashLine)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(place, 4, 4)


def paint_guide(
    painter: QPainter, appearance: Appearance, place: QRectF, movement: Movement, value: float
) -> None:
    """Paint the hollow mark of a preliminary value that is still being refined."""
    x = place.left() + place.width() * share_of_scale(value, movement)
    painter.setPen(QPen(appearance.colour("hold"), max(2.0, place.height() / 6)))
    painter.setBrush(appearance.colour("raised"))
    radius = place.height() * _GUIDE
    painter.drawEllipse(QPointF(x, place.center().y()), radius, radius)
