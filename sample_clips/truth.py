"""Truth of posed joints: angles, heights, and the joints' places in the image.

Definitions are in README.md beside this file. All positions are joint centres of the body model
in metres in the world; left and right are the person's.

The line of the upper arm runs from joint centre to joint centre, because a goniometer is laid by
bony landmarks: pivot at the acromion or the greater tubercle, moving arm to the epicondyle. Laid
by eye along the middle of arm and trunk it would read within about 1 degree of that in flexion and
extension, and 3 (hanging) to 7 degrees (raised) more in abduction, where muscle lies unevenly
about the bone (``python -m tests.bench.accuracy_zero``).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from sample_clips.body import Body
from sample_clips.scenario import Movement, Side
from sample_clips.skeleton import PosedBones

FloatArray = NDArray[np.float64]

#: Columns of pixel positions in a truth file, in this order, each as ``_x_px`` and ``_y_px``.
JOINTS = (
    "left_shoulder",
    "right_shoulder",
    "left_elbow",
    "right_elbow",
    "left_wrist",
    "right_wrist",
    "left_thumb_tip",
    "right_thumb_tip",
    "left_hip",
    "right_hip",
    "c7",
)
_BONES = {
    "left_shoulder": "upperarm01.L",
    "right_shoulder": "upperarm01.R",
    "left_elbow": "lowerarm01.L",
    "right_elbow": "lowerarm01.R",
    "left_wrist": "wrist.L",
    "right_wrist": "wrist.R",
    "left_hip": "upperleg01.L",
    "right_hip": "upperleg01.R",
    "c7": "neck01",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameTruth:
    """Truth of one frame.

    Attributes
    ----------
    value
        The movement's own value: degrees, or the fraction of the reach.
    elbow_flexion_deg
        Angle between upper arm and forearm; 0 is straight.
    trunk_lean_deg
        Angle of the trunk axis (mid-hip to mid-shoulder) to the vertical.
    out_of_plane_deg
        Angle of the humerus to the plane of the movement: positive outwards in flexion and
        extension (and for the other two movements), forwards in abduction.
    heading_deg
        Direction that the thorax faces: 0 towards the camera, positive to the person's left.
    """

    value: float
    elbow_flexion_deg: float
    trunk_lean_deg: float
    out_of_plane_deg: float
    heading_deg: float


def joint_positions(
    body: Body, bones: PosedBones, thumb_tips: dict[Side, FloatArray]
) -> dict[str, FloatArray]:
    """Joint centres and thumb tips by their names in ``JOINTS``, each of shape (3,)."""
    joints = {name: bones.heads[body.bones.index(bone)] for name, bone in _BONES.items()}
    for side, tip in thumb_tips.items():
        joints[f"{side}_thumb_tip"] = tip
    return joints


def trunk_frame(
    joints: dict[str, FloatArray], thorax_forward: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Unit vectors up the trunk axis, forwards, and to the person's left, each of shape (3,).

    Forwards is the thorax's own forward direction made perpendicular to the axis.
    """
    hips = (joints["left_hip"] + joints["right_hip"]) / 2
    shoulders = (joints["left_shoulder"] + joints["right_shoulder"]) / 2
    up = (shoulders - hips) / np.linalg.norm(shoulders - hips)
    forward = thorax_forward - up * (thorax_forward @ up)
    forward = forward / np.linalg.norm(forward)
    return up, forward, np.cross(up, forward)


def frame_truth(
    joints: dict[str, FloatArray], thorax_forward: FloatArray, movement: Movement, side: Side
) -> FrameTruth:
    """The truth of one posed body for the movement of one side."""
    up, forward, left = trunk_frame(joints, thorax_forward)
    outward = left * side.outward
    shoulder, elbow = joints[f"{side}_shoulder"], joints[f"{side}_elbow"]
    humerus = (elbow - shoulder) / np.linalg.norm(elbow - shoulder)
    forearm = joints[f"{side}_wrist"] - elbow
    forearm = forearm / np.linalg.norm(forearm)
    aside = outward if movement is not Movement.ABDUCTION else forward
    value = {
        Movement.FLEXION: _angle(humerus, forward, -up),
        Movement.EXTENSION: _angle(humerus, -forward, -up),
        Movement.ABDUCTION: _angle(humerus, outward, -up),
        Movement.EXTERNAL_ROTATION: _angle(forearm, outward, forward),
        Movement.HAND_BEHIND_BACK: height_fraction(joints, joints[f"{side}_thumb_tip"]),
    }[movement]
    return FrameTruth(
        value=value,
        elbow_flexion_deg=float(np.degrees(np.arccos(np.clip(humerus @ forearm, -1, 1)))),
        trunk_lean_deg=float(np.degrees(np.arccos(np.clip(up[2], -1, 1)))),
        out_of_plane_deg=float(np.degrees(np.arcsin(np.clip(humerus @ aside, -1, 1)))),
        heading_deg=float(np.degrees(np.arctan2(thorax_forward[0], -thorax_forward[1]))),
    )


def height_fraction(joints: dict[str, FloatArray], point: FloatArray) -> float:
    """Height of a point along mid-hip -> C7: 0 at the hips, 1 at C7."""
    hips = (joints["left_hip"] + joints["right_hip"]) / 2
    line = joints["c7"] - hips
    return float((point - hips) @ line / (line @ line))


def hand_height(body: Body, bones: PosedBones, tip: FloatArray) -> float:
    """``height_fraction`` straight from posed bones."""
    return height_fraction(joint_positions(body, bones, {}), tip)


def _angle(direction: FloatArray, towards: FloatArray, zero: FloatArray) -> float:
    """Angle from ``zero`` to ``towards`` in their plane, degrees in [-90, 270).

    Past the top it goes on rather than jumping.
    """
    angle = float(np.degrees(np.arctan2(direction @ towards, direction @ zero)))
    return angle + 360.0 if angle < -90.0 else angle


def columns() -> tuple[str, ...]:
    """Column names of a truth file."""
    pixels = tuple(f"{joint}_{axis}_px" for joint in JOINTS for axis in "xy")
    return (
        "time_s",
        "phase",
        "repeat",
        "value",
        "elbow_flexion_deg",
        "trunk_lean_deg",
        "out_of_plane_deg",
        "heading_deg",
        *pixels,
    )


def write_frames(path: Path, rows: Sequence[Sequence[str]]) -> None:
    """Write one truth file."""
    lines = [",".join(columns()), *(",".join(row) for row in rows)]
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
