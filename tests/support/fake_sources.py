"""Scripted cameras: slow, stuck, repeating, black, lying about their rate, unplugged, resized."""

import threading
import time
from collections.abc import Callable, Iterator

import numpy as np

from measure.camera.capture import CapturedFrame
from measure.camera.faults import SourceFault, SourceTroubleError


def noisy(number: int, *, size: tuple[int, int] = (160, 120), mean: int = 120) -> np.ndarray:
    """A blue-green-red picture like a sensor's: every one differs, and shows its number."""
    random = np.random.default_rng(number)
    pixels = random.normal(mean, 3, size=(size[1], size[0], 3)).clip(0, 255).astype(np.uint8)
    pixels[0, 0] = number % 256, number // 256 % 256, 7
    return pixels


#: What a script yields: seconds to wait, then pixels, a trouble, or None for a read that blocks.
Scripted = tuple[float, "np.ndarray | SourceFault | None"]


class FakeCamera:
    """A camera that follows a script.

    Parameters
    ----------
    pictures
        Yields (seconds to wait, pixels). A trouble in place of pixels fails the camera; None
        blocks until it is stopped, or for ever where `deaf`.
    """

    backend = "scripted"
    sample_aspect = 1.0

    def __init__(
        self,
        pictures: Iterator[Scripted],
        *,
        deaf: bool = False,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self._pictures = pictures
        self._deaf = deaf
        self._clock = clock
        self._stopped = threading.Event()
        #: Set while a read does not return.
        self.blocks = threading.Event()
        self.closed = False

    def next(self) -> CapturedFrame | None:
        if self._stopped.is_set():
            return None
        scripted = next(self._pictures, None)
        if scripted is None:
            return None
        wait_s, pixels = scripted
        if pixels is None:
            self.blocks.set()
            self._stopped.wait(None if not self._deaf else 1e6)
            return None
        if self._stopped.wait(wait_s):
            return None
        if isinstance(pixels, SourceFault):
            raise SourceTroubleError(pixels, f"The camera failed: {pixels}.")
        return CapturedFrame(time_s=self._clock(), pixels=pixels)

    def stop(self) -> None:
        if not self._deaf:
            self._stopped.set()

    def close(self) -> None:
        self.closed = True


def steady(
    fps: float = 100.0, *, start: int = 0, size: tuple[int, int] = (160, 120), mean: int = 120
) -> Iterator[Scripted]:
    """A well-behaved camera."""
    number = start
    while True:
        yield 1 / fps, noisy(number, size=size, mean=mean)
        number += 1


def then(count: int, first: Iterator[Scripted], last: Iterator[Scripted]) -> Iterator[Scripted]:
    """So many pictures of the first script, then the other one."""
    for _ in range(count):
        yield next(first)
    yield from last


def repeating(fps: float = 100.0, number: int = 0) -> Iterator[Scripted]:
    """A camera that delivers one picture for ever."""
    pixels = noisy(number)
    while True:
        yield 1 / fps, pixels


def blocked() -> Iterator[Scripted]:
    """A camera whose read never returns."""
    while True:
        yield 0.0, None


def ended() -> Iterator[Scripted]:
    """A clip that is over."""
    yield from ()


def failing(trouble: SourceFault) -> Iterator[Scripted]:
    """A camera that is gone."""
    while True:
        yield 0.0, trouble
