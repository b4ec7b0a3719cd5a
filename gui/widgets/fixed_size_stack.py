"""One of several widgets in the same place, changed without laying out the page around it."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget


class FixedSizeStack(QWidget):
    """Shows one of its widgets, each as large as the deck.

    A stack with a layout would ask every page of the window for its size at each change, which
    takes the time of a frame or two; here only a change of the least size is told to others.
    """

    def __init__(self, widgets: Sequence[QWidget], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._widgets = tuple(widgets)
        self._place = 0
        for place, widget in enumerate(self._widgets):
            widget.setParent(self)
            widget.setVisible(place == 0)
        self._least = self.minimumSizeHint()

    @property
    def index(self) -> int:
        """Number of the widget that is shown."""
        return self._place

    def set_current_index(self, place: int) -> None:
        """Show another widget, by its number."""
        if place == self._place:
            return
        before, self._place = self._widgets[self._place], place
        now = self._widgets[place]
        now.setGeometry(self.rect())
        now.setVisible(True)
        before.setVisible(False)

    def sizeHint(self) -> QSize:
        """Return the least size: more is given where there is room."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        return self._largest([each.minimumSizeHint() for each in self._widgets])

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        for each in self._widgets:
            each.setGeometry(self.rect())

    def event(self, event: QEvent) -> bool:
        """Pass on that a widget needs another size, if that changes what the deck needs."""
        if event.type() is QEvent.Type.LayoutRequest:
            least = self.minimumSizeHint()
            if least != self._least:
                self._least = least
                self.updateGeometry()
        return super().event(event)

    @staticmethod
    def _largest(sizes: Sequence[QSize]) -> QSize:
        largest = QSize(0, 0)
        for size in sizes:
            largest = largest.expandedTo(size)
        return largest
