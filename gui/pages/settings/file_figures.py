"""Small drawings of the pages of data: a copy that is checked, a way back, a lock."""

from enum import Enum, auto

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy

from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget

#: Height of the drawing beside the words about a backup, and width of its lines, pixels.
#: [technical]
_SIDE_PX, _LINE_PX = 128, 2
#: Width of the drawing, width and height of a sheet, how far the copy lies from it, its folded
#: corner, and the radius of the badge, as shares of the drawing's height. [technical]
_WIDE, _SHEET, _APART, _FOLD, _BADGE = 0.9, (0.56, 0.72), 0.14, 0.16, 0.21
#: A course of readings on a sheet, as shares of its width and height. [technical]
_COURSE = ((0.16, 0.72), (0.38, 0.62), (0.58, 0.5), (0.84, 0.42))
#: A tick, and the head of an arrow, about the middle of the badge in its radii. [technical]
_TICK = ((-0.42, 0.04), (-0.1, 0.36), (0.46, -0.3))
#: Radius of the bent arrow in radii of the badge; where it begins and how far it goes, degrees.
#: [technical]
_BENT, _FROM_DEG, _OVER_DEG = 0.46, -60, 240
#: Side of a lock, in heights of running text; its body and its bow as shares of that. [technical]
_LOCK = 1.0
_LOCK_BODY, _LOCK_BOW = (0.18, 0.44, 0.64, 0.44), (0.3, 0.1, 0.4, 0.6)


class FileSign(Enum):
    """What is done with everything that is saved."""

    CHECKED = auto()
    BACK = auto()


class FileFigure(PaintedWidget):
    """A sheet with a course of readings, its copy behind, and a sign of what is done with them."""

    def __init__(self, appearance: Appearance, sign: FileSign) -> None:
        super().__init__(appearance)
        self._sign = sign
        self.setFixedSize(round(_WIDE * _SIDE_PX), _SIDE_PX)

    def paint(self, painter: QPainter) -> None:
        side = float(self.height())
        wide, high = (share * side for share in _SHEET)
        apart = _APART * side
        # At the upper edge: the badge reaches beneath the sheets.
        left = top = _LINE_PX / 2
        self._paint_sheet(painter, QRectF(left, top, wide, high), course=False)
        front = QRectF(left + apart, top + apart, wide, high)
        self._paint_sheet(painter, front, course=True)
        radius = _BADGE * side
        self._paint_badge(painter, front.bottomRight() - QPointF(radius * 0.35, radius * 0.5))

    def _paint_sheet(self, painter: QPainter, place: QRectF, *, course: bool) -> None:
        colour = self.appearance.colour
        fold = _FOLD * self.height()
        corner = place.topRight()
        folded = [corner - QPointF(fold, 0), corner + QPointF(0, fold)]
        outline = [place.topLeft(), *folded, place.bottomRight(), place.bottomLeft()]
        pen = QPen(colour("edge"), _LINE_PX)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.setBrush(colour("raised" if course else "sunken"))
        painter.drawPolygon(QPolygonF(outline))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(QPolygonF([folded[0], corner + QPointF(-fold, fold), folded[1]]))
        if course:
            pen = QPen(colour("arm"), 1.5 * _LINE_PX)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            painter.setPen(pen)
            points = [
                place.topLeft() + QPointF(x * place.width(), y * place.height()) for x, y in _COURSE
            ]
            painter.drawPolyline(QPolygonF(points))

    def _paint_badge(self, painter: QPainter, middle: QPointF) -> None:
        """Paint a disc with a tick, or with an arrow that leads back."""
        radius = _BADGE * self.height()
        painter.setPen(QPen(self.appearance.colour("raised"), 2 * _LINE_PX))
        painter.setBrush(self.appearance.colour("arm"))
        painter.drawEllipse(middle, radius, radius)
        pen = QPen(self.appearance.colour("on_arm"), 1.5 * _LINE_PX)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if self._sign is FileSign.CHECKED:
            painter.drawPolyline(QPolygonF([middle + QPointF(x, y) * radius for x, y in _TICK]))
            return
        bent = _BENT * radius
        round_way = QRectF(middle - QPointF(bent, bent), middle + QPointF(bent, bent))
        path = QPainterPath()
        path.arcMoveTo(round_way, _FROM_DEG)
        path.arcTo(round_way, _FROM_DEG, _OVER_DEG)
        painter.drawPath(path)
        tip = path.currentPosition()
        head = bent * 0.62
        painter.drawPolyline(QPolygonF([tip - QPointF(0, head), tip, tip + QPointF(head, 0)]))


class LockMark(PaintedWidget):
    """A lock before a line of words that says who can read something."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        side = round(self.appearance.px(_LOCK))
        # It stands in line with the first line of the words.
        return QSize(side, max(side, self.fontMetrics().height()))

    def paint(self, painter: QPainter) -> None:
        side = self.width()
        above = (self.height() - side) / 2
        colour = self.appearance.colour("quiet")
        left, top, wide, high = (share * side for share in _LOCK_BOW)
        painter.setPen(QPen(colour, side * 0.09))
        painter.drawRoundedRect(QRectF(left, above + top, wide, high), wide / 2, wide / 2)
        left, top, wide, high = (share * side for share in _LOCK_BODY)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour)
        painter.drawRoundedRect(QRectF(left, above + top, wide, high), side * 0.07, side * 0.07)
