"""Painting of the history chart: ribbons with single readings, events as flags above them.

The days stand right beneath the readings; below them are strips of measurements without a result,
pain, and exercises, each with its title above it. Places on the body are named above the beginning
of their lines, which begin before the first day, so that nothing is drawn through the words.

Dashes stand for a measurement without a result and for nothing else. The left shoulder is a dark
ribbon with discs, the right one a light ribbon with squares, so that both stay apart in grey.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QPainter,
    QPen,
    QPolygonF,
)

from gui.drawing.chart_flags import placed_flags, word_left_px
from gui.drawing.chart_marks import (
    paint_mark,
    paint_number,
    paint_open_mark,
    ribbon_line,
    ribbon_path,
    ribbon_shade,
)
from gui.drawing.chart_scales import DayScale, ValueScale, value_ticks
from gui.drawing.curves import ChartContent, CurvePoint, SideCurve
from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX
from gui.text.chart_wording import places, tick_words
from gui.text.wording import side_title, tr
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reading_scale import scale_of

#: Heights beneath the plot, in lines of words: of the days, of the space between them and the
#: strips, of a strip of marks with its title, of pain without its title, and beneath its 0.
#: [technical]
_DAYS, _SPACE, _STRIP, _PAIN, _BELOW = 1.35, 0.9, 2.0, 2.2, 0.6
#: How much of the growth of text the words of a chart take part in, so that its curves keep their
#: room. [technical]
_WORDS_GROWTH = 0.6
#: Opacity of the band of sessions that the main line leaves out. [technical]
_APART_BAND = 0.1
#: Half of the distance between two readings of one day, pixels. [technical]
_APART_PX = 3.0
#: Width of a flag, and the room beneath it, in lines of words. [technical]
_FLAG, _BELOW_FLAG = 1.0, 0.35
#: Room above the highest line without flags, in lines of words. [technical]
_ABOVE = 0.55
#: Least height of the plot, in lines of words. [technical]
_PLOT = 5.0
#: Half the width of a reading's mark, and where they are few, in sizes of the words. [technical]
_MARK, _LARGE_MARK = 0.19, 0.26
#: Most readings that are few. [technical]
_FEW = 16
#: Space between the last readings and the mark of a shoulder's name, and between that and the
#: name, pixels. [technical]
_BEFORE_MARK_PX, _BESIDE_MARK_PX = 24, 8
#: Space between the name of a place and the first day, in lines of words, and the largest share of
#: the plot that these names may take. [technical]
_AFTER_PLACE, _MOST_PLACES = 0.3, 0.4


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
    #: Heights on the body that have a name in the plot.
    places: tuple[tuple[float, str], ...]
    words_px: float
    #: Half the width of a reading's mark.
    mark_px: float
    #: Where the lines across begin, and where all ends.
    left_px: float
    right_px: float

    @staticmethod
    def lower_height(content: ChartContent | None, appearance: Appearance) -> int:
        """Return the height of what lies beneath the days, pixels."""
        line = QFontMetricsF(appearance.font(chart_words_px(appearance))).height()
        return round(line * (_SPACE + sum(_lower_lines(content))))

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
        shown = sum(first <= point.day <= content.today for point in content.points)
        mark = max(3.0, words_px * (_LARGE_MARK if shown <= _FEW else _MARK))
        sides = max(metrics.horizontalAdvance(side_title(side)) for side in Side)
        right = size.right() - sides - 2 - _BESIDE_MARK_PX - 2 * mark - _before_mark_px(mark)
        named = _places_shown(content.movement, metrics, right - left)
        wide = max((metrics.horizontalAdvance(words) for _, words in named), default=0.0)
        before_days = wide + line * _AFTER_PLACE if named else 0.0
        refused, pain, _ = _lower_lines(content)
        bottom = size.bottom() - cls.lower_height(content, appearance) - line * _DAYS
        beneath = bottom + line * (_DAYS + _SPACE)
        pain_top = beneath + line * (refused + 1)
        low, high = scale_of(content.movement)
        return cls(
            days=DayScale(
                first=first, last=content.today, left_px=left + before_days, right_px=right
            ),
            values=ValueScale(
                low=low,
                high=high,
                top_px=size.top() + line * _upper_lines(content),
                bottom_px=bottom,
            ),
            pain=ValueScale(low=0, high=10, top_px=pain_top, bottom_px=pain_top + line * _PAIN),
            flags_y=size.top() + line * _FLAG / 2,
            refused_y=beneath + line * 1.5,
            exercises_y=beneath + line * (refused + pain + 1.5),
            names=names,
            places=named,
            words_px=words_px,
            mark_px=mark,
            left_px=left,
            right_px=size.right(),
        )

    def place(self, point: CurvePoint) -> QPointF:
        """Return where a measurement is drawn."""
        x = self.days.x(point.day) + (-_APART_PX if point.side is Side.LEFT else _APART_PX)
        return QPointF(x, self.refused_y if point.value is None else self.values.y(point.value))


class ChartPainter:
    """Paints one content in one layout.

    Parameters
    ----------
    flags_named
        Whether each flag has a word beside its number, where there is room.
    """

    def __init__(
        self,
        painter: QPainter,
        appearance: Appearance,
        content: ChartContent,
        layout: ChartLayout,
        *,
        flags_named: bool = True,
    ) -> None:
        self._painter, self._appearance = painter, appearance
        self._flags_named = flags_named
        self._content, self._layout = content, layout
        self._font = appearance.font(layout.words_px)
        self._metrics = QFontMetricsF(self._font)
        painter.setFont(self._font)

    def paint(self) -> None:
        """Paint everything but what follows the pointer."""
        self._paint_axes()
        self._paint_days()
        self._paint_flags()
        self._paint_body_places()
        self._paint_pain()
        # The affected side lies on top of the one it is compared with.
        for curve in sorted(self._content.curves, key=lambda curve: curve.affected):
            self._paint_curve(curve)
        self._paint_side_names()

    # -- axes -----------------------------------------------------------------------------------

    def _paint_axes(self) -> None:
        values, pain = self._layout.values, self._layout.pain
        names = [(values.y(value), name) for value, name in self._layout.names]
        names = names[:: _stride(names, self._metrics.height())]
        for y, name in (*names, (pain.top_px, "10"), (pain.bottom_px, "0")):
            self._paint_line(y, name)
        self._title(pain.top_px - self._metrics.height() * 0.5, tr("pain, 0 to 10"))
        if self._content.exercise_days:
            self._title(self._layout.exercises_y - self._metrics.height(), tr("exercises"))
        if any(point.value is None for point in self._content.points):
            self._title(self._layout.refused_y - self._metrics.height(), tr("no result"))

    def _paint_line(self, y: float, name: str) -> None:
        """Paint a line across, with its name left of it."""
        left, right = self._layout.left_px, self._layout.days.right_px
        self._painter.setPen(QPen(self._colour("line"), 1))
        self._painter.drawLine(QPointF(left, y), QPointF(right, y))
        self._write(left - 8, y, name, "quiet", Qt.AlignmentFlag.AlignRight)

    def _title(self, y: float, words: str) -> None:
        """Write what a strip shows above its beginning."""
        self._write(self._layout.left_px, y, words)

    def _paint_body_places(self) -> None:
        """Name the heights that people know above the beginning of their lines.

        A name that would stand on the one beneath it is left out.
        """
        layout, high = self._layout, self._metrics.height()
        beneath = float("inf")
        for value, words in layout.places:
            y = layout.values.y(value)
            if y + high <= beneath:
                self._write(layout.left_px, y - high / 2, words)
                beneath = y

    def _paint_days(self) -> None:
        days, y = self._layout.days, self._layout.values.bottom_px
        width = self._metrics.horizontalAdvance
        unit, ticks = days.ticks(width("30 MMM  "), width("MMM  "))
        for day in ticks:
            x = days.x(day)
            self._painter.setPen(QPen(self._colour("edge"), 1))
            self._painter.drawLine(QPointF(x, y), QPointF(x, y + 5))
            words = tick_words(unit, day)
            self._write(
                x, y + self._metrics.height() * 0.85, words, "quiet", Qt.AlignmentFlag.AlignCenter
            )

    def _write(
        self,
        x: float,
        y: float,
        words: str,
        colour: str = "quiet",
        align: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft,
    ) -> QRectF:
        """Write words beside or around a place and return what they cover."""
        width, height = self._metrics.horizontalAdvance(words) + 2, self._metrics.height()
        left = {
            Qt.AlignmentFlag.AlignLeft: x,
            Qt.AlignmentFlag.AlignRight: x - width,
            Qt.AlignmentFlag.AlignCenter: x - width / 2,
        }[align]
        space = QRectF(left, y - height / 2, width, height)
        self._painter.setPen(self._colour(colour))
        self._painter.drawText(space, Qt.AlignmentFlag.AlignVCenter, words)
        return space

    # -- the shoulders --------------------------------------------------------------------------

    def _paint_curve(self, curve: SideCurve) -> None:
        layout, painter = self._layout, self._painter
        name, movement = curve.side.value, self._content.movement
        painter.save()
        painter.setClipRect(self._plot())
        for ribbon in curve.apart_ribbons:
            painter.fillPath(
                ribbon_path(ribbon, layout.days, layout.values), self._colour(name, _APART_BAND)
            )
            painter.setPen(QPen(self._colour(name, 0.75), 1.1))
            painter.drawPolyline(ribbon_line(ribbon, layout.days, layout.values))
        for ribbon in curve.ribbons:
            fill = ribbon_shade(ribbon, layout.days, movement, self._colour(name), curve.affected)
            painter.fillPath(ribbon_path(ribbon, layout.days, layout.values), fill)
            pen = QPen(self._colour(name), 2.6 if curve.affected else 1.6)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            painter.setPen(pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawPolyline(ribbon_line(ribbon, layout.days, layout.values))
        painter.restore()
        for point in curve.points:
            if layout.days.holds(point.day):
                self._paint_point(point, curve.affected)

    def _paint_point(self, point: CurvePoint, strong: bool) -> None:
        layout, place = self._layout, self._layout.place(point)
        colour, size = self._colour(point.side.value), layout.mark_px
        if point.apart and point.value is not None:
            paint_open_mark(self._painter, place, point.side, size, colour)
            return
        if point.low is not None and point.high is not None:
            self._painter.setPen(QPen(self._colour(point.side.value, 0.55), 1.6))
            low, high = layout.values.y(point.low), layout.values.y(point.high)
            self._painter.drawLine(QPointF(place.x(), low), QPointF(place.x(), high))
        paint_mark(
            self._painter,
            place,
            point.side,
            size if strong else size * 0.85,
            colour,
            hollow=self._colour("raised") if point.practice or point.value is None else None,
            dashed=point.value is None,
        )
        if point.value is not None and layout.values.beyond(point.value):
            self._paint_beyond(place, point.value, colour)

    def _paint_beyond(self, place: QPointF, value: float, colour: QColor) -> None:
        """Point outwards from a mark that lies beyond the scale."""
        out = -1 if value > self._layout.values.high else 1
        size = self._layout.mark_px
        tip = place + QPointF(0, out * size * 3)
        foot = place + QPointF(0, out * size * 1.7)
        self._painter.setPen(Qt.PenStyle.NoPen)
        self._painter.setBrush(colour)
        corners = [tip, foot + QPointF(size, 0), foot - QPointF(size, 0)]
        self._painter.drawPolygon(QPolygonF(corners))

    def _paint_side_names(self) -> None:
        """Write each shoulder's name beside the end of its course."""
        layout = self._layout
        ends: list[tuple[float, Side]] = []
        for curve in self._content.curves:
            last = [point.value for point in curve.points if point.value is not None]
            if curve.ribbons:
                ends.append((layout.values.y(float(curve.ribbons[-1].value[-1])), curve.side))
            elif last:
                ends.append((layout.values.y(last[-1]), curve.side))
        ends.sort()
        least = self._metrics.height() * 1.1
        if len(ends) == 2 and ends[1][0] - ends[0][0] < least:
            middle = (ends[0][0] + ends[1][0]) / 2
            ends = [(middle - least / 2, ends[0][1]), (middle + least / 2, ends[1][1])]
        for y, side in ends:
            x = layout.days.right_px + layout.mark_px + _before_mark_px(layout.mark_px)
            paint_mark(self._painter, QPointF(x, y), side, layout.mark_px, self._colour(side.value))
            self._write(x + layout.mark_px + _BESIDE_MARK_PX, y, side_title(side), "ink")

    # -- beneath and above ----------------------------------------------------------------------

    def _paint_pain(self) -> None:
        layout, painter = self._layout, self._painter
        painter.save()
        painter.setClipRect(self._plot())
        for ribbon in self._content.pain:
            path = ribbon_path(ribbon, layout.days, layout.pain)
            painter.fillPath(path, self._colour("quiet", 0.18))
            painter.setPen(QPen(self._colour("quiet"), 1.6))
            painter.drawPolyline(ribbon_line(ribbon, layout.days, layout.pain))
        painter.restore()
        for curve in self._content.curves:
            for point in curve.points:
                if curve.affected and point.pain is not None and layout.days.holds(point.day):
                    place = QPointF(layout.place(point).x(), layout.pain.y(point.pain))
                    paint_mark(
                        painter, place, point.side, layout.mark_px * 0.6, self._colour("quiet")
                    )
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._colour("quiet"))
        for day in self._content.exercise_days:
            if layout.days.holds(day):
                place = QPointF(layout.days.x(day), layout.exercises_y)
                painter.drawEllipse(place, 2.0, 2.0)

    def _paint_flags(self) -> None:
        """Plant a numbered flag on each day of an event or turn; the legend has its words."""
        layout, days = self._layout, self._layout.days
        wide = self._metrics.height() * _FLAG
        foot = layout.flags_y + wide / 2
        placed = placed_flags(
            self._content, days, layout.right_px, self._metrics, named=self._flags_named
        )
        for flag in placed:
            x, middle = days.x(flag.day), flag.middle_px
            self._painter.setPen(QPen(self._colour("edge", 0.7), 1.2))
            poles = [QPointF(middle, foot), QPointF(x, layout.values.top_px)]
            self._painter.drawPolyline(QPolygonF([*poles, QPointF(x, layout.values.bottom_px)]))
            place = QPointF(middle, layout.flags_y)
            paint_number(self._painter, self._appearance, place, wide, flag.number)
            self._painter.setFont(self._font)
            self._write(word_left_px(flag, self._metrics), layout.flags_y, flag.short)

    def paint_chosen(self, point: CurvePoint, words: str) -> None:
        """Paint a ring round a measurement and what it was in a bubble."""
        layout, place = self._layout, self._layout.place(point)
        colour = self._colour(point.side.value)
        self._painter.setPen(QPen(self._colour("edge", 0.6), 1))
        for top, bottom in (
            (layout.values.top_px, layout.values.bottom_px),
            (layout.pain.top_px, layout.pain.bottom_px),
        ):
            self._painter.drawLine(QPointF(place.x(), top), QPointF(place.x(), bottom))
        if point.low is not None and point.high is not None:
            self._painter.setPen(QPen(colour, 3, c=Qt.PenCapStyle.RoundCap))
            low, high = layout.values.y(point.low), layout.values.y(point.high)
            self._painter.drawLine(QPointF(place.x(), low), QPointF(place.x(), high))
        paint_mark(self._painter, place, point.side, layout.mark_px * 1.5, colour)
        self._paint_bubble(place, words)

    def _paint_bubble(self, place: QPointF, words: str) -> None:
        days, line = self._layout.days, self._metrics.height()
        most = min(days.right_px - days.left_px, line * 19)
        flags = Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap
        text = self._metrics.boundingRect(QRectF(0, 0, most, 1000), flags, words)
        box = QRectF(0, 0, text.width() + line, text.height() + line * 0.7)
        left = place.x() - box.width() / 2
        left = min(max(left, days.left_px), days.right_px - box.width())
        top = place.y() + line * 1.6
        if top + box.height() > self._layout.pain.top_px:
            top = place.y() - line * 1.6 - box.height()
        box.moveTo(left, top)
        self._painter.setPen(QPen(self._colour("edge"), 1))
        self._painter.setBrush(self._colour("raised", 0.97))
        self._painter.drawRoundedRect(box, 8, 8)
        self._painter.setPen(self._colour("ink"))
        inner = box.adjusted(line * 0.5, line * 0.35, -line * 0.5 + 2, 0)
        self._painter.drawText(inner, int(flags), words)

    def _plot(self) -> QRectF:
        layout = self._layout
        corner = QPointF(layout.days.left_px, layout.values.top_px - 3)
        return QRectF(corner, QPointF(layout.days.right_px, layout.pain.bottom_px + 3))

    def _colour(self, name: str, opacity: float = 1.0) -> QColor:
        return self._appearance.colour(name, opacity)


def _lower_lines(content: ChartContent | None) -> tuple[float, float, float]:
    """Return the heights of the strips of refusals, pain and exercises, in lines of words.

    Without a content all of them have room.
    """
    refused = content is None or any(point.value is None for point in content.points)
    exercises = content is None or bool(content.exercise_days)
    return (_STRIP * refused, 1 + _PAIN + _BELOW, _STRIP * exercises)


def _upper_lines(content: ChartContent | None) -> float:
    """Return the height above the plot, in lines of words."""
    return _FLAG + _BELOW_FLAG if content is None or content.events or content.turns else _ABOVE


def chart_words_px(appearance: Appearance) -> float:
    """Return the size of the words of a chart and of its legend, pixels."""
    return BODY_PX * (1 + (appearance.percent / 100 - 1) * _WORDS_GROWTH)


def _before_mark_px(mark_px: float) -> float:
    """Return the room between the last day and the mark of a name, which a reading reaches into."""
    return _APART_PX + mark_px + _BEFORE_MARK_PX


def _places_shown(
    movement: Movement, metrics: QFontMetricsF, room_px: float
) -> tuple[tuple[float, str], ...]:
    """Return the heights that are named on the plot, none where they leave its days no room.

    What the axis calls the same, and what has no room above its line, is left out.
    """
    named, (_, high) = dict(_axis_names(movement)), scale_of(movement)
    shown = tuple(
        (value, words)
        for value, words in places(movement)
        if words != named.get(value) and value < high
    )
    widest = max((metrics.horizontalAdvance(words) for _, words in shown), default=0.0)
    return shown if widest <= _MOST_PLACES * room_px else ()


def _axis_names(movement: Movement) -> tuple[tuple[float, str], ...]:
    """Return the values that the axis names, each with its name."""
    return tuple((value, tr(name)) for value, name in value_ticks(movement))


def _stride(names: Sequence[tuple[float, str]], line: float) -> int:
    """Return the least step over the names of an axis at which none meets the next."""
    apart = min(abs(y - other) for (y, _), (other, _) in pairwise(names))
    steps = [step for step in (1, 2, 3) if (len(names) - 1) % step == 0 and step * apart >= line]
    return steps[0] if steps else len(names) - 1


def _axis_px(names: Sequence[tuple[float, str]], metrics: QFontMetricsF) -> float:
    """Return how wide the words left of the chart are."""
    return max(map(metrics.horizontalAdvance, [*(name for _, name in names), "10"]))
