"""Things that stand side by side, and one below the other where text is large."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.widgets.layouts import Content, row

#: Text size from which columns become one, per cent. [technical]
LARGE_FROM_PERCENT = 130


class SideBySide(QWidget):
    """A row of contents that becomes a column where text is large; parameters as of a row."""

    def __init__(self, appearance: Appearance, *contents: Content, spacing: int) -> None:
        super().__init__()
        self._appearance = appearance
        self._layout = row(*contents, on=self, spacing=spacing)
        appearance.changed.connect(self._follow_appearance)
        self.arrange()

    @property
    def stacked(self) -> bool:
        """Whether one thing stands below the other."""
        return self._appearance.percent >= LARGE_FROM_PERCENT

    @Slot()
    def _follow_appearance(self) -> None:
        """Pass the change on: a connection to an overridden slot outlives its widget."""
        self.arrange()

    def arrange(self) -> None:
        """Choose the direction for the present text size."""
        way = QBoxLayout.Direction
        self._layout.setDirection(way.TopToBottom if self.stacked else way.LeftToRight)
