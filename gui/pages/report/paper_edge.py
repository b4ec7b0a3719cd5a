"""Sheet of paper on the ground of the page, with a thin edge round it."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX
from gui.widgets.layouts import column
from gui.widgets.painted_widget import PaintedWidget

#: Opacity of the sheet's edge. [technical]
_EDGE = 0.45
#: Room beside and above what is written, so that it lies within the round corners, pixels.
#: [technical]
_WITHIN_PX = 5


class PaperEdge(PaintedWidget):
    """Shows what is written on a sheet, with its edge."""

    def __init__(self, appearance: Appearance, written: QWidget) -> None:
        super().__init__(appearance)
        column((written, 1), on=self, margins=(_WITHIN_PX,) * 4)

    def paint(self, painter: QPainter) -> None:
        sheet = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.setPen(QPen(self.appearance.colour("edge", _EDGE), 1))
        painter.setBrush(Qt.GlobalColor.white)
        painter.drawRoundedRect(sheet, CARD_RADIUS_PX, CARD_RADIUS_PX)
