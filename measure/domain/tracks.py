"""Poses of single frames, and tracks of one person through a source. Values only."""

from dataclasses import dataclass, replace
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import LANDMARKS, FloatArray, IntArray


@dataclass(frozen=True, slots=True, kw_only=True)
class PoseFrame:
    """Poses that the network detected in one frame: no person, one or several, in no fixed order.

    Attributes
    ----------
    index
        Number of the frame in its source, from 0; gaps are frames that were not analysed.
    time_s
        The frame's own time, seconds from the source's first frame.
    points_px
        Shape (people, 33, 2): x to the right, y down, pixels of the upright image with
        square pixels, not clipped to the image. Float64.
    visibility, presence
        Shape (people, 33), 0..1 as the network states; NaN where it states nothing.
    readable
        False for a damaged frame that could not be decoded; it then holds no people.
    """

    index: int
    time_s: float
    points_px: FloatArray
    visibility: FloatArray
    presence: FloatArray
    readable: bool = True


class FrameState(IntEnum):
    """Whether the tracked person was detected in a frame and, if not, why."""

    SEEN = 0
    NOBODY = 1
    OTHER_PERSON = 2
    AMBIGUOUS = 3
    UNREADABLE = 4


#: Shapes of the arrays of a track, for one frame.
_SHAPES: dict[str, tuple[int, ...]] = {
    "time_s": (),
    "points_px": (LANDMARKS, 2),
    "visibility": (LANDMARKS,),
    "presence": (LANDMARKS,),
    "state": (),
    "people": (),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Track:
    """One person followed through a source; n frames. Arrays are read-only.

    Attributes
    ----------
    time_s
        Shape (n,), strictly increasing, seconds from the source's first frame.
    points_px
        Shape (n, 33, 2), pixels, y down, square pixels; NaN where the person was not seen.
    visibility, presence
        Shape (n, 33), 0..1; NaN where unknown.
    state
        Shape (n,), values of :class:`FrameState`.
    people
        Shape (n,), number of different people in the frame.
    width_px, height_px
        Size of the upright image to which the pixels belong.
    """

    time_s: FloatArray
    points_px: FloatArray
    visibility: FloatArray
    presence: FloatArray
    state: IntArray
    people: IntArray
    width_px: int
    height_px: int

    def __post_init__(self) -> None:
        for name, of_frame in _SHAPES.items():
            array, shape = getattr(self, name), (len(self), *of_frame)
            if array.shape != shape:
                raise ValueError(f"{name} has shape {array.shape}, not {shape}")
            array.setflags(write=False)

    def __len__(self) -> int:
        return len(self.time_s)

    def between(self, start_s: float, end_s: float) -> "Track":
        """Return the frames with start_s <= time <= end_s."""
        return self.frames((self.time_s >= start_s) & (self.time_s <= end_s))

    def frames(self, chosen: NDArray[np.bool_] | IntArray | slice) -> "Track":
        """Return a track of the chosen frames only."""
        return replace(self, **{name: getattr(self, name)[chosen].copy() for name in _SHAPES})
