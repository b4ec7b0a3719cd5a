"""Drawn person with hanging arms: asks for nothing, and shows which shoulder is meant."""

from collections.abc import Collection

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter

from gui.drawing.scene import paint_standing
from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side


class StandingFigure(PaintedWidget):
    """Shows a person from the front, as in a mirror; arms of chosen sides are coloured.

    Parameters
    ----------
    sides
        The arms that are meant.
    asked
        Whether it is asked which shoulder is meant: both are ringed until one is.
    tracked
        Whether the joints that are followed in a picture are marked.
    floor
        Whether the floor under the feet is seen.
    """

    def __init__(
        self,
        appearance: Appearance,
        *sides: Side,
        asked: bool = False,
        tracked: bool = False,
        floor: bool = True,
    ) -> None:
        super().__init__(appearance)
        self._sides: Collection[Side] = sides
        self._asks, self._tracked, self._floor = asked, tracked, floor

    def show_sides(self, sides: Collection[Side]) -> None:
        """Colour the arms of these sides."""
        self._sides = sides
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(220, 260)

    def minimumSizeHint(self) -> QSize:
        return QSize(100, 120)

    def paint(self, painter: QPainter) -> None:
        place, asked = QRectF(self.rect()), self._asks and not self._sides
        paint_standing(
            painter,
            self.appearance,
            place,
            self._sides,
            asked=asked,
            tracked=self._tracked,
            floor=self._floor,
        )
