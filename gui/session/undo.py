"""Undo: what was deleted or corrected since the program started, and how it is put back.

What is deleted leaves the disk at once. Until the program is closed it is held in memory, so that
a slip of the hand costs nothing; after that it is gone.
"""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QObject, Signal, Slot

from gui.text.wording import tr
from gui.workers.worker_thread import BackgroundWorker


@dataclass(frozen=True, slots=True, kw_only=True)
class Undoable:
    """Something that can be put back.

    Attributes
    ----------
    words
        What was deleted or corrected, such as "Deleted: Rosa."
    put_back
        Puts it back; called in the store's thread.
    """

    words: str
    put_back: Callable[[], object]


class UndoList(QObject):
    """What can be put back, the latest first.

    Parameters
    ----------
    records
        The thread that the store belongs to.
    """

    #: Something can be put back: what was deleted or corrected, in words.
    offered = Signal(str)
    #: What can be put back next is another one.
    changed = Signal()
    #: Something was put back.
    put_back = Signal()
    message_raised = Signal(str)

    def __init__(self, records: BackgroundWorker, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._records = records
        self._entries: list[Undoable] = []

    @property
    def next(self) -> Undoable | None:
        """What :meth:`undo` puts back, or None."""
        return self._entries[-1] if self._entries else None

    def offer(self, words: str, put_back: Callable[[], object]) -> Undoable:
        """Offer to put something back from now on."""
        entry = Undoable(words=words, put_back=put_back)
        self._entries.append(entry)
        self.offered.emit(words)
        self.changed.emit()
        return entry

    def withdraw(self, entry: Undoable) -> None:
        """Offer something no longer."""
        if entry in self._entries:
            self._entries.remove(entry)
            self.changed.emit()

    @Slot()
    def undo(self) -> None:
        """Put back what was deleted or corrected last."""
        entry = self.next
        if entry is None:
            return
        self.withdraw(entry)

        def failed(why: str) -> None:
            self._entries.append(entry)
            self.changed.emit()
            self.message_raised.emit(why)

        self._records.run(entry.put_back, self._was_put_back, failed)

    def _was_put_back(self, _answer: object) -> None:
        self.put_back.emit()
        self.message_raised.emit(tr("Undone."))
