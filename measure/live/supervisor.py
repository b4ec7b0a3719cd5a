"""Supervision of the live worker: it is given a source, watched, and replaced when it fails.

Whatever happens to the process, the engine gets its events in order, and another one goes on with
the same source within seconds. No trials and no movements here.
"""

import queue
import threading
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass

from msgspec.structs import replace

from measure.camera.faults import SourceFault
from measure.domain.tracks import PoseFrame
from measure.errors import ModelError
from measure.live.messages import (
    LIVE_ANSWERS,
    Ended,
    FaultChanged,
    FrameMessage,
    SourceOpened,
    SourceOrder,
    UseModel,
)
from measure.live.shared_frames import SharedFrameRing
from measure.pose.child_process import SilentWorkerError, WorkerError
from measure.pose.ensemble import ModelSet
from measure.pose.message_pipe import Message, Text
from measure.pose.supervisor import WorkerSupervisor
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import PixelArray

#: Longest silence of the live worker, seconds: it speaks four times a second. Twice as long after
#: each time that it was silent for so long, for the machine may be slow. [technical]
STALL_S = 1.2

#: What that may grow to, seconds. [technical]
_MOST_STALL_S = 20.0

#: Longest silence until the first frame was analysed, seconds: a network takes its time to be made.
#: [technical]
_FIRST_S = 15.0

#: Longest start, seconds: importing the libraries from a cold disk takes long. [technical]
START_S = 60.0

#: Ends of the process within a minute after which it is not started again. [technical]
_MOST_ENDS = 5

#: Time without a fault after which the machine no longer counts as slow, seconds: replacing a
#: process that was only late takes longer than waiting for it, and makes a slow machine slower.
#: [technical]
_GOOD_S = 600.0

#: Longest wait for an answer before orders are attended to, seconds. [technical]
_TICK_S = 0.1

#: Pause before a process that a camera held is started anew, seconds. [technical]
_PAUSE_S = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameResult:
    """One frame of the source with the people in it.

    Attributes
    ----------
    session
        Number of the source order that it belongs to.
    pose
        The people; pixels are those of `size_px`.
    rgb
        The analysed frame, shape (h, w, 3), or None for one lost to damage.
    size_px
        Width and height of the full-size frame.
    coarse, fine
        Whether it belongs to the grid of the coarse and of the fine passes.
    fps
        Frames that a camera delivers a second, 0 where not known.
    """

    session: int
    pose: PoseFrame
    rgb: PixelArray | None
    size_px: tuple[int, int]
    coarse: bool
    fine: bool
    fps: float = 0.0


#: What the supervisor reports, in order.
WorkerEvent = FrameResult | SourceOpened | FaultChanged | Ended


class LiveSupervisor:
    """Keeps a live worker at work on one source after the other.

    Parameters
    ----------
    load_models
        Returns the bundles; called in the supervisor's thread, may take long.
    tell
        Takes events; called in the supervisor's thread, must not block.
    command
        How the process is started; tests put others here.
    stall_s
        Longest time without a sign of life, seconds.
    """

    def __init__(
        self,
        load_models: Callable[[], ModelSet],
        tell: Callable[[WorkerEvent], None],
        *,
        command: tuple[str, ...] | None = None,
        stall_s: float = STALL_S,
    ) -> None:
        self._load_models = load_models
        self._tell = tell
        self._worker = WorkerSupervisor(
            "measure.live.worker", LIVE_ANSWERS, start_s=START_S, command=command
        )
        self._least_stall_s = self._stall_s = stall_s
        self._orders: queue.SimpleQueue[SourceOrder | ModelQuality | None] = queue.SimpleQueue()
        self._ring: SharedFrameRing | None = None
        self._order: SourceOrder | None = None
        self._since_s = 0.0
        self._unwell: SourceFault | None = None
        self._over = False
        self._replaced = False
        self._fresh = True
        self._ends: deque[float] = deque()
        self._closed = threading.Event()
        self._thread = threading.Thread(target=self._work, name="live link", daemon=True)
        self._thread.start()

    @property
    def process_id(self) -> int | None:
        """The running process's number, or None."""
        return self._worker.process_id

    def open(self, order: SourceOrder) -> None:
        """Open a source in place of the one before. The order's `ring` is filled in here."""
        self._orders.put(order)

    def use(self, quality: ModelQuality) -> None:
        """Use another network from the next frame on."""
        self._orders.put(quality)

    def close(self, timeout_s: float) -> None:
        """End the process. What it sends from now on is not reported any more."""
        self._closed.set()
        self._orders.put(None)
        self._worker.stop()
        self._thread.join(timeout_s)

    def _work(self) -> None:
        try:
            while not self._closed.is_set():
                self._take_orders(wait=self._is_idle)
                if not self._is_idle and not self._closed.is_set():
                    self._listen_once()
        finally:
            self._worker.drop()
            if self._ring is not None:
                self._ring.close()

    @property
    def _is_idle(self) -> bool:
        """Whether nothing is to be expected: no source, or a clip that is over and a process
        that has gone after it.
        """
        return self._order is None or (self._over and self._worker.process_id is None)

    def _take_orders(self, *, wait: bool) -> None:
        while wait or not self._orders.empty():
            wait = False
            order = self._orders.get()
            if isinstance(order, SourceOrder):
                if self._ring is None:
                    self._ring = SharedFrameRing.make()
                clip = None if order.clip is None else order.clip.absolute()
                self._order = replace(order, ring=self._ring.name, clip=clip)
                self._unwell = None
                self._over = self._replaced = False
                self._ends.clear()
                self._give(self._order)
            elif order is not None and self._order is not None:
                self._order = replace(self._order, quality=order)
                self._give(UseModel(quality=order))

    def _give(self, order: Message) -> None:
        """Give an order to the process, if there is one; its end is noticed elsewhere."""
        if self._worker.process_id is not None:
            self._fresh = True
            try:
                self._worker.send(order, self._stall_s)
            except WorkerError as fault:
                self._replace(str(fault))

    def _listen_once(self) -> None:
        """Take one answer of the process, starting it where there is none."""
        try:
            if self._worker.process_id is None:
                self._start()
            answer = self._poll()
            if answer is not None:
                if time.monotonic() - self._since_s > _GOOD_S:
                    self._stall_s = self._least_stall_s
                self._pass_on(answer)
        except WorkerError as fault:
            self._replace(str(fault))
        except ModelError as error:
            self._give_up(SourceFault.MODEL_MISSING, str(error))

    def _poll(self) -> Message | None:
        """Return an answer, if there is one; after a silence the next may last longer."""
        limit_s = max(self._stall_s, _FIRST_S) if self._fresh else self._stall_s
        try:
            return self._worker.poll(min(_TICK_S, self._stall_s), limit_s)
        except SilentWorkerError:
            self._stall_s = min(2 * self._stall_s, _MOST_STALL_S)
            raise

    def _start(self) -> None:
        """Start a process and give it the bundles and the source."""
        assert self._order is not None
        models = self._load_models()
        self._worker.prepare(models.bundles, cancelled=self._closed.is_set)
        if self._ring is not None:
            self._ring.free_all()
        self._worker.send(self._order, self._stall_s)
        self._since_s = time.monotonic()
        self._fresh = True

    def _pass_on(self, answer: Message) -> None:
        """Report an answer, unless it is about a source that is no longer wanted."""
        assert self._order is not None
        match answer:
            case FrameMessage():
                self._fresh = False
                rgb = self._picture(answer)  # frees the slot
                if answer.session == self._order.session:
                    self._note_end(answer)
                    self._tell(_frame_result(answer, rgb))
            case SourceOpened() | FaultChanged() | Ended():
                if answer.session != self._order.session:
                    return
                if isinstance(answer, FaultChanged):
                    self._unwell, self._replaced = answer.trouble, False
                self._over = self._over or isinstance(answer, Ended)
                self._tell(answer)

    def _picture(self, frame: FrameMessage) -> PixelArray | None:
        if frame.slot < 0 or self._ring is None:
            return None
        return self._ring.take(frame.slot, frame.shape)

    def _note_end(self, frame: FrameMessage) -> None:
        """Note where a clip is to go on after a restart, and that frames come again."""
        assert self._order is not None
        if self._order.clip is not None:
            self._order = replace(self._order, start_s=frame.pose.time_s + 1e-3)
        if self._unwell is not None and self._replaced:
            self._unwell = None
            self._tell(FaultChanged(session=self._order.session, trouble=None))

    def _replace(self, why: str) -> None:
        """Drop a process that failed; the next round starts another."""
        self._worker.drop()
        self._replaced = True
        if self._order is None or self._over or self._closed.is_set():
            return
        now_s = time.monotonic()
        self._ends.append(now_s)
        while self._ends[0] < now_s - 60.0:
            self._ends.popleft()
        if self._unwell not in (None, SourceFault.POSE_RESTARTING):
            # The camera is at fault, which has been reported; it held the process.
            self._closed.wait(_PAUSE_S)
        elif len(self._ends) > _MOST_ENDS:
            self._give_up(SourceFault.POSE_FAILED, why)
        else:
            self._unwell = SourceFault.POSE_RESTARTING
            self._report(self._unwell, why)

    def _give_up(self, trouble: SourceFault, why: str) -> None:
        """Wait for another order."""
        self._report(trouble, why)
        self._order = None
        self._worker.drop()

    def _report(self, trouble: SourceFault, why: str) -> None:
        if self._order is not None:
            self._tell(FaultChanged(session=self._order.session, trouble=trouble, text=Text(why)))


def _frame_result(frame: FrameMessage, rgb: PixelArray | None) -> FrameResult:
    return FrameResult(
        session=frame.session,
        pose=frame.pose,
        rgb=rgb,
        size_px=frame.size_px,
        coarse=frame.coarse,
        fine=frame.fine,
        fps=frame.fps,
    )
