"""Explanation of the progress page before there are readings."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.drawing.chart_layout import chart_words_px
from gui.drawing.chart_marks import paint_mark
from gui.style.appearance import Appearance
from gui.text.wording import side_title, tr
from gui.widgets.layouts import card, column
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import label
from measure.domain.landmarks import Side

#: Course and half-width of the drawn example, in per cent of its height, and how far its readings
#: lie from the course. Made up. [technical]
_COURSE = (30, 31, 33, 36, 40, 43, 47, 50, 52, 54, 56, 57)
_HALF = (12, 8, 6, 5, 5, 5, 5, 5, 5, 6, 8, 11)
_AWAY = (2, -4, 5, -2, 3, -6, 1, 4, -3, 5, -4, 2)
_OTHER, _OTHER_HALF, _OTHER_AWAY = 84, 5, (-2, 3, 0, -4, 2, 3, -1, -3, 4, 0, -2, 1)

#: Height of the example at 100 %, pixels, and how much lower per cent of larger text, so that its
#: scale is seen whole. [technical]
_HIGH_PX, _LOWER_PX = 240, 0.32
#: Text size up to which a large heading leaves room for the chart, per cent. [technical]
ROOMY_PERCENT = 120


class _ExampleChart(PaintedWidget):
    """A made-up course of both shoulders: ribbons with single readings."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._left = self._wide = 0.0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(tr("a made-up example of a chart"))

    def sizeHint(self) -> QSize:
        return QSize(400, round(_HIGH_PX - _LOWER_PX * (self.appearance.percent - 100)))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, 140)

    def paint(self, painter: QPainter) -> None:
        font = self.appearance.font(chart_words_px(self.appearance))
        metrics = QFontMetricsF(font)
        named = max(metrics.horizontalAdvance(side_title(side)) for side in Side)
        self._wide = self.width() - named - metrics.height() * 0.6
        painter.setFont(font)
        numbers = [f"{45 * quarter}°" for quarter in reversed(range(5))]
        high = metrics.height()
        self._left = max(map(metrics.horizontalAdvance, numbers)) + high * 0.4
        for quarter, number in enumerate(numbers):
            y = self.height() * (0.06 + 0.22 * quarter)
            painter.setPen(QPen(self.appearance.colour("line"), 1))
            painter.drawLine(QPointF(self._left, y), QPointF(self._wide, y))
            painter.setPen(self.appearance.colour("quiet"))
            place = QRectF(0, y - high / 2, self._left - high * 0.4, high)
            sides = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(place, sides, number)
        count = len(_COURSE)
        self._paint_side(painter, Side.RIGHT, [_OTHER] * count, [_OTHER_HALF] * count, _OTHER_AWAY)
        self._paint_side(painter, Side.LEFT, _COURSE, _HALF, _AWAY)

    def _paint_side(
        self,
        painter: QPainter,
        side: Side,
        course: Sequence[int],
        half: Sequence[int],
        away: Sequence[int],
    ) -> None:
        name, places = side.value, range(len(course))

        def at(place: int, level: float) -> QPointF:
            step = (self._wide - self._left) / len(course)
            return QPointF(self._left + step * (place + 0.5), self.height() * (1 - level / 100))

        upper = [at(place, course[place] + half[place]) for place in places]
        lower = [at(place, course[place] - half[place]) for place in places]
        painter.setPen(QPen(self.appearance.colour(name, 0.0), 0))
        painter.setBrush(self.appearance.colour(name, 0.28 if side is Side.LEFT else 0.16))
        painter.drawPolygon(QPolygonF([*upper, *lower[::-1]]))
        painter.setPen(QPen(self.appearance.colour(name), 2.4 if side is Side.LEFT else 1.5))
        painter.drawPolyline(QPolygonF([at(place, course[place]) for place in places]))
        for place in places:
            spot = at(place, course[place] + away[place])
            paint_mark(painter, spot, side, 4.5, self.appearance.colour(name))
        high = QFontMetricsF(painter.font()).height()
        y = at(0, course[-1]).y()
        words = QRectF(self._wide + high * 0.3, y - high / 2, self.width() - self._wide, high)
        painter.setPen(self.appearance.colour(name))
        painter.drawText(words, Qt.AlignmentFlag.AlignVCenter, side_title(side))


class EmptyHistoryHint(QWidget):
    """Says what will stand here, with an example."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        example = card(
            label(tr("A made-up example"), "title"),
            (_ExampleChart(appearance), 1),
            label(
                tr("Each session adds a mark for each arm. The ribbon shows the likely course."),
                "quiet",
            ),
            spacing=appearance.gap(1),
        )
        column(
            label(tr("Your results will appear here."), "display"),
            label(
                tr("After four weeks and eight sessions you see whether the shoulder moves more."),
                "lead",
            ),
            (example, 1),
            label(
                tr(
                    "Two or three sessions a week are enough. One reading can be wrong by several "
                    "degrees, so a single session says little."
                )
            ),
            on=self,
            spacing=appearance.gap(2),
        )
