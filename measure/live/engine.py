"""Live engine: the interface to a live measurement; callers leave orders and fetch the results.

No call blocks. One thread runs the :class:`measure.live.session.LiveSession`; frames come from the
live worker (:mod:`measure.live.supervisor`), trials are refined by another process
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
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Source
from measure.live.movement_run import MovementRun
from measure.live.session import Backends, LiveSession
from measure.live.supervisor import STALL_S, FrameResult, LiveSupervisor, WorkerEvent
from measure.live.trial_refiner import RefineResult, TrialRefiner
from measure.pose.ensemble import ModelSet, installed_models
from measure.pose.supervisor import PoseProcess

#: The engine checks its clocks at least so often, seconds. [technical]
_TICK_S = 0.25

#: Frames that may wait for the engine; those of no grid are dropped beyond. [technical]
_WAITING = 8

#: Of the time given to close, so much is kept for closing itself, seconds. [technical]
_CLOSING_S = 1.5

#: A computer that is too busy may take so much longer before a captured trial is lost, seconds.
#: [technical]
PATIENCE_S = 8.0


@dataclass(frozen=True, slots=True)
class _Closing:
    until_s: float
    reply: "queue.SimpleQueue[Measurement | None]"


class LiveEngine:
    """One source, one person, one movement at a time; made once, closed once.

    Frames and events tell how it goes. A movement that was chosen goes on with the trials it has
    when a source is opened anew, so that a camera pulled out and plugged in again costs none.

    Parameters
    ----------
    load_models
        Returns the bundles kept on this computer.
    command
        How the live process is started; tests put others here.
    make_process
        Makes the pose process that refines trials; tests put others here.
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
        self._supervisor: LiveSupervisor | None = None
        self._refiner: TrialRefiner | None = None
        self._models: ModelSet | None = None
        self._session = LiveSession(
            self._backends, self._show, self._happen, wall=wall, loop_clips=loop_clips
        )
        self._thread = threading.Thread(target=self._work, name="live engine", daemon=True)
        self._thread.start()

    @property
    def process_id(self) -> int | None:
        """Number of the live process, or None while there is none."""
        supervisor = self._supervisor
        return None if supervisor is None else supervisor.process_id

    def start(self, source: Source) -> None:
        """Open a source, closing the one before; trials of the chosen movement stay."""
        self._inbox.put(lambda: self._session.open(source))

    def choose(self, movement: Movement, side: Side, trials: int, practice: int) -> None:
        """Begin a movement: so many practice trials, then so many scored ones."""
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
        """Stop searching for trials until `resume`; frames go on coming."""
        self._with_movement(MovementRun.pause)

    def resume(self) -> None:
        """Go on after a pause; an interrupted trial starts anew."""
        self._with_movement(MovementRun.resume)

    def take_position(self) -> None:
        """Capture the position that is held now, however little the arm moved."""
        self._inbox.put(self._session.take_position)

    def discard_last(self) -> None:
        """Drop the last captured trial that counts; TRIAL_DISCARDED follows."""
        self._with_movement(MovementRun.discard_last)

    def restore_last(self) -> None:
        """Put back the trial that was discarded last; TRIAL_RESTORED follows if it counts again."""
        self._with_movement(MovementRun.restore_last)

    def finish_movement(self) -> None:
        """Take no more trials; MEASUREMENT_DONE follows when those captured are refined."""
        self._with_movement(MovementRun.finish)

    def close(self, timeout_s: float) -> Measurement | None:
        """Close everything within the time; return what an unfinished movement's trials make.

        Trials still being refined get most of that time; where it does not do, the coarse pass
        over them counts, with the widest interval. While there are any, the time is exceeded by
        up to PATIENCE_S, so that a busy computer loses none.
        """
        until_s = time.monotonic() + timeout_s
        patience_s = PATIENCE_S if self._session.pending else 0.0
        reply: queue.SimpleQueue[Measurement | None] = queue.SimpleQueue()
        self._inbox.put(_Closing(until_s, reply))
        try:
            return reply.get(timeout=timeout_s + patience_s)
        except queue.Empty:
            return None
        finally:
            self._release(max(0.05, until_s - time.monotonic()))

    def _with_movement(self, act: Callable[[MovementRun], None]) -> None:
        """Leave an order about the movement that is chosen when its turn comes."""

        def act_on_chosen() -> None:
            if self._session.movement is not None:
                act(self._session.movement)

        self._inbox.put(act_on_chosen)

    def _backends(self) -> Backends:
        """Return models and processes, made on first use; runs in the engine's thread."""
        if self._models is None:
            self._models = self._load_models()
        models = self._models
        if self._supervisor is None:
            self._supervisor = LiveSupervisor(
                lambda: models, self._tell, command=self._command, stall_s=self._stall_s
            )
        if self._refiner is None:
            self._refiner = TrialRefiner(models, self._inbox.put, self._make_process)
        return Backends(models=models, supervisor=self._supervisor, refiner=self._refiner)

    def _tell(self, event: WorkerEvent) -> None:
        """Take an event in the supervisor's thread; a frame that nobody needs may go lost."""
        spare = isinstance(event, FrameResult) and not (event.coarse or event.fine)
        if not spare or self._inbox.qsize() <= _WAITING:
            self._inbox.put(event)

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
        """Wait for trials that are nearly refined, then answer, whatever happens."""
        measurement = None
        try:
            if self._supervisor is not None:
                self._supervisor.close(0.0)
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
        if self._refiner is not None:
            self._refiner.close(timeout_s / 4)
        if self._supervisor is not None:
            self._supervisor.close(timeout_s / 2)
        self._thread.join(timeout_s / 4)
