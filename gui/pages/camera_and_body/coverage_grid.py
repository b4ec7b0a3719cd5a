"""Grid of the picture's cells in which the board's corners were seen."""

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QWidget

from calibration.lens.fit import COVERAGE_CELLS
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget


class CoverageGrid(PaintedWidget):
    """Cells with a tick where corners were seen; mirrored like the picture beside it."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._cells = np.zeros((COVERAGE_CELLS[1], COVERAGE_CELLS[0]), dtype=np.bool_)
        self._mirrored = False
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

    def sizeHint(self) -> QSize:
        return QSize(240, 160)

    def minimumSizeHint(self) -> QSize:
        return QSize(120, 80)

    def paint(self, painter: QPainter) -> None:
        rows, columns = self._cells.shape
        shown = self._cells[:, ::-1] if self._mirrored else self._cells
        side = min(self.width() / columns, self.height() / rows)
        for row in range(rows):
            for column in range(columns):
                cell = QRectF(column * side, row * side, side, side).adjusted(2, 2, -2, -2)
                seen = bool(shown[row, column])
                painter.setPen(QPen(self.appearance.colour("edge"), 1))
                painter.setBrush(self.appearance.colour("arm" if seen else "sunken"))
                painter.drawRoundedRect(cell, 3, 3)
                if seen:
                    painter.setPen(self.appearance.colour("on_arm"))
                    painter.setFont(self.appearance.font(side * 0.55, bold=True))
                    painter.drawText(cell, int(Qt.AlignmentFlag.AlignCenter), "\u2713")
