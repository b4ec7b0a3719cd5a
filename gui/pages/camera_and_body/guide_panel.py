"""Panel with the drawing of what is to be shown or marked."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter

from gui.drawing.calibration_guides import Guide, paint_marking_guide
from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX
from gui.widgets.painted_widget import PaintedWidget

#: Least size of the panel at 100 %, pixels. [technical]
_LEAST_PX = (200, 132)
#: Room about the drawing, pixels, and at most as a share of the panel's height. [technical]
_ROOM_PX, _ROOM_SHARE = 20, 0.07
#: Room above and beneath a sheet of paper, as a share of the height. [technical]
_PAPER_SHARE = 0.14
#: Drawings of somebody who is cut off by the panel's lower edge.
_PEOPLE = (Guide.BACK, Guide.LENGTHS)


class GuidePanel(PaintedWidget):
    """Shows one drawing; it is left out where there is too little room to read it."""

    def __init__(self, appearance: Appearance, guide: Guide | None = None) -> None:
        super().__init__(appearance)
        self._guide = guide

    @property
    def is_wanted(self) -> bool:
        """Whether there is something to draw."""
        return self._guide is not None

    def show_guide(self, guide: Guide | None) -> None:
        """Show another drawing, or none."""
        if guide is not self._guide:
            self._guide = guide
            self.updateGeometry()
            self.update()

    def minimumSizeHint(self) -> QSize:
        return QSize(*_LEAST_PX)

    def sizeHint(self) -> QSize:
        return self.minimumSizeHint() * 2

    def paint(self, painter: QPainter) -> None:
        if self._guide is None:
            return
        place = QRectF(self.rect())
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("sunken"))
        painter.drawRoundedRect(place, CARD_RADIUS_PX, CARD_RADIUS_PX)
        around = min(_ROOM_PX, _ROOM_SHARE * place.height())
        if self._guide is Guide.BOARD:
            around = _PAPER_SHARE * place.height()
        inner = place.adjusted(around, around, -around, -around)
        if self._guide in _PEOPLE:
            inner.setBottom(place.bottom())
        if self._guide is Guide.UPRIGHT:
            inner.adjust(0, -around / 2, 0, around / 2)
        if self._guide is Guide.BACK:
            inner.setTop(place.top())
        paint_marking_guide(painter, self.appearance, inner, self._guide)
