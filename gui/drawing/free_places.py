"""Places for words in a chart where nothing is drawn."""

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF, QSizeF

from gui.drawing.chart_scales import DayScale, ValueScale
from gui.drawing.curves import ChartContent

#: Space between words and what is drawn, pixels. [technical]
_AROUND_PX = 5.0
#: Where words are tried along a line, as shares of the room beside them: at its beginning first.
#: [technical]
_ALONG = (0.0, 1.0, 0.5, 0.25, 0.75)


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


def free_place(
    y: float,
    size: QSizeF,
    within: QRectF,
    taken: Sequence[QPointF],
    poles: Sequence[QPointF] = (),
) -> QRectF | None:
    """Return a place for words above or beneath a line across, or None where there is none.

    Parameters
    ----------
    y
        The line, pixels.
    taken, poles
        Points that are drawn, and those that stand for a line from top to bottom.
    """
    for place in _tried(y, size, within):
        around = place.adjusted(-_AROUND_PX, -_AROUND_PX, _AROUND_PX, _AROUND_PX)
        crossed = any(around.left() < pole.x() < around.right() for pole in poles)
        if not crossed and not any(map(around.contains, taken)):
            return place
    return None


def _tried(y: float, size: QSizeF, within: QRectF) -> Iterator[QRectF]:
    """Yield the places along a line: above it first, beneath it where that is inside."""
    for top in (y - size.height(), y):
        if top < within.top() or top + size.height() > within.bottom():
            continue
        for share in _ALONG:
            left = within.left() + (within.width() - size.width()) * share
            yield QRectF(QPointF(left, top), size)
