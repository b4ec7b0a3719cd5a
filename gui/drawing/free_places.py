"""Places for words in a chart where nothing is drawn."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSizeF

from gui.drawing.chart_scales import DayScale, ValueScale
from gui.drawing.curves import ChartContent

#: Space between words and what is drawn, pixels. [technical]
_AROUND_PX = 5.0
#: Where words are tried along a line, as shares of the room beside them: at its ends first.
#: [technical]
_ALONG = (0.0, 1.0, 0.5, 0.25, 0.75)
#: How many of these are the ends of a line. [technical]
_ENDS = 2


def drawn_places(content: ChartContent, days: DayScale, values: ValueScale) -> list[QPointF]:
    """Return where readings, their ranges and their courses are drawn."""
    drawn = [
        QPointF(days.x(point.day), values.y(value))
        for point in content.points
        for value in (point.value, point.low, point.high)
        if value is not None
    ]
    for ribbon in (r for curve in content.curves for r in (*curve.ribbons, *curve.apart_ribbons)):
        for edge in (ribbon.low, ribbon.value, ribbon.high):
            drawn += [
                QPointF(days.x_of(float(day)), values.y(float(value)))
                for day, value in zip(ribbon.day, edge, strict=True)
            ]
    return drawn


def free_places(
    lines: Sequence[float], sizes: Sequence[QSizeF], within: QRectF, taken: Sequence[QPointF]
) -> list[QRectF | None]:
    """Return places for the words of lines across; None for words that have none.

    All stand above their lines at the same end, where they are free there; what has no room above
    is beneath.

    Parameters
    ----------
    lines
        Heights of the lines, pixels.
    taken
        Points that are drawn.
    """
    pairs = list(zip(lines, sizes, strict=True))
    tried = [[_at(y, size, within, share, taken) for y, size in pairs] for share in _ALONG]
    best = max(tried[:_ENDS], key=lambda spots: sum(spot is not None for spot in spots))
    return [
        spot or next((other[number] for other in tried if other[number] is not None), None)
        for number, spot in enumerate(best)
    ]


def _at(
    y: float, size: QSizeF, within: QRectF, share: float, taken: Sequence[QPointF]
) -> QRectF | None:
    """Return the free place above a line, or beneath an end of it where above is outside."""
    left = within.left() + (within.width() - size.width()) * share
    above = y - size.height() >= within.top()
    if not above and share not in _ALONG[:_ENDS]:
        return None
    place = QRectF(QPointF(left, y - size.height() * above), size)
    around = place.adjusted(-_AROUND_PX, -_AROUND_PX, _AROUND_PX, _AROUND_PX)
    return None if any(map(around.contains, taken)) else place
