"""One pass over pictures: a thread with its own network, restarted when the network fails.

Where the pictures come from is elsewhere (:mod:`measure.pose.runner`).
"""

import queue
import threading
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Protocol

import numpy as np

from measure.domain.landmarks import LANDMARKS, SIDES_EXCHANGED, FloatArray
from measure.domain.tracks import PoseFrame
from measure.errors import PoseProcessError
from measure.pose.backfill import BackfillBuffer
from measure.pose.jobs import InferencePass
from measure.video.frame import Picture, PixelArray
from measure.video.reader import SourceFrame

#: How often a pass may start anew after the network failed on a picture. Ours.
MOST_REBUILDS = 3

#: Pictures that may wait for a network. Ours.
_WAITING = 4

#: Frames passed on together, and the longest wait for that many. Ours.
_TOGETHER = 32
_LONGEST_WAIT_S = 0.5


class EstimatedPoses(Protocol):
    """People in one picture, as fractions of it: :class:`measure.pose.network.DetectedPoses`."""

    @property
    def places(self) -> FloatArray: ...
    @property
    def visibility(self) -> FloatArray: ...
    @property
    def presence(self) -> FloatArray: ...


class PoseEstimator(Protocol):
    """A network that looks at pictures; see :class:`measure.pose.network.PoseNetwork`."""

    def detect(self, rgb: PixelArray, time_s: float) -> EstimatedPoses: ...
    def close(self) -> None: ...


class ResultSink(Protocol):
    """Takes results; called from several threads."""

    def frames(self, pass_number: int, frames: Sequence[PoseFrame]) -> None: ...
    def progress(self, share: float) -> None: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class QueuedFrame:
    """A picture on its way to the networks; no picture for a frame lost to damage."""

    frame: SourceFrame
    picture: Picture | None


class InferenceThread:
    """The thread of one pass, which looks at the pictures given to it."""

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
        """What was odd, or None."""
        return self._run.note

    def start(self) -> None:
        self._thread.start()

    def put(self, waiting: QueuedFrame | None) -> None:
        """Hand over a picture, or None at the end; raise what went wrong in the thread."""
        while not self._stopped.is_set():
            try:
                self._waiting.put(waiting, timeout=0.1)
                return
            except queue.Full:
                continue
        self._raise()

    def finish(self) -> None:
        """Wait until every picture was looked at."""
        self.put(None)
        self._thread.join()
        self._raise()

    def abandon(self) -> None:
        """Stop as soon as the present picture is done."""
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


class PassRunner:
    """One pass: a network that is made anew for every span of time, and after a failure."""

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
        self._estimator: PoseEstimator | None = None
        self._window = -1
        self._beginning = BackfillBuffer(self._rerun_backwards)
        self._rebuilds = 0
        self._done: list[PoseFrame] = []
        self._due = time.monotonic() + _LONGEST_WAIT_S

    @property
    def note(self) -> str | None:
        if not self._rebuilds:
            return None
        return f"The network failed {self._rebuilds} times ({self._which.name}) and was restarted."

    def process(self, waiting: QueuedFrame) -> None:
        """Look at a picture and keep the result until several can be passed on."""
        if waiting.frame.window != self._window:
            self.close()
            self._done += self._beginning.rest()
            self._beginning = BackfillBuffer(self._rerun_backwards)
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
        if self._estimator is not None:
            estimator, self._estimator = self._estimator, None
            estimator.close()

    def _result(self, waiting: QueuedFrame) -> PoseFrame:
        picture = waiting.picture
        if picture is None:
            return _empty(waiting.frame)
        if self._estimator is None:
            self._estimator = self._make_estimator()
        try:
            found = self._estimator.detect(self._shown(picture), waiting.frame.time_s)
        except PoseProcessError as error:
            self.close()
            self._rebuilds += 1
            if self._rebuilds > MOST_REBUILDS:
                raise PoseProcessError(f"It failed again and again. {error}") from None
            return _empty(waiting.frame)
        return _pose_frame(waiting.frame, picture, found, self._which.mirrored)

    def _shown(self, picture: Picture) -> PixelArray:
        return (picture.mirrored() if self._which.mirrored else picture).rgb

    def _rerun_backwards(
        self, backwards: Sequence[tuple[PoseFrame, Picture | None]]
    ) -> list[PoseFrame]:
        """Return the results of pictures that a network of their own sees in this order.

        It stops where nobody is found any more, or where it fails.
        """
        results = [result for result, _ in backwards]
        latest_s = results[0].time_s
        estimator = self._make_estimator()
        try:
            for number, (result, picture) in enumerate(backwards):
                if picture is None:
                    break
                found = estimator.detect(self._shown(picture), latest_s - result.time_s)
                if len(found.places) == 0:
                    break
                if number:
                    results[number] = _pose_frame(result, picture, found, self._which.mirrored)
        except PoseProcessError:
            pass  # what was found before it failed is as good as any
        finally:
            estimator.close()
        return results


def _pose_frame(
    frame: SourceFrame | PoseFrame, picture: Picture, found: EstimatedPoses, turn_back: bool
) -> PoseFrame:
    places, visibility, presence = found.places, found.visibility, found.presence
    if turn_back:
        places = places[:, SIDES_EXCHANGED] * [-1.0, 1.0] + [1.0, 0.0]
        visibility = visibility[:, SIDES_EXCHANGED]
        presence = presence[:, SIDES_EXCHANGED]
    return PoseFrame(
        index=frame.index,
        time_s=frame.time_s,
        points_px=picture.pixels(places),
        visibility=visibility,
        presence=presence,
    )


def _empty(frame: SourceFrame) -> PoseFrame:
    """Return the result for a frame that could not be looked at."""
    return PoseFrame(
        index=frame.index,
        time_s=frame.time_s,
        points_px=np.empty((0, LANDMARKS, 2)),
        visibility=np.empty((0, LANDMARKS)),
        presence=np.empty((0, LANDMARKS)),
        readable=False,
    )
