"""Window harness: scripted engine, store in memory, drawn clip and a clock of its own."""

import datetime as dt
import math
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path

import numpy as np
from PySide6.QtCore import QCoreApplication, QElapsedTimer, QEvent, QEventLoop, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.app.main_window import MainWindow
from gui.app.shown_window import ShownWindow
from gui.app.window_pages import WindowPages
from gui.protocol.exercise_round import RoundPhase
from gui.session.audio_cues import AudioCues
from gui.session.engine_feed import EngineBridge
from gui.session.interfaces import ClipAnalysis, ClipCurve, ReadClip
from gui.session.repository import SessionRepository
from gui.session.services import Services
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.workers.worker_thread import BackgroundWorker
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import LANDMARKS, Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import History
from measure.domain.tracks import Track
from measure.storage.store import Store
from measure.system.clock import Timestamp
from measure.video.sampling import COARSE_HZ
from tests.support.gui.drawn_person import HEIGHT_PX, WIDTH_PX, draw_person
from tests.support.gui.moved_clock import MovedClock
from tests.support.gui.scripted_engine import ScriptedEngine

#: Times around the event loop until what follows from what has followed.
_ROUNDS = 6

#: Nap between two looks at what other threads do, seconds.
_NAP_S = 0.001

#: Step of the round's clock, seconds.
TICK_S = 0.1

TODAY = dt.date(2026, 11, 25)


class StageClock:
    """A clock that begins in the evening of TODAY and ticks once each time it is read."""

    def __init__(self) -> None:
        self._now = dt.datetime.combine(TODAY, dt.time(18, 25), dt.UTC)

    def now(self) -> Timestamp:
        self._now += dt.timedelta(milliseconds=1)
        return Timestamp(utc=self._now)

    def monotonic_s(self) -> float:
        return time.monotonic()


class WindowHarness:
    """A window with a scripted engine, and the means to play a state and take its picture."""

    def __init__(
        self,
        scheme: Scheme = Scheme.LIGHT,
        percent: int = 100,
        size: tuple[int, int] = (1280, 800),
        open_store: Callable[[], Store] | None = None,
        clock: MovedClock | None = None,
        settings: Path | None = None,
    ) -> None:
        self._home = tempfile.TemporaryDirectory()
        settings = settings or Path(self._home.name) / "window.ini"
        self.engine = ScriptedEngine()
        #: Time of the guided round, which passes only where a test lets it.
        #: Whether clips that are being read stay so: nothing waits for them.
        self.reading_is_held = False
        self._round_s = 0.0
        self._keeper = SessionRepository(open_store or partial(Store.in_memory, clock=StageClock()))
        appearance = Appearance(scheme, percent)
        appearance.apply()
        self.services = Services(
            appearance=appearance,
            settings=WindowSettings(settings),
            feed=EngineBridge(self._make_engine),
            cues=AudioCues(tones=False, speech=False),
            keeper=self._keeper,
            records=BackgroundWorker("records"),
            slow_worker=BackgroundWorker("slow"),
            find_cameras=lambda: ("Integrated Webcam", "Desk Camera HD"),
            read_clips=read_drawn_clips,
            open_clip=lambda path: DrawnThumbnails(),
            today=clock.today if clock is not None else lambda: TODAY,
            local_time=clock.local_time if clock is not None else dt.datetime.now,
            monotonic_s=lambda: self._round_s,
        )
        self.shown = ShownWindow(self.services)
        self.window.resize(*size)
        self.window.show()
        self.settle()

    @property
    def home(self) -> Path:
        """A folder of its own, gone with the stage."""
        return Path(self._home.name)

    @property
    def window(self) -> MainWindow:
        """The window that is shown at present."""
        return self.shown.window

    def _make_engine(self) -> ScriptedEngine:
        self.engine = ScriptedEngine()
        return self.engine

    def history(self) -> History:
        """Return what is kept of the first person."""
        return self.store.history(self.store.people()[0].id)

    @property
    def keeper(self) -> SessionRepository:
        """The window's repository, once no thread uses it: it belongs to one at a time."""
        self.settle()
        return self._keeper

    @property
    def store(self) -> Store:
        """The store of the repository, free to use as that is."""
        return self.keeper.store

    def settle(self, wait_ms: int = 0) -> None:
        """Let everything that is under way arrive, however slow the computer is."""
        timer = QElapsedTimer()
        timer.start()
        idle_rounds = 0
        while idle_rounds < _ROUNDS or timer.elapsed() < wait_ms:
            self.services.feed.pull()
            for worker in (self.services.records, self.services.slow_worker):
                worker.collect()
            QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
            QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 10)
            idle_rounds = 0 if self._busy() else idle_rounds + 1
            if not idle_rounds or idle_rounds >= _ROUNDS:
                # The other threads work while this one sleeps.
                time.sleep(_NAP_S)

    def pass_seconds(self, seconds: float) -> None:
        """Let time pass in a round that is led, a tenth of a second after the other."""
        for _ in range(round(seconds / TICK_S)):
            self._round_s += TICK_S
            self.window.exercises.rounds.round.advance()

    def pass_until(self, phase: RoundPhase) -> None:
        """Let time pass until a phase of the round begins."""
        guided = self.window.exercises.rounds.round.guided
        for _ in range(10_000):
            if guided is None or guided.phase is phase:
                return
            self.pass_seconds(TICK_S)
        raise AssertionError(f"{phase} did not come")

    def _busy(self) -> bool:
        pages = self.window.findChild(WindowPages)
        reading = pages is not None and pages.is_reading and not self.reading_is_held
        return reading or self.services.records.busy or self.services.slow_worker.busy

    def close(self) -> None:
        """Close the window and let go of its widgets."""
        # A key sequence leaves its modifiers pressed: the next window would select with them.
        if QApplication.keyboardModifiers() != Qt.KeyboardModifier.NoModifier:
            QTest.keyRelease(self.window, Qt.Key.Key_Control)
        if not self.window.close():  # it asks about a programme that is not saved
            self.window.exercises.give_up_entries()
            self.window.close()
        self.window.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        self._home.cleanup()


class DrawnThumbnails:
    """A drawn clip of nine seconds: three times the arm up and down."""

    times_s = np.arange(0.0, 9.01, 0.04)

    def at(self, time_s: float) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
        return draw_person(Movement.FLEXION, Side.RIGHT, drawn_clip_value(time_s))[0]


def drawn_clip_value(time_s: float) -> float:
    """Return the drawn clip's angle: rest, up, hold, down, three seconds each time."""
    share = time_s % 3.0
    return 118.0 * float(np.interp(share, [0, 0.5, 1.1, 2.1, 2.7, 3.0], [0, 0, 1, 1, 0, 0]))


def read_drawn_clips(
    entries: Sequence[ClipEntry],
    setup: KnownSetup,
    results: Path | None,
    progress: Callable[[float], bool],
    *,
    fresh: bool = False,
) -> Iterator[ReadClip]:
    """Read every clip as the drawn one."""
    for number, entry in enumerate(entries):
        if not progress(float(number)):
            return
        analysis = read_drawn_clip(entry.movement, entry.side)
        result = ClipResult(number=number, entry=entry, measurement=analysis.measurement)
        yield ReadClip(result=result, analysis=analysis)
        progress(number + 1.0)


def read_drawn_clip(movement: Movement, side: Side) -> ClipAnalysis:
    """Return a reading of the drawn clip."""
    engine = ScriptedEngine()
    engine.movement, engine.side = movement, side
    engine.choose(movement, side, 3, 0)
    for value, reasons in ((117.0, ()), (119.0, ()), (118.0, (Reason.TRUNK_LEAN,))):
        engine.capture(value)
        engine.settle(reasons)
    measurement = engine.measurement()
    if measurement is None:
        raise ValueError("the drawn clip has trials")
    time_s = np.arange(0, 9, 1 / COARSE_HZ)
    values = np.array([drawn_clip_value(each) for each in time_s])
    points = np.stack([draw_person(movement, side, each)[1] for each in values])
    n = len(time_s)
    track = Track(
        time_s=time_s,
        points_px=points,
        visibility=np.ones((n, LANDMARKS)),
        presence=np.ones((n, LANDMARKS)),
        state=np.zeros(n, dtype=np.int64),
        people=np.ones(n, dtype=np.int64),
        width_px=WIDTH_PX,
        height_px=HEIGHT_PX,
    )
    shaken = values + np.array([0.8 * math.sin(7 * each) for each in time_s])
    return ClipAnalysis(
        measurement=measurement,
        curve=ClipCurve(time_s=track.time_s, value=shaken),
        track=track,
    )
