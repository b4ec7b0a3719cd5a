"""Background worker: jobs run one after the other in a thread of their own.

The window looks for what is done with a timer, so a job's answer always arrives in the window's
thread, and no signal crosses threads.
"""

import queue
import sys
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

from PySide6.QtCore import QObject, QTimer, Slot

from gui.text.wording import error_text
from measure.errors import ThawlineError

Result = TypeVar("Result")

_POLL_INTERVAL_MS = 15


def _forget(_answer: Any) -> None:
    """Take an answer nobody waits for."""


@dataclass(slots=True)
class _Job:
    work: Callable[[], Any]
    done: Callable[[Any], None]
    failed: Callable[[str], None]
    answer: Any = None
    error: Exception | None = None


class BackgroundWorker(QObject):
    """One worker thread. Jobs keep their order; values made in a job belong to its thread."""

    def __init__(self, name: str, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._waiting: queue.SimpleQueue[_Job | None] = queue.SimpleQueue()
        self._done: queue.SimpleQueue[_Job] = queue.SimpleQueue()
        self._open = 0
        self._closed = False
        self._thread = threading.Thread(target=self._work, name=name, daemon=True)
        self._thread.start()
        self._timer = QTimer(self)
        self._timer.setInterval(_POLL_INTERVAL_MS)
        self._timer.timeout.connect(self.collect)

    @property
    def busy(self) -> bool:
        return self._open > 0

    def run(
        self,
        work: Callable[[], Result],
        done: Callable[[Result], None] = _forget,
        failed: Callable[[str], None] = _forget,
    ) -> None:
        """Run `work` in the thread, then `done` with its answer, or `failed` with an error's
        words, in the window's thread.
        """
        if self._closed:
            return
        self._open += 1
        self._waiting.put(_Job(work, done, failed))
        self._timer.start()

    def close(self, timeout_s: float) -> bool:
        """Finish the jobs that wait; return whether all were done within the time.

        Answers that arrive while closing are handed out, so nothing is lost on the way.
        """
        self._closed = True
        self._waiting.put(None)
        until = time.monotonic() + timeout_s
        while self._thread.is_alive() and time.monotonic() < until:
            self._thread.join(0.01)
        self.collect()
        self._timer.stop()
        return not self._thread.is_alive()

    @Slot()
    def collect(self) -> None:
        """Hand out what is done."""
        while not self._done.empty():
            job = self._done.get()
            self._open -= 1
            if job.error is None:
                job.done(job.answer)
            else:
                job.failed(error_text(job.error))
                if not isinstance(job.error, ThawlineError):
                    sys.excepthook(type(job.error), job.error, job.error.__traceback__)
        if not self._open:
            self._timer.stop()

    def _work(self) -> None:
        while (job := self._waiting.get()) is not None:
            try:
                job.answer = job.work()
            except Exception as error:  # noqa: BLE001 - the top of a worker
                job.error = error
            self._done.put(job)
