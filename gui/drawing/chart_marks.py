"""Marks and ribbons of the history chart.

The left shoulder is a disc, the right one a square, so that both stay apart in grey; a dashed
outline is a measurement without a result.
"""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QLinearGradient, QPainter, QPainterPath, QPen, QPolygonF

from gui.drawing.chart_scales import DayScale, ValueScale
from gui.style.appearance import Appearance
from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.reading_scale import paleness
from measure.trend.local_trend import Ribbon

#: Opacity of a ribbon where it is narrowest and where it is widest. [technical]
_STRONG, _PALE = 0.42, 0.12
#: Stops of a ribbon's shade. [technical]
_STOPS = 24


def paint_mark(
    painter: QPainter,
    place: QPointF,
    side: Side,
    half_px: float,
    colour: QColor,
    *,
    hollow: QColor | None = None,
    dashed: bool = False,
) -> None:
    """Paint a disc for the left shoulder or a square for the right one, round a place.

    Parameters
    ----------
    hollow
        The colour inside, where it is not filled.
    dashed
        Whether its outline is dashed: no result.
    """
    pen = QPen(colour, 1.6)
    if dashed:
        pen.setDashPattern([1.6, 1.3])
    painter.setPen(pen)
    painter.setBrush(colour if hollow is None else hollow)
    if side is Side.LEFT:
        painter.drawEllipse(place, half_px, half_px)
    else:
        # A square of the same area as the disc.
        half = half_px * 0.886
        painter.drawRect(QRectF(place.x() - half, place.y() - half, 2 * half, 2 * half))


def paint_open_mark(
    painter: QPainter, place: QPointF, side: Side, half_px: float, colour: QColor
) -> None:
    """Paint an open triangle for a session after exercises: up for the left shoulder, else down."""
    up = -1 if side is Side.LEFT else 1
    painter.setPen(QPen(colour, 1.3))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    tip = place + QPointF(0, up * half_px * 1.2)
    foot = place - QPointF(0, up * half_px * 0.7)
    corners = [tip, foot + QPointF(half_px, 0), foot - QPointF(half_px, 0)]
    painter.drawPolygon(QPolygonF(corners))


def paint_number(
    painter: QPainter, appearance: Appearance, place: QPointF, wide_px: float, number: int
) -> None:
    """Paint the number of a flag in a disc so wide."""
    painter.save()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(appearance.colour("quiet"))
    painter.drawEllipse(place, wide_px / 2, wide_px / 2)
    painter.setPen(appearance.colour("raised"))
    painter.setFont(appearance.font(wide_px * (0.66 if number < 10 else 0.52), bold=True))
    disc = QRectF(place.x() - wide_px / 2, place.y() - wide_px / 2, wide_px, wide_px)
    painter.drawText(disc, Qt.AlignmentFlag.AlignCenter, str(number))
    painter.restore()


def ribbon_path(ribbon: Ribbon, days: DayScale, values: ValueScale) -> QPainterPath:
    """Return the outline of a ribbon."""
    path = QPainterPath()
    upper = [QPointF(days.x_of(day), values.y(high)) for day, high in _pairs(ribbon, ribbon.high)]
    lower = [QPointF(days.x_of(day), values.y(low)) for day, low in _pairs(ribbon, ribbon.low)]
    path.addPolygon(QPolygonF([*upper, *lower[::-1]]))
    path.closeSubpath()
    return path


def ribbon_shade(
    ribbon: Ribbon, days: DayScale, movement: Movement, colour: QColor, strong: bool
) -> QLinearGradient:
    """Return a ribbon's colour: strong where it is narrow, pale where it is wide."""
    first, last = float(ribbon.day[0]), float(ribbon.day[-1])
    shade = QLinearGradient(days.x_of(first), 0, days.x_of(last), 0)
    unit = MOVEMENTS[movement].unit
    for stop in range(_STOPS + 1):
        place = round(stop / _STOPS * (len(ribbon.day) - 1))
        pale = paleness(float(ribbon.low[place]), float(ribbon.high[place]), unit)
        opacity = _STRONG - (_STRONG - _PALE) * pale
        at = QColor(colour)
        at.setAlphaF(opacity if strong else opacity * 0.6)
        shade.setColorAt(stop / _STOPS, at)
    return shade


def ribbon_line(ribbon: Ribbon, days: DayScale, values: ValueScale) -> QPolygonF:
    """Return the middle of a ribbon."""
    pairs = _pairs(ribbon, ribbon.value)
    return QPolygonF([QPointF(days.x_of(day), values.y(value)) for day, value in pairs])


def _pairs(ribbon: Ribbon, values: FloatArray) -> list[tuple[float, float]]:
    return [(float(day), float(value)) for day, value in zip(ribbon.day, values, strict=True)]
