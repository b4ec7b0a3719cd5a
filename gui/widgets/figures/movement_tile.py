"""Check boxes of movements: tiles with drawing and name, or lines where text is large."""

from collections.abc import Collection

from PySide6.QtCore import QRect, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import QFontMetrics, QPainter, QPen, QResizeEvent

from gui.style.appearance import Appearance
from gui.style.focus_ring import paint_ring, shows_ring
from gui.style.measures import BUTTON_RADIUS_PX, GAP_PX
from gui.text.wording import movement_introduced, short_movement_name
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.layouts import mirrored
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: Height of the drawing, and least width of a tile, pixels. [technical]
_DRAWING_PX, _LEAST_PX = 110, 140
#: Space above the drawing, beside the words, and below them, pixels. [technical]
_AROUND_PX = (GAP_PX, GAP_PX, GAP_PX)
#: Share of the arm's colour in the ground of a chosen tile. [technical]
_TINT = 0.08
#: Thickness of the edge of a chosen tile and of another one, pixels. [technical]
_CHOSEN_PX, _OTHER_PX = 2.0, 1.0
#: Text size from which lines stand as near to each other as tiles, per cent. [technical]
_NEAR_FROM_PERCENT = 175


class MovementTile(WrappingCheckBox):
    """The whole tile is pressed; its box stands in the corner, its name under the drawing."""

    def __init__(self, appearance: Appearance, movement: Movement) -> None:
        super().__init__(appearance, movement_introduced(movement))
        self._movement = movement
        self._drawing = PositionView(appearance, still=True, close=True, parent=self)
        self._drawing.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._drawing.show_movement(movement, Side.LEFT)
        appearance.changed.connect(self._fit)
        self._fit()

    @property
    def tiled(self) -> bool:
        """Whether it is a tile, beside others; where text is large it is one line."""
        return self._appearance.percent < LARGE_FROM_PERCENT

    @Slot()
    def _fit(self) -> None:
        """Say the name alone beneath the drawing, and how it goes where there is none."""
        name = short_movement_name if self.tiled else movement_introduced
        self.setText(name(self._movement))
        self._drawing.setVisible(self.tiled)
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        if not self.tiled:
            return super().sizeHint()
        return QSize(_LEAST_PX, self.heightForWidth(_LEAST_PX))

    def minimumSizeHint(self) -> QSize:
        """Return the least width, and the height with a name of one line."""
        if not self.tiled:
            return super().minimumSizeHint()
        return QSize(_LEAST_PX, self._around() + QFontMetrics(self.font()).lineSpacing())

    def _height_of(self, width: int) -> int:
        if not self.tiled:
            return super()._height_of(width)
        _, beside, _ = _AROUND_PX
        space = QRect(0, 0, max(1, width - 2 * beside), 10_000)
        words = QFontMetrics(self.font()).boundingRect(space, _flags(), self.text())
        return self._around() + words.height()

    @staticmethod
    def _around() -> int:
        """Return what a tile has above and below its name, pixels."""
        above, _, below = _AROUND_PX
        return above + _DRAWING_PX + GAP_PX + below

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        above, beside, _ = _AROUND_PX
        self._drawing.setGeometry(beside, above, self.width() - 2 * beside, _DRAWING_PX)

    def _paint(self, painter: QPainter) -> None:
        if not self.tiled:
            super()._paint(painter)
            return
        thick = _CHOSEN_PX if self.isChecked() else _OTHER_PX
        edge = QRectF(self.rect()).adjusted(thick / 2, thick / 2, -thick / 2, -thick / 2)
        colour = self._appearance.colour
        painter.setPen(QPen(colour("arm" if self.isChecked() else "line"), thick))
        painter.setBrush(colour("arm", _TINT) if self.isChecked() else colour("raised"))
        painter.drawRoundedRect(edge, BUTTON_RADIUS_PX, BUTTON_RADIUS_PX)
        self.paint_box(painter, QRect(GAP_PX + 2, GAP_PX + 2, self._box(), self._box()))
        painter.setPen(colour("ink"))
        above, beside, below = _AROUND_PX
        top = above + _DRAWING_PX + GAP_PX
        words = QRect(beside, top, self.width() - 2 * beside, self.height() - top - below)
        painter.drawText(mirrored(self, words), _flags(), self.text())
        if shows_ring(self):
            paint_ring(painter, QRectF(self.rect()))


class MovementTiles(SideBySide):
    """All movements to be ticked, side by side, or one below the other where text is large."""

    #: Another movement was ticked, or one no longer is.
    picked = Signal()

    def __init__(self, appearance: Appearance, ticked: Collection[Movement]) -> None:
        self.boxes = {movement: MovementTile(appearance, movement) for movement in Movement}
        tiles = ((tile, 1) for tile in self.boxes.values())
        super().__init__(appearance, *tiles, spacing=appearance.gap(1))
        self.tick(ticked)
        for tile in self.boxes.values():
            tile.toggled.connect(self.picked)

    @property
    def ticked(self) -> tuple[Movement, ...]:
        """The movements with a tick."""
        return tuple(movement for movement, tile in self.boxes.items() if tile.isChecked())

    def tick(self, movements: Collection[Movement]) -> None:
        """Tick these movements and no others."""
        for movement, tile in self.boxes.items():
            tile.setChecked(movement in movements)

    def arrange(self) -> None:
        """Let lines fill the window: what follows them needs scrolling anyway."""
        super().arrange()
        near = not self.stacked or self._appearance.percent >= _NEAR_FROM_PERCENT
        self._layout.setSpacing(self._appearance.gap(1 if near else 2))


def _flags() -> int:
    middle = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop
    return int(middle | Qt.TextFlag.TextWordWrap)
