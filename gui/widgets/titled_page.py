"""A page with a title, contents that scroll, and a row of buttons of which the first leads back."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button
from gui.widgets.layouts import Content
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label


class TitledPage(QWidget):
    """The frame of the settings and of each page of data."""

    left = Signal()
    message_raised = Signal(str)

    def __init__(self, appearance: Appearance, title: str) -> None:
        super().__init__()
        self._appearance = appearance
        self.setAccessibleName(title)
        self.title = label(title, "display")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.left)
        bind_keys(self, self.leave, "Escape")

    def lay_out(
        self, *contents: Content, buttons: Sequence[QPushButton] = (), short: bool = False
    ) -> None:
        """Put the contents on the page, below its title, and buttons beside the way back."""
        rest = () if short else (1,)
        frame_page(
            self,
            self.title,
            *contents,
            *rest,
            buttons=[self.leave, *buttons],
            short=short,
            from_top=True,
        )
