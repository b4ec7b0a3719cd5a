"""Equally wide buttons in one line where they fit, in more lines where the text is large."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QPushButton, QSizePolicy, QWidget

_GAP_PX = 16


class ButtonRow(QWidget):
    """Lines of as many buttons as have room; the last of a line that is not full is wider."""

    def __init__(self, buttons: Sequence[QPushButton], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buttons = tuple(buttons)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(_GAP_PX)
        self._arranged: tuple[int, list[QPushButton]] = (0, [])
        for one in self.buttons:
            one.setParent(self)
            one.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._arrange()

    def minimumSizeHint(self) -> QSize:
        """Return one button's width, and the height of the present arrangement."""
        return QSize(self._widest(), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def event(self, event: QEvent) -> bool:
        """Arrange anew when a button comes, goes or needs another size."""
        if event.type() is QEvent.Type.LayoutRequest:
            self._arrange()
        return super().event(event)

    def _arrange(self) -> None:
        shown = [one for one in self.buttons if one.isVisibleTo(self)]
        fitting = (self.width() + _GAP_PX) // (self._widest() + _GAP_PX)
        columns = max(1, min(len(shown), fitting))
        if (columns, shown) == self._arranged:
            return
        self._arranged = (columns, shown)
        for place, one in enumerate(shown):
            row, column = divmod(place, columns)
            span = columns - column if one is shown[-1] else 1
            self._grid.addWidget(one, row, column, 1, span)
        for column in range(len(self.buttons)):
            self._grid.setColumnStretch(column, 1 if column < columns else 0)
        self.updateGeometry()

    def _widest(self) -> int:
        shown = [one for one in self.buttons if one.isVisibleTo(self)]
        return max((one.minimumSizeHint().width() for one in shown), default=0)
