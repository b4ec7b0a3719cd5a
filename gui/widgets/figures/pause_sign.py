"""Pause sign: seen at once from across the room."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter

from gui.drawing.pause_bars import paint_pause_bars
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget

#: Width of both bars with a little room beside them, as a share of the ring's. [technical]
_BARS_WIDE = 0.34


class PauseSign(PaintedWidget):
    """Two bars: a sign, and nothing to press."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self.setAccessibleName(tr("Paused"))

    def sizeHint(self) -> QSize:
        return QSize(240, 240)

    def minimumSizeHint(self) -> QSize:
        return QSize(120, 120)

    def paint(self, painter: QPainter) -> None:
        side = min(self.width() / _BARS_WIDE, self.height())
        ring = QRectF(0, 0, side, side)
        ring.moveCenter(QRectF(self.rect()).center())
        paint_pause_bars(painter, self.appearance.colour("quiet"), ring)
