"""Reach: how high the thumb tip lies on the line from mid-hip to the shoulders."""

from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.kinematics.keypoints import ArmKeypoints


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """Heights over n frames, each of shape (n,), as fractions of mid-hip -> mid-shoulder."""

    thumb: FloatArray
    wrist: FloatArray


def reach_of(keypoints: ArmKeypoints) -> Reach:
    """Return how far thumb and wrist lie up the trunk line; 0 at mid-hip, NaN if missing."""
    trunk = keypoints.trunk
    square = np.sum(trunk * trunk, axis=1)

    def up(places: FloatArray) -> FloatArray:
        return np.asarray(np.sum((places - keypoints.mid_hip) * trunk, axis=1) / square)

    return Reach(thumb=up(keypoints.thumb), wrist=up(keypoints.wrist))


def sideways_of(keypoints: ArmKeypoints) -> FloatArray:
    """Return how far the thumb lies beside the trunk line, over its length, shape (n,)."""
    trunk = keypoints.trunk
    across = np.stack([trunk[:, 1], -trunk[:, 0]], axis=1)
    square = np.sum(trunk * trunk, axis=1)
    return np.asarray(np.sum((keypoints.thumb - keypoints.mid_hip) * across, axis=1) / square)
