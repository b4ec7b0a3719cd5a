"""A live process with scripted cameras and no network, and a pose process to match.

Each picture shows its number; whoever "looks" at it knows from the number how the stick figure
stands. Run as a module it serves as the live process:
``python -m tests.support.scripted_live SCRIPT``.
A script that fails does so once: a marker file, named second, remembers it.
"""

import os
import sys
import threading
import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

from measure.camera.capture import CapturedFrame, LiveSource
from measure.camera.faults import SourceFault, SourceTroubleError
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import PoseFrame, Track
from measure.errors import PoseProcessError
from measure.live.messages import LIVE_ORDERS, SourceOrder
from measure.live.worker import LiveWorker
from measure.pose.jobs import InferencePass, PictureJob
from measure.pose.worker import WorkerPipes
from tests.support.fake_sources import (
    FakeCamera,
    Scripted,
    blocked,
    failing,
    noisy,
    repeating,
    steady,
    then,
)
from tests.support.stick_figure import elevation_track, raise_and_hold

#: The scripted camera's time runs so many times as fast as time does.
SPEED = 5.0
FPS = 100.0
SIZE = (160, 120)

#: Longest wait for the look at a picture, seconds; some are never looked at.
INFERENCE_WAIT_S = 0.5

#: The picture in which a script's accident happens.
ACCIDENT = 60


@cache
def figure() -> Track:
    """The stick figure raising its right arm over and over, at the camera's own rate."""
    series = np.tile(raise_and_hold(100.0, rate_hz=FPS / SPEED, after_s=1.5), 40)
    return elevation_track(
        series,
        Movement.FLEXION,
        Side.RIGHT,
        View.SIDE,
        rate_hz=FPS / SPEED,
        size=SIZE,
        trunk_px=30.0,
    )


def noisy_rgb(number: int, size: tuple[int, int] = SIZE) -> np.ndarray:
    """A picture of the scripted camera as it is after the frame gate."""
    return np.ascontiguousarray(noisy(number, size=size)[:, :, ::-1])


def number_of(rgb: np.ndarray) -> int:
    """The number that a picture shows, red-green-blue."""
    return int(rgb[0, 0, 2]) + 256 * int(rgb[0, 0, 1])


def points_of(rgb: np.ndarray) -> np.ndarray:
    """The figure's landmarks in a picture, shape (33, 2), pixels."""
    return figure().points_px[number_of(rgb) % len(figure())]


@dataclass(frozen=True)
class Found:
    places: np.ndarray
    visibility: np.ndarray
    presence: np.ndarray


class PatientCamera(FakeCamera):
    """Delivers a picture when the one before was looked at, and tells the time by their number.

    However busy the computer is, the same pictures are seen at the same times: nothing that is
    read from them hangs on its speed.
    """

    def __init__(self, pictures: Iterator[Scripted], order: SourceOrder, *, deaf: bool) -> None:
        super().__init__(pictures, deaf=deaf, clock=self._time)
        self._begun_s = SPEED * (time.monotonic() - order.origin_s)
        self._number = 0
        self._is_processed = False

    def next(self) -> CapturedFrame | None:
        self._is_processed = FRAME_PROCESSED.wait(INFERENCE_WAIT_S if self._is_processed else 0.0)
        FRAME_PROCESSED.clear()
        return super().next()

    def _time(self) -> float:
        self._number += 1
        return self._begun_s + self._number * SPEED / FPS


class ScriptedEstimator:
    """Knows from the picture's number how the figure stands."""

    def __init__(self, accident: str = "") -> None:
        self._accident = accident

    def detect(self, rgb: np.ndarray, time_s: float) -> Found:
        if self._accident and number_of(rgb) >= ACCIDENT and happens_now():
            if self._accident == "crash":
                os.kill(os.getpid(), 9)
            if self._accident == "hang":
                time.sleep(1e6)
            if self._accident == "fail":
                raise PoseProcessError("scripted")
            if self._accident == "memory":
                use_up_memory()
            if self._accident == "nonsense":
                os.write(OUT, b"nonsense" * 40)
        places = (points_of(rgb) + 0.5) / [rgb.shape[1], rgb.shape[0]]
        sure = np.full((1, len(places)), 0.95)
        FRAME_PROCESSED.set()
        return Found(places=places[None], visibility=sure, presence=sure)

    def close(self) -> None:
        """Nothing to let go of."""


def use_up_memory() -> None:
    """Ask for more memory than the system is allowed to give this process."""
    import resource

    resource.setrlimit(resource.RLIMIT_AS, (1 << 30, 1 << 30))
    bytearray(2 << 30)


def happens_now() -> bool:
    """Whether the accident has not happened yet; from now on it has."""
    marker = Path(sys.argv[2])
    if marker.exists():
        return False
    marker.touch()
    return True


def camera(script: str) -> Iterator[Scripted]:
    """Return the pictures of a scripted camera."""
    good = steady(FPS, size=SIZE)
    if script == "black":
        return then(ACCIDENT, good, steady(FPS, start=ACCIDENT, size=SIZE, mean=2))
    if script == "slow":
        return steady(5.0, size=SIZE)
    if script == "resize":
        return then(ACCIDENT, good, steady(FPS, start=ACCIDENT, size=(320, 240)))
    if script in ("unplug", "stuck", "deaf") and happens_now():
        after = {"unplug": failing(SourceFault.CAMERA_UNPLUGGED), "stuck": repeating(FPS, 7)}
        return then(ACCIDENT, good, after.get(script, blocked()))
    return good


def open_source(order: SourceOrder, script: str) -> LiveSource:
    """Open the scripted camera."""
    if script == "denied":
        raise SourceTroubleError(
            SourceFault.CAMERA_DENIED, "You do not have permission to use the camera."
        )
    if script == "slow-open":
        time.sleep(30.0)
    return PatientCamera(camera(script), order, deaf=script == "deaf")


class ScriptedPose:
    """A pose process that knows from the pictures' numbers; stands for the real one.

    Parameters
    ----------
    seconds
        How long each trial takes.
    failures
        How often it fails first.
    """

    def __init__(self, seconds: float = 0.0, failures: int = 0) -> None:
        self.seconds = seconds
        self.failures = failures
        self.jobs: list[PictureJob] = []
        self.closed = False
        self._stopped = threading.Event()

    def prepare(self) -> None:
        """Nothing to start."""

    def run_pictures(self, job: PictureJob) -> Mapping[InferencePass, tuple[PoseFrame, ...]]:
        self.jobs.append(job)
        if self._stopped.wait(self.seconds) or self.failures:
            self.failures -= 1
            raise PoseProcessError("The pictures could not be read: scripted.")
        sure = np.full((1, 33), 0.95)
        frames = tuple(
            PoseFrame(
                index=each.index,
                time_s=each.time_s,
                points_px=points_of(each.rgb)[None],
                visibility=sure,
                presence=sure,
            )
            for each in job.pictures
        )
        return dict.fromkeys(job.passes, frames)

    def stop(self) -> None:
        self._stopped.set()

    def close(self) -> None:
        self.closed = True


def main() -> None:
    """Serve as the live process."""
    global OUT
    script = sys.argv[1]
    pipes = WorkerPipes(LIVE_ORDERS)
    OUT = pipes._outgoing.fileno()
    if script == "never-ready":
        time.sleep(1e6)
    LiveWorker(
        pipes,
        lambda bundle: ScriptedEstimator(script),
        lambda order: open_source(order, script),
    ).serve()


OUT = -1
FRAME_PROCESSED = threading.Event()

if __name__ == "__main__":
    main()
