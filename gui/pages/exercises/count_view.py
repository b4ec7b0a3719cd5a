"""Count of the guided round: seconds of a hold or the repetition, read from across a room."""

from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen

from gui.drawing.pause_bars import paint_pause_bars
from gui.protocol.exercise_round import ExerciseRound, RoundPhase
from gui.style.appearance import Appearance
from gui.text.exercise_wording import count_unit, repetition_words
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget

#: Digits and the words beneath are never lower than these shares of the window's height.
#: [technical]
LEAST_DIGITS, LEAST_CAPTION = 1 / 7, 1 / 15
#: Thickness of the ring, of the thin one in it, the space between them, and the digits' height, as
#: shares of the ring's diameter. [technical]
_THICK, _THIN, _BETWEEN, _DIGITS = 0.06, 0.018, 0.018, 0.38
#: From the middle of the ring up to the middle of the digits, and down to that of the words
#: beneath, as shares of the diameter. [technical]
_DIGITS_UP, _WORDS_DOWN = 0.07, 0.25
#: Room for the words beneath the digits as a share of the diameter. [technical]
_WORDS_ROOM = 0.56
#: Space between the digits and a unit beside them as a share of the diameter. [technical]
_UNIT_GAP = 0.03
#: Most repetitions that have a part of the ring each, and the space between two, degrees.
#: [technical]
_MOST_PARTS, _PART_GAP_DEG = 20, 3.0
#: Phases of a repetition.
_DOING = (RoundPhase.MOVE, RoundPhase.HOLD, RoundPhase.BACK, RoundPhase.SWING)


class CountView(PaintedWidget):
    """A large number with its unit in two rings; two bars in a pause.

    Both rings fill: the thick one with the repetitions, of which the present one is
    darker; the thin one during a movement, a hold or a rest.
    """

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        #: What the thin ring shows, 0..1; None where nothing ends by itself.
        self._share: float | None = None
        self._done, self._planned, self._doing = 0, 0, False
        self._digits, self._unit = "", ("", "")
        self._holding = self._paused = False

    @property
    def digits(self) -> str:
        return self._digits

    @property
    def caption(self) -> str:
        """What stands beneath the digits: seconds, of how many repetitions, or nothing."""
        return self._unit[0]

    def show_round(self, guided: ExerciseRound) -> None:
        """Show the seconds left of a hold, a rest or of getting ready, else the repetition."""
        self._holding = guided.phase is RoundPhase.HOLD
        counting_down = guided.phase in (RoundPhase.HOLD, RoundPhase.READY, RoundPhase.REST)
        number = ceil(guided.left_s) if counting_down else guided.repetition
        self._paused = guided.paused
        self._done, self._planned = guided.done, guided.task.planned.repetitions or 0
        self._doing = guided.phase in _DOING and not guided.paused
        shown = not (guided.paused or guided.over)
        unit = count_unit(guided)
        seconds = (tr("second") if number == 1 else tr("seconds"), tr("s"))
        self._digits = str(number) if shown else ""
        self._unit = (seconds if counting_down else unit) if shown else ("", "")
        # A swing has no end to wait for.
        still = guided.paused or guided.phase is RoundPhase.SWING
        self._share = None if still else guided.share
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
        self._paint_repetitions(painter, ring)
        self._paint_phase(painter, ring)
        if self._paused:
            paint_pause_bars(painter, self.appearance.colour("quiet"), ring)
            return
        painter.setPen(self.appearance.colour("hold" if self._holding else "ink"))
        self._paint_number(painter, ring)
        painter.setPen(self.appearance.colour("ink"))
        if not self._beside(ring):
            painter.setFont(self._caption_font())
            place = ring.translated(0, ring.height() * _WORDS_DOWN)
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, self._unit[0])

    def _caption_font(self) -> QFont:
        return self.appearance.font(self.caption_px(), bold=True)

    def _beside(self, ring: QRectF) -> str:
        """Return what stands beside the digits where the words have no room beneath them."""
        words, short = self._unit
        wide = QFontMetricsF(self._caption_font()).horizontalAdvance(words)
        return short if short != words and wide > ring.width() * _WORDS_ROOM else ""

    def _paint_repetitions(self, painter: QPainter, ring: QRectF) -> None:
        """Paint the thick ring: a part for each repetition where they are few, filled when done."""
        thick = ring.width() * _THICK
        inner = ring.adjusted(thick / 2, thick / 2, -thick / 2, -thick / 2)
        parts = self._planned if 1 < self._planned <= _MOST_PARTS else 1
        gap = _PART_GAP_DEG if parts > 1 else 0.0
        share = self._done / self._planned if self._planned else 0.0
        for part in range(parts):
            filled = min(1.0, max(0.0, share * parts - part))
            begin, span = part * 360 / parts + gap / 2, 360 / parts - gap
            self._arc(painter, inner, thick, "line", (begin, span))
            if filled:
                self._arc(painter, inner, thick, "arm", (begin, span * filled))
            elif self._doing and parts > 1 and part == self._done:
                self._arc(painter, inner, thick, "edge", (begin, span))

    def _paint_phase(self, painter: QPainter, ring: QRectF) -> None:
        if self._share is None:
            return
        thin = ring.width() * _THIN
        inset = ring.width() * (_THICK + _BETWEEN) + thin / 2
        inner = ring.adjusted(inset, inset, -inset, -inset)
        colour = "hold" if self._holding else "edge"
        self._arc(painter, inner, thin, "line", (0.0, 360.0))
        self._arc(painter, inner, thin, colour, (0.0, self._share * 360))

    def _arc(
        self,
        painter: QPainter,
        place: QRectF,
        thick: float,
        colour: str,
        degrees: tuple[float, float],
    ) -> None:
        """Paint an arc from so many degrees after the top, clockwise, over so many."""
        pen = QPen(self.appearance.colour(colour), thick)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        begin, span = degrees
        painter.drawArc(place, round((90 - begin) * 16), -round(span * 16))

    def _paint_number(self, painter: QPainter, ring: QRectF) -> None:
        """Paint the digits, and a unit that stands beside them, their ink in the middle."""
        font, unit = self.appearance.digit_font(self.digits_px()), self._beside(ring)
        seen = QFontMetricsF(font).tightBoundingRect(self._digits)
        gap = ring.width() * _UNIT_GAP
        more = gap + QFontMetricsF(self._caption_font()).horizontalAdvance(unit) if unit else 0.0
        up = _DIGITS_UP * ring.height() if self.caption and not unit else 0.0
        start = ring.center() - seen.center() - QPointF(more / 2, up)
        painter.setFont(font)
        painter.drawText(start, self._digits)
        if unit:
            painter.setFont(self._caption_font())
            painter.drawText(start + QPointF(seen.right() + gap, 0), unit)

    def _ring(self) -> QRectF:
        """Return the square of the ring."""
        side = min(self.height(), self.width())
        return QRectF((self.width() - side) / 2, (self.height() - side) / 2, side, side)
