"""Inference: one pass over frames in a thread with its own network, restarted when that fails.

Also the buffer of frames from before anybody was detected, which are analysed backwards later.
Where the frames come from is elsewhere (:mod:`measure.pose.runner`).
"""

import math
import queue
import threading
import time
from collections import deque
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Protocol

import numpy as np

from measure.domain.landmarks import LANDMARKS, SIDES_EXCHANGED, FloatArray
from measure.domain.tracks import PoseFrame
from measure.errors import PoseProcessError
from measure.pose.jobs import InferencePass
from measure.video.frame import Picture, PixelArray
from measure.video.reader import SourceFrame

#: Failures of the network that one pass over a clip survives. [project]
MOST_REBUILDS = 3

#: Frames that may wait for a network. [technical]
_WAITING = 4

#: Frames passed on together. [technical]
_TOGETHER = 32

#: Longest wait for that many, seconds. [technical]
_LONGEST_WAIT_S = 0.5

#: Frames without a person that are held back for backfilling at most. [project]
MOST_PICTURES = 30

#: Size of those frames at most, bytes. [technical]
MOST_BYTES = 100 * 2**20


class EstimatedPoses(Protocol):
    """People in one frame, as fractions of it: :class:`measure.pose.network.DetectedPoses`."""

    @property
    def places(self) -> FloatArray: ...
    @property
    def visibility(self) -> FloatArray: ...
    @property
    def presence(self) -> FloatArray: ...


class PoseEstimator(Protocol):
    """A network that detects people in frames; see :class:`measure.pose.network.PoseNetwork`."""

    def detect(self, rgb: PixelArray, time_s: float) -> EstimatedPoses: ...
    def close(self) -> None: ...


class ResultSink(Protocol):
    """Takes results; called from several threads."""

    def frames(self, pass_number: int, frames: Sequence[PoseFrame]) -> None: ...
    def progress(self, share: float) -> None: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class QueuedFrame:
    """A frame on its way to the networks; without a picture if it was lost to damage."""

    frame: SourceFrame
    picture: Picture | None


class InferenceThread:
    """The thread of one pass, which analyses the frames given to it."""

    def __init__(
        self,
        make_estimator: Callable[[], PoseEstimator],
        number: int,
        which: InferencePass,
        listener: ResultSink,
    ) -> None:
        self._waiting: queue.Queue[QueuedFrame | None] = queue.Queue(_WAITING)
        self._stopped = threading.Event()
        self._error: Exception | None = None
        self._run = PassRunner(number, which, make_estimator, listener)
        self._thread = threading.Thread(target=self._work, name=which.name, daemon=True)

    @property
    def note(self) -> str | None:
        """A sentence about failures of the network, or None."""
        return self._run.note

    def start(self) -> None:
        self._thread.start()

    def put(self, waiting: QueuedFrame | None) -> None:
        """Hand over a frame, or None at the end; raise what went wrong in the thread."""
        while not self._stopped.is_set():
            try:
                self._waiting.put(waiting, timeout=0.1)
                return
            except queue.Full:
                continue
        self._raise()

    def finish(self) -> None:
        """Wait until every frame was analysed."""
        self.put(None)
        self._thread.join()
        self._raise()

    def abandon(self) -> None:
        """Stop as soon as the present frame is done."""
        self._stopped.set()
        if self._thread.ident is not None:
            self._thread.join()

    def _raise(self) -> None:
        if self._error is not None:
            raise self._error

    def _work(self) -> None:
        try:
            while not self._stopped.is_set():
                try:
                    waiting = self._waiting.get(timeout=0.1)
                except queue.Empty:
                    continue
                if waiting is None:
                    break
                self._run.process(waiting)
            self._run.finish()
        except Exception as error:  # noqa: BLE001 - the top of a thread; raised in the caller's
            self._error = error
        finally:
            self._run.close()
            self._stopped.set()


class RestartingEstimator:
    """A network that is made on first use, and anew after it has failed on a frame.

    Parameters
    ----------
    make
        Makes the network.
    most_failures
        Failures that are survived.
    within_s
        Only failures within this time count, seconds.

    Attributes
    ----------
    make
        Makes the next network; may be set to another maker.
    failures
        How often it failed in all.
    """

    def __init__(
        self,
        make: Callable[[], PoseEstimator],
        most_failures: int,
        within_s: float = math.inf,
    ) -> None:
        self.failures = 0
        self.make = make
        self._most_failures = most_failures
        self._within_s = within_s
        self._failed_s: deque[float] = deque()
        self._estimator: PoseEstimator | None = None

    def detect(self, rgb: PixelArray, time_s: float) -> EstimatedPoses | None:
        """Return the people in a frame, or None if the network failed on it.

        Raises
        ------
        PoseProcessError
            If it has failed more often than is survived.
        """
        if self._estimator is None:
            self._estimator = self.make()
        try:
            return self._estimator.detect(rgb, time_s)
        except PoseProcessError as error:
            self.close()
            self._count(error)
            return None

    def close(self) -> None:
        """Close the network, if one is open; the next frame gets another one."""
        if self._estimator is not None:
            estimator, self._estimator = self._estimator, None
            estimator.close()

    def _count(self, error: PoseProcessError) -> None:
        now_s = time.monotonic()
        self.failures += 1
        self._failed_s.append(now_s)
        while self._failed_s[0] < now_s - self._within_s:
            self._failed_s.popleft()
        if len(self._failed_s) > self._most_failures:
            raise PoseProcessError(f"It failed again and again. {error}") from None


class PassRunner:
    """One pass over frames, with a new network for every span of time."""

    def __init__(
        self,
        number: int,
        which: InferencePass,
        make_estimator: Callable[[], PoseEstimator],
        listener: ResultSink,
    ) -> None:
        self._number = number
        self._which = which
        self._make_estimator = make_estimator
        self._listener = listener
        self._estimator = RestartingEstimator(make_estimator, MOST_REBUILDS)
        self._window = -1
        self._beginning = self._new_buffer()
        self._done: list[PoseFrame] = []
        self._due = time.monotonic() + _LONGEST_WAIT_S

    @property
    def note(self) -> str | None:
        """A sentence about failures of the network, or None."""
        failures = self._estimator.failures
        if not failures:
            return None
        return f"The network failed {failures} times ({self._which.name}) and was restarted."

    def process(self, waiting: QueuedFrame) -> None:
        """Analyse a frame and keep the result until several can be passed on."""
        if waiting.frame.window != self._window:
            self.close()
            self._done += self._beginning.rest()
            self._beginning = self._new_buffer()
            self._window = waiting.frame.window
        self._done += self._beginning.passed(self._result(waiting), waiting.picture)
        if len(self._done) >= _TOGETHER or time.monotonic() >= self._due:
            self.flush()

    def finish(self) -> None:
        """Pass all results on: nothing follows."""
        self._done += self._beginning.rest()
        self.flush()

    def flush(self) -> None:
        """Pass the final results on."""
        if self._done:
            self._listener.frames(self._number, self._done)
        self._done = []
        self._due = time.monotonic() + _LONGEST_WAIT_S

    def close(self) -> None:
        """Close the network, if one is open."""
        self._estimator.close()

    def _result(self, waiting: QueuedFrame) -> PoseFrame:
        frame, picture = waiting.frame, waiting.picture
        if picture is None:
            return unreadable_frame(frame.index, frame.time_s)
        poses = self._estimator.detect(_shown(picture, self._which), frame.time_s)
        if poses is None:
            return unreadable_frame(frame.index, frame.time_s)
        return pose_frame(frame.index, frame.time_s, picture, poses, self._which.mirrored)

    def _new_buffer(self) -> "BackfillBuffer":
        """Return a buffer for the beginning of a span; it does not refer back to the pass, which
        would keep its frames alive after a pass that was given up.
        """
        return BackfillBuffer(partial(_rerun_backwards, self._make_estimator, self._which))


def _rerun_backwards(
    make_estimator: Callable[[], PoseEstimator],
    which: InferencePass,
    backwards: Sequence[tuple[PoseFrame, Picture | None]],
) -> list[PoseFrame]:
    """Return the results of frames that a network of their own gets in this order.

    It stops where nobody is detected any more, or where it fails.
    """
    results = [result for result, _ in backwards]
    latest_s = results[0].time_s
    estimator = make_estimator()
    try:
        for number, (result, picture) in enumerate(backwards):
            if picture is None:
                break
            poses = estimator.detect(_shown(picture, which), latest_s - result.time_s)
            if len(poses.places) == 0:
                break
            if number:
                results[number] = pose_frame(
                    result.index, result.time_s, picture, poses, which.mirrored
                )
    except PoseProcessError:
        pass  # results from before it failed are as good as any
    finally:
        estimator.close()
    return results


def _shown(picture: Picture, which: InferencePass) -> PixelArray:
    """Return the pixels that a pass shows to its network."""
    return (picture.mirrored() if which.mirrored else picture).rgb


class BackfillBuffer:
    """Frames from the beginning of a span of time, held until a person is detected in one.

    The network detects a person who stands side-on late, often only when the arm moves; once it
    has, it follows the person easily, also back in time. Without it a clip that begins side-on
    would lose its rest.

    Parameters
    ----------
    rerun
        Given frames in the order in which they are to be analysed, each with its result so far,
        returns their new results; from where nobody is detected any more the old ones.
    """

    def __init__(
        self,
        rerun: Callable[[Sequence[tuple[PoseFrame, Picture | None]]], Sequence[PoseFrame]],
    ) -> None:
        self._rerun = rerun
        self._kept: list[tuple[PoseFrame, Picture | None]] = []
        self._bytes = 0
        self._has_person = False

    def passed(self, result: PoseFrame, picture: Picture | None) -> list[PoseFrame]:
        """Take the next result; return those that are final now, in order."""
        if self._has_person:
            return [result]
        if len(result.points_px):
            self._has_person = True
            if not self._kept:
                return [result]
            backwards = [(result, picture), *reversed(self._kept)]
            self._kept = []
            return list(reversed(self._rerun(backwards)))
        self._kept.append((result, picture))
        self._bytes += _size(picture)
        given_up = []
        while len(self._kept) > MOST_PICTURES or self._bytes > MOST_BYTES:
            oldest, its_picture = self._kept.pop(0)
            self._bytes -= _size(its_picture)
            given_up.append(oldest)
        return given_up

    def rest(self) -> list[PoseFrame]:
        """Return the results still held back: the span ended, and nobody was detected."""
        results = [result for result, _ in self._kept]
        self._kept, self._bytes = [], 0
        return results


def _size(picture: Picture | None) -> int:
    return 0 if picture is None else picture.rgb.nbytes


def pose_frame(
    index: int, time_s: float, picture: Picture, poses: EstimatedPoses, turn_back: bool = False
) -> PoseFrame:
    """Return the result for a frame, in its pixels; turned back if the network got its mirror
    image.
    """
    places, visibility, presence = poses.places, poses.visibility, poses.presence
    if turn_back:
        places = places[:, SIDES_EXCHANGED] * [-1.0, 1.0] + [1.0, 0.0]
        visibility = visibility[:, SIDES_EXCHANGED]
        presence = presence[:, SIDES_EXCHANGED]
    return PoseFrame(
        index=index,
        time_s=time_s,
        points_px=picture.pixels(places),
        visibility=visibility,
        presence=presence,
    )


def unreadable_frame(index: int, time_s: float) -> PoseFrame:
    """Return the result for a frame that could not be analysed."""
    return PoseFrame(
        index=index,
        time_s=time_s,
        points_px=np.empty((0, LANDMARKS, 2)),
        visibility=np.empty((0, LANDMARKS)),
        presence=np.empty((0, LANDMARKS)),
        readable=False,
    )
