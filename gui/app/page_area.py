"""The pages, and the messages that lie over their upper edge, so that no page jumps for one."""

from PySide6.QtCore import QEvent, QObject, QRect, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.style.measures import CONTENT_PX, GAP_PX
from gui.widgets.message_bar import MessageBar


class PageArea(QWidget):
    """Shows pages in the whole of its room and messages above them.

    While an arm is measured nothing may cover the page: then it makes room for a message.
    """

    def __init__(self, pages: QWidget, messages: MessageBar) -> None:
        super().__init__()
        self._pages, self._messages = pages, messages
        self._clear = False
        for part in (pages, messages):
            part.setParent(self)
        messages.installEventFilter(self)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def keep_clear(self, clear: bool) -> None:
        """Choose whether pages make room for messages, or lie beneath them."""
        self._clear = clear
        self._arrange()

    def sizeHint(self) -> QSize:
        return self._pages.sizeHint()

    def minimumSizeHint(self) -> QSize:
        return self._pages.minimumSizeHint()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def event(self, event: QEvent) -> bool:
        """Hear that a page or a message needs another size."""
        if event.type() is QEvent.Type.LayoutRequest:
            self.updateGeometry()
            self._arrange()
        return super().event(event)

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
            top = high + GAP_PX if self._clear else 0
        self._pages.setGeometry(QRect(0, top, self.width(), self.height() - top))
