"""Drawn person with hanging arms: asks for nothing, and shows which shoulder is meant."""

from collections.abc import Collection

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter

from gui.drawing.scene import paint_standing
from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side


class StandingFigure(PaintedWidget):
    """Shows a person from the front, as in a mirror; arms of chosen sides are coloured."""

    def __init__(self, appearance: Appearance, *sides: Side) -> None:
        super().__init__(appearance)
        self._sides: Collection[Side] = sides

    def show_sides(self, sides: Collection[Side]) -> None:
        """Colour the arms of these sides."""
        self._sides = sides
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(220, 260)

    def minimumSizeHint(self) -> QSize:
        return QSize(100, 120)

    def paint(self, painter: QPainter) -> None:
        # Hanging arms need no more room than the floor does, so the height alone sets the size.
        place = QRectF(self.rect())
        beside = max(0.0, place.height() - place.width()) / 2
        paint_standing(painter, self.appearance, place.adjusted(-beside, 0, beside, 0), self._sides)
