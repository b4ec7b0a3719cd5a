"""Free room for words along the lines of the history chart."""

import datetime as dt
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from PySide6.QtCore import QRectF

from gui.drawing.chart_scales import DayScale, ValueScale
from gui.drawing.curves import ChartContent
from measure.domain.landmarks import FloatArray

#: Steps in which a free room is looked for along a line, and the least space beside the words,
#: pixels. [technical]
_STEP_PX, _BESIDE_PX = 8.0, 6.0
#: Share of a line of words that no letter takes, above and beneath them. [technical]
_NO_LETTER = 0.14


class PlaceName(NamedTuple):
    """A height on the body, its name, and where that is written, in pixels of the chart."""

    value: float
    words: str
    room: QRectF


def free_names(
    sizes: Sequence[tuple[float, str, float]],
    high_px: float,
    scales: tuple[DayScale, ValueScale],
    drawn: FloatArray,
) -> list[PlaceName | None]:
    """Return a room for each name as near to the end of its line as there is one.

    Parameters
    ----------
    sizes
        Heights with their names, from the lowest, and how wide each is in pixels.
    drawn
        What the names must not meet, shape (n, 4): left, top, right and bottom in pixels.
    """
    days, values = scales
    named: list[PlaceName | None] = []
    for value, words, wide in sizes:
        y = values.y(value)
        tops = [y - high_px, y] if value > values.low else [y - high_px]
        lefts = np.arange(days.right_px - wide, days.left_px, -_STEP_PX)
        rooms = (
            QRectF(left, top, wide, high_px)
            for left in (*lefts.tolist(), days.left_px)
            for top in tops
        )
        room = next((room for room in rooms if not _meets(room, drawn)), None)
        if room is not None:
            taken = [room.left(), room.top(), room.right(), room.bottom()]
            drawn = np.vstack([drawn, np.array([taken])])
        named.append(None if room is None else PlaceName(value, words, room))
    return named


def drawn_places(
    content: ChartContent,
    days: DayScale,
    values: ValueScale,
    half_px: float,
    flag_days: Sequence[dt.date],
) -> FloatArray:
    """Return what is drawn in the plot: readings with their ranges, ribbons, poles of flags.

    Parameters
    ----------
    half_px
        Half the width that a reading takes, its distance from the middle of the day included.
    """
    rows = []
    for point in content.points:
        if point.value is not None and days.holds(point.day):
            x, y = days.x(point.day), values.y(point.value)
            ends = [values.y(end) for end in (point.low, point.high) if end is not None]
            top, bottom = min(y - half_px, *ends, y), max(y + half_px, *ends, y)
            rows.append([x - half_px, top, x + half_px, bottom])
    for day in flag_days:
        if days.holds(day):
            rows.append([days.x(day), values.top_px, days.x(day), values.bottom_px])
    day_px = days.x_of(1) - days.x_of(0)
    for curve in content.curves:
        for ribbon in (*curve.ribbons, *curve.apart_ribbons):
            for day, low, high in zip(ribbon.day, ribbon.low, ribbon.high, strict=True):
                x = days.x_of(float(day))
                column = [values.y(float(high)), x + day_px, values.y(float(low))]
                rows.append([x - day_px, *column])
    return np.array(rows, dtype=np.float64).reshape(-1, 4)


def _meets(room: QRectF, drawn: FloatArray) -> bool:
    left, top, right, bottom = drawn.T
    spare = _NO_LETTER * room.height()
    beside = (left < room.right() + _BESIDE_PX) & (right > room.left() - _BESIDE_PX)
    level = (top < room.bottom() - spare) & (bottom > room.top() + spare)
    return bool(np.any(beside & level))
