"""Painting of the history chart: ribbons with single readings, events as flags above them.

The days stand right beneath the readings; below them are strips of measurements without a result,
pain, and exercises, each with its title above it. The shoulders are named at the ends of their
courses, in their colours, and known heights at their lines.

Dashes stand for a measurement without a result and for nothing else. The left shoulder is a dark
ribbon with discs, the right one a light ribbon with squares, so that both stay apart in grey.
"""

import datetime as dt

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from gui.drawing.chart_flags import flags, placed_flags, word_left_px
from gui.drawing.chart_layout import BESIDE_MARK_PX, EDGE_PX, FLAG, ChartLayout, stride
from gui.drawing.chart_marks import (
    paint_mark,
    paint_number,
    paint_open_mark,
    ribbon_line,
    ribbon_path,
    ribbon_shade,
)
from gui.drawing.curves import ChartContent, CurvePoint, SideCurve
from gui.drawing.place_names import ends_apart
from gui.style.appearance import Appearance
from gui.text.chart_wording import tick_words
from gui.text.wording import side_title, tr
from measure.domain.landmarks import Side

#: Opacity of the band of sessions that the main line leaves out. [technical]
_APART_BAND = 0.1
#: Space between the beginning of a line and the name of a height there, pixels. [technical]
_BESIDE_PLACE_PX = 4


class ChartPainter:
    """Paints one content in one layout."""

    def __init__(
        self,
        painter: QPainter,
        appearance: Appearance,
        content: ChartContent,
        layout: ChartLayout,
    ) -> None:
        self._painter, self._appearance = painter, appearance
        self._content, self._layout = content, layout
        self._font = appearance.font(layout.words_px)
        self._metrics = QFontMetricsF(self._font)
        painter.setFont(self._font)

    def paint(self) -> None:
        """Paint everything but what follows the pointer."""
        self._paint_axes()
        if not self._layout.places_beside:
            self._paint_places()
        self._paint_days()
        self._paint_flags()
        self._paint_pain()
        # The affected side lies on top of the one it is compared with.
        for curve in sorted(self._content.curves, key=lambda curve: curve.affected):
            self._paint_curve(curve)
        self._paint_names()

    # -- axes -----------------------------------------------------------------------------------

    def _paint_axes(self) -> None:
        values, pain = self._layout.values, self._layout.pain
        names = [(values.y(value), name) for value, name in self._layout.names]
        names = names[:: stride(names, self._metrics.height())]
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

    def _paint_days(self) -> None:
        days, y = self._layout.days, self._layout.values.bottom_px
        width = self._metrics.horizontalAdvance
        unit, ticks = days.ticks(width("30 MMM  "), width("MMM  "))
        for day in ticks:
            x = days.x(day)
            self._painter.setPen(QPen(self._colour("edge"), 1))
            self._painter.drawLine(QPointF(x, y), QPointF(x, y + 5))
            words = tick_words(unit, day)
            # Names at the ends of the lines are not met.
            x = min(x, self._layout.sides_px - 6 - width(words) / 2)
            self._write(
                x, y + self._metrics.height() * 0.75, words, "quiet", Qt.AlignmentFlag.AlignCenter
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

    def _paint_names(self) -> None:
        """Name shoulders at the ends of their courses, levels of the spine at those of lines.

        The mark of its readings stands before the name of a shoulder: it is told without colour.
        """
        layout = self._layout
        ends: list[tuple[float, Side]] = []
        for curve in self._content.curves:
            last = [point.value for point in curve.points if point.value is not None]
            if curve.ribbons:
                ends.append((layout.values.y(float(curve.ribbons[-1].value[-1])), curve.side))
            elif last:
                ends.append((layout.values.y(last[-1]), curve.side))
        ends.sort()
        beside = layout.places if layout.places_beside else ()
        heights = {layout.values.y(value): words for value, words in beside}
        least = 0.95 * self._metrics.height()
        named, kept = ends_apart([y for y, _ in ends], sorted(heights), least)
        for y, (_, side) in zip(named, ends, strict=True):
            half, colour = layout.named_mark_px, self._colour(side.value)
            middle = layout.sides_px + half + EDGE_PX
            paint_mark(self._painter, QPointF(middle, y), side, half, colour)
            name = middle + half + BESIDE_MARK_PX
            self._write(name, y, side_title(side), side.value)
        for y in kept:
            self._write(layout.sides_px, y, heights[y])

    def _paint_places(self) -> None:
        """Name known heights at their lines where nothing else is drawn, as far right as possible.

        Right above a line or beneath it, at its end, else before a flag, else at its beginning.
        """
        layout, days, high = self._layout, self._layout.days, self._metrics.height()
        drawn, poles = (
            self._drawn(),
            sorted((days.x(day) for day in self._flag_days()), reverse=True),
        )
        for value, words in layout.places:
            wide, y = self._metrics.horizontalAdvance(words), layout.values.y(value)
            ends = [days.right_px, *(x - _BESIDE_PLACE_PX for x in poles)]
            lefts = [*(end - wide for end in ends), layout.left_px + _BESIDE_PLACE_PX]
            tries = (QRectF(left, top, wide, high) for left in lefts for top in (y - high, y))
            free = (
                place
                for place in tries
                if place.left() > layout.left_px
                and place.bottom() <= layout.values.bottom_px
                and not drawn.intersects(place)
            )
            place = next(free, None)
            if place is not None:
                self._write(place.left(), place.center().y(), words)

    def _flag_days(self) -> list[dt.date]:
        """Return the days in sight on which a flag stands."""
        return [flag.day for flag in flags(self._content) if self._layout.days.holds(flag.day)]

    def _drawn(self) -> QPainterPath:
        """Return what readings, courses and flags cover."""
        days, values, half = self._layout.days, self._layout.values, self._layout.mark_px
        drawn = QPainterPath()
        drawn.setFillRule(Qt.FillRule.WindingFill)
        for curve in self._content.curves:
            for point in curve.points:
                if point.value is not None and days.holds(point.day):
                    top = values.y(point.value if point.high is None else point.high)
                    low = values.y(point.value if point.low is None else point.low)
                    left = self._layout.place(point).x() - half
                    drawn.addRect(QRectF(left, top - half, 2 * half, low - top + 2 * half))
            for ribbon in (*curve.ribbons, *curve.apart_ribbons):
                drawn.addPath(ribbon_path(ribbon, days, values))
        for day in self._flag_days():
            x = days.x(day)
            drawn.addRect(QRectF(x - 1, values.top_px, 2, values.bottom_px - values.top_px))
        return drawn

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
        wide = self._metrics.height() * FLAG
        foot = layout.flags_y + wide / 2
        placed = placed_flags(self._content, days, layout.right_px, self._metrics)
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
