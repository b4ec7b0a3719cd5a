"""Places for words in a chart where nothing is drawn."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSizeF

from gui.drawing.chart_scales import DayScale, ValueScale
from gui.drawing.curves import ChartContent

#: Space between words and what is drawn, pixels. [technical]
_AROUND_PX = 5.0
#: What a sum of heights may be off by, pixels. [technical]
_ROUNDING_PX = 0.5
#: Where words are tried along a line, as shares of the room beside them: at its ends, then between
#: them. [technical]
_ENDS, _BETWEEN = (0.0, 1.0), (0.5, 0.25, 0.75, 0.8, 0.6, 0.4)


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

    All stand at the same end of their lines where they are free there, above or beneath them.

    Parameters
    ----------
    lines
        Heights of the lines, pixels.
    taken
        Points that are drawn.
    """
    pairs = list(zip(lines, sizes, strict=True))

    def spot(number: int, share: float, *, above: bool) -> QRectF | None:
        y, size = pairs[number]
        return _at(y - size.height() * above, size, within, share, taken)

    def elsewhere(number: int) -> QRectF | None:
        y, size = pairs[number]
        # The highest line has no room above: words beneath the middle of it would seem astray.
        shares = (*_ENDS, *_BETWEEN) if y - size.height() >= within.top() else _ENDS
        tried = (spot(number, share, above=way) for way in (True, False) for share in shares)
        return next(filter(None, tried), None)

    numbers = range(len(pairs))
    ends = [
        [spot(number, share, above=True) or spot(number, share, above=False) for number in numbers]
        for share in _ENDS
    ]
    best = max(ends, key=lambda spots: sum(place is not None for place in spots))
    return [best[number] or elsewhere(number) for number in numbers]


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
