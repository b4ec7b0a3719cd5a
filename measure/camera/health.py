"""Camera health: whether frames stay the same, are black or too few, or do not come at all.

A camera that was pulled out may repeat its last frame for ever, or let the reader wait for
ever; one that is covered delivers black. Only frames show it, so a fingerprint of each is taken.
Values and times come from outside; no camera here.
"""

from collections import deque
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.camera.faults import SourceFault
from measure.video.frame import PixelArray

#: Time without a frame that differs from the last one after which the camera counts as stuck,
#: seconds. [project]
STUCK_S = 2.0

#: Longest wait for the first frame after opening, seconds. [technical]
FIRST_PICTURE_S = 5.0

#: Time that frames stay black after which it is no passing hand, seconds. [project]
BLACK_S = 2.0

#: Mean of a frame below which it may count as black, of 255. [project]
_BLACK_MEAN = 12.0

#: 99th percentile of a frame below which it counts as black, of 255. [project]
_BLACK_BRIGHTEST = 30.0

#: Frames a second below which a hold cannot be shown. [project]
SLOWEST_FPS = 7.4

#: Time over which the rate is measured, seconds. [project]
_RATE_S = 3.0

#: Change of a frame's mean below which exposure counts as settled, of 255. [project]
_STEADY = 4.0

#: Time over which that change is measured, seconds. [project]
_STEADY_S = 0.5

#: Longest wait for exposure to settle, seconds. [project]
_LONGEST_SETTLING_S = 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameFingerprint:
    """Coarse values of one frame.

    Attributes
    ----------
    sign
        Differs between frames that differ; a live sensor's noise sees to that.
    mean
        Mean of all its values, 0..255.
    black
        Whether it is practically black.
    """

    sign: int
    mean: float
    black: bool


def fingerprint(pixels: PixelArray | NDArray[np.uint8]) -> FrameFingerprint:
    """Return the fingerprint of a frame of any form."""
    coarse = np.ascontiguousarray(pixels[4::8, 4::8])
    mean = float(coarse.mean())
    return FrameFingerprint(
        sign=hash(coarse.tobytes()),
        mean=mean,
        black=mean < _BLACK_MEAN and float(np.percentile(coarse, 99)) < _BLACK_BRIGHTEST,
    )


class SourceWatch:
    """Judges one opened camera.

    Attributes
    ----------
    repeats
        Frames so far that were the same as the one before.
    """

    def __init__(self, opened_s: float) -> None:
        self.repeats = 0
        self._opened_s = opened_s
        self._last_sign: int | None = None
        self._last_new_s: float | None = None
        self._light_s: float | None = None
        self._times_s: deque[float] = deque()

    def see(self, now_s: float, frame: FrameFingerprint) -> bool:
        """Take a frame; return False if it is the last one again."""
        if frame.sign == self._last_sign:
            self.repeats += 1
            return False
        self._last_sign = frame.sign
        self._last_new_s = now_s
        if not frame.black:
            self._light_s = now_s
        self._times_s.append(now_s)
        while self._times_s[0] < now_s - _RATE_S:
            self._times_s.popleft()
        return True

    @property
    def fps(self) -> float | None:
        """New frames a second of late; None until they could be counted."""
        if len(self._times_s) < 2:
            return None
        span_s = self._times_s[-1] - self._times_s[0]
        return (len(self._times_s) - 1) / span_s if span_s > 0.5 * _RATE_S else None

    def trouble(self, now_s: float) -> SourceFault | None:
        """Return what is wrong at this moment, or None."""
        if self._last_new_s is None:
            waited = now_s - self._opened_s > FIRST_PICTURE_S
            return SourceFault.CAMERA_BUSY if waited else None
        if now_s - self._last_new_s > STUCK_S:
            return SourceFault.CAMERA_STUCK
        since_light_s = now_s - (self._opened_s if self._light_s is None else self._light_s)
        if since_light_s > BLACK_S:
            return SourceFault.CAMERA_BLACK
        fps = self.fps
        return SourceFault.CAMERA_SLOW if fps is not None and fps < SLOWEST_FPS else None


class ExposureSettling:
    """Detects when a camera's brightness has settled after opening."""

    def __init__(self) -> None:
        self._means: deque[tuple[float, float]] = deque()
        self._first_s: float | None = None
        self._finished = False

    def finished(self, now_s: float, frame: FrameFingerprint) -> bool:
        """Take a frame; return whether brightness has settled. Once True it stays so."""
        if self._finished:
            return True
        self._first_s = now_s if self._first_s is None else self._first_s
        self._means.append((now_s, frame.mean))
        while now_s - self._means[0][0] > _STEADY_S:
            self._means.popleft()
        means = [mean for _, mean in self._means]
        long_enough = now_s - self._first_s >= _STEADY_S
        steady = long_enough and not frame.black and max(means) - min(means) < _STEADY
        self._finished = steady or now_s - self._first_s >= _LONGEST_SETTLING_S
        return self._finished
