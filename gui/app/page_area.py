"""The pages, and above them the messages, for which pages make room: none covers a title."""

from PySide6.QtCore import QEvent, QObject, QRect, QSize
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.style.measures import CONTENT_PX, GAP_PX
from gui.widgets.layouts import ArrangedWidget
from gui.widgets.message_bar import MessageBar


class PageArea(ArrangedWidget):
    """Shows messages above the pages, and pages in the rest of its room."""

    def __init__(self, pages: QWidget, messages: MessageBar) -> None:
        super().__init__()
        self._pages, self._messages = pages, messages
        for part in (pages, messages):
            part.setParent(self)
        messages.installEventFilter(self)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def sizeHint(self) -> QSize:
        return self._pages.sizeHint()

    def minimumSizeHint(self) -> QSize:
        return self._pages.minimumSizeHint()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.ShowToParent, QEvent.Type.HideToParent):
            self._arrange()
        return False

    def _arrange(self) -> None:
        messages, top = self._messages, 0
        if not messages.isHidden():
            wide = min(CONTENT_PX, self.width() - 2 * GAP_PX)
            high = max(messages.heightForWidth(wide), messages.minimumSizeHint().height())
            messages.setGeometry((self.width() - wide) // 2, GAP_PX, wide, high)
            messages.raise_()
            top = high + GAP_PX
        self._pages.setGeometry(QRect(0, top, self.width(), self.height() - top))
