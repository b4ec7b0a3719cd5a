"""Drawn person that stands still: beside an exercise, or at rest beside words."""

import math
from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, QSizeF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QSizePolicy

from gui.drawing.scene import close_height, close_scale, paint_scene
from gui.drawing.shown_movements import Shown
from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side

#: Share of the text's growth that a drawing beside it takes part in. [technical]
_GROWTH = 0.55


class StillFigure(PaintedWidget):
    """Shows the end of a movement or an exercise in the middle of its room, its start as a shade.

    Parameters
    ----------
    side_px
        Width and height at a text size of 100 %, pixels; 0 takes what room there is.
    """

    def __init__(
        self,
        appearance: Appearance,
        shown: Shown | None,
        side: Side,
        side_px: int = 0,
    ) -> None:
        super().__init__(appearance)
        self._shown, self._side = shown, side
        self._side_px = side_px
        #: Figures that are drawn in one scale with this one.
        self._together: Sequence[StillFigure] = ()
        if side_px:
            self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        grown = 1 + _GROWTH * (self.appearance.percent / 100 - 1)
        side_px = round(self._side_px * grown)
        return QSize(side_px, side_px) if side_px else QSize(220, 260)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint() if self._side_px else QSize(80, 100)

    @property
    def scale_px(self) -> float:
        """Pixels of a body height where the motion fills the figure."""
        if self._shown is None:
            return math.inf
        return close_scale(QSizeF(self.size()), self._shown, self._side)

    def paint(self, painter: QPainter) -> None:
        if self._shown is not None:
            most_px = min([self.scale_px, *(other.scale_px for other in self._together)])
            high = most_px * close_height(self._shown, self._side)
            place = QRectF(0, (self.height() - high) / 2, self.width(), high)
            paint_scene(
                painter,
                self.appearance,
                place,
                self._shown,
                self._side,
                close=True,
                most_px=most_px,
            )


def in_one_scale(figures: Sequence[StillFigure]) -> None:
    """Draw figures that stand below each other as people of one size."""
    for figure in figures:
        figure._together = figures
