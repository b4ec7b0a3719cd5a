"""Landmarks of the body and sides, and their array types. No geometry, no thresholds."""

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
