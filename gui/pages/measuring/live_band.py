"""Band beneath the live number: follows the arm, is filled by a hold, then becomes the reading's.

A captured trial draws together to its place within a moment, and a final one opens to its
interval; where people want no motion both are there at once.
"""

from enum import Enum, auto

from PySide6.QtCore import QEasingCurve, QRectF, QSize, Qt, QVariantAnimation
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.drawing.interval_band import paint_band, paint_guide, paint_scale
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.position_figure import motion_wanted
from measure.domain.movements import Movement
from measure.domain.reading_scale import share_of_scale

#: How long a captured trial takes to land in its place, milliseconds. [technical]
LANDING_MS = 420
#: Height as a share of the window's. [technical]
_SHARE = 1 / 27


class BandState(Enum):
    """What the band shows."""

    MOVING = auto()
    HOLDING = auto()
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
        #: How much of the hold is done, 0..1.
        self.share = 0.0
        self._moment = QVariantAnimation(self)
        self._moment.setDuration(LANDING_MS)
        self._moment.setStartValue(0.0)
        self._moment.setEndValue(1.0)
        self._moment.setEasingCurve(QEasingCurve.Type.OutCubic)
        self._moment.valueChanged.connect(self.update)

    def show_moving(self, movement: Movement, value: float | None) -> None:
        """Show where the arm is; a guide, drawn hollow."""
        self._set(BandState.MOVING, movement, value)

    def show_hold(self, movement: Movement, value: float | None, share: float) -> None:
        """Show a hold done to a share of 0..1."""
        self.share = min(1.0, max(0.0, share))
        self._set(BandState.HOLDING, movement, value)
        self.setAccessibleName(
            tr("hold {percent} % complete").format(percent=round(self.share * 100))
        )

    def show_measured(self, movement: Movement, value: float | None) -> None:
        """Show what was captured and is not final yet."""
        self._set(BandState.MEASURED, movement, value)

    def show_final(
        self, movement: Movement, value: float | None, interval: tuple[float, float]
    ) -> None:
        """Show a final value with its interval."""
        self._set(BandState.FINAL, movement, value, interval)

    def sizeHint(self) -> QSize:
        return QSize(200, max(22, round(self.window().height() * _SHARE)))

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
            self.setAccessibleName("")
            lands = state in (BandState.MEASURED, BandState.FINAL)
            if lands and motion_wanted() and self.isVisible():
                self._moment.start()
            else:
                self._moment.stop()
        self.state, self._movement, self._value, self._interval = state, movement, value, interval
        self.update()

    def _landed(self) -> float:
        """Return how much of the moment is over, 0..1."""
        running = self._moment.state() is QVariantAnimation.State.Running
        return float(self._moment.currentValue()) if running else 1.0

    def paint(self, painter: QPainter) -> None:
        place = QRectF(self.rect()).adjusted(8, 5, -8, -5)
        if self.state is BandState.HOLDING:
            self._bar(painter, place, "line", 1.0)
            done = QRectF(place)
            done.setWidth(max(place.height(), place.width() * self.share))
            self._bar(painter, done, "hold", 1.0)
            return
        paint_scale(painter, self.appearance, place)
        if self._value is None:
            return
        landed = self._landed()
        if self.state is BandState.FINAL and self._interval is not None:
            low, high = (self._value + (edge - self._value) * landed for edge in self._interval)
            paint_band(painter, self.appearance, place, self._movement, self._value, low, high)
            return
        if self.state is BandState.MEASURED and landed < 1.0:
            x = place.left() + place.width() * share_of_scale(self._value, self._movement)
            left = place.left() + (x - place.left()) * landed
            right = place.right() + (x - place.right()) * landed
            drawn = QRectF(left, place.top(), max(right - left, place.height()), place.height())
            self._bar(painter, drawn, "hold", 1.0 - 0.6 * landed)
        paint_guide(painter, self.appearance, place, self._movement, self._value)

    def _bar(self, painter: QPainter, place: QRectF, colour: str, opacity: float) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour(colour, opacity))
        painter.drawRoundedRect(place, place.height() / 2, place.height() / 2)
