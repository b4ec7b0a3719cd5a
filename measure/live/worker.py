"""The live process itself: started by :mod:`measure.live.supervisor`, never by hand.

It opens a camera, or plays a clip as if it were one, looks at the newest picture at the rate
it manages, and tells its supervisor what it saw. It keeps quiet, private and short-lived in the
same ways as the pose process: see :mod:`measure.pose.worker`.
"""

import faulthandler
import math
import os
import queue
import signal
import threading
import time
from collections import deque
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial
from typing import Any

import numpy as np

from measure.camera.capture import LiveSource, open_camera
from measure.camera.faults import SourceFault
from measure.camera.playback import ClipCamera
from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.errors import PoseProcessError
from measure.live.capture import CaptureThread, FrameForInference
from measure.live.messages import FaultChanged, FrameMessage, SourceOpened, SourceOrder
from measure.live.shared_frames import SharedFrameRing
from measure.pose.inference import PoseEstimator
from measure.pose.memory import release_freed
from measure.pose.messages import Message, MessageKind
from measure.pose.worker import Answers, listen, take_pipes
from measure.pose_models.catalogue import ModelQuality
from measure.video.sampling import COARSE_HZ, FINE_HZ, RateSampler

#: A sign of life at least so often, seconds.
ALIVE_S = 0.25

#: A camera in trouble that does not answer for so long can only be left by ending the process.
_DEAF_S = 3.0
#: The same while it is being opened: some systems take very long.
_OPENING_S = 90.0

#: Who looks again only after so long was perhaps held up with the whole process, the camera's
#: thread too; the camera then gets as long to answer before it is blamed, seconds. Ours.
_HELD_UP_S = 1.0

#: A camera in trouble is opened again no sooner than after so long, seconds.
_AGAIN_S = 5.0

#: Longest wait for a free slot for a picture that a trial needs.
_SLOT_S = 0.5

#: The network may fail so often a minute before the process gives up. Ours.
_MOST_REBUILDS = 5

#: Exit code that says: the camera holds the process.
CAMERA_HOLDS = 4


def main() -> None:
    """Serve a source until the supervisor closes the pipe or is gone."""
    incoming, outgoing = take_pipes()
    faulthandler.enable()
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the supervisor decides
    from measure.pose.network import PoseNetwork  # takes a second, and closes the way out first

    answers = Answers(outgoing)
    orders: queue.Queue[Message] = queue.Queue()
    threading.Thread(target=listen, args=(incoming, orders), daemon=True).start()
    LiveWork(orders, answers.send, PoseNetwork, open_source).serve()


def open_source(order: SourceOrder) -> LiveSource:
    """Open what an order asks for."""
    if order.clip is not None:
        return ClipCamera(order.clip, start_s=order.start_s, loop=order.loop)
    return open_camera(order.camera, clock=lambda: time.monotonic() - order.origin_s)


class LiveWork:
    """Looks at pictures of one source after the other.

    Parameters
    ----------
    orders
        Where orders arrive.
    send
        Takes answers.
    make_looker
        Makes a network from the bytes of a bundle.
    open_source
        Opens a source; runs in a thread of its own.
    """

    def __init__(
        self,
        orders: "queue.Queue[Message]",
        send: Callable[[Message], None],
        make_estimator: Callable[[bytes], PoseEstimator],
        open_source: Callable[[SourceOrder], LiveSource],
    ) -> None:
        self._orders = orders
        self._send = send
        self._make_estimator = make_estimator
        self._open_source = open_source
        self._makers: dict[ModelQuality, Callable[[], PoseEstimator]] = {}
        self._session: _Session | None = None
        self._sent_s = time.monotonic()

    def serve(self) -> None:
        """Work for ever."""
        self._say(Message(kind=MessageKind.READY))
        while True:
            for order in self._next_orders():
                self._take(order)
            for answer in self._session.process_next() if self._session is not None else ():
                self._say(answer)
            if time.monotonic() - self._sent_s >= ALIVE_S:
                self._say(Message(kind=MessageKind.ALIVE))

    def _say(self, message: Message) -> None:
        self._sent_s = time.monotonic()
        self._send(message)

    def _next_orders(self) -> Iterator[Message]:
        """Yield what waits; without a source, wait a moment for it."""
        try:
            if self._session is None:
                yield self._orders.get(timeout=ALIVE_S)
            while True:
                yield self._orders.get_nowait()
        except queue.Empty:
            return

    def _take(self, order: Message) -> None:
        if order.kind is MessageKind.MODEL:
            bundle = order.arrays["bundle"].tobytes()
            quality = ModelQuality(order.values["quality"])
            self._makers[quality] = partial(self._make_estimator, bundle)
            self._say(Message(kind=MessageKind.READY))
        elif order.kind is MessageKind.LIVE:
            if self._session is not None:
                self._session.close()
            wanted = SourceOrder.of(order)
            self._session = _Session(wanted, self._makers, partial(self._open_source, wanted))
        elif order.kind is MessageKind.USE and self._session is not None:
            self._session.use(ModelQuality(order.values["quality"]))


class _Session:
    """One source, and the network that looks at it."""

    def __init__(
        self,
        order: SourceOrder,
        makers: dict[ModelQuality, Callable[[], PoseEstimator]],
        open_source: Callable[[], LiveSource],
    ) -> None:
        self._number = order.session
        self._makers = makers
        self._quality = order.quality
        self._ring = SharedFrameRing.join(order.ring)
        self._is_camera = order.clip is None
        self._capture = CaptureThread(open_source, order.setup, is_camera=self._is_camera)
        self._coarse, self._fine = RateSampler(COARSE_HZ), RateSampler(FINE_HZ)
        self._estimator: PoseEstimator | None = None
        self._network_opening = 0
        self._rebuilds: deque[float] = deque()
        self._opened_again_s = self._judge_from_s = -math.inf
        self._judged_s = time.monotonic()
        self._told: SourceFault | None = None
        self._told_open: tuple[str, float] | None = None
        self._told_end = False
        self._capture.start()

    def use(self, quality: ModelQuality) -> None:
        """Let another network look from the next picture on."""
        if quality is not self._quality:
            self._quality = quality
            self._drop_estimator()

    def close(self) -> None:
        """Let go of the source and the network; a camera that holds on ends the process."""
        self._drop_estimator()
        if not self._capture.stop(_DEAF_S):
            os._exit(CAMERA_HOLDS)
        self._ring.close()

    def process_next(self) -> Iterator[Message]:
        """Look at one picture, if there is one, and yield what is to be said."""
        taken = self._capture.mailbox.take(ALIVE_S / 4)
        opened = self._capture.opened
        if opened is not None and opened != self._told_open:
            self._told_open = opened
            yield SourceOpened(
                session=self._number, backend=opened[0], sample_aspect=opened[1]
            ).message()
        yield from self._troubles()
        if taken is not None:
            result = self._inferred(taken)
            if result is not None:
                yield result.message()
        elif self._capture.ended and self._capture.mailbox.is_empty and not self._told_end:
            self._told_end = True
            yield Message(kind=MessageKind.ENDED, values={"session": self._number})

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
        if trouble is not self._told:
            self._told = trouble
            fault = self._capture.fault
            text = str(fault) if fault is not None else ""
            yield FaultChanged(session=self._number, trouble=trouble, text=text).message()
        unwell = trouble in (SourceFault.CAMERA_STUCK, SourceFault.CAMERA_BUSY)
        if trouble is not None and unwell and now_s - self._opened_again_s > _AGAIN_S:
            if idle_s > (_OPENING_S if self._capture.is_opening else _DEAF_S):
                os._exit(CAMERA_HOLDS)
            self._opened_again_s = now_s
            self._capture.open_again(trouble)

    def _inferred(self, taken: FrameForInference) -> FrameMessage | None:
        """Look at a picture and hand it over; None for one that nobody has room for."""
        if self._is_camera:
            # Of a camera's pictures those belong to the grids that the network has time for.
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
            return _nothing(taken)
        if taken.opening != self._network_opening:
            self._network_opening = taken.opening
            self._drop_estimator()
        try:
            if self._estimator is None:
                self._estimator = self._makers[self._quality]()
            found = self._estimator.detect(picture.rgb, taken.time_s)
        except PoseProcessError:
            self._note_failure()
            return _nothing(taken)
        return PoseFrame(
            index=taken.index,
            time_s=taken.time_s,
            points_px=picture.pixels(found.places),
            visibility=found.visibility,
            presence=found.presence,
        )

    def _note_failure(self) -> None:
        """Make the network anew with the next picture; give up when it fails again and again."""
        self._drop_estimator()
        now_s = time.monotonic()
        self._rebuilds.append(now_s)
        while self._rebuilds[0] < now_s - 60.0:
            self._rebuilds.popleft()
        if len(self._rebuilds) > _MOST_REBUILDS:
            raise PoseProcessError("The pose network failed again and again.")

    def _drop_estimator(self) -> None:
        if self._estimator is not None:
            estimator, self._estimator = self._estimator, None
            estimator.close()
            release_freed()


def _nothing(taken: FrameForInference) -> PoseFrame:
    """Return the result for a frame that could not be looked at."""
    return PoseFrame(
        index=taken.index,
        time_s=taken.time_s,
        points_px=np.empty((0, LANDMARKS, 2)),
        visibility=np.empty((0, LANDMARKS)),
        presence=np.empty((0, LANDMARKS)),
        readable=False,
    )


if __name__ == "__main__":
    main()
