"""Names of the body and the frames' landmarks as arrays. No geometry, no thresholds."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import IntEnum, StrEnum

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]


class Side(StrEnum):
    """The person's own left or right."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> "Side":
        return Side.RIGHT if self is Side.LEFT else Side.LEFT


class Landmark(IntEnum):
    """The 33 landmarks of the pose network, in its order. Left and right are the person's."""

    NOSE = 0
    LEFT_EYE_INNER = 1
    LEFT_EYE = 2
    LEFT_EYE_OUTER = 3
    RIGHT_EYE_INNER = 4
    RIGHT_EYE = 5
    RIGHT_EYE_OUTER = 6
    LEFT_EAR = 7
    RIGHT_EAR = 8
    MOUTH_LEFT = 9
    MOUTH_RIGHT = 10
    LEFT_SHOULDER = 11
    RIGHT_SHOULDER = 12
    LEFT_ELBOW = 13
    RIGHT_ELBOW = 14
    LEFT_WRIST = 15
    RIGHT_WRIST = 16
    LEFT_PINKY = 17
    RIGHT_PINKY = 18
    LEFT_INDEX = 19
    RIGHT_INDEX = 20
    LEFT_THUMB = 21
    RIGHT_THUMB = 22
    LEFT_HIP = 23
    RIGHT_HIP = 24
    LEFT_KNEE = 25
    RIGHT_KNEE = 26
    LEFT_ANKLE = 27
    RIGHT_ANKLE = 28
    LEFT_HEEL = 29
    RIGHT_HEEL = 30
    LEFT_FOOT_INDEX = 31
    RIGHT_FOOT_INDEX = 32


LANDMARKS = len(Landmark)


def _exchange_order() -> IntArray:
    order = np.arange(LANDMARKS)
    for mark in Landmark:
        words = mark.name.split("_")
        swapped = [{"LEFT": "RIGHT", "RIGHT": "LEFT"}.get(word, word) for word in words]
        order[mark] = Landmark["_".join(swapped)]
    return order


#: ``points[SIDES_EXCHANGED]`` gives every left landmark the place of its right twin.
SIDES_EXCHANGED: IntArray = _exchange_order()


@dataclass(frozen=True, slots=True)
class ArmMarks:
    """The landmarks of one arm and its hip."""

    shoulder: Landmark
    elbow: Landmark
    wrist: Landmark
    thumb: Landmark
    index: Landmark
    pinky: Landmark
    hip: Landmark
    ear: Landmark


def arm(side: Side) -> ArmMarks:
    """Return the landmarks of the person's left or right arm."""
    return _ARMS[side]


_ARMS: Mapping[Side, ArmMarks] = {
    side: ArmMarks(
        *(
            Landmark[f"{side.name}_{part}"]
            for part in ("SHOULDER", "ELBOW", "WRIST", "THUMB", "INDEX", "PINKY", "HIP", "EAR")
        )
    )
    for side in Side
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PoseFrame:
    """What the network found in one picture: no person, one or several, in no fixed order.

    Attributes
    ----------
    index
        Number of the frame in its source, from 0; gaps are frames that were not analysed.
    time_s
        The frame's own time, seconds from the source's first frame.
    points_px
        Shape (people, 33, 2): x to the right, y down, pixels of the upright picture with
        square pixels, not clipped to the picture. Float64.
    visibility, presence
        Shape (people, 33), 0..1 as the network says; NaN where it says nothing.
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
    """Why a frame of a track has or has not landmarks of the locked person."""

    SEEN = 0
    NOBODY = 1
    OTHER_PERSON = 2
    UNSURE_WHO = 3
    UNREADABLE = 4


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
        Shape (n,), how many different people were seen in the frame.
    width_px, height_px
        Size of the upright picture that the pixels belong to.
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
        n = len(self.time_s)
        expected = {
            "points_px": (n, LANDMARKS, 2),
            "visibility": (n, LANDMARKS),
            "presence": (n, LANDMARKS),
            "state": (n,),
            "people": (n,),
        }
        for name, shape in expected.items():
            if getattr(self, name).shape != shape:
                raise ValueError(f"{name} has shape {getattr(self, name).shape}, not {shape}")
        for name in ("time_s", *expected):
            getattr(self, name).setflags(write=False)

    def __len__(self) -> int:
        return len(self.time_s)

    def between(self, start_s: float, end_s: float) -> "Track":
        """Return the frames with start_s <= time <= end_s."""
        return self.frames((self.time_s >= start_s) & (self.time_s <= end_s))

    def frames(self, chosen: NDArray[np.bool_] | IntArray | slice) -> "Track":
        """Return a track of the chosen frames only."""
        return Track(
            time_s=self.time_s[chosen].copy(),
            points_px=self.points_px[chosen].copy(),
            visibility=self.visibility[chosen].copy(),
            presence=self.presence[chosen].copy(),
            state=self.state[chosen].copy(),
            people=self.people[chosen].copy(),
            width_px=self.width_px,
            height_px=self.height_px,
        )
