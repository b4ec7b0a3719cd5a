"""What all painted widgets share: the look, and painting anew when it changes."""

from PySide6.QtCore import Slot
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.look import Look


class PaintedWidget(QWidget):
    """A widget that paints itself in the look's colours."""

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.look = look
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        look.changed.connect(self.look_changed)

    @Slot()
    def look_changed(self) -> None:
        self.updateGeometry()
        self.update()

    def smooth_painter(self) -> QPainter:
        """Return a painter on this widget; only to be used inside its paint event."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        return painter
