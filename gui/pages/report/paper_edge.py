"""Sheet of paper on the ground of the page: a thin edge and a soft shadow round it."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.widgets.layouts import column
from gui.widgets.painted_widget import PaintedWidget

#: How far the shadow reaches beyond the sheet, and how far down it is moved, pixels. [technical]
_SHADOW_PX, _DOWN_PX = 9, 3
#: Opacity of a pixel's step of the shadow, and of the sheet's edge. [technical]
_STEP, _EDGE = 0.012, 0.45
#: Round corners of the sheet, pixels. [technical]
_CORNER_PX = 2


class PaperEdge(PaintedWidget):
    """Shows what is written on a sheet, with its edge and shadow."""

    def __init__(self, appearance: Appearance, written: QWidget) -> None:
        super().__init__(appearance)
        # The sheet ends on the grid at both sides: its shadow is seen beneath it.
        column((written, 1), on=self, margins=(1, 1, 1, _SHADOW_PX + _DOWN_PX))

    def paint(self, painter: QPainter) -> None:
        sheet = QRectF(self.rect()).adjusted(1, 1, -1, -_SHADOW_PX - _DOWN_PX)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(0, 0, 0, round(255 * _STEP)))
        for reach in range(_SHADOW_PX, 0, -1):
            shade = sheet.adjusted(-reach, -reach, reach, reach).translated(0, _DOWN_PX)
            painter.drawRoundedRect(shade, _CORNER_PX + reach, _CORNER_PX + reach)
        painter.setPen(QPen(self.appearance.colour("edge", _EDGE), 1))
        painter.setBrush(Qt.GlobalColor.white)
        painter.drawRoundedRect(sheet, _CORNER_PX, _CORNER_PX)
