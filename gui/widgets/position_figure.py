"""Drawn person that shows how to stand and which way the arm goes."""

import math

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QWidget

from gui.drawing.posture_figure import BodyFigure, Point2D, body_figure
from gui.style.appearance import Appearance
from gui.text.wording import movement_plainly, side_name, tr
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: The figure reaches so far from the hips, in body heights: up, down, to either side. [technical]
_UP, _DOWN, _ACROSS = 0.56, 0.52, 0.48


class PositionView(PaintedWidget):
    """Shows one movement on one side, as the camera or as a mirror sees it."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._movement = Movement.FLEXION
        self._side = Side.RIGHT
        self._mirrored = False

    def show_movement(self, movement: Movement, side: Side, *, mirrored: bool) -> None:
        self._movement, self._side, self._mirrored = movement, side, mirrored
        self.setAccessibleName(
            tr("drawing: {movement}, {side} arm").format(
                movement=movement_plainly(movement), side=side_name(side)
            )
        )
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(260, 330)

    def minimumSizeHint(self) -> QSize:
        return QSize(80, 100)

    def paint(self, painter: QPainter) -> None:
        scale = min(self.height() / (_UP + _DOWN), self.width() / (2 * _ACROSS))
        centre = QPointF(self.width() / 2, self.height() * _UP / (_UP + _DOWN))
        drawn = body_figure(self._movement, self._side, mirrored=self._mirrored)
        FigurePainter(painter, self.appearance, scale, centre).paint(drawn)


class FigurePainter:
    """Puts a figure's points on a painter."""

    def __init__(
        self, painter: QPainter, appearance: Appearance, scale: float, centre: QPointF
    ) -> None:
        self._painter, self._appearance, self._scale, self._centre = (
            painter,
            appearance,
            scale,
            centre,
        )

    def paint(self, drawn: BodyFigure) -> None:
        behind = self._faces_left_or_right(drawn)
        self._floor()
        if not behind:
            self._limb(drawn.other_arm, "body", 0.035)
        self._trunk(drawn)
        self._path(drawn)
        self._limb(drawn.start_arm, "arm", 0.04, opacity=0.3)
        self._limb(drawn.end_arm, "arm", 0.048)
        self._hand(drawn.end_arm[2])

    @staticmethod
    def _faces_left_or_right(drawn: BodyFigure) -> bool:
        """In a side view the other arm is hidden behind the trunk."""
        return abs(drawn.shoulders[0][0] - drawn.shoulders[1][0]) < 0.02

    def _at(self, point: Point2D) -> QPointF:
        return self._centre + QPointF(point[0], point[1]) * self._scale

    def _pen(self, colour: str, thick: float, opacity: float = 1.0) -> QPen:
        pen = QPen(self._appearance.colour(colour, opacity), thick * self._scale)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        return pen

    def _limb(
        self, points: tuple[Point2D, ...], colour: str, thick: float, opacity: float = 1.0
    ) -> None:
        path = QPainterPath(self._at(points[0]))
        for point in points[1:]:
            path.lineTo(self._at(point))
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.setPen(self._pen(colour, thick, opacity))
        self._painter.drawPath(path)

    def _trunk(self, drawn: BodyFigure) -> None:
        """Draw legs, a soft trunk, its line, and the head with the nose where it looks."""
        painter = self._painter
        for leg in drawn.legs:
            self._limb(leg, "body", 0.042)
        outline = QPainterPath(self._at(drawn.shoulders[0]))
        for point in (drawn.shoulders[1], drawn.hips[1], drawn.hips[0]):
            outline.lineTo(self._at(point))
        outline.closeSubpath()
        painter.setPen(self._pen("body", 0.07))
        painter.setBrush(self._appearance.colour("body"))
        painter.drawPath(outline)
        self._limb((drawn.trunk[1], drawn.head), "body", 0.045)
        self._limb(drawn.trunk, "raised", 0.014)
        head = self._at(drawn.head)
        painter.setPen(Qt.PenStyle.NoPen)
        if not drawn.turned_away:
            self._limb((drawn.head, drawn.nose), "body", 0.036)
            painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._appearance.colour("body"))
        painter.drawEllipse(head, 0.062 * self._scale, 0.074 * self._scale)
        if not drawn.turned_away:
            self._limb((drawn.nose, drawn.nose), "ink", 0.016)

    def _path(self, drawn: BodyFigure) -> None:
        """Draw the hand's way as a dotted line with an open head; it shows a way, no goal."""
        path = QPainterPath(self._at(drawn.path[0]))
        for point in drawn.path[1:-2]:
            path.lineTo(self._at(point))
        pen = self._pen("hold", 0.012)
        pen.setDashPattern([0.5, 2.2])
        self._painter.setBrush(Qt.BrushStyle.NoBrush)
        self._painter.setPen(pen)
        self._painter.drawPath(path)

    def _hand(self, wrist: Point2D) -> None:
        self._painter.setPen(self._pen("raised", 0.008))
        self._painter.setBrush(self._appearance.colour("hold"))
        self._painter.drawEllipse(self._at(wrist), 0.028 * self._scale, 0.028 * self._scale)

    def _floor(self) -> None:
        self._painter.setPen(self._pen("line", 0.008))
        y = self._at((0, 0.495)).y()
        reach = 0.3 * self._scale
        self._painter.drawLine(
            QPointF(self._centre.x() - reach, y), QPointF(self._centre.x() + reach, y)
        )


class ViewPlan(PaintedWidget):
    """From above: the screen below, and which way the person faces."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._turn_deg = 0.0
        self._side = Side.RIGHT
        self._mirrored = False

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
        flip = -1 if self._mirrored else 1
        painter.rotate(-self._turn_deg * flip)
        self._paint_person(painter, size, flip)
        painter.restore()

    def _paint_person(self, painter: QPainter, size: float, flip: int) -> None:
        """Draw shoulders, head and nose of somebody who faces down, towards the screen."""
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("body"))
        painter.drawRoundedRect(
            QRectF(-size * 0.24, -size * 0.085, size * 0.48, size * 0.17), size * 0.08, size * 0.08
        )
        own = (1 if self._side is Side.LEFT else -1) * flip
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
    return tr("half turned")
