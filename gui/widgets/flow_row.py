"""Buttons side by side, in as many lines as they need."""

from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

from gui.widgets.text import clear_layout


class FlowRow(QWidget):
    """Each button as wide as it needs; beneath each other only where the room does not do.

    Parameters
    ----------
    filling
        Whether the buttons take the whole width.
    """

    def __init__(self, gap_px: int, *, filling: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._gap_px, self._filling = gap_px, filling
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(gap_px)
        self._columns = 0
        self.buttons: list[QPushButton] = []

    def offer(self, buttons: Sequence[QPushButton]) -> None:
        """Show these buttons in place of those before."""
        clear_layout(self._grid)
        self.buttons = list(buttons)
        self._columns = 0
        self._arrange(self.width())

    def sizeHint(self) -> QSize:
        return QSize(self._width(max(1, len(self.buttons))), super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        return QSize(self._width(1), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange(event.size().width())

    def _arrange(self, room: int) -> None:
        most = max(1, len(self.buttons))
        columns = next((n for n in range(most, 1, -1) if self._width(n) <= room), 1)
        if columns == self._columns:
            return
        self._columns = columns
        for place, one in enumerate(self.buttons):
            self._grid.addWidget(one, place // columns, place % columns)
        if not self._filling:
            for column in range(most + 1):
                self._grid.setColumnStretch(column, 1 if column == columns else 0)
        self.updateGeometry()

    def _width(self, columns: int) -> int:
        """Return how wide the buttons are in so many columns."""
        widths = [0] * columns
        for place, one in enumerate(self.buttons):
            widths[place % columns] = max(widths[place % columns], one.minimumSizeHint().width())
        return sum(widths) + self._gap_px * (columns - 1)
