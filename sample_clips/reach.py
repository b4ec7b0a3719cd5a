"""Reach behind the back: the wrist's path round the hip and up along the spine.

Points are in the rest frame of the thorax (metres, person faces -y, left is +x), so that the
surface of the resting back can be asked where the hand must lie.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.interpolate import PchipInterpolator
from scipy.spatial.transform import Rotation, Slerp

from sample_clips.arm import Arm, ArmGoal
from sample_clips.body import Body
from sample_clips.motion import eased
from sample_clips.skeleton import frame

FloatArray = NDArray[np.float64]

#: Wrist's centre above the skin of the back, in metres.
_CLEARANCE_M = 0.04
#: Times of the path's knots: hanging, beside the hip, behind it, end.
_KNOTS = (0.0, 0.3, 0.6, 1.0)
#: The elbow bends no further than this.
_ELBOW_LIMIT_DEG = 142.0
#: Bones whose skin is the back of trunk and hips.
_TRUNK = ("root", "pelvis", "spine", "upperleg01", "clavicle")


class TrunkSurface:
    """How far back the skin of the trunk reaches."""

    def __init__(self, body: Body) -> None:
        strongest = body.bone_indices[
            np.arange(len(body.vertices)), np.argmax(body.bone_weights, axis=1)
        ]
        trunk = np.array([name.startswith(_TRUNK) for name in body.bones])
        self._points = body.vertices[trunk[strongest]]

    def depth_m(self, x: float, z: float) -> float:
        """Largest y of the trunk's skin near (x, z)."""
        near = self._points[np.hypot(self._points[:, 0] - x, self._points[:, 2] - z) < 0.06]
        return float(near[:, 1].max()) if len(near) else 0.0

    def width_m(self, z: float) -> float:
        """Largest distance of the trunk's skin from the midline at a height."""
        near = self._points[np.abs(self._points[:, 2] - z) < 0.05]
        return float(np.abs(near[:, 0]).max())


@dataclass(frozen=True, slots=True, kw_only=True)
class ReachPath:
    """Where the wrist goes for one end height of the wrist."""

    arm: Arm
    back: TrunkSurface
    hip_m: float
    end_m: float

    def wrist(self, start: FloatArray, progress: float) -> FloatArray:
        """Wrist position, from hanging (0) to the end of the reach (1), shape (3,)."""
        out = self.arm.side.outward
        beside_z = min(self.hip_m, self.end_m)
        width = self.back.width_m(beside_z)
        behind_z = beside_z + 0.35 * max(0.0, self.end_m - beside_z)
        knots = np.array(
            [
                start,
                [out * (width + 0.05), self.back.depth_m(0.1, beside_z) * 0.8, beside_z],
                [out * 0.13, self.back.depth_m(out * 0.13, behind_z) + 0.06, behind_z],
                [out * 0.055, self._depth_at(self.end_m), self.end_m],
            ]
        )
        point = np.asarray(PchipInterpolator(_KNOTS, knots)(progress), dtype=np.float64)
        if progress > _KNOTS[2]:
            # Between the last knots the hand follows the hollow of the back.
            point[1] = max(point[1], self._depth_at(float(point[2])))
        return point

    def _depth_at(self, z: float) -> float:
        x = self.arm.side.outward * 0.05
        return _CLEARANCE_M + max(
            self.back.depth_m(x, z), self.back.depth_m(-x, z + 0.05), self.back.depth_m(0, z + 0.1)
        )

    def goal(
        self,
        shoulder: FloatArray,
        hanging: ArmGoal,
        hanging_hand: FloatArray,
        progress: float,
    ) -> ArmGoal:
        """Arm of one moment, in the thorax's rest frame.

        Parameters
        ----------
        shoulder
            Shoulder joint centre, shape (3,).
        hanging, hanging_hand
            The arm at rest and the turn of its hand, where the path begins.
        """
        forearm = _forearm(hanging)
        start = shoulder + self.arm.upper_m * hanging.humerus + self.arm.fore_m * forearm
        wrist = self.wrist(start, progress)
        out = self.arm.side.outward
        share = eased(progress / _KNOTS[2])
        pole = (1 - share) * -hanging.bend_towards + share * np.array([out * 0.8, 0.5, -0.1])
        bent = bend_to(self.arm, shoulder, wrist, pole)
        along = _forearm(bent)
        fingers = np.array([along[0] - 0.5 * out, 0.0, along[2] + 0.1])
        hand = frame(fingers, np.array([0.0, 0.0, 1.0]))
        laid = hand @ self.arm.hand_frame.T
        between = Slerp([0, 1], Rotation.from_matrix(np.array([hanging_hand, laid])))
        return ArmGoal(
            humerus=bent.humerus,
            bend_towards=bent.bend_towards,
            elbow_deg=bent.elbow_deg,
            hand_turn=np.asarray(between(eased(progress / 0.8)).as_matrix(), dtype=np.float64),
            thumb_out=True,
        )


def bend_to(arm: Arm, shoulder: FloatArray, wrist: FloatArray, pole: FloatArray) -> ArmGoal:
    """Two-bone solve: the arm that brings its wrist to a point, elbow towards a pole.

    A point out of reach is approached as far as the arm goes.
    """
    line = wrist - shoulder
    upper, fore = arm.upper_m, arm.fore_m
    least = np.sqrt(upper**2 + fore**2 + 2 * upper * fore * np.cos(np.radians(_ELBOW_LIMIT_DEG)))
    length = float(np.clip(np.linalg.norm(line), least, upper + fore - 1e-4))
    along = line / np.linalg.norm(line)
    aside = pole - along * (pole @ along)
    aside = aside / np.linalg.norm(aside)
    at = (upper**2 - fore**2 + length**2) / (2 * length)
    away = np.sqrt(max(0.0, upper**2 - at**2))
    elbow = along * at + aside * away
    humerus = elbow / upper
    forearm = (along * length - elbow) / fore
    across = forearm - humerus * (forearm @ humerus)
    return ArmGoal(
        humerus=humerus,
        bend_towards=across / np.linalg.norm(across),
        elbow_deg=float(np.degrees(np.arccos(np.clip(humerus @ forearm, -1, 1)))),
    )


def _forearm(goal: ArmGoal) -> FloatArray:
    bend = np.radians(goal.elbow_deg)
    return np.asarray(np.cos(bend) * goal.humerus + np.sin(bend) * goal.bend_towards)
