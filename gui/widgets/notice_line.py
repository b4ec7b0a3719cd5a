"""The line that stands on every page with a number, in type one can read."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.text.words import notice
from gui.widgets.text import label


class NoticeBar(QWidget):
    """An estimate, not a diagnosis; stop before it becomes painful."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 4, 0, 4)
        self.words = label(notice(), "notice")
        layout.addWidget(self.words)
