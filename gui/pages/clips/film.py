"""Drawings of a strip of film: whole where clips are dropped, torn where one cannot be read."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen

from gui.drawing.person import ArmAngles, Pose, posed
from gui.drawing.person_painter import PersonPainter
from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side

#: Height of a picture's place as a share of its width. [technical]
_SHAPE = 9 / 16
#: Height of the place that a torn film is drawn for, as a share of its width. [technical]
_TORN_SHAPE = 0.74
#: Width and height of a film, as shares of the height of a picture's place. [technical]
_FILM = (1.2, 0.5)
#: Half the width of a tear and its depth, as shares of half a film's width; number of its teeth;
#: how far each half leans, degrees. [technical]
_GAP, _DEPTH, _TEETH, _LEAN_DEG = 0.12, 0.1, 6, 4
#: Number of holes along an edge of half a film. [technical]
_HOLES = 4
#: Height that the film above an invitation has, pixels, and below which it is left out.
#: [technical]
_HIGH_PX, LEAST_FILM_PX = 176, 120
#: How far the arm is raised in each picture of a film, degrees: moderate, for it is no target.
#: [technical]
_RAISED_DEG = (10, 55, 100)
#: Height of a picture on a film, as a share of the film's; of a person, as a share of a picture's;
#: how far above the hips the middle of a standing person is, in body heights. [technical]
_PICTURE, _PERSON, _MIDDLE = 0.62, 0.98, -0.02


class TornFilm(PaintedWidget):
    """A strip of film, torn in its middle."""

    def sizeHint(self) -> QSize:
        return QSize(480, round(480 * _SHAPE))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, round(200 * _SHAPE))

    def paint(self, painter: QPainter) -> None:
        high = min(self.height(), self.width() * _TORN_SHAPE)
        _paint_film(self, painter, high, torn=True)


class Film(PaintedWidget):
    """A whole strip of film, on which somebody raises an arm."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self.setMaximumHeight(_HIGH_PX)

    def sizeHint(self) -> QSize:
        return QSize(200, LEAST_FILM_PX)

    def paint(self, painter: QPainter) -> None:
        high = self.height() / _FILM[1] - 4
        _paint_film(self, painter, high, torn=False)
        wide, tall = (share * high for share in _FILM)
        step, picture = wide / len(_RAISED_DEG), tall * _PICTURE
        left, middle = (self.width() - wide) / 2, self.height() / 2
        for number, raised in enumerate(_RAISED_DEG):
            x = left + number * step
            if number:
                painter.setPen(QPen(self.appearance.colour("line"), 1))
                painter.drawLine(QPointF(x, middle - picture / 2), QPointF(x, middle + picture / 2))
            self._paint_person(painter, QPointF(x + step / 2, middle), picture, raised)

    def _paint_person(
        self, painter: QPainter, middle: QPointF, picture: float, raised: float
    ) -> None:
        """Paint somebody in the middle of a picture of this height, with an arm raised aside."""
        scale = picture * _PERSON
        hips = middle + QPointF(0, _MIDDLE * scale)
        pose = Pose(arm=ArmAngles(raised, 90, raised, 90))
        PersonPainter(painter, self.appearance, scale, hips, mirrored=True).paint(
            posed(pose, Side.LEFT)
        )


def _paint_film(widget: PaintedWidget, painter: QPainter, high: float, *, torn: bool) -> None:
    """Paint a film in the middle of a widget, for a picture's place of this height."""
    wide, tall = (share * high for share in _FILM)
    for side in (-1, 1):
        painter.save()
        painter.translate(QPointF(widget.width() / 2, widget.height() / 2))
        painter.rotate(_LEAN_DEG * side * torn)
        _paint_half(widget, painter, (wide / 2, tall), side, torn=torn)
        painter.restore()


def _paint_half(
    widget: PaintedWidget,
    painter: QPainter,
    size: tuple[float, float],
    side: int,
    *,
    torn: bool,
) -> None:
    """Paint one half of a film about the middle; side -1 is the left one."""
    (wide, high), colour = size, widget.appearance.colour
    edge = [
        QPointF(side * wide * (_GAP + _DEPTH * (place % 2)) * torn, high * (place / _TEETH - 0.5))
        for place in range(_TEETH + 1)
    ]
    corners = [QPointF(side * wide, high / 2), QPointF(side * wide, -high / 2)]
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour("sunken" if torn else "raised"))
    painter.drawPolygon([*edge, *corners])
    painter.setPen(QPen(colour("edge"), 2))
    outline = [edge[-1], *corners, edge[0]]
    painter.drawPolyline([*edge, *corners, edge[0]] if torn else outline)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour("body"))
    step = wide / (_HOLES + torn)
    for number in range(_HOLES):
        middle = side * (wide - step * (number + 0.5))
        for y in (0.07, 0.84):
            hole = QRectF(middle - step * 0.22, high * (y - 0.5), step * 0.44, high * 0.09)
            painter.drawRoundedRect(hole, 2, 2)
