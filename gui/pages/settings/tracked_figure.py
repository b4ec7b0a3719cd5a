"""Drawn person with the places that the model finds in a picture."""

import itertools

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QSizePolicy

from gui.drawing.person import Body, Point3D, posed
from gui.drawing.person_painter import PersonPainter
from gui.drawing.shown_movements import shown_movement
from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: Width and height, pixels. [technical]
_SIDE_PX = (300, 380)
#: Height of the drawing, and from its top to the hips, in body heights. [technical]
_HIGH, _HIPS = 1.14, 0.57
#: Radius of a place, and width of the line between two, in body heights. [technical]
_DOT, _LINE = 0.017, 0.009


class TrackedFigure(PaintedWidget):
    """Shows a person with one arm raised, and joints joined by lines; it stands still."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(*_SIDE_PX)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paint(self, painter: QPainter) -> None:
        place = QRectF(self.rect())
        scale = place.height() / _HIGH
        hips = QPointF(place.center().x(), place.top() + _HIPS * scale)
        person = PersonPainter(painter, self.appearance, scale, hips)
        body = posed(shown_movement(Movement.ABDUCTION).end, Side.LEFT)
        person.paint(body)
        for line in _lines(body):
            self._paint_line(painter, person, line)

    def _paint_line(
        self, painter: QPainter, person: PersonPainter, line: tuple[Point3D, ...]
    ) -> None:
        places = [person.at(place) for place in line]
        painter.setPen(QPen(person.colour("hold"), person.px(_LINE)))
        for before, after in itertools.pairwise(places):
            painter.drawLine(before, after)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(person.colour("hold"))
        for place in places:
            painter.drawEllipse(place, person.px(_DOT), person.px(_DOT))


def _lines(body: Body) -> tuple[tuple[Point3D, ...], ...]:
    """Return the joints of arms, trunk and legs, line by line."""
    (hip, *_), (other_hip, *_) = body.legs
    trunk = (body.arm[0], hip, other_hip, body.other_arm[0], body.arm[0])
    return body.arm, body.other_arm, trunk, body.legs[0][:3], body.legs[1][:3]
