"""Check box with text that wraps, painted in the window's colours."""

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, QSize, Qt, Slot
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QCheckBox, QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.focus_ring import paint_ring, shows_ring
from gui.widgets.layouts import mirrored

#: Room above and below the text and at its end, pixels. [technical]
_MARGIN = 4
#: Room between the text and the ring of the keyboard around it, pixels. [technical]
_FOCUS_PX = 6


class WrappingCheckBox(QCheckBox):
    """A check box whose text wraps; its box begins where the text of its page does."""

    def __init__(self, appearance: Appearance, text: str, parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self._appearance = appearance
        self._heights: dict[tuple[int, str], int] = {}
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setAccessibleName(text)
        appearance.changed.connect(self._appearance_changed)

    @Slot()
    def _appearance_changed(self) -> None:
        self._heights.clear()
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        wide = QFontMetrics(self.font()).horizontalAdvance(self.text()) + self.text_left()
        return QSize(wide + 2 * _MARGIN + 2, self.heightForWidth(wide + 2 * _MARGIN + 2))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.text_left() + 80, self._box() + 2 * _MARGIN)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        """Return the height of the text; kept, for layouts ask many times in a row."""
        key = (width, self.text())
        if key not in self._heights:
            self._heights[key] = self._height_of(width)
        return self._heights[key]

    def changeEvent(self, event: QEvent) -> None:
        self._heights.clear()
        super().changeEvent(event)

    def _height_of(self, width: int) -> int:
        words = self._words_height(width - self.text_left() - _MARGIN)
        return max(self._box(), words) + 2 * _MARGIN + 2

    def _words_height(self, width: int) -> int:
        """Return the height of the text in lines of a width, pixels."""
        space = QRect(0, 0, max(60, width), 10_000)
        metrics = QFontMetrics(self.font())
        return metrics.boundingRect(space, self._flags(), self.text()).height()

    def hitButton(self, place: QPoint) -> bool:
        return self.rect().contains(place)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        try:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint(painter)
        finally:
            painter.end()

    def _paint(self, painter: QPainter) -> None:
        self.paint_box(painter, QRect(0, self._box_top(), self._box(), self._box()))
        painter.setPen(self._appearance.colour("ink" if self.isEnabled() else "quiet"))
        left = self.text_left()
        words = mirrored(self, QRect(left, 0, self.width() - left, self.height()))
        painter.drawText(QRectF(words), self._flags(), self.text())
        if shows_ring(self):
            around = self.rect().adjusted(left - _FOCUS_PX, 0, 0, 0)
            paint_ring(painter, QRectF(mirrored(self, around)))

    def paint_box(self, painter: QPainter, place: QRect) -> None:
        """Paint the box at a place, as where one reads from left to right, with its tick."""
        box = QRectF(mirrored(self, place))
        box.adjust(1, 1, -1, -1)
        filled = self.isChecked() and self.isEnabled()
        painter.setPen(QPen(self._appearance.colour("edge"), 2))
        painter.setBrush(self._appearance.colour("arm" if filled else "raised"))
        painter.drawRoundedRect(box, 4, 4)
        if not self.isChecked():
            return
        pen = QPen(self._appearance.colour("on_arm" if filled else "quiet"), box.width() * 0.13)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        marks = ((0.24, 0.54), (0.43, 0.73), (0.78, 0.3))
        places = (
            QPointF(box.left() + box.width() * x, box.top() + box.height() * y) for x, y in marks
        )
        painter.drawPolyline(QPolygonF(list(places)))

    def _box(self) -> int:
        return round(self._appearance.px() * 1.3)

    def _box_top(self) -> int:
        """Return where the box begins: beside the middle of the text's first line."""
        line = QFontMetrics(self.font()).lineSpacing()
        # As wide as they are painted: words that just fit stand on one line.
        words = max(line, self._words_height(self.width() - self.text_left()))
        above = (self.height() - words) // 2 + (line - self._box()) // 2
        return max(_MARGIN, above)

    def text_left(self) -> int:
        """Return where the text begins, pixels."""
        return _MARGIN + self._box() + round(self._appearance.px() * 0.6)

    @staticmethod
    def _flags() -> int:
        return int(Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap)
