"""The live engine: callers leave orders and pick up what is ready, so nothing holds them up.

One thread of its own runs the :class:`measure.live.session.LiveSession`; pictures come from the
live process (:mod:`measure.live.supervisor`), trials are settled by another
(:mod:`measure.live.trial_refiner`).
"""

import queue
import threading
import time
import traceback
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass

from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Source
from measure.live.session import Backends, LiveSession
from measure.live.supervisor import STALL_S, FrameResult, LiveSupervisor, WorkerEvent
from measure.live.trial_refiner import RefineResult, TrialRefiner
from measure.pose.ensemble import ModelSet, installed_models
from measure.pose.supervisor import PoseProcess

#: The engine looks at its clocks at least so often, seconds.
_TICK_S = 0.25

#: Pictures that may wait for the engine; those of no grid are dropped beyond. Ours.
_WAITING = 8

#: Of the time given to close, so much is kept for closing itself, seconds.
_CLOSING_S = 1.5


@dataclass(frozen=True, slots=True)
class _Closing:
    until_s: float
    reply: "queue.SimpleQueue[Measurement | None]"


class LiveEngine:
    """One source, one person, one movement at a time; made once, closed once.

    Parameters
    ----------
    load_models
        Returns the bundles kept on this computer.
    command
        How the live process is started; tests put others here.
    make_process
        Makes the pose process that settles trials; tests put others here.
    loop_clips
        Whether a clip begins anew at its end, for soak tests.
    stall_s
        Longest time without a sign of life of the live process, seconds.
    wall
        The time of day in seconds: against the clock that never runs backwards it shows that
        the computer slept.
    """

    def __init__(
        self,
        load_models: Callable[[], ModelSet] = installed_models,
        *,
        command: tuple[str, ...] | None = None,
        make_process: Callable[[ModelSet], PoseProcess] | None = None,
        loop_clips: bool = False,
        stall_s: float = STALL_S,
        wall: Callable[[], float] = time.time,
    ) -> None:
        self._load_models = load_models
        self._command = command
        self._make_process = make_process
        self._stall_s = stall_s
        self._inbox: queue.SimpleQueue[
            Callable[[], None] | WorkerEvent | RefineResult | _Closing
        ] = queue.SimpleQueue()
        self._newest: LiveFrame | None = None
        self._happened: deque[LiveEvent] = deque()
        self._lock = threading.Lock()
        self._link: LiveSupervisor | None = None
        self._settling: TrialRefiner | None = None
        self._models: ModelSet | None = None
        self._session = LiveSession(
            self._backends, self._show, self._happen, wall=wall, loop_clips=loop_clips
        )
        self._thread = threading.Thread(target=self._work, name="live engine", daemon=True)
        self._thread.start()

    @property
    def process_id(self) -> int | None:
        """Number of the live process, or None while there is none."""
        link = self._link
        return None if link is None else link.process_id

    def start(self, source: Source) -> None:
        """Open a source, closing the one before; trials of the chosen movement stay."""
        self._inbox.put(lambda: self._session.open(source))

    def choose(
        self,
        movement: Movement,
        side: Side,
        trials: int,
        practice: int,
        conduct: AssessmentCondition,
    ) -> None:
        """Begin a movement: so many practice trials, then so many scored ones.

        How it is done (`conduct`) changes no number; who keeps the reading keeps it too.
        """
        self._inbox.put(lambda: self._session.choose(movement, side, trials, practice))

    def newest_frame(self) -> LiveFrame | None:
        """Return the newest frame not yet handed out, or None."""
        with self._lock:
            newest, self._newest = self._newest, None
            return newest

    def events(self) -> list[LiveEvent]:
        """Return what happened since the last call, in order."""
        with self._lock:
            happened = list(self._happened)
            self._happened.clear()
            return happened

    def pause(self) -> None:
        """Stop looking for trials until `resume`; pictures go on coming."""
        self._inbox.put(self._session.pause)

    def resume(self) -> None:
        """Go on after a pause; an interrupted trial starts anew."""
        self._inbox.put(self._session.resume)

    def discard_last(self) -> None:
        """Drop the last captured trial that counts; TRIAL_DISCARDED follows."""
        self._inbox.put(self._session.discard_last)

    def finish_movement(self) -> None:
        """Take no more trials; MEASUREMENT_DONE follows when those captured are settled."""
        self._inbox.put(self._session.finish_movement)

    def close(self, timeout_s: float) -> Measurement | None:
        """Close everything within the time; return what an unfinished movement's trials make.

        Trials still being settled get most of that time; where it does not do, the quick look
        at them counts, with the widest interval.
        """
        until_s = time.monotonic() + timeout_s
        reply: queue.SimpleQueue[Measurement | None] = queue.SimpleQueue()
        self._inbox.put(_Closing(until_s, reply))
        try:
            return reply.get(timeout=timeout_s)
        except queue.Empty:
            return None
        finally:
            self._release(max(0.05, until_s - time.monotonic()))

    def _backends(self) -> Backends:
        """Return models and helpers, made on first use; runs in the engine's thread."""
        if self._models is None:
            self._models = self._load_models()
        models = self._models
        if self._link is None:
            self._link = LiveSupervisor(
                lambda: models, self._tell, command=self._command, stall_s=self._stall_s
            )
        if self._settling is None:
            self._settling = TrialRefiner(models, self._inbox.put, self._make_process)
        return Backends(models=models, link=self._link, settler=self._settling)

    def _tell(self, news: WorkerEvent) -> None:
        """Take news in the link's thread; a frame that nobody needs may go lost."""
        spare = isinstance(news, FrameResult) and not (news.coarse or news.fine)
        if not spare or self._inbox.qsize() <= _WAITING:
            self._inbox.put(news)

    def _show(self, frame: LiveFrame) -> None:
        with self._lock:
            self._newest = frame

    def _happen(self, event: LiveEvent) -> None:
        with self._lock:
            self._happened.append(event)

    def _work(self) -> None:
        while True:
            try:
                item = self._inbox.get(timeout=_TICK_S)
            except queue.Empty:
                item = self._session.tick
            if isinstance(item, _Closing):
                self._end(item)
                return
            try:
                self._session.tick()
                self._do(item)
            except Exception as error:  # noqa: BLE001 - the top of a thread
                traceback.print_exc()
                text = f"{type(error).__name__}: {error}"
                self._happen(
                    LiveEvent(kind=LiveEventKind.TROUBLE, trouble=SourceFault.OTHER, text=text)
                )

    def _do(self, item: Callable[[], None] | WorkerEvent | RefineResult) -> None:
        if isinstance(item, WorkerEvent | RefineResult):
            self._session.take(item)
        else:
            item()

    def _end(self, closing: _Closing) -> None:
        """Wait for trials that are nearly settled, then answer, whatever happens."""
        measurement = None
        try:
            if self._link is not None:
                self._link.close(0.0)
            while self._session.pending:
                left_s = closing.until_s - _CLOSING_S - time.monotonic()
                item = self._inbox.get(timeout=max(0.0, left_s))
                if isinstance(item, RefineResult):
                    self._session.take(item)
        except queue.Empty:
            pass
        except Exception:  # noqa: BLE001 - the top of a thread
            traceback.print_exc()
        try:
            measurement = self._session.end()
        except Exception:  # noqa: BLE001 - the top of a thread
            traceback.print_exc()
        closing.reply.put(measurement)

    def _release(self, timeout_s: float) -> None:
        """End both processes; what does not end in time is left to end with this one."""
        if self._settling is not None:
            self._settling.close(timeout_s / 4)
        if self._link is not None:
            self._link.close(timeout_s / 2)
        self._thread.join(timeout_s / 4)
