"""Small pictures of what may be known of camera and body: one for each row of their overview."""

from collections.abc import Sequence
from enum import Enum, auto

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gui.drawing.person import Pose, posed
from gui.drawing.person_painter import PersonPainter
from gui.drawing.scene import paint_standing
from gui.style.appearance import Appearance
from gui.style.measures import BUTTON_RADIUS_PX
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side

#: Side of a picture, width of its lines, radius of its dots, pixels. [technical]
_SIDE_PX, _LINE_PX, _DOT_PX = 64, 2.5, 3.5
#: Places in a picture are shares of its side. Rings of a lens. [technical]
_RINGS = (0.36, 0.22, 0.08)
#: A door and its marked edge: left, top, width, height; how far the floor reaches. [technical]
_DOOR, _FLOOR = (0.34, 0.16, 0.36, 0.66), (0.14, 0.86)
#: Top and bottom of a trunk, in body heights above the hips; its marks, and the ends of a measured
#: length: to the side and up. [technical]
_TRUNK = (0.50, -0.15)
_MARKS = ((0.0, 0.297), (-0.035, 0.022), (0.035, 0.022))
_LENGTH, _END = ((-0.17, 0.27), (-0.17, 0.0)), 0.035
#: Readings of a shoulder that does not change, and of two ways to measure; their lines.
#: [technical]
_VARIED = ((0.18, 0.42), (0.34, 0.6), (0.5, 0.46), (0.66, 0.36), (0.82, 0.58))
_LEVEL_LINE = ((0.12, 0.5), (0.88, 0.5))
_AGREED = ((0.22, 0.7), (0.36, 0.72), (0.46, 0.48), (0.6, 0.5), (0.76, 0.24))
_RISING_LINE = ((0.14, 0.84), (0.86, 0.16))


class Known(Enum):
    """What a picture stands for."""

    LENS = auto()
    LEVEL = auto()
    MARKS = auto()
    LENGTHS = auto()
    VARIATION = auto()
    AGREEMENT = auto()
    PLACE = auto()


class KnownSign(PaintedWidget):
    """A picture let into its row."""

    def __init__(self, appearance: Appearance, topic: Known) -> None:
        super().__init__(appearance)
        self._topic = topic
        self.setFixedSize(_SIDE_PX, _SIDE_PX)

    def paint(self, painter: QPainter) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("sunken"))
        painter.drawRoundedRect(self.rect(), BUTTON_RADIUS_PX, BUTTON_RADIUS_PX)
        match self._topic:
            case Known.LENS:
                self._paint_lens(painter)
            case Known.LEVEL:
                self._paint_door(painter)
            case Known.MARKS:
                trunk = self._paint_trunk(painter, Pose(turn=180))
                self._paint_dots(painter, [trunk.at((x, up, 0.0)) for x, up in _MARKS])
            case Known.LENGTHS:
                self._paint_length(painter)
            case Known.VARIATION:
                self._paint_readings(painter, _LEVEL_LINE, _VARIED)
            case Known.AGREEMENT:
                self._paint_readings(painter, _RISING_LINE, _AGREED)
            case Known.PLACE:
                paint_standing(painter, self.appearance, QRectF(self.rect()), ())

    def _at(self, place: tuple[float, float]) -> QPointF:
        return QPointF(*place) * _SIDE_PX

    def _pen(self, colour: str) -> QPen:
        pen = QPen(self.appearance.colour(colour), _LINE_PX)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        return pen

    def _paint_dots(self, painter: QPainter, places: Sequence[QPointF]) -> None:
        painter.setPen(QPen(self.appearance.colour("raised"), 1))
        painter.setBrush(self.appearance.colour("arm"))
        for place in places:
            painter.drawEllipse(place, _DOT_PX, _DOT_PX)

    def _paint_lens(self, painter: QPainter) -> None:
        """Paint glass within glass, as one looks into a camera."""
        pens, fills = ("edge", "edge", "arm"), ("raised", "sunken", "arm")
        for ring, pen, fill in zip(_RINGS, pens, fills, strict=True):
            painter.setPen(self._pen(pen))
            painter.setBrush(self.appearance.colour(fill))
            painter.drawEllipse(self._at((0.5, 0.5)), ring * _SIDE_PX, ring * _SIDE_PX)

    def _paint_door(self, painter: QPainter) -> None:
        """Paint a door of which one edge is marked."""
        left, top, wide, high = (share * _SIDE_PX for share in _DOOR)
        door = QRectF(left, top, wide, high)
        painter.setPen(self._pen("edge"))
        painter.setBrush(self.appearance.colour("raised"))
        painter.drawRect(door)
        start, end = (QPointF(share * _SIDE_PX, door.bottom()) for share in _FLOOR)
        painter.drawLine(start, end)
        painter.setPen(self._pen("arm"))
        painter.drawLine(door.topLeft(), door.bottomLeft())
        self._paint_dots(painter, [door.topLeft(), door.bottomLeft()])

    def _paint_trunk(self, painter: QPainter, pose: Pose) -> PersonPainter:
        """Paint a person down to the hips; return who paints more there."""
        top, bottom = _TRUNK
        scale = _SIDE_PX / (top - bottom)
        hips = QPointF(_SIDE_PX / 2, top * scale)
        person = PersonPainter(painter, self.appearance, scale, hips)
        person.paint(posed(pose, Side.LEFT), own=False)
        return person

    def _paint_length(self, painter: QPainter) -> None:
        """Paint a measured length beside a trunk."""
        trunk = self._paint_trunk(painter, Pose())
        painter.setPen(self._pen("arm"))
        painter.drawLine(*(trunk.at((x, up, 0.0)) for x, up in _LENGTH))
        for x, up in _LENGTH:
            painter.drawLine(trunk.at((x - _END, up, 0.0)), trunk.at((x + _END, up, 0.0)))

    def _paint_readings(
        self,
        painter: QPainter,
        line: Sequence[tuple[float, float]],
        readings: Sequence[tuple[float, float]],
    ) -> None:
        """Paint readings about the line on which they would lie if nothing varied."""
        painter.setPen(self._pen("edge"))
        painter.drawLine(*map(self._at, line))
        self._paint_dots(painter, list(map(self._at, readings)))
