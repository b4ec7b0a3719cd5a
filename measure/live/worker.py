"""The live worker: a camera, or a clip played as if it were one, analysed as it comes.

Started by :class:`measure.live.supervisor.LiveSupervisor`, never by hand. It runs the network on
the newest frame at the rate it manages, and sends what it detects.
"""

import math
import os
import queue
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from typing import Any

from measure.camera.capture import LiveSource, open_camera
from measure.camera.faults import SourceFault
from measure.camera.playback import ClipCamera
from measure.domain.tracks import PoseFrame
from measure.live.capture import CaptureThread, FrameForInference
from measure.live.messages import (
    LIVE_ORDERS,
    Ended,
    FaultChanged,
    FrameMessage,
    SourceOpened,
    SourceOrder,
    UseModel,
)
from measure.live.shared_frames import SharedFrameRing
from measure.pose.inference import (
    PoseEstimator,
    RestartingEstimator,
    pose_frame,
    unreadable_frame,
)
from measure.pose.memory import release_freed
from measure.pose.message_pipe import Message, Text
from measure.pose.messages import (
    Alive,
    LoadModel,
    Ready,
)
from measure.pose.worker import Worker, WorkerPipes
from measure.pose_models.catalogue import ModelQuality
from measure.video.sampling import COARSE_HZ, FINE_HZ, RateSampler

#: A sign of life at least so often, seconds. [technical]
ALIVE_S = 0.25

#: A camera at fault that does not answer for so long can only be left by ending the process,
#: seconds. [technical]
_DEAF_S = 3.0

#: The same while it is being opened, seconds: some systems take very long. [technical]
_OPENING_S = 90.0

#: A gap between two judgements of the camera that shows that the whole process was held up, the
#: camera's thread too; the camera then gets as long to answer before it is blamed, seconds.
#: [technical]
_HELD_UP_S = 1.0

#: A camera at fault is opened again no sooner than after so long, seconds. [technical]
_AGAIN_S = 5.0

#: Longest wait for a free slot for a frame that a trial needs, seconds. [technical]
_SLOT_S = 0.5

#: Failures of the network within a minute that are survived. [technical]
_MOST_FAILURES = 5

#: Exit code that says: the camera holds the process. [technical]
CAMERA_HOLDS = 4


def main() -> None:
    """Serve a source until the supervisor closes the pipe or is gone."""
    pipes = WorkerPipes(LIVE_ORDERS)
    from measure.pose.network import PoseNetwork  # takes a second, and closes the way out first

    LiveWorker(pipes, PoseNetwork, open_source).serve()


def open_source(order: SourceOrder) -> LiveSource:
    """Open what an order asks for."""
    if order.clip is not None:
        return ClipCamera(order.clip, start_s=order.start_s, loop=order.loop)
    return open_camera(order.camera, clock=lambda: time.monotonic() - order.origin_s)


class LiveWorker(Worker):
    """Analyses frames of one source after the other.

    Parameters
    ----------
    pipes, make_estimator
        As in :class:`measure.pose.worker.Worker`.
    open_source
        Opens a source; runs in a thread of its own.
    """

    def __init__(
        self,
        pipes: WorkerPipes,
        make_estimator: Callable[[bytes], PoseEstimator],
        open_source: Callable[[SourceOrder], LiveSource],
    ) -> None:
        super().__init__(pipes, make_estimator)
        self._open_source = open_source
        self._session: _Session | None = None
        self._sent_s = time.monotonic()

    def serve(self) -> None:
        """Work for ever."""
        self.send(Ready())
        while True:
            for order in self._next_orders():
                self._take(order)
            for answer in self._session.process_next() if self._session is not None else ():
                self.send(answer)
            if time.monotonic() - self._sent_s >= ALIVE_S:
                self.send(Alive())

    def send(self, answer: Message) -> None:
        """Send an answer."""
        self._sent_s = time.monotonic()
        super().send(answer)

    def _next_orders(self) -> Iterator[Message]:
        """Yield what waits; without a source, wait a moment for it."""
        orders = self._pipes.orders
        try:
            if self._session is None:
                yield orders.get(timeout=ALIVE_S)
            while True:
                yield orders.get_nowait()
        except queue.Empty:
            return

    def _take(self, order: Message) -> None:
        match order:
            case LoadModel():
                self.load(order)
            case SourceOrder():
                if self._session is not None:
                    self._session.close()
                self._session = _Session(order, self._makers, partial(self._open_source, order))
            case UseModel() if self._session is not None:
                self._session.use(order.quality)


class _Session:
    """One source, and the network that analyses it.

    Nothing that it holds may refer back to it: its waiting frames would then outlive it until
    Python collects cycles, which it does rarely where most objects are lasting ones.
    """

    def __init__(
        self,
        order: SourceOrder,
        makers: dict[ModelQuality, Callable[..., PoseEstimator]],
        open_source: Callable[[], LiveSource],
    ) -> None:
        self._number = order.session
        self._makers = makers
        self._quality = order.quality
        self._ring = SharedFrameRing.join(order.ring)
        self._is_camera = order.clip is None
        self._capture = CaptureThread(open_source, order.setup, is_camera=self._is_camera)
        self._coarse, self._fine = RateSampler(COARSE_HZ), RateSampler(FINE_HZ)
        self._estimator = RestartingEstimator(makers[order.quality], _MOST_FAILURES, within_s=60.0)
        self._network_opening = 0
        self._opened_again_s = self._judge_from_s = -math.inf
        self._judged_s = time.monotonic()
        self._reported_fault: SourceFault | None = None
        self._reported_open: tuple[str, float] | None = None
        self._reported_end = False
        self._capture.start()

    def use(self, quality: ModelQuality) -> None:
        """Use another network from the next frame on."""
        if quality is not self._quality:
            self._quality = quality
            self._drop_estimator()
            self._estimator.make = self._makers[quality]

    def close(self) -> None:
        """Let go of the source and the network; a camera that holds on ends the process."""
        self._drop_estimator()
        if not self._capture.stop(_DEAF_S):
            os._exit(CAMERA_HOLDS)
        self._ring.close()

    def process_next(self) -> Iterator[Message]:
        """Analyse one frame, if there is one, and yield what is to be reported."""
        taken = self._capture.mailbox.take(ALIVE_S / 4)
        opened = self._capture.opened
        if opened is not None and opened != self._reported_open:
            self._reported_open = opened
            yield SourceOpened(session=self._number, backend=opened[0], sample_aspect=opened[1])
        yield from self._troubles()
        if taken is not None:
            result = self._inferred(taken)
            if result is not None:
                yield result
        elif self._capture.ended and self._capture.mailbox.is_empty and not self._reported_end:
            self._reported_end = True
            yield Ended(session=self._number)

    def _troubles(self) -> Iterator[Message]:
        now_s = time.monotonic()
        if now_s - self._judged_s > _HELD_UP_S:
            self._judge_from_s = now_s + _HELD_UP_S
        self._judged_s = now_s
        if now_s < self._judge_from_s:
            return
        trouble = self._capture.trouble(now_s)
        idle_s = self._capture.idle_s(now_s)
        if trouble is None and self._is_camera:
            late = self._capture.is_opening and idle_s > _OPENING_S
            trouble = SourceFault.CAMERA_BUSY if late else None
        if trouble is not self._reported_fault:
            self._reported_fault = trouble
            fault = self._capture.fault
            text = Text() if fault is None else Text(fault)
            yield FaultChanged(session=self._number, trouble=trouble, text=text)
        unwell = trouble in (SourceFault.CAMERA_STUCK, SourceFault.CAMERA_BUSY)
        if trouble is not None and unwell and now_s - self._opened_again_s > _AGAIN_S:
            if idle_s > (_OPENING_S if self._capture.is_opening else _DEAF_S):
                os._exit(CAMERA_HOLDS)
            self._opened_again_s = now_s
            self._capture.open_again(trouble)

    def _inferred(self, taken: FrameForInference) -> FrameMessage | None:
        """Analyse a frame and hand it over; None for one that there is no room for."""
        if self._is_camera:
            # Of a camera's frames those belong to the grids that the network has time for.
            coarse, fine = self._coarse.chooses(taken.time_s), self._fine.chooses(taken.time_s)
            taken = replace(taken, coarse=coarse, fine=fine)
        pose = self._pose(taken)
        slot, shape, size_px = -1, (0, 0), (0, 0)
        if taken.picture is not None:
            rgb = taken.picture.rgb
            wait_s = _SLOT_S if taken.coarse or taken.fine else 0.0
            slot = self._slot_for(rgb, wait_s)
            if slot < 0 and not taken.coarse:
                return None
            shape = (rgb.shape[0], rgb.shape[1])
            size_px = (taken.picture.width_px, taken.picture.height_px)
        return FrameMessage(
            session=self._number,
            pose=pose,
            slot=slot,
            shape=shape,
            size_px=size_px,
            coarse=taken.coarse,
            fine=taken.fine,
            fps=self._capture.fps,
        )

    def _slot_for(self, rgb: Any, wait_s: float) -> int:
        until_s = time.monotonic() + wait_s
        while (slot := self._ring.put(rgb)) is None:
            if time.monotonic() >= until_s:
                return -1
            time.sleep(0.002)
        return slot

    def _pose(self, taken: FrameForInference) -> PoseFrame:
        picture = taken.picture
        if picture is None:
            return unreadable_frame(taken.index, taken.time_s)
        if taken.opening != self._network_opening:
            self._network_opening = taken.opening
            self._drop_estimator()
        poses = self._estimator.detect(picture.rgb, taken.time_s)
        if poses is None:
            release_freed()
            return unreadable_frame(taken.index, taken.time_s)
        return pose_frame(taken.index, taken.time_s, picture, poses)

    def _drop_estimator(self) -> None:
        self._estimator.close()
        release_freed()


if __name__ == "__main__":
    main()
