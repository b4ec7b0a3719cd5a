"""Count of the guided round: seconds of a hold or the repetition, read from across a room."""

from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from gui.protocol.exercise_round import ExerciseRound, RoundPhase
from gui.style.appearance import Appearance
from gui.text.exercise_wording import count_unit, repetition_words
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget

#: Digits and the words beneath are never lower than these shares of the window's height.
#: [technical]
LEAST_DIGITS, LEAST_CAPTION = 1 / 7, 1 / 15
#: Thickness of the ring, and the digits' height, as shares of the ring's diameter. [technical]
_THICK, _DIGITS = 0.07, 0.42
#: Height of the sign of the seconds as a share of the digits', and the space before it. [technical]
_SIGN, _BEFORE_SIGN = 0.36, 0.10
#: From the middle of the ring up to the middle of digits with words beneath, and down to that of
#: the words, as shares of the diameter. [technical]
_DIGITS_UP, _WORDS_DOWN = 0.09, 0.25
#: Height of the bars of a pause, their width, and from the middle to either, as shares of the
#: diameter. [technical]
_BAR_HIGH, _BAR_WIDE, _BAR_ASIDE = 0.34, 0.10, 0.10


class CountView(PaintedWidget):
    """A large number with its unit in a ring that fills during each phase; two bars in a pause."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self._share = 0.0
        self._digits, self._sign, self._caption = "", "", ""
        self._holding = self._paused = False

    @property
    def digits(self) -> str:
        return self._digits

    @property
    def sign(self) -> str:
        """What stands beside the digits: "s" where seconds are counted, else nothing."""
        return self._sign

    @property
    def caption(self) -> str:
        """What stands beneath the digits: of how many repetitions, or nothing."""
        return self._caption

    def show_round(self, guided: ExerciseRound) -> None:
        """Show the seconds left of a hold or of getting ready, else the repetition."""
        self._holding = guided.phase is RoundPhase.HOLD
        counting_down = self._holding or guided.phase is RoundPhase.READY
        number = ceil(guided.left_s) if counting_down else guided.repetition
        self._paused = guided.paused
        shown = not (guided.paused or guided.over)
        self._digits = str(number) if shown else ""
        self._sign = tr("s") if shown and counting_down else ""
        self._caption = count_unit(guided) if shown and not counting_down else ""
        self._share = 0.0 if guided.paused else guided.share
        repetition = "" if guided.over else repetition_words(guided)
        spoken = tr("hold, {count} s left").format(count=number) if self._holding else repetition
        if spoken != self.accessibleName():
            self.setAccessibleName(spoken)
        self.update()

    def sizeHint(self) -> QSize:
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        ring = ceil(self.window().height() * LEAST_DIGITS / _DIGITS)
        return QSize(ring, ring)

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
        if self._paused:
            self._paint_pause(painter, ring)
            return
        painter.setPen(self.appearance.colour("hold" if self._holding else "ink"))
        self._paint_number(painter, ring)
        painter.setPen(self.appearance.colour("ink"))
        painter.setFont(self.appearance.font(self.caption_px(), bold=True))
        painter.drawText(
            ring.translated(0, ring.height() * _WORDS_DOWN),
            Qt.AlignmentFlag.AlignCenter,
            self._caption,
        )

    def _paint_number(self, painter: QPainter, ring: QRectF) -> None:
        """Paint the digits, with the sign of seconds on their line."""
        high = self.digits_px()
        digits = self.appearance.digit_font(high)
        sign = self.appearance.digit_font(high * _SIGN)
        wide = QFontMetricsF(digits).horizontalAdvance(self._digits)
        beside = high * _BEFORE_SIGN + QFontMetricsF(sign).horizontalAdvance(self._sign)
        left = ring.center().x() - (wide + (beside if self._sign else 0.0)) / 2
        up = _DIGITS_UP * ring.height() if self._caption else 0.0
        base = ring.center().y() + high / 2 - up
        painter.setFont(digits)
        painter.drawText(QPointF(left, base), self._digits)
        painter.setFont(sign)
        painter.drawText(QPointF(left + wide + high * _BEFORE_SIGN, base), self._sign)

    def _paint_pause(self, painter: QPainter, ring: QRectF) -> None:
        side = ring.height()
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("quiet"))
        for aside in (-_BAR_ASIDE, _BAR_ASIDE):
            bar = QRectF(0, 0, side * _BAR_WIDE, side * _BAR_HIGH)
            bar.moveCenter(ring.center() + QPointF(side * aside, 0))
            painter.drawRoundedRect(bar, bar.width() / 4, bar.width() / 4)

    def _ring(self) -> QRectF:
        """Return the square of the ring."""
        side = min(self.height(), self.width())
        return QRectF((self.width() - side) / 2, (self.height() - side) / 2, side, side)
