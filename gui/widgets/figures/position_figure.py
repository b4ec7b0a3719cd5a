"""Drawn person that shows how to stand and which way the arm goes, in a calm loop."""

import sys

from PySide6.QtCore import QElapsedTimer, QRectF, QSize, Qt, QTimer
from PySide6.QtGui import QHideEvent, QPainter, QShowEvent
from PySide6.QtWidgets import QApplication, QStyle, QWidget

from gui.drawing.scene import close_width, paint_scene
from gui.drawing.shown_faults import shown_fault
from gui.drawing.shown_movements import RAISED_HAND, Shown, shown_exercise, shown_movement
from gui.style.appearance import Appearance
from gui.text.session_wording import reason_phrase
from gui.text.wording import exercise_name, movement_plainly, side_name, tr
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason

#: Time between two pictures of the loop: calm motion, and time left for the network. [technical]
_PICTURE_MS = 50


def motion_wanted() -> bool:
    """Return whether the system lets things move; people whom motion troubles switch it off."""
    if sys.platform == "win32" and not QApplication.isEffectEnabled(Qt.UIEffect.UI_General):
        return False
    duration = QStyle.StyleHint.SH_Widget_Animation_Duration
    return QApplication.style().styleHint(duration) > 0


class PositionView(PaintedWidget):
    """Shows a movement or an exercise on one side, as the camera or as a mirror sees it.

    It moves while it is seen, unless the system asks for less motion; then it shows the end with
    the start as a shade.

    Parameters
    ----------
    still
        Never moves.
    close
        As large as the whole motion has room, instead of in one scale with other movements.
    """

    def __init__(
        self,
        appearance: Appearance,
        *,
        still: bool = False,
        close: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(appearance, parent)
        self._still, self._close = still, close
        self._shown = shown_movement(Movement.FLEXION)
        self._side = Side.RIGHT
        self._mirrored: bool | None = None
        self._clock = QElapsedTimer()
        self._timer = QTimer(self)
        self._timer.setInterval(_PICTURE_MS)
        self._timer.timeout.connect(self.update)

    @property
    def moving(self) -> bool:
        """Whether the loop plays."""
        return self._timer.isActive()

    def show_movement(
        self, movement: Movement, side: Side, *, mirrored: bool | None = None
    ) -> None:
        """Show a movement, beside a camera's picture turned about like it."""
        self._show(shown_movement(movement), side, mirrored)
        self.setAccessibleName(
            tr("drawing: {movement}, {side} arm").format(
                movement=movement_plainly(movement), side=side_name(side)
            )
        )

    def show_fault(self, movement: Movement, side: Side, reason: Reason, *, mirrored: bool) -> bool:
        """Show what kept a movement from being counted; return whether a drawing can show that."""
        shown = shown_fault(movement, reason)
        if shown is not None:
            self._show(shown, side, mirrored)
            self.setAccessibleName(
                tr("drawing: {what}, {side} arm").format(
                    what=reason_phrase(reason), side=side_name(side)
                )
            )
        return shown is not None

    def show_raised_hand(self, side: Side, *, mirrored: bool) -> None:
        """Show the gesture that the camera recognises."""
        self._show(RAISED_HAND, side, mirrored)
        self.setAccessibleName(
            tr("drawing: {what}, {side} arm").format(what=tr("hand raised"), side=side_name(side))
        )

    def show_exercise(self, exercise: ListedExercise, side: Side) -> None:
        self._show(shown_exercise(exercise), side, None)
        self.setAccessibleName(
            tr("drawing: {movement}, {side} arm").format(
                movement=exercise_name(Exercise(listed=exercise)), side=side_name(side)
            )
        )

    def _show(self, shown: Shown, side: Side, mirrored: bool | None) -> None:
        if (shown, side, mirrored) != (self._shown, self._side, self._mirrored):
            self._shown, self._side, self._mirrored = shown, side, mirrored
            self._clock.restart()
            self.update()

    def drawn_width(self, high: float) -> float:
        """Return how wide a close drawing can use a place of a height, pixels."""
        return close_width(self._shown, self._side, high)

    def sizeHint(self) -> QSize:
        return QSize(240, 160)

    def minimumSizeHint(self) -> QSize:
        return QSize(80, 100)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if motion_wanted() and not self._still:
            self._clock.start()
            self._timer.start()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._timer.stop()

    def paint(self, painter: QPainter) -> None:
        time_s = self._clock.elapsed() / 1000 if self.moving else None
        paint_scene(
            painter,
            self.appearance,
            QRectF(self.rect()),
            self._shown,
            self._side,
            time_s=time_s,
            mirrored=self._mirrored,
            close=self._close,
        )
