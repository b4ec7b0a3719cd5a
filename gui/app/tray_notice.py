"""Notice beside the system's clock, for a window that is behind others."""

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QStyle, QSystemTrayIcon, QWidget

#: How long a notice is shown, milliseconds. [technical]
_SHOWN_MS = 10_000


class TrayNotice:
    """Shows a line where the system has a place for it; elsewhere nothing happens."""

    def __init__(self, window: QWidget) -> None:
        self._window = window
        self._icon: QSystemTrayIcon | None = None

    def show_words(self, words: str) -> None:
        """Show a line for a while."""
        if not QSystemTrayIcon.isSystemTrayAvailable():
            return
        if self._icon is None:
            sign = self._window.style().standardIcon(QStyle.StandardPixmap.SP_MessageBoxInformation)
            self._icon = QSystemTrayIcon(sign, self._window)
            self._icon.messageClicked.connect(self._window.activateWindow)
        self._icon.show()
        self._icon.showMessage("Thawline", words, self._icon.icon(), _SHOWN_MS)
        QTimer.singleShot(_SHOWN_MS, self._icon, self._icon.hide)
