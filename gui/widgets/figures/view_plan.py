"""Plan from above: where the camera is, which way to face, and where to step."""

import math

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side
from measure.live.events import SetupHint

#: Where a step goes, from above with the camera below: to the own left, and towards the camera.
#: [technical]
_STEPS = {
    SetupHint.STEP_BACK: (0, -1),
    SetupHint.COME_CLOSER: (0, 1),
    SetupHint.STEP_LEFT: (1, 0),
    SetupHint.STEP_RIGHT: (-1, 0),
}
#: Between these turns the way to turn is drawn: further ones are seen by the nose. [technical]
_HALFWAY_DEG = (20, 70)
#: From the person to the camera's bar at least, and with the arrow of a turn between them; the
#: width, in units of the drawing. [technical]
_AHEAD, _AHEAD_OF_TURN, _WIDE = 0.50, 0.62, 0.72
#: Greatest unit as a share of the height: the plan is no wider than a person is high.
#: [technical]
_MOST = 1.05
#: From the middle of the body out to the arm, and the radius of this; out to the round end of the
#: shoulders, and half their depth; half a head; the tip of the nose, in units. [technical]
_ARM_OUT, _ARM, _END_OUT, _HALF_DEEP, _HALF_HEAD, _NOSE = 0.24, 0.075, 0.16, 0.085, 0.12, 0.20
#: Room around the person, in units. [technical]
_AROUND = 0.01
#: Height of the bar with its word, and of one without, as shares of the type and of the unit.
#: [technical]
_NAMED_BAR, _BAR = 1.5, 0.05
#: Room beside the word on the bar, in heights of its type. [technical]
_BESIDE_NAME = 0.8
#: From the person to the arrow of a step, its length, and from it to what is beyond, in units.
#: [technical]
_ARROW_FROM, _ARROW_LONG, _ARROW_EDGE = 0.04, 0.28, 0.06
#: How far the head of an arrow reaches back, and to either side, in units. [technical]
_HEAD, _HEAD_ASIDE = 0.10, 0.075


class ViewPlan(PaintedWidget):
    """From above: the camera, which way the person faces, and where a step is to go.

    The camera lies below, as whoever stands beside it sees it. Beside a mirrored picture it lies
    above, as the person sees it: left and right are where they are in the picture.

    Parameters
    ----------
    named_px
        Size of the word on the camera's bar, pixels; 0 leaves it out, for paper.
    """

    def __init__(
        self, appearance: Appearance, *, named_px: float = 0.0, parent: QWidget | None = None
    ) -> None:
        super().__init__(appearance, parent)
        self._named_px = named_px
        self._turn_deg = 0.0
        self._side = Side.RIGHT
        self._mirrored = False
        self._step: tuple[int, int] | None = None

    def set_named(self, px: float) -> None:
        """Give the word on the camera's bar this size, pixels."""
        if px != self._named_px:
            self._named_px = px
            self.update()

    def show_step(self, hint: SetupHint | None) -> None:
        """Show by an arrow where to step; nothing for other hints, or none."""
        step = None if hint is None else _STEPS.get(hint)
        if step != self._step:
            self._step = step
            self.update()

    def show_turn(self, turn_deg: float, side: Side, *, mirrored: bool) -> None:
        """Show a person turned from facing the camera, degrees, positive to the own left."""
        self._turn_deg, self._side, self._mirrored = turn_deg, side, mirrored
        self.setAccessibleName(tr("drawing from above"))
        self.update()

    def drawn_width(self, high: float) -> float:
        """Return how wide a plan can use a place of a height; an arrow makes it smaller, pixels."""
        return max(self._unit(high) * _WIDE, self._bar_width(0.0))

    def sizeHint(self) -> QSize:
        return QSize(130, 150)

    def minimumSizeHint(self) -> QSize:
        return QSize(100, 110)

    def paint(self, painter: QPainter) -> None:
        wide = max(_WIDE, 2 * self._room(1, 0), 2 * self._room(-1, 0))
        unit = min(self._unit(self.height()), self.width() / wide)
        bar = self._named_px * _NAMED_BAR or unit * _BAR
        # The bar ends at one edge and the person at the other, like the person beside the plan.
        behind = unit * self._room(0, -1)
        far = self.height() - behind
        centre = QPointF(self.width() / 2, far if self._mirrored else behind)
        camera = QRectF(0, 0, self._bar_width(unit), bar)
        camera.moveCenter(
            QPointF(centre.x(), bar / 2 if self._mirrored else self.height() - bar / 2)
        )
        self._paint_camera(painter, camera)
        painter.save()
        painter.translate(centre)
        if self._mirrored:
            painter.rotate(180)
        # The line runs from the person, who hides its beginning, to the camera.
        painter.setPen(QPen(self.appearance.colour("edge"), 2, Qt.PenStyle.DotLine))
        painter.drawLine(QPointF(0, 0), QPointF(0, far - bar))
        painter.save()
        painter.rotate(-self._turn_deg)
        self._paint_person(painter, unit)
        painter.restore()
        if self._is_halfway():
            self._paint_turn(painter, unit)
        if self._step is not None:
            self._paint_step(painter, unit, *self._step)
        painter.restore()

    def _unit(self, high: float) -> float:
        """Return the unit of the drawing in a place of a height, pixels."""
        named = self._named_px * _NAMED_BAR
        ahead = max(_AHEAD_OF_TURN if self._is_halfway() else _AHEAD, self._room(0, 1))
        fitting = (high - named) / (ahead + self._room(0, -1) + (0.0 if named else _BAR))
        return min(fitting, _MOST * high)

    def _room(self, across: int, ahead: int) -> float:
        """Return how far the person reaches a way, with the arrow of a step that way, in units."""
        arrow = _ARROW_FROM + _ARROW_LONG + _ARROW_EDGE if self._step == (across, ahead) else 0.0
        return self._reach(across, ahead) + arrow

    def _reach(self, across: int, ahead: int) -> float:
        """Return how far the person reaches a way: to the own left, towards the camera; units."""
        turn = math.radians(self._turn_deg)
        facing = across * math.sin(turn) + ahead * math.cos(turn)
        sideways = across * math.cos(turn) - ahead * math.sin(turn)
        arm = (_ARM_OUT if self._side is Side.LEFT else -_ARM_OUT) * sideways + _ARM
        shoulders = _END_OUT * abs(sideways) + _HALF_DEEP
        return max(arm, shoulders, _HALF_HEAD, _NOSE * facing) + _AROUND

    def _is_halfway(self) -> bool:
        return _HALFWAY_DEG[0] < abs(self._turn_deg) < _HALFWAY_DEG[1]

    def _bar_width(self, unit: float) -> float:
        if not self._named_px:
            return unit * 0.4
        font = self.appearance.font(self._named_px, bold=True)
        words = QFontMetricsF(font).horizontalAdvance(tr("camera"))
        return min(float(self.width()), words + 2 * _BESIDE_NAME * self._named_px)

    def _paint_camera(self, painter: QPainter, place: QRectF) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("edge"))
        round_px = 6.0 if self._named_px else 2.0
        painter.drawRoundedRect(place, round_px, round_px)
        if self._named_px:
            painter.setPen(self.appearance.colour("raised"))
            painter.setFont(self.appearance.font(self._named_px, bold=True))
            painter.drawText(place, Qt.AlignmentFlag.AlignCenter, tr("camera"))

    def _paint_turn(self, painter: QPainter, unit: float) -> None:
        """Draw how far to turn from facing the camera: an arc round the body, with a head."""
        radius = unit * 0.36
        place = QRectF(-radius, -radius, 2 * radius, 2 * radius)
        self._take_arrow_pen(painter, unit)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawArc(place, -90 * 16, round(self._turn_deg * 16))
        angle, sense = math.radians(self._turn_deg), math.copysign(1.0, self._turn_deg)
        out = QPointF(math.sin(angle), math.cos(angle))
        # The head lies along the arc, which bends within it.
        along = angle - sense * _HEAD / radius * unit / 2
        way = QPointF(math.cos(along), -math.sin(along)) * sense
        self._paint_head(painter, unit, out * radius, way)

    def _paint_step(self, painter: QPainter, unit: float, across: int, ahead: int) -> None:
        """Draw an arrow that leads from the person where the step goes."""
        way, start = QPointF(across, ahead), self._reach(across, ahead) + _ARROW_FROM
        tip = way * (unit * (start + _ARROW_LONG))
        self._take_arrow_pen(painter, unit)
        painter.drawLine(way * (unit * start), tip)
        self._paint_head(painter, unit, tip, way)

    def _take_arrow_pen(self, painter: QPainter, unit: float) -> None:
        pen = QPen(self.appearance.colour("hold"), max(4.0, unit * 0.045))
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)

    @staticmethod
    def _paint_head(painter: QPainter, unit: float, tip: QPointF, way: QPointF) -> None:
        """Draw the head of an arrow that goes a way."""
        aside, back = QPointF(-way.y(), way.x()) * (unit * _HEAD_ASIDE), tip - way * (unit * _HEAD)
        painter.drawPolyline([back + aside, tip, back - aside])

    def _paint_person(self, painter: QPainter, unit: float) -> None:
        """Draw shoulders, head and nose of somebody who faces down, towards the camera."""
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("body"))
        painter.drawRoundedRect(
            QRectF(-unit * 0.24, -unit * 0.085, unit * 0.48, unit * 0.17), unit * 0.08, unit * 0.08
        )
        own = 1 if self._side is Side.LEFT else -1
        painter.setBrush(self.appearance.colour("arm"))
        painter.drawEllipse(QPointF(own * unit * 0.24, 0), unit * 0.075, unit * 0.075)
        nose = QPainterPath(QPointF(0, unit * 0.2))
        nose.lineTo(-unit * 0.07, unit * 0.08)
        nose.lineTo(unit * 0.07, unit * 0.08)
        painter.fillPath(nose, self.appearance.colour("ink"))
        painter.setBrush(self.appearance.colour("ink"))
        painter.drawEllipse(QPointF(0, 0), unit * 0.11, unit * 0.12)
