"""A stack of widgets that changes the shown one without laying out the page around it."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget


class FixedSizeStack(QWidget):
    """Shows one of its widgets; each of them is as large as the stack.

    A QStackedWidget asks every page of the window for its size at each change, which takes the
    time of a frame or two; here only a change of the least size reaches the layouts around.
    """

    def __init__(self, widgets: Sequence[QWidget], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._widgets = tuple(widgets)
        #: Number of the widget that is shown.
        self.index = 0
        for place, widget in enumerate(self._widgets):
            widget.setParent(self)
            widget.setVisible(place == 0)
        self._least = self.minimumSizeHint()

    def set_current_index(self, index: int) -> None:
        """Show another widget, by its number."""
        if index == self.index:
            return
        before, shown = self._widgets[self.index], self._widgets[index]
        self.index = index
        shown.setGeometry(self.rect())
        shown.setVisible(True)
        before.setVisible(False)

    def sizeHint(self) -> QSize:
        """Return the least size: more is given where there is room."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        least = QSize(0, 0)
        for widget in self._widgets:
            least = least.expandedTo(widget.minimumSizeHint())
        return least

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        for widget in self._widgets:
            widget.setGeometry(self.rect())

    def event(self, event: QEvent) -> bool:
        """Pass on that a widget needs another size, if that changes the stack's own."""
        if event.type() is QEvent.Type.LayoutRequest:
            least = self.minimumSizeHint()
            if least != self._least:
                self._least = least
                self.updateGeometry()
        return super().event(event)
