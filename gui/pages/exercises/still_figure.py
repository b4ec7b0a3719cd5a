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
    """Shows one moment of a movement or an exercise.

    Parameters
    ----------
    side_px
        Width and height at a text size of 100 %, pixels; 0 takes what room there is.
    time_s
        Moment of the loop, seconds; None shows the end with the start as a shade.
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
        time_s: float | None = None,
        growing: bool = True,
    ) -> None:
        super().__init__(appearance)
        self._shown, self._side, self._side_px, self._time_s = shown, side, side_px, time_s
        self._growth = _GROWTH if growing else 0.0
        if side_px:
            self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        grown = 1 + self._growth * (self.appearance.percent / 100 - 1)
        wanted = round(self._side_px * grown)
        return QSize(wanted, wanted) if self._side_px else QSize(220, 260)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint() if self._side_px else QSize(80, 100)

    def paint(self, painter: QPainter) -> None:
        if self._shown is not None:
            place = QRectF(self.rect())
            paint_scene(
                painter, self.appearance, place, self._shown, self._side, time_s=self._time_s
            )
