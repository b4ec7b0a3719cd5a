"""Engine bridge: the live engine for the window, polled by a timer, its results as signals."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Qt, QTimer, Signal, Slot

from gui.session.interfaces import Engine
from gui.text.session_wording import trouble_sentence
from gui.workers.worker_thread import BackgroundWorker
from measure.camera.faults import SourceFault
from measure.domain.measurements import Measurement
from measure.live.engine import PATIENCE_S
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Source

#: Interval of polling, milliseconds: a frame waits little after it was analysed. [technical]
_PULL_EVERY_MS = 4
#: Longest time an engine may take to close when the page is left, seconds. [technical]
_CLOSE_S = 4.0
#: Share of the time for closing everything that the engine gets. [technical]
_ENGINE_SHARE = 0.85


class EngineBridge(QObject):
    """Opens an engine for as long as a page shows it, and emits its events and frames.

    The camera is open only while a page needs it.
    """

    framed = Signal(object)
    happened = Signal(object)
    #: An engine was closed in the middle of a movement; what its captured trials make.
    left_over = Signal(object)

    def __init__(self, make_engine: Callable[[], Engine], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._make_engine = make_engine
        #: The engine while a source is open.
        self.engine: Engine | None = None
        self._source: Source | None = None
        #: What keeps frames from coming, as last reported.
        self.trouble: SourceFault | None = None
        self._details = ""
        #: Of the source's frames in full; None before the first.
        self.size_px: tuple[int, int] | None = None
        self._closing = BackgroundWorker("closing", self)
        self._timer = QTimer(self)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setInterval(_PULL_EVERY_MS)
        self._timer.timeout.connect(self.pull)

    @property
    def running(self) -> bool:
        return self.engine is not None

    @property
    def source(self) -> Source | None:
        return self._source

    @property
    def why_no_picture(self) -> str:
        """What keeps frames from coming, in detail where that is known; empty otherwise."""
        if self.trouble is None or self.trouble is SourceFault.CAMERA_SLOW:
            return ""
        # What is known in detail of a missing model is meant for the terminal.
        details = "" if self.trouble is SourceFault.MODEL_MISSING else self._details
        return details or trouble_sentence(self.trouble)

    def open(self, source: Source) -> Engine:
        """Open a source and return the engine; a source that is open already stays open."""
        if self.engine is not None and source == self._source:
            return self.engine
        return self.reopen(source)

    def reopen(self, source: Source) -> Engine:
        """Open a source anew, as after trouble, and return the engine."""
        if self.engine is None:
            self.engine = self._make_engine()
        self._source = source
        self.size_px = None
        self._note(None)
        self.engine.start(source)
        self._timer.start()
        return self.engine

    def leave(self, engine_s: float = _CLOSE_S) -> None:
        """Close the engine without waiting for it; it may take so many seconds."""
        engine = self._stop()
        if engine is not None:
            self._closing.run(lambda: engine.close(engine_s), self._closed)

    def close(self, timeout_s: float) -> None:
        """Close everything for good, within the time unless captured trials take longer."""
        self.leave(timeout_s * _ENGINE_SHARE)
        self._closing.close(timeout_s + PATIENCE_S)

    @Slot()
    def pull(self) -> None:
        """Take what the engine has: all events, then the newest frame."""
        if self.engine is None:
            return
        events: list[LiveEvent] = self.engine.events()
        for event in events:
            if event.kind is LiveEventKind.TROUBLE:
                self._note(event.trouble or SourceFault.OTHER, event.text)
            elif event.kind is LiveEventKind.RECOVERED:
                self._note(None)
            self.happened.emit(event)
        newest: LiveFrame | None = self.engine.newest_frame() if self.engine else None
        if newest is not None:
            self.size_px = newest.full_size_px
            self.framed.emit(newest)

    def _note(self, trouble: SourceFault | None, details: str = "") -> None:
        self.trouble, self._details = trouble, details

    def _stop(self) -> Engine | None:
        self._timer.stop()
        self._note(None)
        engine, self.engine, self._source = self.engine, None, None
        return engine

    def _closed(self, measurement: Measurement | None) -> None:
        if measurement is not None:
            self.left_over.emit(measurement)
