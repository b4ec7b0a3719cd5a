"""Places for words in a chart where nothing is drawn."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSizeF

from gui.drawing.chart_scales import DayScale, ValueScale
from gui.drawing.curves import ChartContent

#: Space between words and what is drawn, pixels. [technical]
_AROUND_PX = 5.0
#: What a sum of heights may be off by, pixels. [technical]
_ROUNDING_PX = 0.5
#: Where words are tried along a line, as shares of the room beside them: at its right end, where
#: names of the courses stand too, then at its left one. [technical]
_ENDS = (1.0, 0.0)


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

    All stand at the same end of their lines, the one with more room, above or beneath them.

    Parameters
    ----------
    lines
        Heights of the lines, pixels.
    taken
        Points that are drawn.
    """
    pairs = list(zip(lines, sizes, strict=True))

    def spot(y: float, size: QSizeF, share: float) -> QRectF | None:
        tops = (y - size.height(), y)
        return next(filter(None, (_at(top, size, within, share, taken) for top in tops)), None)

    ends = [[spot(y, size, share) for y, size in pairs] for share in _ENDS]
    return max(ends, key=lambda spots: sum(place is not None for place in spots))


def _at(
    top: float, size: QSizeF, within: QRectF, share: float, taken: Sequence[QPointF]
) -> QRectF | None:
    """Return the place of words at a height and a share of the width, if it is free."""
    left = within.left() + (within.width() - size.width()) * share
    place = QRectF(QPointF(left, top), size)
    if place.top() < within.top() or place.bottom() > within.bottom() + _ROUNDING_PX:
        return None
    around = place.adjusted(-_AROUND_PX, -_AROUND_PX, _AROUND_PX, _AROUND_PX)
    return None if any(map(around.contains, taken)) else place
