"""Scale beneath the live number: follows the arm, then carries the reading's interval.

A final interval opens from its value within a moment, or is there at once where people want no
motion. How much of a hold is done fills a bar of its own, beneath the sentence that asks for it.
"""

from enum import Enum, auto

from PySide6.QtCore import QEasingCurve, QRectF, QSize, Qt, QVariantAnimation
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.drawing.interval_band import paint_band, paint_guide, paint_scale
from gui.style.appearance import Appearance
from gui.text.wording import tr, value_words
from gui.widgets.figures.position_figure import motion_wanted
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import scale_of

#: How long a final interval takes to open, milliseconds. [technical]
OPENING_MS = 420
#: Heights of the scale and of its numbers, as shares of the window's. [technical]
_SCALE, _NUMBERS = 1 / 26, 1 / 20
#: Height of the bar of a hold, pixels. [technical]
_BAR_PX = 12
#: Room beside the scale for half a mark, through which its line goes on, pixels. [technical]
_ASIDE_PX = 6


class BandState(Enum):
    """What the band shows."""

    MOVING = auto()
    MEASURED = auto()
    FINAL = auto()


class LiveBand(PaintedWidget):
    """The scale of a movement with what is known of the trial at hand."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.state = BandState.MOVING
        self._movement = Movement.FLEXION
        self._value: float | None = None
        self._interval: tuple[float, float] | None = None
        self._moment = QVariantAnimation(self)
        self._moment.setDuration(OPENING_MS)
        self._moment.setStartValue(0.0)
        self._moment.setEndValue(1.0)
        self._moment.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._moment.valueChanged.connect(self.update)

    def show_moving(self, movement: Movement, value: float | None) -> None:
        """Show where the arm is; a guide, drawn hollow."""
        self._set(BandState.MOVING, movement, value)

    def show_measured(self, movement: Movement, value: float | None) -> None:
        """Show what was captured and is not final yet."""
        self._set(BandState.MEASURED, movement, value)

    def show_final(
        self, movement: Movement, value: float | None, interval: tuple[float, float]
    ) -> None:
        """Show a final value with its interval."""
        self._set(BandState.FINAL, movement, value, interval)

    def sizeHint(self) -> QSize:
        return QSize(200, max(44, round(self.window().height() * (_SCALE + _NUMBERS))))

    def minimumSizeHint(self) -> QSize:
        return QSize(80, self.sizeHint().height())

    def _set(
        self,
        state: BandState,
        movement: Movement,
        value: float | None,
        interval: tuple[float, float] | None = None,
    ) -> None:
        if state is not self.state:
            if state is BandState.FINAL and motion_wanted() and self.isVisible():
                self._moment.start()
            else:
                self._moment.stop()
        self.state, self._movement, self._value, self._interval = state, movement, value, interval
        self.update()

    def _opened(self) -> float:
        """Return how much of the moment is over, 0..1."""
        running = self._moment.state() is QVariantAnimation.State.Running
        return float(self._moment.currentValue()) if running else 1.0

    def paint(self, painter: QPainter) -> None:
        room = QRectF(self.rect()).adjusted(_ASIDE_PX, 0, -_ASIDE_PX, 0)
        place, numbers = QRectF(room), QRectF(self.rect())
        place.setBottom(self.height() * _SCALE / (_SCALE + _NUMBERS))
        numbers.setTop(place.bottom())
        place.adjust(0, 5, 0, -5)
        paint_scale(painter, self.appearance, place, beyond_px=_ASIDE_PX)
        self._paint_numbers(painter, numbers)
        if self._value is None:
            return
        if self.state is BandState.FINAL and self._interval is not None:
            opened = self._opened()
            low, high = (self._value + (edge - self._value) * opened for edge in self._interval)
            paint_band(painter, self.appearance, place, self._movement, self._value, low, high)
        else:
            paint_guide(painter, self.appearance, place, self._movement, self._value)

    def _paint_numbers(self, painter: QPainter, place: QRectF) -> None:
        """Write both ends and the middle of a scale of degrees beneath it."""
        if MOVEMENTS[self._movement].unit is not Unit.DEGREES:
            return
        painter.setPen(self.appearance.colour("quiet"))
        painter.setFont(self.appearance.font(place.height() * 0.86))
        low, high = scale_of(self._movement)
        sides = Qt.AlignmentFlag
        for degrees, side in (
            (low, sides.AlignLeft),
            ((low + high) / 2, sides.AlignHCenter),
            (high, sides.AlignRight),
        ):
            words = value_words(degrees, Unit.DEGREES)
            painter.drawText(place, side | sides.AlignVCenter, words)


class HoldBar(PaintedWidget):
    """Fills while a position is held; nothing is seen of it otherwise, and its room stays."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        #: How much of the hold is done, 0..1; None without one.
        self.share: float | None = None

    def show_share(self, share: float | None) -> None:
        """Show a hold done to a share of 0..1, or none."""
        share = None if share is None else min(1.0, max(0.0, share))
        if share != self.share:
            self.share = share
            percent = 0 if share is None else round(share * 100)
            words = tr("hold {percent} % complete").format(percent=percent)
            self.setAccessibleName("" if share is None else words)
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(80, _BAR_PX)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paint(self, painter: QPainter) -> None:
        if self.share is None:
            return
        whole = QRectF(self.rect())
        done = QRectF(whole)
        done.setWidth(max(whole.height(), whole.width() * self.share))
        painter.setPen(Qt.PenStyle.NoPen)
        for place, colour in ((whole, "line"), (done, "hold")):
            painter.setBrush(self.appearance.colour(colour))
            painter.drawRoundedRect(place, whole.height() / 2, whole.height() / 2)
