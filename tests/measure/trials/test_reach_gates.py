"""Gates of the hand-behind-back reach, with hand-made keypoints seen from behind."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS, Landmark, Side, arm
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.kinematics.fusion import FusedSeries
from measure.kinematics.keypoints import arm_keypoints
from measure.trials.reach_gates import reach_gates
from tests.support.stick_figure import track_of

REST, HOLD = np.arange(12) < 6, np.arange(12) >= 6
TASK = MeasurementTask(Movement.HAND_BEHIND_BACK, Side.RIGHT, View.BACK)


def reaching(elbow=(0.5, 0.5), wrist=(0.15, 0.25), thumb=(0.05, 0.35), *, behind=True):
    """A person whose right arm hangs, then lies as given; trunk lengths about mid-hip, y up."""
    places = np.zeros((12, LANDMARKS, 2))
    outwards = 1.0 if behind else -1.0
    for name, sign in (("RIGHT", outwards), ("LEFT", -outwards)):
        places[:, Landmark[f"{name}_SHOULDER"]] = 0.34 * sign, 1.0
        places[:, Landmark[f"{name}_HIP"]] = 0.2 * sign, 0.0
        for mark, y in (("ELBOW", 0.45), ("WRIST", -0.05), ("THUMB", -0.2)):
            places[:, Landmark[f"{name}_{mark}"]] = 0.42 * sign, y
    for mark, place in (("ELBOW", elbow), ("WRIST", wrist), ("THUMB", thumb)):
        places[HOLD, Landmark[f"RIGHT_{mark}"]] = np.array(place) * (outwards, 1.0)
    for mark in (Landmark.NOSE, Landmark.LEFT_EAR, Landmark.RIGHT_EAR):
        places[:, mark] = 0.0, 1.35
    return track_of(places * 150)


def gates(track, task=TASK):
    keypoints = arm_keypoints(track, task.side)
    height = np.where(HOLD, 0.35, 0.0)
    return reach_gates(
        FusedSeries(keypoints=keypoints, per_pass=height[None], value=height), task, REST, HOLD
    )


def with_visibility(track, value, *marks):
    visibility = track.visibility.copy()
    visibility[np.ix_(HOLD, marks)] = value
    return replace(track, visibility=visibility)


def test_a_hand_on_the_back_passes_without_a_word():
    result = gates(reaching())
    assert result.refused_for == ()
    assert result.notes == ()


def test_somebody_who_faces_the_camera_is_asked_to_turn_the_back_to_it():
    result = gates(reaching(behind=False))
    assert result.refused_for == (Reason.FACING_CAMERA,)


def test_hands_in_front_of_the_body_are_no_reach():
    hidden = (Landmark.RIGHT_ELBOW, Landmark.RIGHT_WRIST, Landmark.RIGHT_THUMB)
    assert Reason.HAND_NOT_BEHIND in gates(with_visibility(reaching(), 0.04, *hidden)).refused_for


def test_a_hand_half_hidden_by_the_back_is_a_reach():
    hand = (Landmark.RIGHT_WRIST, Landmark.RIGHT_THUMB)
    assert gates(with_visibility(reaching(), 0.25, *hand)).refused_for == ()


@pytest.mark.parametrize(
    ("elbow", "wrist", "thumb"),
    [
        ((0.6, 0.55), (0.63, 0.3), (0.58, 0.35)),  # beside the body, as on a stick
        ((0.2, 0.7), (0.1, 0.4), (0.04, 0.36)),  # stretched backwards
    ],
)
def test_a_hand_that_does_not_lie_on_the_back_is_no_reach(elbow, wrist, thumb):
    assert Reason.HAND_NOT_BEHIND in gates(reaching(elbow, wrist, thumb)).refused_for


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(("behind", "read"), [(0.25, True), (-0.2, False)])
def test_seen_from_the_side_the_hand_is_behind_the_body(side, behind, read):
    track = reaching()
    points = track.points_px.copy()
    forwards = 1.0 if side is Side.RIGHT else -1.0
    middle = points[0, [Landmark.LEFT_HIP, Landmark.RIGHT_HIP], 0].mean()
    points[..., 0] = middle
    points[:, Landmark.NOSE, 0] = middle + forwards * 15
    points[HOLD, arm(side).thumb, 0] = middle - forwards * behind * 150
    task = MeasurementTask(Movement.HAND_BEHIND_BACK, side, View.SIDE)
    result = gates(replace(track, points_px=points), task)
    assert result.refused_for == (() if read else (Reason.HAND_NOT_BEHIND,))
