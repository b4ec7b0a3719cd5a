"""Reader of BVH motion files: a skeleton, then one line of channels per frame.

Only positions of joints come out; what they drive is in ``captured``.
"""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from sample_clips.skeleton import turn_about

FloatArray = NDArray[np.float64]

_AXES = {"X": (1.0, 0.0, 0.0), "Y": (0.0, 1.0, 0.0), "Z": (0.0, 0.0, 1.0)}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Joint:
    name: str
    parent: int
    offset: tuple[float, float, float]
    channels: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Motion:
    """Joint positions of a recorded motion.

    Attributes
    ----------
    positions
        By joint name, each of shape (frames, 3), in the file's own unit and axes (y is up).
    frame_s
        Time from one frame to the next.
    """

    positions: dict[str, FloatArray]
    frame_s: float


def read_bvh(path: Path) -> Motion:
    """Read one file.

    Raises
    ------
    ValueError
        When the text is not a BVH file or its frames do not fit its skeleton.
    """
    words = path.read_text(encoding="utf-8").split()
    if words[:1] != ["HIERARCHY"] or "MOTION" not in words:
        raise ValueError(f"{path.name} is not a BVH file: it lacks HIERARCHY or MOTION")
    split = words.index("MOTION")
    joints = _read_joints(words[:split])
    count = int(words[split + 2])
    frame_s = float(words[split + 5])
    numbers = np.array(words[split + 6 :], dtype=np.float64)
    width = sum(len(joint.channels) for joint in joints)
    if numbers.size != count * width:
        raise ValueError(f"{path.name} promises {count} frames of {width} numbers")
    frames = numbers.reshape(count, width)
    placed = np.array([_place(joints, frame) for frame in frames])
    names = {joint.name: placed[:, index] for index, joint in enumerate(joints)}
    return Motion(positions=names, frame_s=frame_s)


def _read_joints(words: list[str]) -> list[_Joint]:
    joints: list[_Joint] = []
    open_joints: list[int] = []
    ends = 0
    at = 1
    name = ""
    channels: tuple[str, ...] = ()
    while at < len(words):
        word = words[at]
        if word in ("ROOT", "JOINT", "End"):
            ends += word == "End"
            name = f"end {ends}" if word == "End" else words[at + 1]
            channels = ()
            at += 3
        elif word == "OFFSET":
            x, y, z = (float(number) for number in words[at + 1 : at + 4])
            offset = (x, y, z)
            at += 4
            if words[at] == "CHANNELS":
                size = int(words[at + 1])
                channels = tuple(words[at + 2 : at + 2 + size])
                at += 2 + size
            parent = open_joints[-1] if open_joints else -1
            joints.append(_Joint(name=name, parent=parent, offset=offset, channels=channels))
            open_joints.append(len(joints) - 1)
        elif word == "}":
            open_joints.pop()
            at += 1
        else:
            raise ValueError(f"unknown word in the skeleton: {word!r}")
    return joints


def _place(joints: list[_Joint], frame: FloatArray) -> FloatArray:
    turns: list[FloatArray] = []
    places = np.zeros((len(joints), 3))
    at = 0
    for index, joint in enumerate(joints):
        turn, shift = np.eye(3), np.array(joint.offset)
        for channel in joint.channels:
            axis = np.array(_AXES[channel[0]])
            if channel.endswith("position"):
                shift = shift + axis * frame[at]
            else:
                turn = turn @ turn_about(axis, float(frame[at]))
            at += 1
        if joint.parent >= 0:
            places[index] = places[joint.parent] + turns[joint.parent] @ shift
            turn = turns[joint.parent] @ turn
        else:
            places[index] = shift
        turns.append(turn)
    return places
