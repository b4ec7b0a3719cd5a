"""Explanation behind a quiet link, so that it stands neither before the content nor in its way."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.widgets.buttons import button
from gui.widgets.layouts import column
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import label


class Explanation(QWidget):
    """A text that a link shows and hides; the link stands in a line of the page above it."""

    def __init__(self, title: str, words: str) -> None:
        super().__init__()
        self.link = button(title, "line-link", checkable=True)
        self.link.toggled.connect(self._show_words)
        self.link.clicked.connect(self._reveal)
        self.words = label(words, "quiet")
        self.hide()
        column(self.words, on=self)

    @Slot()
    def _reveal(self) -> None:
        bring_into_view(self.words)

    @Slot(bool)
    def _show_words(self, shown: bool) -> None:
        self.setVisible(shown)
