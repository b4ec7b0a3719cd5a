"""Drawn person with the arms at rest, beside words that ask for nothing more."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter

from gui.drawing.scene import paint_scene
from gui.drawing.shown_movements import shown_movement
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side
from measure.domain.movements import Movement


class RestingFigure(PaintedWidget):
    """Shows a person from the front whose arms hang; it stands still."""

    def sizeHint(self) -> QSize:
        return QSize(220, 260)

    def minimumSizeHint(self) -> QSize:
        return QSize(100, 120)

    def paint(self, painter: QPainter) -> None:
        paint_scene(
            painter,
            self.appearance,
            QRectF(self.rect()),
            shown_movement(Movement.ABDUCTION),
            Side.LEFT,
            time_s=0.0,
        )
