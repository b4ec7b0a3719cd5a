"""Count of the guided round: seconds of a hold or the repetition, read from across a room."""

from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen

from gui.protocol.exercise_round import ExerciseRound, RoundPhase
from gui.style.appearance import Appearance
from gui.text.exercise_wording import repetition_words
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget

#: Digits and caption are never lower than these shares of the window's height. [technical]
LEAST_DIGITS, LEAST_CAPTION = 1 / 7, 1 / 15
#: Thickness of the ring, and the digits' height, as shares of the ring's diameter. [technical]
_THICK, _DIGITS = 0.07, 0.42


class CountView(PaintedWidget):
    """A large number in a ring that fills during each phase, and the repetition beneath."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self._share = 0.0
        self._digits, self._caption = "", ""
        self._holding = False

    @property
    def digits(self) -> str:
        return self._digits

    @property
    def caption(self) -> str:
        return self._caption

    def show_round(self, guided: ExerciseRound) -> None:
        """Show the seconds left of a hold or of getting ready, else the repetition."""
        self._holding = guided.phase is RoundPhase.HOLD
        counting_down = self._holding or guided.phase is RoundPhase.READY
        number = ceil(guided.left_s) if counting_down else guided.repetition
        self._digits = "" if guided.paused or guided.over else str(number)
        caption = "" if guided.over else repetition_words(guided)
        if caption != self._caption:
            self._caption = caption
            self.updateGeometry()
        self._share = 0.0 if guided.paused else guided.share
        spoken = tr("hold, {count} s left").format(count=number) if self._holding else self._caption
        if spoken != self.accessibleName():
            self.setAccessibleName(spoken)
        self.update()

    def sizeHint(self) -> QSize:
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        ring = self.window().height() * LEAST_DIGITS / _DIGITS
        caption = QFontMetricsF(self._caption_font())
        wide = caption.horizontalAdvance(self._caption)
        return QSize(ceil(max(ring, wide)), ceil(ring + caption.lineSpacing()))

    def caption_px(self) -> int:
        """Return the size of the caption's type, pixels."""
        return ceil(self.window().height() * LEAST_CAPTION)

    def digits_px(self) -> float:
        """Return how high the digits are, pixels."""
        return self._ring().height() * _DIGITS

    def paint(self, painter: QPainter) -> None:
        ring = self._ring()
        thick = ring.width() * _THICK
        pen = QPen(self.appearance.colour("line"), thick)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        inner = ring.adjusted(thick / 2, thick / 2, -thick / 2, -thick / 2)
        painter.setPen(pen)
        painter.drawEllipse(inner)
        if self._share > 0:
            pen.setColor(self.appearance.colour("hold" if self._holding else "edge"))
            painter.setPen(pen)
            painter.drawArc(inner, 90 * 16, -round(self._share * 360 * 16))
        painter.setPen(self.appearance.colour("hold" if self._holding else "ink"))
        painter.setFont(self.appearance.digit_font(self.digits_px()))
        painter.drawText(ring, Qt.AlignmentFlag.AlignCenter, self._digits)
        painter.setPen(self.appearance.colour("ink"))
        painter.setFont(self._caption_font())
        beneath = QRectF(0, ring.bottom(), self.width(), self.height() - ring.bottom())
        painter.drawText(beneath, Qt.AlignmentFlag.AlignCenter, self._caption)

    def _caption_font(self) -> QFont:
        return self.appearance.font(self.caption_px(), bold=True)

    def _ring(self) -> QRectF:
        """Return the square of the ring, above the caption."""
        room = self.height() - QFontMetricsF(self._caption_font()).lineSpacing()
        side = min(room, self.width())
        return QRectF((self.width() - side) / 2, (room - side) / 2, side, side)
