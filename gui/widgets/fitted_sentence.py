"""Sentence of a page, in the largest type that fits."""

from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget

#: Never smaller than this share of the window's height, to be read from three metres. [technical]
LEAST_SHARE = 1 / 15
#: Nor larger than this, so that short sentences do not shout. [technical]
MOST_SHARE = 1 / 11


class FittedSentence(PaintedWidget):
    """Wraps and sizes a sentence so that it fills its space; at least LEAST_SHARE high."""

    def __init__(
        self, appearance: Appearance, *, lines: int = 2, parent: QWidget | None = None
    ) -> None:
        super().__init__(appearance, parent)
        self._lines = lines
        self._text = ""
        self.setAccessibleName("")

    @property
    def text(self) -> str:
        return self._text

    def say(self, text: str) -> None:
        """Show another sentence."""
        if text != self._text:
            self._text = text
            self.setAccessibleName(text)
            self.updateGeometry()
            self.update()

    def sizeHint(self) -> QSize:
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """Return some lines of the least type, or as many as the sentence needs."""
        font = self.appearance.font(self._least_px(), bold=True)
        lines = self._lines * QFontMetricsF(font).lineSpacing()
        return QSize(200, ceil(max(lines, self._needed(font).height())))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def fitted_font(self) -> QFont:
        """Return the largest font between the two shares in which the sentence fits."""
        least, most = self._least_px(), round(self.window().height() * MOST_SHARE)
        for px in range(most, least, -1):
            font = self.appearance.font(px, bold=True)
            if self._fits(font):
                return font
        return self.appearance.font(least, bold=True)

    def paint(self, painter: QPainter) -> None:
        painter.setFont(self.fitted_font())
        painter.setPen(self.appearance.colour("ink"))
        painter.drawText(QRectF(self.rect()), self._flags(), self._text)

    def _fits(self, font: QFont) -> bool:
        needed = self._needed(font)
        return needed.height() <= self.height() and needed.width() <= self.width()

    def _needed(self, font: QFont) -> QRectF:
        space = QRectF(0, 0, self.width(), 100_000)
        return QFontMetricsF(font).boundingRect(space, self._flags(), self._text)

    def _least_px(self) -> int:
        return ceil(self.window().height() * LEAST_SHARE)

    def _flags(self) -> int:
        return int(
            Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        )
