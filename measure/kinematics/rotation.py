"""External rotation: the forearm's azimuth solved by perspective from one camera.

The person stands turned about 45 degrees toward the measured side. Lengths are in units of
the trunk (mid-hip to mid-shoulder). The trunk's apparent length gives its distance; the elbow
lies at a known depth beside it; the hand lies in line with the forearm, at a distance from the
elbow that goes with the person's arm: the viewing ray of the hand then meets a sphere about the
elbow, and the nearer meeting point is the hand. It is a third farther from the elbow than the
wrist is, and three landmarks show it instead of one. What remains
unknown is the trunk's own turn: the zero pose (forearm straight ahead) and the shoulders'
apparent width against the facing phase both show it, and are weighed in
:mod:`measure.kinematics.bias_correction`.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.acquisition import ASSUMED_HORIZONTAL_FIELD_DEG, Setup
from measure.domain.landmarks import FloatArray, Side
from measure.kinematics.angles import length, median_over
from measure.kinematics.keypoints import ArmKeypoints

#: Forearm (elbow to wrist centre) over the trunk; mean of the virtual people. [project]
USUAL_FOREARM = 0.525
#: Distance of the hand's middle from the elbow, over the trunk, of an arm of usual length.
#: [project]
ELBOW_TO_HAND = 0.72
#: Length of a hanging arm from shoulder to wrist as the network sees it, over the trunk; mean of
#: the virtual people. [project]
USUAL_ARM = 1.081
#: How much longer or shorter than usual an arm can be; a farther length was seen wrong. [project]
ARM_LENGTHS = (0.8, 1.25)
#: Distance of the elbow from the trunk's middle, over the trunk. [project]
ELBOW_OFFSET = 0.42
#: Bearing of the elbow from the middle of a trunk that is not turned, degrees. [project]
ELBOW_BEARING_DEG = 16.0
#: Share of the trunk's turn that the elbow's bearing follows. [project]
TURN_SHARE = 0.69
#: The trunk's turn where it was not seen, degrees: what the person is asked for. [project]
ASKED_TURN_DEG = 45.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Rotation:
    """The forearm over n frames.

    Attributes
    ----------
    azimuth_deg
        Shape (n,): forearm's direction, 0 toward the camera, positive to the measured side.
    turn_deg
        How far the trunk is turned from facing the camera, from the shoulders' width.
    lean_deg
        Shape (n,): direction of the upper arm in the image against the trunk axis.
    """

    azimuth_deg: FloatArray
    turn_deg: float
    lean_deg: FloatArray


def focal_px(setup: Setup, width_px: int, height_px: int) -> float:
    """Return the focal length in pixels: of the lens profile, or of an assumed usual webcam.

    The assumed field of view belongs to the image's long side.
    """
    lens = setup.camera.lens
    if lens is not None:
        return lens.focal_px[0] * width_px / lens.width_px
    half = math.radians(ASSUMED_HORIZONTAL_FIELD_DEG / 2)
    return max(width_px, height_px) / 2 / math.tan(half)


def trunk_turn_deg(
    keypoints: ArmKeypoints, facing: NDArray[np.bool_], turned: NDArray[np.bool_]
) -> float:
    """Return how far the trunk turned between the facing phase and the turned one, 0..90.

    From the shoulders' apparent width over the trunk's apparent length in both; NaN when
    either was not seen.
    """
    width = np.abs(keypoints.separation)
    before, after = float(median_over(width, facing)), float(median_over(width, turned))
    if not (math.isfinite(before) and math.isfinite(after)) or before <= 0:
        return float("nan")
    return math.degrees(math.acos(min(1.0, after / before)))


def rotation_of(
    keypoints: ArmKeypoints,
    facing: NDArray[np.bool_],
    turned: NDArray[np.bool_],
    setup: Setup,
) -> Rotation:
    """Return the forearm's azimuth in every frame.

    Parameters
    ----------
    facing, turned
        Shape (n,): frames of the facing phase and of the turned phase.
    """
    focal = focal_px(setup, keypoints.track.width_px, keypoints.track.height_px)
    mirror = -1.0 if keypoints.side is Side.RIGHT else 1.0
    centre = np.array([keypoints.track.width_px / 2, -keypoints.track.height_px / 2])

    def rays(places: FloatArray) -> FloatArray:
        """Viewing rays (u to the measured side, v down, 1), shape (n, 3)."""
        flat = (places - centre) / focal * np.array([mirror, -1.0])
        return np.concatenate([flat, np.ones((len(flat), 1))], axis=1)

    trunk = float(median_over(keypoints.trunk_px, turned)) / focal
    middle_ray = median_over(rays((keypoints.mid_shoulder + keypoints.mid_hip) / 2), turned)
    bearing = math.atan(float(middle_ray[0]))
    turn = trunk_turn_deg(keypoints, facing, turned)
    assumed = turn if math.isfinite(turn) else ASKED_TURN_DEG
    elbow_depth = 1 / trunk - ELBOW_OFFSET * math.sin(
        math.radians(ELBOW_BEARING_DEG + TURN_SHARE * assumed) + bearing
    )
    to_hand = ELBOW_TO_HAND * _arm_length(keypoints, facing, setup)
    azimuth = _azimuth_deg(
        elbow_depth * rays(keypoints.elbow), rays(keypoints.hand), to_hand
    ) + math.degrees(bearing)
    drop = keypoints.elbow - keypoints.shoulder
    down = -keypoints.trunk
    lean = np.degrees(
        np.arctan2(drop[:, 0] * down[:, 1] - drop[:, 1] * down[:, 0], np.sum(drop * down, axis=1))
    )
    return Rotation(azimuth_deg=azimuth, turn_deg=turn, lean_deg=lean)


def elbow_angle_deg(keypoints: ArmKeypoints) -> FloatArray:
    """Return the elbow's angle beside a hanging upper arm, shape (n,), degrees; 180 straight.

    From how far the wrist lies below the elbow along the trunk, as a forearm that points towards
    the camera is seen too short for an angle in the picture.
    """
    drop = np.sum((keypoints.elbow - keypoints.wrist) * keypoints.trunk, axis=1)
    share = drop / keypoints.trunk_px**2 / USUAL_FOREARM
    return np.asarray(90.0 + np.degrees(np.arcsin(np.clip(share, -1.0, 1.0))))


def _arm_length(keypoints: ArmKeypoints, facing: NDArray[np.bool_], setup: Setup) -> float:
    """Return how long the arm is against a usual one: by its known forearm, or as it hung."""
    if setup.body.forearm is not None:
        return setup.body.forearm / USUAL_FOREARM
    arm = length(keypoints.elbow - keypoints.shoulder) + length(keypoints.wrist - keypoints.elbow)
    seen = float(median_over(arm / keypoints.trunk_px, facing)) / USUAL_ARM
    low, high = ARM_LENGTHS
    return min(max(seen, low), high) if math.isfinite(seen) else 1.0


def _azimuth_deg(elbow: FloatArray, hand_ray: FloatArray, to_hand: float) -> FloatArray:
    """Return the azimuth of the nearer point of the hand's ray that is so far from the elbow."""
    along = np.sum(hand_ray * elbow, axis=1)
    square = np.sum(hand_ray * hand_ray, axis=1)
    under_root = along**2 - square * (np.sum(elbow * elbow, axis=1) - to_hand**2)
    scale = (along - np.sqrt(np.maximum(0.0, under_root))) / square
    forearm = scale[:, None] * hand_ray - elbow
    return np.asarray(np.degrees(np.arctan2(forearm[:, 0], -forearm[:, 2])))
