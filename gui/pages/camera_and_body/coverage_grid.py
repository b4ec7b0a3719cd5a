"""Grid over the camera's picture: the cells in which the board's corners were seen."""

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from calibration.lens.fit import COVERAGE_CELLS
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.video_view import VideoView

#: How much of the picture a cell hides that has been seen. [technical]
_VEIL = 0.55
#: Height of the tick, as a share of its cell. [technical]
_TICK = 0.5


class CoverageGrid(PaintedWidget):
    """Lies over a view of the camera, mirrored like its picture; a tick where corners were seen."""

    def __init__(self, appearance: Appearance, video: VideoView) -> None:
        super().__init__(appearance, video)
        self._video = video
        self._cells = np.zeros((COVERAGE_CELLS[1], COVERAGE_CELLS[0]), dtype=np.bool_)
        self._mirrored = False
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        video.installEventFilter(self)
        self.show_cells(self._cells, mirrored=False)

    def show_cells(self, cells: NDArray[np.bool_], *, mirrored: bool) -> None:
        """Show which cells, shape (rows, columns), held a corner."""
        self._cells, self._mirrored = cells, mirrored
        self.setAccessibleName(
            tr("The board was seen in {share} % of the picture.").format(
                share=round(100 * float(np.mean(cells)))
            )
        )
        self.update()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.Resize:
            self.setGeometry(self._video.rect())
        return super().eventFilter(watched, event)

    def paint(self, painter: QPainter) -> None:
        place = self._video.transform()
        if place is None:
            return
        rows, columns = self._cells.shape
        shown = self._cells[:, ::-1] if self._mirrored else self._cells
        wide, high = place.width / columns, place.height / rows
        painter.setFont(self.appearance.font(high * _TICK, bold=True))
        for row in range(rows):
            for column in range(columns):
                cell = QRectF(place.left + column * wide, place.top + row * high, wide, high)
                self._paint_cell(painter, cell.adjusted(3, 3, -3, -3), bool(shown[row, column]))

    def _paint_cell(self, painter: QPainter, cell: QRectF, seen: bool) -> None:
        painter.setPen(QPen(self.appearance.colour("raised", 0.7), 2))
        painter.setBrush(self.appearance.colour("arm", _VEIL) if seen else Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(cell, 6, 6)
        if seen:
            painter.setPen(self.appearance.colour("on_arm"))
            painter.drawText(cell, int(Qt.AlignmentFlag.AlignCenter), "\u2713")
