"""Reminder of the exercises at chosen times, while the window is open and only if switched on."""

import datetime as dt
from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from gui.protocol.reminders import reminder_due
from gui.session.settings import WindowSettings
from gui.text.wording import tr

#: How often the clock is looked at, milliseconds. [technical]
_EVERY_MS = 20_000


class Reminder(QObject):
    """Tells when a chosen time has come. It knows nothing of what was done, and asks once."""

    #: What to show, in words.
    due = Signal(str)

    def __init__(
        self,
        settings: WindowSettings,
        now: Callable[[], dt.datetime],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._settings, self._now = settings, now
        self._since = now()
        timer = QTimer(self, interval=_EVERY_MS)
        timer.timeout.connect(self.check)
        timer.start()

    @Slot()
    def check(self) -> None:
        """Tell of a time that has come since the last check."""
        since, now = self._since, self._now()
        self._since = now
        if not self._settings.reminders:
            return
        time = reminder_due(self._settings.reminder_times, since, now)
        if time is not None:
            words = tr("{time}: the time you chose for your exercises.")
            self.due.emit(words.format(time=f"{time:%H:%M}"))
