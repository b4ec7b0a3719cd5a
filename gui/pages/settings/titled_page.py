"""A page with a title, contents that scroll, and a row of buttons of which the first leads back."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, bind_keys, button
from gui.widgets.layouts import Content, column, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label


class TitledPage(QWidget):
    """The frame of the settings and of each page of data.

    Parameters
    ----------
    contents
        What stands below the title, one below the other.
    buttons
        Stand beside the way back.
    """

    left = Signal()
    message_raised = Signal(str)

    def __init__(self, appearance: Appearance, title: str) -> None:
        super().__init__()
        self._appearance = appearance
        self.setAccessibleName(title)
        self.title = label(title, "title")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.left)
        bind_keys(self, self.leave, "Escape")

    def lay_out(self, contents: Sequence[Content], buttons: Sequence[QPushButton] = ()) -> None:
        """Put the contents on the page."""
        gap = self._appearance.gap
        body = column(self.title, *contents, 1, margins=(0, 0, 12, 0), spacing=gap(2))
        column(
            (scrollable(widget_with(body)), 1),
            ButtonRow([self.leave, *buttons]),
            on=self,
            margins=(24, 8, 24, 16),
            spacing=gap(1),
        )
