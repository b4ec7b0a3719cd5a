"""A bar of short messages, which go away by themselves or when closed; some can be undone."""

from PySide6.QtCore import QElapsedTimer, QTimer, Slot
from PySide6.QtWidgets import QFrame

from gui.text.wording import tr
from gui.widgets.announcement import announce
from gui.widgets.buttons import button
from gui.widgets.layouts import row
from gui.widgets.text import label

#: How long a message is shown, milliseconds. [technical]
_SHOWN_MS = 9000
#: The same with something to press, milliseconds. [technical]
_OFFERED_MS = 30_000
#: How long a message stays at least when another page is shown, milliseconds. [technical]
_READ_MS = 1500
#: The same from across a room, while the picture needs the room, milliseconds. [technical]
_READ_AFAR_MS = 5000
#: Most lines of messages at one time. [technical]
_MOST_LINES = 3


class MessageBar(QFrame):
    """Shows the latest messages for a while; out of sight without any."""

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("role", "message")
        self._label = label("", "lead")
        #: Undoes what the message tells; shown with such messages only.
        self.undo = button(tr("Undo"), key=tr("Ctrl Z"))
        self.undo.setVisible(False)
        self.close_it = button(tr("Close"), "link")
        self.close_it.setAccessibleName(tr("Close the message"))
        self.close_it.clicked.connect(self.hide)
        contents = ((self._label, 1), self.undo, self.close_it)
        row(*contents, on=self, margins=(24, 8, 24, 8), spacing=16)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self.hide)
        self.setVisible(False)
        self._offered = ""
        self._since = QElapsedTimer()
        self._since.start()

    @property
    def text(self) -> str:
        return self._label.text()

    @property
    def stays(self) -> bool:
        """Whether the messages stay until others come."""
        return not self._timer.isActive()

    def tell(self, text: str, *, stays: bool = False) -> None:
        """Show a message; one that is shown still stays beside it. An empty one clears the bar.

        What could be undone goes with its button, which never stands beside another message.
        """
        self.drop_offer()
        self._since.restart()
        before = self.text if self.isVisible() and text else ""
        lines = dict.fromkeys([*before.splitlines(), *text.splitlines()])
        self._label.setText("\n".join([*lines][-_MOST_LINES:]))
        self.setVisible(bool(text))
        announce(self._label, text)
        if stays:
            self._timer.stop()
        else:
            self._timer.start(_SHOWN_MS)

    @Slot(str)
    def offer(self, text: str) -> None:
        """Show a message about something that can be undone."""
        self.tell(text)
        self._offered = text
        self.undo.setVisible(True)
        self._timer.start(_OFFERED_MS)

    @Slot()
    def give_way(self) -> None:
        """Leave the page its whole room once the message was long enough there to be read."""
        if not self.stays:
            self._timer.start(max(0, _READ_AFAR_MS - self._since.elapsed()))

    @Slot()
    def leave_page(self) -> None:
        """Go with the page that the message was read on; one that lasts stays."""
        if not self.stays and self._since.hasExpired(_READ_MS):
            self.hide()

    @Slot()
    def drop_offer(self) -> None:
        """Show no longer what was offered last."""
        self.undo.setVisible(False)
        offered = self._offered.splitlines()
        self._label.setText(
            "\n".join(line for line in self.text.splitlines() if line not in offered)
        )
        self._offered = ""
        self.setVisible(self.isVisible() and bool(self.text))
