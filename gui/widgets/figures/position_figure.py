"""Drawn person that shows how to stand and which way the arm goes, in a calm loop."""

import math
import sys

from PySide6.QtCore import QElapsedTimer, QPointF, QRectF, QSize, Qt, QTimer
from PySide6.QtGui import QHideEvent, QPainter, QPainterPath, QPen, QShowEvent
from PySide6.QtWidgets import QApplication, QStyle, QWidget

from gui.drawing.scene import paint_scene
from gui.drawing.shown_faults import shown_fault
from gui.drawing.shown_movements import Shown, shown_exercise, shown_movement
from gui.style.appearance import Appearance
from gui.text.session_wording import reason_phrase
from gui.text.wording import exercise_name, movement_plainly, side_name, tr
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.live.events import SetupHint

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
    """

    def __init__(
        self, appearance: Appearance, *, still: bool = False, parent: QWidget | None = None
    ) -> None:
        super().__init__(appearance, parent)
        self._still = still
        self._shown = shown_movement(Movement.FLEXION)
        self._side = Side.RIGHT
        self._mirrored = False
        self._clock = QElapsedTimer()
        self._timer = QTimer(self)
        self._timer.setInterval(_PICTURE_MS)
        self._timer.timeout.connect(self.update)

    @property
    def moving(self) -> bool:
        """Whether the loop plays."""
        return self._timer.isActive()

    def show_movement(self, movement: Movement, side: Side, *, mirrored: bool) -> None:
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

    def show_exercise(self, exercise: ListedExercise, side: Side) -> None:
        self._show(shown_exercise(exercise), side, mirrored=False)
        self.setAccessibleName(
            tr("drawing: {movement}, {side} arm").format(
                movement=exercise_name(Exercise(listed=exercise)), side=side_name(side)
            )
        )

    def _show(self, shown: Shown, side: Side, mirrored: bool) -> None:
        if (shown, side, mirrored) != (self._shown, self._side, self._mirrored):
            self._shown, self._side, self._mirrored = shown, side, mirrored
            self._clock.restart()
            self.update()

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
        )


#: Where a step goes, from above with the screen below: to the own left, and away from the screen.
#: [technical]
_STEPS = {
    SetupHint.STEP_BACK: (0, 1),
    SetupHint.COME_CLOSER: (0, -1),
    SetupHint.STEP_LEFT: (1, 0),
    SetupHint.STEP_RIGHT: (-1, 0),
}


#: Between these turns the way to turn is drawn: further ones are seen by the nose. [technical]
_HALFWAY_DEG = (20, 70)


class ViewPlan(PaintedWidget):
    """From above: the screen, which way the person faces, and where a step is to go.

    The screen lies below, as whoever stands beside the camera sees it. Beside a mirrored picture it
    lies above, as the person sees it: left and right are where they are in the picture.
    """

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._turn_deg = 0.0
        self._side = Side.RIGHT
        self._mirrored = False
        self._step: tuple[int, int] | None = None

    def show_step(self, hint: SetupHint | None) -> None:
        """Show by an arrow where to step; nothing for other hints, or none."""
        step = None if hint is None else _STEPS.get(hint)
        if step != self._step:
            self._step = step
            self.update()

    def show_turn(self, turn_deg: float, side: Side, *, mirrored: bool) -> None:
        """Show a person turned from facing the screen, degrees, positive to the own left."""
        self._turn_deg, self._side, self._mirrored = turn_deg, side, mirrored
        self.setAccessibleName(tr("drawing from above"))
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(130, 150)

    def minimumSizeHint(self) -> QSize:
        return QSize(100, 110)

    def paint(self, painter: QPainter) -> None:
        size = min(self.width(), self.height())
        if self._mirrored:
            painter.translate(self.width(), self.height())
            painter.rotate(180)
        centre = QPointF(self.width() / 2, self.height() * 0.36)
        painter.setPen(QPen(self.appearance.colour("edge"), 2))
        screen = QRectF(
            centre.x() - size * 0.2, self.height() - size * 0.12, size * 0.4, size * 0.05
        )
        painter.setBrush(self.appearance.colour("edge"))
        painter.drawRoundedRect(screen, 2, 2)
        painter.setPen(QPen(self.appearance.colour("edge"), 1.5, Qt.PenStyle.DotLine))
        painter.drawLine(centre + QPointF(0, size * 0.28), QPointF(centre.x(), screen.top() - 4))
        painter.save()
        painter.translate(centre)
        painter.rotate(-self._turn_deg)
        self._paint_person(painter, size)
        painter.restore()
        if _HALFWAY_DEG[0] < abs(self._turn_deg) < _HALFWAY_DEG[1]:
            self._paint_turn(painter, centre, size, self._turn_deg)
        if self._step is not None:
            across, away = self._step
            self._paint_arrow(painter, centre, size, QPointF(across, -away))

    def _paint_turn(self, painter: QPainter, centre: QPointF, size: float, turn_deg: float) -> None:
        """Draw how far to turn from facing the screen: an arc with an arrow's head."""
        radius = size * 0.3
        place = QRectF(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius)
        self._take_arrow_pen(painter, size)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawArc(place, -90 * 16, round(turn_deg * 16))
        angle, sense = math.radians(turn_deg), math.copysign(1.0, turn_deg)
        out = QPointF(math.sin(angle), math.cos(angle))
        way = QPointF(out.y(), -out.x()) * sense
        self._paint_head(painter, size, centre + out * radius, way)

    def _take_arrow_pen(self, painter: QPainter, size: float) -> None:
        pen = QPen(self.appearance.colour("hold"), max(4.0, size * 0.04))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)

    @staticmethod
    def _paint_head(painter: QPainter, size: float, tip: QPointF, way: QPointF) -> None:
        """Draw the head of an arrow that goes a way."""
        aside, back = QPointF(-way.y(), way.x()), tip - way * (size * 0.08)
        painter.drawPolyline([back + aside * (size * 0.08), tip, back - aside * (size * 0.08)])

    def _paint_arrow(self, painter: QPainter, centre: QPointF, size: float, way: QPointF) -> None:
        """Draw an arrow beside the person, or before or behind."""
        far = size * (0.18 if way.x() == 0 else 0.34)
        start, tip = centre + way * far, centre + way * (far + size * 0.2)
        self._take_arrow_pen(painter, size)
        painter.drawLine(start, tip)
        self._paint_head(painter, size, tip, way)

    def _paint_person(self, painter: QPainter, size: float) -> None:
        """Draw shoulders, head and nose of somebody who faces down, towards the screen."""
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("body"))
        painter.drawRoundedRect(
            QRectF(-size * 0.24, -size * 0.085, size * 0.48, size * 0.17), size * 0.08, size * 0.08
        )
        own = 1 if self._side is Side.LEFT else -1
        painter.setBrush(self.appearance.colour("arm"))
        painter.drawEllipse(QPointF(own * size * 0.24, 0), size * 0.075, size * 0.075)
        nose = QPainterPath(QPointF(0, size * 0.2))
        nose.lineTo(-size * 0.07, size * 0.08)
        nose.lineTo(size * 0.07, size * 0.08)
        painter.fillPath(nose, self.appearance.colour("ink"))
        painter.setBrush(self.appearance.colour("ink"))
        painter.drawEllipse(QPointF(0, 0), size * 0.11, size * 0.12)


def facing_text(turn_deg: float) -> str:
    """Return in few words how to stand towards the screen."""
    turn = round(math.fmod(turn_deg + 540, 360) - 180)
    if abs(turn) < 20:
        return tr("face the screen")
    if abs(turn) > 160:
        return tr("back to the screen")
    if abs(turn) > 70:
        return tr("side to the screen")
    return tr("turned halfway")
