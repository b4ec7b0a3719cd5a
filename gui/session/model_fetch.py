"""Fetching of the pose model from the window, with its progress; it can be cancelled."""

from collections.abc import Callable, Mapping

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from gui.workers.worker_thread import BackgroundWorker
from measure.errors import ModelError, ThawlineError
from measure.pose_models.bundles import Bundle, obtain_all
from measure.pose_models.catalogue import ModelQuality
from measure.pose_models.package_clients import Progress

#: Interval of showing progress, milliseconds. [technical]
_SHOW_EVERY_MS = 100
#: Longest time to let a cancelled fetch end when the window closes, seconds. [technical]
_CLOSE_S = 1.0

#: Fetches all models that can be had; returns them, and why some cannot.
Fetcher = Callable[[Progress], tuple[Mapping[ModelQuality, Bundle], ModelError | None]]


class FetchCancelledError(ThawlineError):
    """The person stopped fetching."""


class ModelFetch(QObject):
    """Runs one fetch at a time in a thread of its own.

    Parameters
    ----------
    fetch
        Fetches the models; tests put another here.
    """

    #: The share done, 0..1.
    progressed = Signal(float)
    #: Fetching ended: the error that kept a model from coming, or None.
    ended = Signal(object)

    def __init__(self, fetch: Fetcher = obtain_all, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._fetch = fetch
        self._worker: BackgroundWorker | None = None
        self._share = 0.0
        self._cancelled = False
        self._timer = QTimer(self)
        self._timer.setInterval(_SHOW_EVERY_MS)
        self._timer.timeout.connect(self._show)

    @property
    def running(self) -> bool:
        return self._timer.isActive()

    @Slot()
    def start(self) -> None:
        """Begin to fetch, unless that is going on."""
        if self.running:
            return
        if self._worker is None:
            self._worker = BackgroundWorker("model fetch", self)
        self._share, self._cancelled = 0.0, False
        self._timer.start()
        self._worker.run(lambda: self._fetch(self._note_share)[1], self._end, self._end)

    @Slot()
    def cancel(self) -> None:
        """Let a fetch end; what it had fetched so far is dropped."""
        self._cancelled = True

    def close(self) -> None:
        """Cancel, and let the fetch end in the time that closing the window leaves."""
        self.cancel()
        self._timer.stop()
        if self._worker is not None:
            self._worker.close(_CLOSE_S)

    def _note_share(self, share: float, _words: str) -> None:
        """Note the share done, in the fetching thread; plain values need no lock.

        Raises
        ------
        FetchCancelledError
            When the person does not want it any longer; the package client is then ended.
        """
        self._share = share
        if self._cancelled:
            raise FetchCancelledError

    @Slot()
    def _show(self) -> None:
        self.progressed.emit(self._share)

    def _end(self, problem: object) -> None:
        self._timer.stop()
        self.ended.emit(None if self._cancelled else problem)
