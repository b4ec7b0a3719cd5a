"""Drawn person that stands still: beside an exercise, or at rest beside words."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QSizePolicy

from gui.drawing.scene import paint_scene
from gui.drawing.shown_movements import Shown
from gui.style.appearance import Appearance
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side

#: Share of the text's growth that a drawing beside it takes part in. [technical]
_GROWTH = 0.55


class StillFigure(PaintedWidget):
    """Shows the end of a movement or an exercise, its start as a shade, as large as it has room.

    Parameters
    ----------
    side_px
        Height at a text size of 100 %, pixels; 0 takes what room there is.
    wide_px
        Width at that text size, pixels; 0 for as wide as high.
    growing
        Whether it grows a little with the text.
    """

    def __init__(
        self,
        appearance: Appearance,
        shown: Shown | None,
        side: Side,
        side_px: int = 0,
        *,
        wide_px: int = 0,
        growing: bool = True,
    ) -> None:
        super().__init__(appearance)
        self._shown, self._side = shown, side
        self._wide_px, self._high_px = wide_px or side_px, side_px
        self._growth = _GROWTH if growing else 0.0
        if side_px:
            self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        grown = 1 + self._growth * (self.appearance.percent / 100 - 1)
        wanted = QSize(round(self._wide_px * grown), round(self._high_px * grown))
        return wanted if self._high_px else QSize(220, 260)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint() if self._high_px else QSize(80, 100)

    def paint(self, painter: QPainter) -> None:
        if self._shown is not None:
            place = QRectF(self.rect())
            paint_scene(painter, self.appearance, place, self._shown, self._side, close=True)
