"""Explanation behind a quiet link, so that it stands neither before the content nor in its way."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.widgets.buttons import button
from gui.widgets.layouts import column, row
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import label


class Explanation(QWidget):
    """A link that shows and hides a text beneath it."""

    def __init__(self, appearance: Appearance, title: str, words: str) -> None:
        super().__init__()
        self.link = button(title, "line-link", checkable=True)
        self.link.toggled.connect(self._show_words)
        self.link.clicked.connect(self._reveal)
        self.words = label(words, "quiet")
        self.words.hide()
        column(row(self.link, 1), self.words, on=self, spacing=appearance.gap(0.5))

    @Slot()
    def _reveal(self) -> None:
        bring_into_view(self.words)

    @Slot(bool)
    def _show_words(self, shown: bool) -> None:
        self.words.setVisible(shown)
