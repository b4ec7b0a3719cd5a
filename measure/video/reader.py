"""Clip reader: the chosen frames of a source with their times, gaps and damage marked.

Reading always ends: a source that fails, repeats or jumps back for ever is left after a bounded
number of tries. Only the frames' own times count; numbers of frames and rates stated by a file
decide nothing.
"""

import math
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from statistics import median
from typing import Any

from numpy.typing import NDArray

from measure.errors import ClipError
from measure.message import TranslatableMessage
from measure.video.sampling import DecimationSpan, Decimator, MonotonicTimeline, RateSampler
from measure.video.source import FrameSource

#: Failed reads in a row after which a clip counts as ended. [project]
MOST_FAILURES = 200

#: Frames in a row that may repeat the last time before a clip counts as ended. [project]
MOST_REPEATS = 200

#: New starts of the times before a clip counts as ended. [project]
MOST_RESTARTS = 20

#: Shortest step from frame to frame that is believed when lost frames are counted, seconds.
#: [project]
_SHORTEST_INTERVAL_S = 1 / 240

#: Frames after a failure in which a gap in time still counts as damage: a decoder reorders at most
#: 16. [source: ITU-T H.264]
_HELD_BACK = 16

#: Frames in a row that may be zero everywhere; more are a fault of the decoder, because a dark room
#: has noise. [project]
MOST_BLACK = 10

#: Intervals between frames of which the median is the usual one. [project]
_REMEMBERED = 15

#: Interval between frames before any was seen, seconds. [project]
_ASSUMED_INTERVAL_S = 1 / 30


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceFrame:
    """A frame that was chosen for inference.

    Attributes
    ----------
    index
        Number of the frame in its source, from 0, lost frames counted.
    time_s
        Seconds from the source's first frame.
    pixels
        As the source delivered it, or None for a frame lost to damage.
    window
        Number of the span of time that it belongs to, from 0.
    """

    index: int
    time_s: float
    pixels: NDArray[Any] | None
    window: int


class ClipReader:
    """Reader of a source, once, from its first frame on.

    Parameters
    ----------
    source
        An open source; the caller closes it.
    name
        The clip's name for messages.
    rate_hz
        Frames chosen a second, or None for every frame.
    windows
        Spans of time from which frames are chosen, in order and apart (see :func:`merged`); None
        for the whole clip. Reading stops after the last.
    decimation
        As in :class:`measure.pose.jobs.ClipJob`.
    tick
        Called with the time of every frame passed, chosen or not.

    Attributes
    ----------
    frames_read, frames_lost
        Frames decoded and frames lost to damage so far.
    last_s
        Time of the last frame read.
    notes
        What was unusual in the clip, one sentence each.
    """

    def __init__(
        self,
        source: FrameSource,
        name: str,
        *,
        rate_hz: float | None = None,
        windows: Sequence[tuple[float, float]] | None = None,
        decimation: Sequence[DecimationSpan] = (),
        tick: Callable[[float], None] = lambda time_s: None,
    ) -> None:
        self._source = source
        self._name = name
        self._grid = RateSampler(rate_hz)
        self._decimator = Decimator(decimation)
        self._windows = [(-math.inf, math.inf)] if windows is None else list(windows)
        self._tick = tick
        self._steps_s: deque[float] = deque(maxlen=_REMEMBERED)
        self._index = -1
        self._black_run = 0
        self._seen_light = False
        self._chosen = 0
        self.frames_read = 0
        self.frames_lost = 0
        self.last_s = 0.0
        self.notes: list[str] = []

    @property
    def interval_s(self) -> float:
        """Usual time from one frame to the next, seconds."""
        return median(self._steps_s) if self._steps_s else _ASSUMED_INTERVAL_S

    def frames(self) -> Iterator[SourceFrame]:
        """Yield the chosen frames; lost ones too, without pixels.

        Raises
        ------
        ClipError
            At the end, if no frame could be decoded, or all were black.
        """
        whole = True
        for time_s, after_failure in self._times():
            if after_failure:
                yield from self._lost_before(time_s)
            self._count(time_s)
            self._tick(time_s)
            if time_s > self._windows[-1][1]:
                whole = False
                break
            window = self._chosen_in(time_s)
            if window is not None:
                yield self._frame(time_s, window)
        if whole:
            self._check_end()

    def _times(self) -> Iterator[tuple[float, bool]]:
        """Yield the time of each usable frame, and whether a failure came shortly before it."""
        line = MonotonicTimeline()
        failures = 0
        since_failure = _HELD_BACK
        while failures < MOST_FAILURES:
            if not self._source.grab():
                failures += 1
                since_failure = 0
                continue
            failures = 0
            time_s = line.accept(self._source.time_s(), self.interval_s)
            if line.repeats >= MOST_REPEATS or line.restarts > MOST_RESTARTS:
                self.notes.append("Its times stopped increasing; the rest was left out.")
                return
            if time_s is not None:
                yield time_s, since_failure < _HELD_BACK
                since_failure += 1
        if line.restarts:
            self.notes.append(f"Its times restart {line.restarts} times; they were joined.")

    def _count(self, time_s: float) -> None:
        if self.frames_read:
            self._steps_s.append(time_s - self.last_s)
        self.frames_read += 1
        self._index += 1
        self.last_s = time_s

    def _lost_before(self, time_s: float) -> Iterator[SourceFrame]:
        """Yield the frames lost between the previous frame and this one, evenly spread."""
        gap_s = time_s - self.last_s
        interval_s = max(self.interval_s, _SHORTEST_INTERVAL_S)
        lost = round(gap_s / interval_s) - 1 if self.frames_read else 0
        before_s = self.last_s
        for number in range(1, lost + 1):
            lost_s = before_s + gap_s * number / (lost + 1)
            self.frames_lost += 1
            self._index += 1
            self.last_s = lost_s
            window = self._chosen_in(lost_s)
            if window is not None:
                yield SourceFrame(index=self._index, time_s=lost_s, pixels=None, window=window)

    def _chosen_in(self, time_s: float) -> int | None:
        """Return the number of the span for which the next frame is chosen, or None."""
        if not self._grid.chooses(time_s):
            return None
        for number, (start_s, end_s) in enumerate(self._windows):
            if start_s - 1e-6 <= time_s <= end_s + 1e-6:
                return number if self._decimator.takes(time_s, number) else None
        return None

    def _frame(self, time_s: float, window: int) -> SourceFrame:
        pixels = self._source.retrieve()
        self._chosen += 1
        if pixels is not None and _is_black(pixels):
            self._black_run += 1
            if self._black_run > MOST_BLACK:
                pixels = None
        elif pixels is not None:
            self._black_run = 0
            self._seen_light = True
        if pixels is None:
            self.frames_lost += 1
        return SourceFrame(index=self._index, time_s=time_s, pixels=pixels, window=window)

    def _check_end(self) -> None:
        if not self.frames_read:
            raise ClipError(
                TranslatableMessage(
                    "Not one picture of the clip {clip} could be decoded. It is damaged; record "
                    "or copy it again.",
                    {"clip": self._name},
                )
            )
        if self.frames_read == 1:
            raise ClipError(
                TranslatableMessage(
                    "The clip {clip} contains a single picture; a movement needs more.",
                    {"clip": self._name},
                )
            )
        if self._chosen and not self._seen_light:
            raise ClipError(
                TranslatableMessage(
                    "Every picture of the clip {clip} is completely black. A dark room would "
                    "leave some grain: the lens was covered, or the clip's codec is not decoded "
                    "correctly here. Convert the video to H.264 without interlacing.",
                    {"clip": self._name},
                )
            )
        stated_s = self._source.facts.stated_duration_s
        reached_s = self.last_s + self.interval_s
        if stated_s is not None and reached_s < 0.9 * stated_s:
            self.notes.append(
                f"The recording seems incomplete: {reached_s:.1f} of {stated_s:.1f} s."
            )
        if self._source.facts.deep_colour:
            self.notes.append("More than 8 bits per colour (perhaps HDR); colours are approximate.")
        if not self._source.facts.times_known:
            self.notes.append("The clip carries no times; they were counted from its stated rate.")


def _is_black(pixels: NDArray[Any]) -> bool:
    """Return whether every value is exactly zero; a sparse sample decides most frames."""
    return not pixels[::16, ::16].any() and not pixels.any()
