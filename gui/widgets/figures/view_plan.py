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
#: From the person to where the line begins: who faces the camera or has the back to it,
#: who stands sideways, and beyond the arrow of a turn, in units. [technical]
_LINE_FROM = (0.24, 0.34, 0.44)
#: Greatest unit as a share of the height: the plan is no wider than a person is high.
#: [technical]
_MOST = 1.05
#: Half a body across the shoulders and from front to back, and the tip of the nose, in units.
#: [technical]
_HALF_ACROSS, _HALF_DEEP, _NOSE = 0.32, 0.12, 0.20
#: To the lower edge with an arrow beneath the person, and from an arrow to the edge. [technical]
_BEHIND_STEP, _ARROW_EDGE = 0.52, 0.12
#: Height of the bar with its word, and of one without, as shares of the type and of the unit.
#: [technical]
_NAMED_BAR, _BAR = 1.5, 0.05
#: Room beside the word on the bar, in heights of its type. [technical]
_BESIDE_NAME = 0.8
#: How far from the person an arrow runs, beside shoulders that are turned to it and not, and half
#: its length, in units. [technical]
_ARROW_FAR, _ARROW_NEAR, _ARROW_HALF = 0.42, 0.28, 0.19
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
        wide = max(_WIDE, 2 * (_ARROW_NEAR + _ARROW_EDGE))
        return max(self._unit(high, 0) * wide, self._bar_width(0.0))

    def sizeHint(self) -> QSize:
        return QSize(130, 150)

    def minimumSizeHint(self) -> QSize:
        return QSize(100, 110)

    def paint(self, painter: QPainter) -> None:
        across, ahead = self._step or (0, 0)
        behind = _BEHIND_STEP if across else self._behind()
        wide = 2 * (self._arrow_aside() + _ARROW_EDGE) if ahead else _WIDE
        named = self._named_px * _NAMED_BAR
        unit = min(self._unit(self.height(), across), self.width() / wide)
        bar = named or unit * _BAR
        # The bar ends at one edge and the person at the other, like the person beside the plan.
        end = self.height() - unit * behind
        centre = QPointF(self.width() / 2, end if self._mirrored else unit * behind)
        camera = QRectF(0, 0, self._bar_width(unit), bar)
        camera.moveCenter(
            QPointF(centre.x(), bar / 2 if self._mirrored else self.height() - bar / 2)
        )
        self._paint_camera(painter, camera)
        painter.save()
        painter.translate(centre)
        if self._mirrored:
            painter.rotate(180)
        self._paint_line(painter, unit, self.height() - unit * behind - bar)
        painter.save()
        painter.rotate(-self._turn_deg)
        self._paint_person(painter, unit)
        painter.restore()
        if self._is_halfway():
            self._paint_turn(painter, unit)
        if self._step is not None:
            self._paint_step(painter, unit, across, ahead)
        painter.restore()

    def _unit(self, high: float, across: int) -> float:
        """Return the unit of the drawing in a place of a height, pixels."""
        behind = _BEHIND_STEP if across else self._behind()
        named = self._named_px * _NAMED_BAR
        ahead = _AHEAD_OF_TURN if self._is_halfway() else _AHEAD
        fitting = (high - named) / (ahead + behind + (0.0 if named else _BAR))
        return min(fitting, _MOST * high)

    def _arrow_aside(self) -> float:
        """Return how far beside the person an arrow runs, in units."""
        return _ARROW_NEAR if self._is_sideways() else _ARROW_FAR

    def _behind(self) -> float:
        """Return how far the person reaches away from the camera, in units."""
        turn = math.radians(self._turn_deg)
        across, deep = abs(math.sin(turn)), math.cos(turn)
        return max(_HALF_ACROSS * across + _HALF_DEEP * abs(deep), -_NOSE * deep) + 0.01

    def _is_halfway(self) -> bool:
        return _HALFWAY_DEG[0] < abs(self._turn_deg) < _HALFWAY_DEG[1]

    def _is_sideways(self) -> bool:
        return abs(math.sin(math.radians(self._turn_deg))) > 0.5

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

    def _paint_line(self, painter: QPainter, unit: float, far: float) -> None:
        """Draw the line from the person to the camera so far away, clear of both."""
        painter.setPen(QPen(self.appearance.colour("edge"), 2, Qt.PenStyle.DotLine))
        start = _LINE_FROM[2 if self._is_halfway() else self._is_sideways()]
        painter.drawLine(QPointF(0, unit * start), QPointF(0, far - unit * 0.02))

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
        """Draw an arrow beside the person, or beneath where the step goes aside."""
        way = QPointF(across, ahead)
        nose = math.sin(math.radians(self._turn_deg))
        aside = -1.0 if nose > 0 else 1.0
        beneath = QPointF(0, -unit * _ARROW_FAR)
        middle = beneath if across else QPointF(aside * unit * self._arrow_aside(), 0)
        reach = way * (unit * _ARROW_HALF)
        self._take_arrow_pen(painter, unit)
        painter.drawLine(middle - reach, middle + reach)
        self._paint_head(painter, unit, middle + reach, way)

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
