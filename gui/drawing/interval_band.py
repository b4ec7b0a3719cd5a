"""The one shape of a reading: a band as long as its interval with a mark at its value.

Narrow band, strong; wide band, pale. A refusal is an empty frame. The same on the live page and
in lists; the history draws it upright.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gui.style.appearance import Appearance
from measure.domain.movements import MOVEMENTS, Movement, Unit

#: Half-widths at which a band is strongest and palest, degrees; the fraction's are scaled. Ours.
_NARROW_DEG, _WIDE_DEG = 4.0, 16.0


def movement_scale(movement: Movement) -> tuple[float, float]:
    """Return the ends of the scale that a movement's readings are drawn on."""
    facts = MOVEMENTS[movement]
    if facts.unit is Unit.FRACTION:
        return 0.0, 1.0
    return (0.0, 180.0) if facts.usual[1] > 100 else (0.0, 90.0)


def band_opacity(low: float, high: float, unit: Unit) -> float:
    """Return how strongly a band is filled, 0.25..0.85: the narrower the stronger."""
    half = (high - low) / 2 * (1 if unit is Unit.DEGREES else 80)
    share = (half - _NARROW_DEG) / (_WIDE_DEG - _NARROW_DEG)
    return 0.85 - 0.6 * min(1.0, max(0.0, share))


def paint_scale(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
    """Draw the hairline that a band lies on, with ends and quarters."""
    y = place.center().y()
    painter.setPen(QPen(appearance.colour("edge"), 1))
    painter.drawLine(QPointF(place.left(), y), QPointF(place.right(), y))
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
    """Draw a band with its mark on the scale that fills `place`; values beyond are cut off."""
    bottom, top = movement_scale(movement)

    def at(number: float) -> float:
        share = min(1.0, max(0.0, (number - bottom) / (top - bottom)))
        return place.left() + place.width() * share

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
    """Draw the empty frame of a refusal."""
    pen = QPen(appearance.colour("edge"), 2, Qt.PenStyle.DashLine)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(place, 4, 4)


def paint_guide(
    painter: QPainter, appearance: Appearance, place: QRectF, movement: Movement, value: float
) -> None:
    """Draw the hollow mark of a guide value that is still being settled."""
    bottom, top = movement_scale(movement)
    share = min(1.0, max(0.0, (value - bottom) / (top - bottom)))
    x = place.left() + place.width() * share
    painter.setPen(QPen(appearance.colour("hold"), 2))
    painter.setBrush(appearance.colour("raised"))
    painter.drawEllipse(QPointF(x, place.center().y()), place.height() / 3, place.height() / 3)
