"""Places of the history chart: days, values and pain in pixels, and the room around them.

The days take the width between the numbers of the axis and the names at the ends of the lines:
those of the shoulders, and of levels of the spine.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFontMetricsF

from gui.drawing.chart_scales import DayScale, ValueScale, value_ticks
from gui.drawing.curves import ChartContent, CurvePoint
from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX
from gui.text.chart_wording import places
from gui.text.wording import side_title, tr
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import scale_of

#: Heights beneath the plot, in lines of words: of the days, of the space between them and the
#: strips, of a strip of marks with its title, of pain without its title, and beneath its 0.
#: [technical]
_DAYS, _SPACE, _STRIP, _PAIN, _BELOW = 1.25, 0.9, 2.0, 2.2, 0.6
#: How much of the growth of text the words of a chart take part in, so that its curves keep their
#: room. [technical]
_WORDS_GROWTH = 0.6
#: Half of the distance between two readings of one day, pixels. [technical]
APART_PX = 3.0
#: Width of a flag, and the room beneath it, in lines of words. [technical]
FLAG, _BELOW_FLAG = 1.0, 0.35
#: Room above the highest line without flags, in lines of words. [technical]
_ABOVE = 0.45
#: Least height of the plot, in lines of words. [technical]
_PLOT = 5.0
#: Least and largest half of the width of a reading's mark, in sizes of the words, and the least in
#: pixels. [technical]
_SMALL_MARK, _LARGE_MARK, _LEAST_MARK_PX = 0.13, 0.26, 3.0
#: Share of the neighbouring readings of a shoulder that may overlap. [technical]
_OVERLAPPING = 0.25
#: Space between the last readings and the name of a shoulder, pixels. [technical]
_BEFORE_NAME_PX = 10
#: Space between a mark and the name beside it, and how far its edge reaches, pixels. [technical]
BESIDE_MARK_PX, EDGE_PX = 7, 2
#: Largest share of the width that the names of heights on the body may take. [technical]
_MOST_PLACES = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartLayout:
    """Where everything lies: pixels of the widget."""

    days: DayScale
    values: ValueScale
    pain: ValueScale
    flags_y: float
    refused_y: float
    exercises_y: float
    names: tuple[tuple[float, str], ...]
    #: Heights on the body that are named at their lines, and whether beyond the ends of these: so
    #: it is where they are many, levels of the spine.
    places: tuple[tuple[float, str], ...]
    places_beside: bool
    words_px: float
    #: Half the width of a reading's mark, and of the mark before the name of a shoulder.
    mark_px: float
    named_mark_px: float
    #: Where the lines across begin, where the names of the shoulders do, and where all ends.
    left_px: float
    sides_px: float
    right_px: float

    @staticmethod
    def lower_height(content: ChartContent | None, appearance: Appearance) -> int:
        """Return the height of what lies beneath the days, pixels."""
        line = QFontMetricsF(appearance.font(chart_words_px(appearance))).height()
        return round(line * (_SPACE + sum(_lower_lines(content))))

    @staticmethod
    def space(appearance: Appearance) -> int:
        """Return the empty height between the days and what lies beneath them, pixels."""
        return round(QFontMetricsF(appearance.font(chart_words_px(appearance))).height() * _SPACE)

    @staticmethod
    def least_height(content: ChartContent | None, appearance: Appearance) -> int:
        """Return the least height at which a content is read, pixels."""
        line = QFontMetricsF(appearance.font(chart_words_px(appearance))).height()
        upper = round(line * (_upper_lines(content) + _PLOT + _DAYS))
        return upper + ChartLayout.lower_height(content, appearance)

    @classmethod
    def of(
        cls, content: ChartContent, first: dt.date, size: QRectF, appearance: Appearance
    ) -> "ChartLayout":
        """Return the layout within `size`."""
        words_px = chart_words_px(appearance)
        metrics = QFontMetricsF(appearance.font(words_px))
        line = metrics.height()
        names = _axis_names(content.movement)
        left = size.left() + _axis_px(names, metrics) + 8
        named = _named_places(content.movement, size.width(), metrics)
        beside = MOVEMENTS[content.movement].unit is Unit.FRACTION
        most = words_px * _LARGE_MARK
        before = 2 * most + EDGE_PX + BESIDE_MARK_PX
        ending = [before + metrics.horizontalAdvance(side_title(side)) for side in Side]
        if beside:
            ending += [metrics.horizontalAdvance(words) for _, words in named]
        sides = max(ending) + 2
        right = size.right() - sides - _BEFORE_NAME_PX - most - APART_PX
        refused, pain, _ = _lower_lines(content)
        bottom = size.bottom() - cls.lower_height(content, appearance) - line * _DAYS
        beneath = bottom + line * (_DAYS + _SPACE)
        pain_top = beneath + line * (refused + 1)
        low, high = scale_of(content.movement)
        days = DayScale(first=first, last=content.today, left_px=left, right_px=right)
        values = ValueScale(
            low=low,
            high=high,
            top_px=size.top() + line * _upper_lines(content),
            bottom_px=bottom,
        )
        mark = _mark_px(content, days, words_px)
        return cls(
            days=days,
            values=values,
            pain=ValueScale(low=0, high=10, top_px=pain_top, bottom_px=pain_top + line * _PAIN),
            flags_y=size.top() + line * FLAG / 2,
            refused_y=beneath + line * 1.5,
            exercises_y=beneath + line * (refused + pain + 1.5),
            names=names,
            places=named,
            places_beside=beside,
            words_px=words_px,
            mark_px=mark,
            named_mark_px=most,
            left_px=left,
            sides_px=right + APART_PX + most + _BEFORE_NAME_PX,
            right_px=size.right(),
        )

    def place(self, point: CurvePoint) -> QPointF:
        """Return where a measurement is drawn."""
        x = self.days.x(point.day) + (-APART_PX if point.side is Side.LEFT else APART_PX)
        return QPointF(x, self.refused_y if point.value is None else self.values.y(point.value))


def _lower_lines(content: ChartContent | None) -> tuple[float, float, float]:
    """Return the heights of the strips of refusals, pain and exercises, in lines of words.

    Without a content all of them have room.
    """
    refused = content is None or any(point.value is None for point in content.points)
    exercises = content is None or bool(content.exercise_days)
    return (_STRIP * refused, 1 + _PAIN + _BELOW, _STRIP * exercises)


def _upper_lines(content: ChartContent | None) -> float:
    """Return the height above the plot, in lines of words."""
    return FLAG + _BELOW_FLAG if content is None or content.events or content.turns else _ABOVE


def chart_words_px(appearance: Appearance) -> float:
    """Return the size of the words of a chart and of its legend, pixels."""
    return BODY_PX * (1 + (appearance.percent / 100 - 1) * _WORDS_GROWTH)


def _mark_px(content: ChartContent, days: DayScale, words_px: float) -> float:
    """Return half the width of a mark: the smaller, the closer the readings of a shoulder are."""
    apart = [
        days.x(later.day) - days.x(earlier.day)
        for curve in content.curves
        for earlier, later in pairwise(p for p in curve.points if days.holds(p.day))
    ]
    most = words_px * _LARGE_MARK
    near = sorted(apart)[int(len(apart) * _OVERLAPPING)] / 2 if apart else most
    return max(_LEAST_MARK_PX, words_px * _SMALL_MARK, min(near, most))


def _named_places(
    movement: Movement, width: float, metrics: QFontMetricsF
) -> tuple[tuple[float, str], ...]:
    """Return the heights on the body with their names; none where they leave the days no room.

    What the axis calls the same is left out.
    """
    on_axis, (_, high) = dict(_axis_names(movement)), scale_of(movement)
    named = tuple(
        (value, words)
        for value, words in places(movement)
        if words != on_axis.get(value) and value < high
    )
    widest = max((metrics.horizontalAdvance(words) for _, words in named), default=0.0)
    return named if widest <= _MOST_PLACES * width else ()


def _axis_names(movement: Movement) -> tuple[tuple[float, str], ...]:
    """Return the values that the axis names, each with its name."""
    return tuple((value, tr(name)) for value, name in value_ticks(movement))


def stride(names: Sequence[tuple[float, str]], line: float) -> int:
    """Return the least step over the names of an axis at which none meets the next."""
    apart = min(abs(y - other) for (y, _), (other, _) in pairwise(names))
    steps = [step for step in (1, 2, 3) if (len(names) - 1) % step == 0 and step * apart >= line]
    return steps[0] if steps else len(names) - 1


def _axis_px(names: Sequence[tuple[float, str]], metrics: QFontMetricsF) -> float:
    """Return how wide the words left of the chart are."""
    return max(map(metrics.horizontalAdvance, [*(name for _, name in names), "10"]))
