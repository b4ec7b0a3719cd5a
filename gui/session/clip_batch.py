"""Reading of many clips in the background: results as they come, time left, stop and go on."""

import queue
import time
from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from gui.session.interfaces import ClipBatchReader, ReadClip
from gui.workers.worker_thread import BackgroundWorker
from measure.clips.inputs import ClipEntry
from measure.domain.acquisition import KnownSetup

#: Time between two looks for results, milliseconds. [technical]
_POLL_INTERVAL_MS = 100
#: Share of a clip that has to be read before the time left is worked out. [technical]
_LEAST_SHARE = 0.3


class ClipBatch(QObject):
    """Runs one list of clips at a time in a thread of its own; never blocks the window's."""

    #: A ReadClip; its number counts the entries that were handed over.
    read = Signal(object)
    progressed = Signal()
    #: Why it ended before its time, or nothing.
    ended = Signal(str)

    def __init__(self, reader: ClipBatchReader, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._reader = reader
        self._worker = BackgroundWorker("clips", self)
        self._outbox: queue.SimpleQueue[ReadClip] = queue.SimpleQueue()
        self._wanted, self._share = False, 0.0
        self._began_s = 0.0
        self._total = self._finished = self._earlier = 0
        self._timer = QTimer(self)
        self._timer.setInterval(_POLL_INTERVAL_MS)
        self._timer.timeout.connect(self._collect)

    @property
    def running(self) -> bool:
        return self._worker.busy

    @property
    def total(self) -> int:
        """Number of clips of the present or last run."""
        return self._total

    @property
    def finished(self) -> int:
        """Number of them that have a result."""
        return self._finished

    @property
    def share(self) -> float:
        """Share of the run that is done, 0..1; clips are counted in parts."""
        return min(1.0, (self._share + self._earlier) / max(1, self._total))

    @property
    def remaining_s(self) -> float | None:
        """Seconds that the rest takes at the present speed; None until that can be said."""
        if self._share < _LEAST_SHARE:
            return None
        elapsed_s = time.monotonic() - self._began_s
        left = self._total - self._earlier - self._share
        return max(0.0, elapsed_s * left / self._share)

    def start(
        self,
        entries: Sequence[ClipEntry],
        setup: Callable[[], KnownSetup],
        results: Path | None,
        *,
        fresh: bool = False,
    ) -> None:
        """Begin to read.

        Parameters
        ----------
        setup
            Returns what is known of the clips; called in the thread.
        results, fresh
            As for :class:`gui.session.interfaces.ClipBatchReader`.
        """
        if self.running:
            return
        self._wanted, self._share, self._began_s = True, 0.0, time.monotonic()
        self._total, self._finished, self._earlier = len(entries), 0, 0
        self._timer.start()
        clips = tuple(entries)

        def read() -> None:
            """Run in the thread; the queue needs no lock."""
            for clip in self._reader(clips, setup(), results, self._note_share, fresh=fresh):
                self._outbox.put(clip)

        self._worker.run(read, self._end, self._end_early)

    def stop(self) -> None:
        """Let go of the clips under way as soon as can be; results that are there stay."""
        self._wanted = False

    def close(self, timeout_s: float) -> None:
        """Stop, and wait for the thread as long as that."""
        self.stop()
        self._worker.close(timeout_s)
        self._timer.stop()

    def _note_share(self, done: float) -> bool:
        """Note in a reading thread how many clips are done; say whether to go on."""
        self._share = done
        return self._wanted

    @Slot()
    def _collect(self) -> None:
        while not self._outbox.empty():
            read = self._outbox.get()
            self._finished += 1
            self._earlier += read.result.is_earlier
            self.read.emit(read)
        self.progressed.emit()

    def _end(self, _nothing: None) -> None:
        self._end_early("")

    def _end_early(self, why: str) -> None:
        self._collect()
        self._timer.stop()
        self.ended.emit(why)
