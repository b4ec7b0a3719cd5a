"""Grid over the camera's picture: the cells in which the board's corners were seen."""

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from calibration.lens.fit import COVERAGE_CELLS
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.video_view import VideoView

#: How much of the picture a cell hides that has been seen. [technical]
_VEIL = 0.55
#: Opacity of the lines between the cells. [technical]
_LINES = 0.7
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
                if shown[row, column]:
                    cell = QRectF(place.left + column * wide, place.top + row * high, wide, high)
                    self._paint_seen(painter, cell)
        painter.setPen(QPen(self.appearance.colour("raised", _LINES), 2))
        right, bottom = place.left + place.width, place.top + place.height
        for row in range(1, rows):
            y = place.top + row * high
            painter.drawLine(QPointF(place.left, y), QPointF(right, y))
        for column in range(1, columns):
            x = place.left + column * wide
            painter.drawLine(QPointF(x, place.top), QPointF(x, bottom))

    def _paint_seen(self, painter: QPainter, cell: QRectF) -> None:
        painter.fillRect(cell, self.appearance.colour("arm", _VEIL))
        painter.setPen(self.appearance.colour("on_arm"))
        painter.drawText(cell, int(Qt.AlignmentFlag.AlignCenter), "\u2713")
