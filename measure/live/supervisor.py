"""The live process as the engine sees it: started, given a source, listened to, replaced.

Whatever happens to the process, the engine is told in order, and another one goes on with the
same source within seconds. No trials and no movements here.
"""

import queue
import sys
import threading
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from measure.camera.faults import SourceFault
from measure.domain.tracks import PoseFrame
from measure.errors import ModelError
from measure.live.messages import FaultChanged, FrameMessage, SourceOpened, SourceOrder
from measure.live.shared_frames import SharedFrameRing
from measure.pose.child_process import ChildProcess, WorkerError
from measure.pose.ensemble import ModelSet
from measure.pose.messages import GarbledError, Message, MessageKind
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import PixelArray

#: The process counts as hung after so long without a sign of life; twice as long after each
#: time that it was so, for the machine may be slow. Ours: it speaks four times a second.
STALL_S = 1.2
_MOST_STALL_S = 20.0

#: The same until the first picture was looked at: a network takes its time to be made.
_FIRST_S = 15.0

#: Longest start. Ours: importing the libraries from a cold disk takes long.
START_S = 60.0

#: More ends of the process than this in a minute, and it is left alone. Ours.
_MOST_ENDS = 5

#: The machine counts as slow until a process went on so long without a fault. Ours: replacing one
#: that was only late takes longer than waiting for it, and makes a slow machine slower.
_GOOD_S = 600.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameResult:
    """One picture of the source with what was found in it.

    Attributes
    ----------
    session
        Number of the source order that it belongs to.
    pose
        What was found; its pixels are those of `size_px`.
    rgb
        The analysed picture, or None for a frame lost to damage.
    size_px
        Width and height of the full-size picture.
    quick, careful
        Whether it belongs to the grid of the quick and of the careful passes.
    fps
        Pictures that a camera delivers a second, 0 where not known.
    """

    session: int
    pose: PoseFrame
    rgb: PixelArray | None
    size_px: tuple[int, int]
    coarse: bool
    fine: bool
    fps: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Ended:
    """The clip is over."""

    session: int


#: What the link tells, in order.
WorkerEvent = FrameResult | SourceOpened | FaultChanged | Ended


class LiveSupervisor:
    """Keeps a live process at work on one source after the other.

    Parameters
    ----------
    load_models
        Returns the bundles; called in the link's thread, may take long.
    tell
        Takes the news; called in the link's thread, must not block.
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
        self._command = command or (sys.executable, "-P", "-m", "measure.live.worker")
        self._least_stall_s = self._stall_s = stall_s
        self._orders: queue.SimpleQueue[SourceOrder | ModelQuality | None] = queue.SimpleQueue()
        self._ring: SharedFrameRing | None = None
        self._process: ChildProcess | None = None
        self._order: SourceOrder | None = None
        self._last_s = 0.0
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
        process = self._process
        return None if process is None else process.process_id

    def open(self, order: SourceOrder) -> None:
        """Open a source in place of the one before. The order's `ring` is filled in here."""
        self._orders.put(order)

    def use(self, quality: ModelQuality) -> None:
        """Let another network look."""
        self._orders.put(quality)

    def close(self, timeout_s: float) -> None:
        """End the process. What it says from now on is not told any more."""
        self._closed.set()
        self._orders.put(None)
        process = self._process
        if process is not None:
            process.stop()
        self._thread.join(timeout_s)

    def _work(self) -> None:
        try:
            while not self._closed.is_set():
                self._take_orders(wait=self._is_idle)
                if not self._is_idle and not self._closed.is_set():
                    self._listen_once()
        finally:
            self._drop()
            if self._ring is not None:
                self._ring.close()

    @property
    def _is_idle(self) -> bool:
        """Whether nothing is to be expected: no source, or a clip that is over and a process
        that has gone after it.
        """
        return self._order is None or (self._over and self._process is None)

    def _take_orders(self, *, wait: bool) -> None:
        while wait or not self._orders.empty():
            wait = False
            order = self._orders.get()
            if isinstance(order, SourceOrder):
                if self._ring is None:
                    self._ring = SharedFrameRing.make()
                self._order = replace(order, ring=self._ring.name)
                self._unwell = None
                self._over = self._replaced = False
                self._ends.clear()
                self._give(self._order.message())
            elif order is not None and self._order is not None:
                self._order = replace(self._order, quality=order)
                self._give(Message(kind=MessageKind.USE, values={"quality": order.value}))

    def _give(self, message: Message) -> None:
        """Give an order to the process, if there is one; its end is noticed elsewhere."""
        if self._process is not None:
            self._fresh = True
            try:
                self._process.send(message, self._stall_s)
            except WorkerError as fault:
                self._replace(str(fault))

    def _listen_once(self) -> None:
        """Take one message of the process, starting it where there is none."""
        try:
            if self._process is None:
                self._start()
            if self._process is None:
                return
            message = self._process.poll(min(0.1, self._stall_s))
            now_s = time.monotonic()
            if message is None:
                limit_s = max(self._stall_s, _FIRST_S) if self._fresh else self._stall_s
                if now_s - self._last_s > limit_s:
                    self._stall_s = min(2 * self._stall_s, _MOST_STALL_S)
                    raise WorkerError("the pose part gave no sign of life")
                return
            self._last_s = now_s
            if now_s - self._since_s > _GOOD_S:
                self._stall_s = self._least_stall_s
            self._pass_on(message)
        except (WorkerError, GarbledError) as fault:
            if not self._closed.is_set():
                self._replace(str(fault))
        except ModelError as error:
            self._give_up(SourceFault.MODEL_MISSING, str(error))

    def _start(self) -> None:
        """Start a process and give it the bundles and the source."""
        assert self._order is not None
        models = self._load_models()
        self._process = ChildProcess(self._command)
        self._expect_ready()
        for quality, bundle in models.bundles.items():
            content = np.frombuffer(bundle.content, dtype=np.uint8)
            self._process.send(
                Message(
                    kind=MessageKind.MODEL,
                    values={"quality": quality.value},
                    arrays={"bundle": content},
                ),
                START_S,
            )
            self._expect_ready()
        if self._ring is not None:
            self._ring.free_all()
        self._process.send(self._order.message(), self._stall_s)
        self._since_s = self._last_s = time.monotonic()
        self._fresh = True

    def _expect_ready(self) -> None:
        assert self._process is not None
        until_s = time.monotonic() + START_S
        while not self._closed.is_set() and time.monotonic() < until_s:
            message = self._process.poll(0.1)
            if message is not None and message.kind is MessageKind.READY:
                return
            if message is not None and message.kind is not MessageKind.ALIVE:
                break
        raise WorkerError("the pose part did not start as it should")

    def _pass_on(self, message: Message) -> None:
        """Tell what a message says, unless it is about a source that is no longer wanted."""
        assert self._order is not None
        if message.kind is MessageKind.SEEN:
            self._fresh = False
            frame = FrameMessage.of(message)
            rgb = self._picture(frame)
            if frame.session == self._order.session:
                self._note_end(frame)
                self._tell(_frame_result(frame, rgb))
            return
        if message.values.get("session") != self._order.session:
            return
        if message.kind is MessageKind.OPENED:
            self._tell(SourceOpened(**message.values))
        elif message.kind is MessageKind.TROUBLE:
            told = FaultChanged.of(message)
            self._unwell, self._replaced = told.trouble, False
            self._tell(told)
        elif message.kind is MessageKind.ENDED:
            self._over = True
            self._tell(Ended(session=self._order.session))

    def _picture(self, frame: FrameMessage) -> PixelArray | None:
        if frame.slot < 0 or self._ring is None:
            return None
        return self._ring.take(frame.slot, frame.shape)

    def _note_end(self, frame: FrameMessage) -> None:
        """Note where a clip is to go on after a restart, and that all is well again."""
        assert self._order is not None
        if self._order.clip is not None:
            self._order = replace(self._order, start_s=frame.pose.time_s + 1e-3)
        if self._unwell is not None and self._replaced:
            self._unwell = None
            self._tell(FaultChanged(session=self._order.session, trouble=None))

    def _replace(self, why: str) -> None:
        """Drop a process that came to an end; the next round starts another."""
        self._drop()
        self._replaced = True
        if self._order is None or self._over:
            return
        now_s = time.monotonic()
        self._ends.append(now_s)
        while self._ends[0] < now_s - 60.0:
            self._ends.popleft()
        if self._unwell not in (None, SourceFault.POSE_RESTARTING):
            # The camera is the trouble, and has been told; the process was in its grip.
            self._closed.wait(1.0)
        elif len(self._ends) > _MOST_ENDS:
            self._give_up(SourceFault.POSE_FAILED, why)
        else:
            self._unwell = SourceFault.POSE_RESTARTING
            self._tell(FaultChanged(session=self._order.session, trouble=self._unwell, text=why))

    def _give_up(self, trouble: SourceFault, why: str) -> None:
        """Wait for another order."""
        if self._order is not None:
            self._tell(FaultChanged(session=self._order.session, trouble=trouble, text=why))
        self._order = None
        self._drop()

    def _drop(self) -> None:
        if self._process is not None:
            process, self._process = self._process, None
            process.kill()


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
