"""Buttons side by side where they fit, one below the other where the text is large."""

from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QPushButton, QSizePolicy, QWidget

_GAP_PX = 16


class ButtonRow(QWidget):
    """A row, or a column, of equally wide buttons."""

    def __init__(self, buttons: Sequence[QPushButton], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buttons = tuple(buttons)
        self._box = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(_GAP_PX)
        for one in self.buttons:
            one.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
            self._box.addWidget(one, 1)

    def minimumSizeHint(self) -> QSize:
        """Return one button's width, and the height of the present arrangement."""
        return QSize(self._widest(), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        shown = sum(one.isVisibleTo(self) for one in self.buttons)
        beside = shown * (self._widest() + _GAP_PX) - _GAP_PX <= event.size().width()
        directions = QBoxLayout.Direction
        wanted = directions.LeftToRight if beside else directions.TopToBottom
        if wanted != self._box.direction():
            self._box.setDirection(wanted)
            self.updateGeometry()

    def _widest(self) -> int:
        shown = [one for one in self.buttons if one.isVisibleTo(self)]
        return max((one.minimumSizeHint().width() for one in shown), default=0)
