"""Base of painted widgets: colours, a painter that is always ended, repainting."""

from PySide6.QtCore import Slot
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.style.appearance import Appearance


class PaintedWidget(QWidget):
    """A widget that paints itself in the look's colours; subclasses override `paint`."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.appearance = appearance
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        appearance.changed.connect(self._follow_appearance)
        appearance.window_resized.connect(self.updateGeometry)

    @Slot()
    def _follow_appearance(self) -> None:
        """Pass the change on: a connection to an overridden slot outlives its widget."""
        self.appearance_changed()

    def appearance_changed(self) -> None:
        self.updateGeometry()
        self.update()

    def paint(self, painter: QPainter) -> None:
        """Paint the widget."""

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        try:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self.paint(painter)
        finally:
            # A painter that outlives its widget takes the whole process down.
            painter.end()
