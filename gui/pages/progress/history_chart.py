"""Chart of readings over weeks: pointer and arrow keys say what each reading was."""

import datetime as dt
import math

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPen,
)
from PySide6.QtWidgets import QWidget

from gui.drawing.chart_layout import ChartLayout, chart_words_px
from gui.drawing.chart_scales import ChartRange, first_day
from gui.drawing.course_chart import ChartPainter
from gui.drawing.curves import ChartContent, CurvePoint
from gui.pages.progress.chart_sentences import chart_name, chart_sentence, keys_hint, point_words
from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget

#: Heights of readings and days in sizes of the chart's words: the greatest, and the one from which
#: on pain beneath them is to be seen at once too. [technical]
_MOST, _AMPLE = 24.0, 19.0
#: Room around all that is drawn, pixels. [technical]
_BESIDE_PX = 6
#: Farthest that the pointer may be from a reading to choose it, in sizes of the text. [technical]
_REACH = 2.0


class HistoryChart(PaintedWidget):
    """The chart of one movement. A click or Enter on a reading opens its session."""

    #: A MeasurementRecord.
    picked = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        #: What is shown, or None.
        self.content: ChartContent | None = None
        self._range = ChartRange.ALL
        #: The reading that is spoken of, or None.
        self.chosen: CurvePoint | None = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_content(self, content: ChartContent, chosen: ChartRange) -> None:
        """Show this content, as far back as chosen."""
        self.content, self._range = content, chosen
        self.chosen = None
        self.updateGeometry()
        self.setAccessibleName(chart_name(content))
        self.setAccessibleDescription(f"{chart_sentence(content)} {keys_hint()}")
        self.update()

    @property
    def points(self) -> list[CurvePoint]:
        """The measurements in sight, the earliest first."""
        return [] if self.content is None else points_in(self.content, self._range)

    @property
    def layout_now(self) -> ChartLayout:
        """Where everything lies at the present size; only with a content."""
        assert self.content is not None
        return ChartLayout.of(
            self.content,
            self.first_shown,
            QRectF(self.rect()).adjusted(_BESIDE_PX, _BESIDE_PX, -_BESIDE_PX, -_BESIDE_PX),
            self.appearance,
        )

    def fold_spans(self) -> list[tuple[int, int]]:
        """Return the edges of readings with their days, and of what lies beneath them, pixels."""
        lower = ChartLayout.lower_height(self.content, self.appearance)
        beneath = self.height() - _BESIDE_PX - lower
        return [(0, beneath), (beneath + ChartLayout.space(self.appearance), self.height())]

    def sizeHint(self) -> QSize:
        least = ChartLayout.least_height(self.content, self.appearance)
        return QSize(self.appearance.px(40), least)

    def minimumSizeHint(self) -> QSize:
        return QSize(self.appearance.px(20), self.sizeHint().height())

    def fit_height(self, room_px: int) -> None:
        """Let readings and days fill this room, and pain too where there is ample room."""
        least = ChartLayout.least_height(self.content, self.appearance)
        lower = ChartLayout.lower_height(self.content, self.appearance)
        words = chart_words_px(self.appearance)
        wanted = room_px if room_px >= lower + _AMPLE * words else room_px + lower + _BESIDE_PX
        high = max(least, min(round(_MOST * words) + lower, wanted))
        if high != self.minimumHeight():
            self.setFixedHeight(high)

    def paint(self, painter: QPainter) -> None:
        if self.content is None:
            return
        chart = ChartPainter(
            painter,
            self.appearance,
            self.content,
            self.layout_now,
        )
        chart.paint()
        if self.chosen is not None:
            chart.paint_chosen(self.chosen, point_words(self.chosen))
        if self.hasFocus():
            painter.setPen(QPen(self.appearance.colour("arm"), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 8, 8)

    # -- pointer and keys -------------------------------------------------------------------------

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._choose(self._nearest(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        point = self._nearest(event.position())
        if point is not None and event.button() is Qt.MouseButton.LeftButton:
            self.picked.emit(point.record)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        if not self.hasFocus():
            self._choose(None)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._choose(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go from reading to reading; Enter opens the session of the chosen one."""
        points, key = self.points, event.key()
        last = len(points) - 1
        at = points.index(self.chosen) if self.chosen in points else None
        goals = {
            Qt.Key.Key_Right: 0 if at is None else min(at + 1, last),
            Qt.Key.Key_Left: last if at is None else max(at - 1, 0),
            Qt.Key.Key_Home: 0,
            Qt.Key.Key_End: last,
        }
        if key in goals and points:
            self._choose(points[goals[Qt.Key(key)]], spoken=True)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.chosen is not None:
            self.picked.emit(self.chosen.record)
        else:
            super().keyPressEvent(event)

    def _choose(self, point: CurvePoint | None, *, spoken: bool = False) -> None:
        if point is self.chosen:
            return
        self.chosen = point
        self.setCursor(
            Qt.CursorShape.ArrowCursor if point is None else Qt.CursorShape.PointingHandCursor
        )
        if point is not None and spoken:
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, point_words(point)))
        self.update()

    def _nearest(self, place: QPointF) -> CurvePoint | None:
        """Return the measurement nearest to the pointer, or None where none is near."""
        if self.content is None:
            return None
        layout = self.layout_now

        def away(point: CurvePoint) -> float:
            to = layout.place(point) - place
            return math.hypot(to.x(), to.y())

        nearest = min(self.points, key=away, default=None)
        near = nearest is not None and away(nearest) <= _REACH * self.appearance.px()
        return nearest if near else None

    @property
    def first_shown(self) -> dt.date:
        """The first day in sight; only with a content."""
        content = self.content
        assert content is not None
        return _first(content, self._range)


def points_in(content: ChartContent, chosen: ChartRange) -> list[CurvePoint]:
    """Return the measurements of a content within the time chosen, the earliest first."""
    first = _first(content, chosen)
    return [point for point in content.points if first <= point.day <= content.today]


def _first(content: ChartContent, chosen: ChartRange) -> dt.date:
    return first_day([point.day for point in content.points], content.today, chosen)
