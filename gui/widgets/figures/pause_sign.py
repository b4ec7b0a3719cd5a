"""Pause sign: seen at once from across the room."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen

from gui.drawing.pause_bars import paint_pause_bars
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget

#: Size of the sign as a share of its place. [technical]
_SIZE = 0.72
#: Thickness of the ring as a share of its diameter. [technical]
_THICK = 0.03


class PauseSign(PaintedWidget):
    """Two bars in a ring, as large as there is room."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self.setAccessibleName(tr("Paused"))

    def sizeHint(self) -> QSize:
        return QSize(240, 240)

    def minimumSizeHint(self) -> QSize:
        return QSize(120, 120)

    def paint(self, painter: QPainter) -> None:
        side = min(self.width(), self.height()) * _SIZE
        ring = QRectF(0, 0, side, side)
        ring.moveCenter(QRectF(self.rect()).center())
        inset = side * _THICK / 2
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(self.appearance.colour("edge"), side * _THICK))
        painter.drawEllipse(ring.adjusted(inset, inset, -inset, -inset))
        paint_pause_bars(painter, self.appearance.colour("ink"), ring)
