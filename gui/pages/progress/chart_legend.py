"""Legend of the history chart, in the chart's own colours and shapes."""

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.drawing.chart_flags import flags
from gui.drawing.chart_layout import chart_words_px
from gui.drawing.chart_marks import paint_mark, paint_number, paint_open_mark
from gui.drawing.curves import ChartContent
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side

#: Width of a sign, where its words begin, and the room after them, in lines. [technical]
_SIGN, _WORDS_AT, _AFTER = 1.3, 1.65, 0.8

#: Paints a sign into a place: painter, appearance, place.
_Sign = Callable[[QPainter, Appearance, QRectF], None]


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """A sign of the chart, and what it means."""

    words: str
    sign: _Sign


class ChartLegend(PaintedWidget):
    """Lines of signs with their meaning, as many in a line as have room."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self.entries: tuple[LegendEntry, ...] = ()
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_entries(self, entries: Sequence[LegendEntry]) -> None:
        """Show these signs with their meaning; nothing where there are none."""
        self.entries = tuple(entries)
        words = "; ".join(entry.words for entry in self.entries)
        self.setAccessibleName(tr("Legend: {words}").format(words=words))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(400, self.heightForWidth(400))

    def minimumSizeHint(self) -> QSize:
        widest = max((self._width(entry) for entry in self.entries), default=0.0)
        return QSize(round(min(widest, 400.0)), round(self._line()))

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        lines = [place.bottom() for place in self._places(width)]
        return round(max(lines, default=0.0)) + 2

    def paint(self, painter: QPainter) -> None:
        painter.setFont(self._font())
        flags = Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextSingleLine
        for entry, place in zip(self.entries, self._places(self.width()), strict=True):
            sign = QRectF(place.left(), place.top(), self._line() * _SIGN, place.height())
            painter.save()
            entry.sign(painter, self.appearance, sign)
            painter.restore()
            painter.setPen(self.appearance.colour("quiet"))
            painter.drawText(
                place.adjusted(self._line() * _WORDS_AT, 0, 0, 0), int(flags), entry.words
            )

    def _font(self) -> QFont:
        return self.appearance.font(chart_words_px(self.appearance))

    def _line(self) -> float:
        return QFontMetricsF(self._font()).height() * 1.25

    def _width(self, entry: LegendEntry) -> float:
        words = QFontMetricsF(self._font()).horizontalAdvance(entry.words)
        return words + self._line() * (_WORDS_AT + _AFTER)

    def _places(self, width: int) -> list[QRectF]:
        places, x, y, line = [], 0.0, 0.0, self._line()
        for entry in self.entries:
            needed = self._width(entry)
            if x and x + needed > width:
                x, y = 0.0, y + line
            places.append(QRectF(x, y, needed, line))
            x += needed
        return places


def legend_entries(content: ChartContent) -> tuple[LegendEntry, ...]:
    """Return the signs that occur in a chart and are not named in it, with their meaning."""
    points, sides = content.points, [curve.side for curve in content.curves]
    entries: list[LegendEntry] = []
    if not sides:
        return ()
    if any(curve.ribbons for curve in content.curves):
        words = tr("likely course after exercises (95 %)")
        if not content.lines_after:
            words = tr("likely course (95 %)")
        entries.append(LegendEntry(words, _ribbon(sides)))
    if any(point.low is not None for point in points):
        entries.append(LegendEntry(tr("range of a reading"), _whisker(sides)))
    if any(point.practice for point in points):
        practised = {point.side for point in points if point.practice}
        hollow = _hollow([side for side in sides if side in practised])
        entries.append(LegendEntry(tr("practice session"), hollow))
    if any(point.apart and point.value is not None for point in points):
        apart = next(point.side for point in points if point.apart)
        meanings = {
            False: tr("after exercises"),
            True: tr("before exercises"),
            None: tr("before or after exercises, unlike the line"),
        }
        entries.append(LegendEntry(meanings[content.lines_after], _apart(apart)))
    return tuple(entries)


def flag_entries(content: ChartContent, first: dt.date) -> tuple[LegendEntry, ...]:
    """Return the events and turns from a day on, each with its number in the chart."""
    shown = [
        (number, words)
        for number, (day, words, _) in enumerate(flags(content), start=1)
        if first <= day <= content.today
    ]
    return tuple(LegendEntry(words, _numbered(number)) for number, words in shown)


def _numbered(number: int) -> _Sign:
    def paint(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
        paint_number(painter, appearance, place.center(), place.height() * 0.8, number)

    return paint


def _beside(place: QRectF, sides: Sequence[Side]) -> list[tuple[QPointF, Side]]:
    """Return where the marks of shoulders stand beside each other in a place."""
    share = place.width() / max(2, len(sides))
    left = place.center().x() - share * (len(sides) - 1) / 2
    middle = place.center().y()
    return [(QPointF(left + share * number, middle), side) for number, side in enumerate(sides)]


def _hollow(sides: Sequence[Side]) -> _Sign:
    def paint(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
        for middle, side in _beside(place, sides):
            paint_mark(
                painter,
                middle,
                side,
                chart_words_px(appearance) * 0.26,
                appearance.colour(side.value),
                hollow=appearance.colour("raised"),
            )

    return paint


def _apart(side: Side) -> _Sign:
    def paint(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
        colour = appearance.colour(side.value)
        half = QPointF(place.width() / 2, 0)
        painter.setPen(QPen(colour, 1.1))
        painter.drawLine(place.center() - half, place.center() + half)
        paint_open_mark(painter, place.center(), side, chart_words_px(appearance) * 0.24, colour)

    return paint


def _ribbon(sides: Sequence[Side]) -> _Sign:
    def paint(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
        share = place.height() / (len(sides) + 1)
        for number, side in enumerate(sides):
            y = place.top() + share * (number + 1)
            band = QRectF(place.left(), y - share * 0.35, place.width(), share * 0.7)
            painter.fillRect(band, appearance.colour(side.value, 0.35))
            painter.setPen(QPen(appearance.colour(side.value), 2))
            painter.drawLine(QPointF(band.left(), y), QPointF(band.right(), y))

    return paint


def _whisker(sides: Sequence[Side]) -> _Sign:
    def paint(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
        half = QPointF(0, place.height() * 0.38)
        for middle, side in _beside(place, sides):
            painter.setPen(QPen(appearance.colour(side.value, 0.5), 1.8))
            painter.drawLine(middle - half, middle + half)
            paint_mark(
                painter,
                middle,
                side,
                chart_words_px(appearance) * 0.2,
                appearance.colour(side.value),
            )

    return paint
