"""Gates of external rotation, on a body built for the perspective solve."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.reasons import Reason
from measure.kinematics.keypoints import arm_keypoints
from measure.kinematics.rotation import Rotation, elbow_angle_deg
from measure.trials.rotation_gates import square_elbow_gate, turn_gate, zero_pose_gate
from tests.measure.kinematics.test_rotation import AZIMUTHS, rotation_track

EVERY = np.ones(10, dtype=bool)


def rotation(turn_deg=45.0, azimuth_deg=-45.0):
    return Rotation(azimuth_deg=np.full(10, azimuth_deg), turn_deg=turn_deg, lean_deg=np.zeros(10))


@pytest.mark.parametrize(
    ("turn", "refused"), [(15, True), (30, False), (45, False), (60, False), (70, True)]
)
def test_a_turn_far_from_45_degrees_is_refused(turn, refused):
    assert (turn_gate(rotation(turn), EVERY).refused_for == (Reason.WRONG_TURN,)) == refused


def test_without_a_facing_stance_nothing_is_read():
    result = turn_gate(rotation(float("nan")), ~EVERY)
    assert result.refused_for == (Reason.NO_FACING_STANCE,)


@pytest.mark.parametrize(
    ("ahead", "refused"), [(0, False), (-30, False), (15, False), (-50, True), (40, True)]
)
def test_the_forearm_has_to_begin_straight_ahead(ahead, refused):
    result = zero_pose_gate(rotation(45.0, ahead - 45.0), EVERY)
    assert (result.refused_for == (Reason.NO_ZERO_POSE,)) == refused


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(("drop", "angle"), [(0.0, 90.0), (0.2, 112.4), (-0.35, 48.2)])
def test_the_elbow_is_told_by_how_far_the_wrist_lies_below_it(side, drop, angle):
    keypoints = arm_keypoints(rotation_track(AZIMUTHS, side), side)
    below = keypoints.elbow - drop * keypoints.trunk
    ahead = np.array([5.0, 0.0])  # towards the camera: too short for an angle in the picture
    bent = replace(keypoints, wrist=below + ahead)
    assert np.median(elbow_angle_deg(bent)) == pytest.approx(angle, abs=0.1)
    frames = np.ones(len(keypoints), dtype=bool)
    refused = square_elbow_gate(bent, frames).refused_for == (Reason.ELBOW_NOT_SQUARE,)
    assert refused == (not 65 <= angle <= 115)


def test_an_elbow_that_is_stretched_for_a_short_hold_is_not_square():
    keypoints = arm_keypoints(rotation_track([-45.0] * 30, Side.LEFT), Side.LEFT)
    hold = np.arange(len(keypoints)) >= len(keypoints) - 8
    drop = np.where(hold, 0.5, 0.0)[:, None] * keypoints.trunk
    stretched = replace(keypoints, wrist=keypoints.elbow - drop + np.array([5.0, 0.0]))
    turned = np.arange(len(keypoints)) >= 10
    assert square_elbow_gate(stretched, turned).refused_for == ()
    assert square_elbow_gate(stretched, turned, hold).refused_for == (Reason.ELBOW_NOT_SQUARE,)
