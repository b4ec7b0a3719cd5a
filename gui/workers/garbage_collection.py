"""Garbage collection in the window's thread only.

By itself it runs in whichever thread allocates next. A worker that happens to take away widgets
deletes them in its own thread, against Qt's rules: it then waits for the window's thread and the
window's thread for it, for ever.
"""

import gc

from PySide6.QtCore import QCoreApplication, QObject, QTimer, Slot

_COLLECTION_INTERVAL_MS = 200


class GuiThreadGarbageCollection(QObject):
    """Collects as often as Python would, but only where the application's events are handled."""

    def __init__(self, application: QCoreApplication) -> None:
        super().__init__(application)
        gc.disable()
        # What was loaded so far stays for good; to look through it would hold up the window.
        gc.freeze()
        self._timer = QTimer(self)
        self._timer.setInterval(_COLLECTION_INTERVAL_MS)
        self._timer.timeout.connect(self.collect_due)
        self._timer.start()

    @Slot()
    def collect_due(self) -> None:
        """Collect the oldest generation that is due, if any."""
        due = zip(gc.get_count(), gc.get_threshold(), strict=True)
        generations = [number for number, (count, limit) in enumerate(due) if count > limit > 0]
        if generations:
            gc.collect(max(generations))

    def stop(self) -> None:
        """Collect all, and let Python do it by itself again."""
        self._timer.stop()
        gc.unfreeze()
        gc.collect()
        gc.enable()
        self.setParent(None)
        self.deleteLater()


def collect_garbage_in_gui_thread(application: QCoreApplication) -> None:
    """Let only the application's thread collect, from now on; once is enough."""
    if application.findChild(GuiThreadGarbageCollection) is None:
        GuiThreadGarbageCollection(application)
