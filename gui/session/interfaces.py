"""What the window asks of the parts that measure, as narrow protocols. No Qt here.

The window pulls: it asks for the newest frame and for events whenever it has time, and no call
here may block it, except `close` up to the time given.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import FloatArray, Side
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.tracks import Track
from measure.live.events import LiveEvent, LiveFrame, Source


class Engine(Protocol):
    """The part of :class:`measure.live.engine.LiveEngine` that the window uses; see there."""

    def start(self, source: Source) -> None: ...
    def choose(self, movement: Movement, side: Side, trials: int, practice: int) -> None: ...
    def newest_frame(self) -> LiveFrame | None: ...
    def events(self) -> list[LiveEvent]: ...
    def pause(self) -> None: ...
    def resume(self) -> None: ...
    def take_position(self) -> None: ...
    def discard_last(self) -> None: ...
    def restore_last(self) -> None: ...
    def finish_movement(self) -> None: ...
    def close(self, timeout_s: float) -> Measurement | None: ...


class CameraFinder(Protocol):
    """Lists the cameras; may take seconds, so it is called off the window's thread."""

    def __call__(self) -> tuple[str, ...]:
        """Return the names of the cameras that the system knows, in its order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipCurve:
    """The value over a clip's time.

    Attributes
    ----------
    time_s
        Shape (n,), seconds from the clip's first frame, strictly increasing.
    value
        Shape (n,), in the movement's unit; NaN where there is none.
    """

    time_s: FloatArray
    value: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipAnalysis:
    """What reading a clip gives: the measurement, its curve, and the landmarks over time."""

    measurement: Measurement
    curve: ClipCurve
    track: Track


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadClip:
    """One clip of a list that was read.

    Attributes
    ----------
    result
        Its outcome, without the series.
    analysis
        Curve and landmarks; None beside an error, and where an earlier run read the clip.
    """

    result: ClipResult
    analysis: ClipAnalysis | None = None


class ClipBatchReader(Protocol):
    """Reads clips as `thawline replay` does; called off the window's thread."""

    def __call__(
        self,
        entries: Sequence[ClipEntry],
        setup: KnownSetup,
        results: Path | None,
        progress: Callable[[float], bool],
        *,
        fresh: bool = False,
    ) -> Iterator[ReadClip]:
        """Yield clips as they are done.

        Parameters
        ----------
        results
            File that results are written to and taken from, if any.
        progress
            Called from several threads with the number of clips done, in parts of a clip; when
            it answers False, reading stops.
        fresh
            Read also what an earlier run has the result of, for its curve.

        Raises
        ------
        ThawlineError
            When no clip can be read, or the results file cannot be used.
        """


class ClipThumbnails(Protocol):
    """Small pictures of one clip, for scrubbing."""

    @property
    def times_s(self) -> NDArray[np.float64]:
        """Shape (n,): the time of each picture, increasing, seconds."""

    def at(self, time_s: float) -> NDArray[np.uint8]:
        """Return the upright RGB picture, shape (h, w, 3), nearest to a time. Fast."""


class ThumbnailLoader(Protocol):
    """Takes small pictures out of a clip; called off the window's thread."""

    def __call__(self, path: Path) -> ClipThumbnails:
        """Raise ThawlineError when the clip cannot be read."""
