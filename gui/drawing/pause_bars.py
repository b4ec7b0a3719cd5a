"""Two bars in a ring: a pause, as it is drawn wherever something waits."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter

#: Height of the bars, their width, and from the middle to either, as shares of the ring's
#: diameter. [technical]
_HIGH, _WIDE, _ASIDE = 0.34, 0.10, 0.10


def paint_pause_bars(painter: QPainter, colour: QColor, ring: QRectF) -> None:
    """Paint the bars in the middle of a ring."""
    side = ring.height()
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    for aside in (-_ASIDE, _ASIDE):
        bar = QRectF(0, 0, side * _WIDE, side * _HIGH)
        bar.moveCenter(ring.center() + QPointF(side * aside, 0))
        painter.drawRoundedRect(bar, bar.width() / 4, bar.width() / 4)
