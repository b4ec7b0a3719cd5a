"""The live worker in this process: what it keeps of a source, and which network it uses."""

import gc
import queue
import weakref
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path

import numpy as np
import pytest

from measure.camera.capture import LiveSource
from measure.live import worker
from measure.live.capture import CaptureThread
from measure.live.messages import FrameMessage, SourceOrder, UseModel
from measure.live.shared_frames import SharedFrameRing
from measure.pose.message_pipe import Message
from measure.pose.messages import LoadModel
from measure.pose_models.catalogue import ModelQuality
from tests.support.fake_sources import FakeCamera, steady
from tests.support.scripted_live import Found

LITE, FULL = ModelQuality.LITE, ModelQuality.FULL


class OverError(Exception):
    """Ends the worker, which by itself works for ever."""


class FakePipes:
    """Both ends of the pipes; what is to be done with each frame's message is given."""

    def __init__(self, on_frame: Callable[[FrameMessage], None]) -> None:
        self.orders: queue.SimpleQueue[Message] = queue.SimpleQueue()
        self._on_frame = on_frame

    def send(self, answer: Message) -> None:
        if isinstance(answer, FrameMessage):
            self._on_frame(answer)


class Named:
    """A network that detects nobody, and notes each run under the name of its model."""

    def __init__(self, log: list[bytes], bundle: bytes) -> None:
        self._log = log
        self._bundle = bundle

    def detect(self, rgb: np.ndarray, time_s: float) -> Found:
        self._log.append(self._bundle)
        nobody = np.empty((0, 33))
        return Found(places=np.empty((0, 33, 2)), visibility=nobody, presence=nobody)

    def close(self) -> None:
        self._log.append(b"closed")


def steady_source(order: SourceOrder) -> LiveSource:
    """A source whose frames come faster than they are taken, so that some always wait."""
    return FakeCamera(steady(1000.0, size=(64, 48)))


@pytest.fixture
def ring() -> Iterator[SharedFrameRing]:
    made = SharedFrameRing.make()
    yield made
    made.close()


@pytest.fixture
def captures(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[weakref.ref[CaptureThread]]]:
    """What holds the waiting frames of each source, not kept alive; stopped at the end."""
    started: list[weakref.ref[CaptureThread]] = []

    class Noted(CaptureThread):
        """Notes when it starts."""

        def start(self) -> None:
            started.append(weakref.ref(self))
            super().start()

    monkeypatch.setattr(worker, "CaptureThread", Noted)
    yield started
    for capture in started:
        if (still := capture()) is not None:
            assert still.stop(10.0)


def source_order(session: int, ring: SharedFrameRing) -> SourceOrder:
    return SourceOrder(
        session=session,
        clip=Path("a clip"),
        camera=None,
        quarter_turns=0,
        already_mirrored=False,
        origin_s=0.0,
        start_s=0.0,
        loop=True,
        ring=ring.name,
        quality=LITE,
    )


def serve(pipes: FakePipes, log: list[bytes], *orders: Message) -> None:
    """Give a worker two models and these orders, and let it work until it is over."""
    for quality in (LITE, FULL):
        pipes.orders.put(LoadModel(quality=quality, content=quality.encode(), is_last=True))
    for order in orders:
        pipes.orders.put(order)
    with pytest.raises(OverError):
        worker.LiveWorker(pipes, partial(Named, log), steady_source).serve()


def test_a_source_leaves_no_frames_behind_when_the_next_one_comes(
    captures: list[weakref.ref[CaptureThread]], ring: SharedFrameRing
) -> None:
    def on_frame(frame: FrameMessage) -> None:
        ring.free_all()
        if frame.session == 3:
            raise OverError
        if frame.pose.index >= 5:
            pipes.orders.put(source_order(frame.session + 1, ring))

    pipes = FakePipes(on_frame)
    gc.disable()  # what only the collector of cycles would free counts as left behind
    try:
        serve(pipes, [], source_order(1, ring))
        left = [capture() is not None for capture in captures]
    finally:
        gc.enable()
    assert left == [False, False, True]  # the last one's thread still fills its mailbox


@pytest.mark.usefixtures("captures")
def test_another_network_is_used_from_the_next_frame_on(ring: SharedFrameRing) -> None:
    log: list[bytes] = []
    frames: list[int] = []

    def on_frame(frame: FrameMessage) -> None:
        ring.free_all()
        frames.append(frame.pose.index)
        if len(frames) == 2:
            pipes.orders.put(UseModel(quality=LITE))
            pipes.orders.put(UseModel(quality=FULL))
        if len(frames) == 4:
            raise OverError

    pipes = FakePipes(on_frame)
    serve(pipes, log, source_order(1, ring))
    lite, full = LITE.encode(), FULL.encode()
    assert log == [lite, lite, b"closed", full, full]
