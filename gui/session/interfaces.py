"""What the window asks of the parts that measure, as narrow protocols. No Qt here.

The window pulls: it asks for the newest frame and for events whenever it has time, and no call
here may block it, except `close` up to the time given.
"""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray, Side
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from measure.domain.tracks import Track
from measure.live.events import LiveEvent, LiveFrame, Source


class Engine(Protocol):
    """One source, one person, one movement at a time."""

    def start(self, source: Source) -> None:
        """Open a source, closing the one before; frames and events tell how it went.

        A movement that was chosen goes on with the trials it has, so that a camera pulled out
        and plugged in again costs none.
        """

    def choose(
        self,
        movement: Movement,
        side: Side,
        trials: int,
        practice: int,
        conduct: AssessmentCondition,
    ) -> None:
        """Begin a movement: so many practice trials, then so many scored ones."""

    def newest_frame(self) -> LiveFrame | None:
        """Return the newest frame not yet handed out, or None. Never blocks."""

    def events(self) -> list[LiveEvent]:
        """Return what happened since the last call, in order. Never blocks."""

    def pause(self) -> None:
        """Stop looking for trials until `resume`; pictures go on coming."""

    def resume(self) -> None:
        """Go on after a pause; an interrupted trial starts anew."""

    def discard_last(self) -> None:
        """Drop the last captured trial; TRIAL_DISCARDED follows, and one more is taken."""

    def finish_movement(self) -> None:
        """Take no more trials; settle those captured, then send MEASUREMENT_DONE."""

    def close(self, timeout_s: float) -> Measurement | None:
        """Close everything within the time and return what the captured trials of an
        unfinished movement make, or None without any.
        """


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


class ClipAnalyzer(Protocol):
    """Reads a clip as `thawline replay` does; called off the window's thread."""

    def __call__(
        self, path: Path, movement: Movement, side: Side, progress: Callable[[float], bool]
    ) -> ClipAnalysis:
        """Read a clip.

        Parameters
        ----------
        progress
            Called with the share done, 0..1; when it answers False, reading stops with a
            ThawlineError.

        Raises
        ------
        ThawlineError
            When the clip cannot be read.
        """


class ClipThumbnails(Protocol):
    """Small pictures of one clip, for scrubbing."""

    @property
    def duration_s(self) -> float: ...

    def at(self, time_s: float) -> NDArray[np.uint8]:
        """Return the upright RGB picture, shape (h, w, 3), nearest to a time. Fast."""


class ThumbnailLoader(Protocol):
    """Takes small pictures out of a clip; called off the window's thread."""

    def __call__(self, path: Path) -> ClipThumbnails:
        """Raise ThawlineError when the clip cannot be read."""


class TrialAggregator(Protocol):
    """Makes a measurement anew from those of its trials that a person accepted."""

    def __call__(self, measurement: Measurement, accepted: tuple[bool, ...]) -> Measurement:
        """Return the measurement that the accepted trials make."""
