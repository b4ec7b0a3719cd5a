"""Very stiff shoulders: what is held is read, and standing still is not."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Landmark, Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.kinematics.fusion import FusedSeries
from measure.kinematics.keypoints import arm_keypoints
from measure.trials.little_movement import little_trials, own_rest
from measure.trials.movement_model import model_of
from measure.trials.scan import scan_for_trials
from measure.trials.segmentation import segment_trials
from measure.video.sampling import COARSE_HZ
from tests.measure.kinematics.test_rotation import rotation_track
from tests.measure.trials.test_reach_gates import reaching
from tests.support.stick_figure import elevation_track, raise_and_hold

VIEWS = {Movement.FLEXION: View.SIDE, Movement.EXTENSION: View.SIDE, Movement.ABDUCTION: View.FRONT}


def noisy(values, sd=0.3):
    return values + np.random.default_rng(3).normal(0, sd, len(values))


def scan_of(series, movement, view=None):
    view = view or VIEWS[movement]
    track = elevation_track(series, movement, Side.LEFT, view)
    return scan_for_trials(track, MeasurementTask(movement, Side.LEFT, view))


@pytest.mark.parametrize(
    ("movement", "peak"),
    [
        (Movement.FLEXION, 12),
        (Movement.FLEXION, 20),
        (Movement.ABDUCTION, 12),
        (Movement.ABDUCTION, 20),
        (Movement.EXTENSION, 5),
    ],
)
def test_a_small_raise_that_is_held_is_a_trial(movement, peak):
    series = noisy(raise_and_hold(peak))
    scan = scan_of(series, movement)
    (trial,) = scan.trials
    holding = (scan.fused.time_s >= trial.hold_start_s) & (scan.fused.time_s <= trial.hold_end_s)
    assert np.median(series[holding]) == pytest.approx(peak, abs=0.5)
    assert trial.little == (peak < model_of(movement).segmentation.least_travel)


@pytest.mark.parametrize("movement", list(VIEWS))
def test_standing_still_stays_no_movement(movement):
    scan = scan_of(noisy(np.zeros(50)), movement)
    assert scan.trials == ()
    assert scan.gate_result.refused_for == (Reason.NO_MOVE,)


@pytest.mark.parametrize(("sway_deg", "period_s", "phase"), [(2, 4, 3), (2.5, 4, 4.5), (2, 6, 4.5)])
def test_sway_while_standing_is_no_little_movement(sway_deg, period_s, phase):
    sway = sway_deg * np.sin(2 * np.pi * np.arange(90) / COARSE_HZ / period_s + phase)
    assert scan_of(noisy(sway), Movement.EXTENSION).trials == ()


def test_a_small_move_that_exceeds_the_sway_is_a_trial():
    series = raise_and_hold(5.5)
    sway = 0.6 * np.sin(2 * np.pi * np.arange(len(series)) / COARSE_HZ / 4)
    (trial,) = scan_of(noisy(series + sway), Movement.EXTENSION).trials
    assert trial.little


def test_a_stir_beside_a_raise_is_no_second_trial():
    series = np.concatenate([raise_and_hold(8), raise_and_hold(90)])
    (trial,) = scan_of(series, Movement.ABDUCTION).trials
    assert not trial.little
    smaller = np.concatenate([raise_and_hold(6.5), raise_and_hold(13)])
    assert len(scan_of(smaller, Movement.ABDUCTION).trials) == 1


def test_arms_that_hang_off_a_large_body_are_its_rest():
    series = noisy(raise_and_hold(80, rest=38))
    (trial,) = scan_of(series, Movement.ABDUCTION).trials
    assert not trial.little
    assert trial.rest_value == pytest.approx(38, abs=1.5)


def test_an_arm_that_comes_down_later_had_no_rest_before():
    params = model_of(Movement.ABDUCTION).segmentation
    series = np.concatenate([np.full(12, 44.0), np.full(12, 33.0)])
    time_s = np.arange(len(series)) / COARSE_HZ
    assert own_rest(time_s, series, params) == params
    raised = np.concatenate([np.full(12, 70.0), np.full(12, 120.0)])
    assert own_rest(time_s, raised, params) == params


ROTATION = MeasurementTask(Movement.EXTERNAL_ROTATION, Side.LEFT, View.OBLIQUE)


def rotated(values):
    """The series of a turned forearm, as the estimator gives it."""
    keypoints = arm_keypoints(rotation_track([-45.0] * (len(values) - 10), Side.LEFT), Side.LEFT)
    series = np.where(np.arange(len(values)) < 10, np.nan, values)
    return FusedSeries(keypoints=keypoints, per_pass=series[None], value=series)


@pytest.mark.parametrize("end", [6, -10])
def test_a_small_rotation_either_way_is_found(end):
    values = np.concatenate([np.zeros(22), np.linspace(0, end, 6), np.full(12, end), np.zeros(8)])
    params = model_of(Movement.EXTERNAL_ROTATION).segmentation
    (trial,) = little_trials(rotated(noisy(values, 0.2)), ROTATION, params)
    assert trial.little
    assert trial.hold_start_s == pytest.approx(28 / COARSE_HZ, abs=0.5)
    assert trial.hold_end_s - trial.hold_start_s >= 1.0


def test_the_rest_of_a_rotation_inwards_is_that_of_the_series():
    values = np.concatenate([np.full(28, 4.0), np.full(12, -8.0), np.full(8, 4.0)])
    params = model_of(Movement.EXTERNAL_ROTATION).segmentation
    (trial,) = little_trials(rotated(noisy(values, 0.2)), ROTATION, params)
    assert trial.rest_value == pytest.approx(4.0, abs=0.3)


def test_a_forearm_that_only_stays_in_its_zero_pose_is_a_trial_from_there():
    params = model_of(Movement.EXTERNAL_ROTATION).segmentation
    (trial,) = little_trials(rotated(noisy(np.zeros(40), 0.2)), ROTATION, params)
    assert trial.rest_end_s - trial.rest_start_s == pytest.approx(0.8)
    assert trial.hold_end_s == pytest.approx(39 / COARSE_HZ)
    assert little_trials(rotated(np.full(40, 36.0)), ROTATION, params) == ()


def at_the_buttock():
    """A hand that hangs, then lies on the buttock, as low as it hung."""
    low = {"elbow": (0.45, 0.45), "wrist": (0.2, 0.0), "thumb": (0.05, -0.18)}
    track = reaching(**low)
    many = np.repeat(np.arange(12), 2)
    frames = {
        name: getattr(track, name)[many]
        for name in ("points_px", "visibility", "presence", "state", "people")
    }
    return replace(track, time_s=np.arange(24) / COARSE_HZ, **frames)


def test_a_hand_placed_on_the_buttock_is_a_reach_though_it_did_not_rise():
    task = MeasurementTask(Movement.HAND_BEHIND_BACK, Side.RIGHT, View.BACK)
    (trial,) = scan_for_trials(at_the_buttock(), task).trials
    assert trial.little
    assert trial.hold_start_s == pytest.approx(12 / COARSE_HZ, abs=0.3)


def test_a_hanging_hand_that_finds_another_place_beside_the_body_is_no_reach():
    track = at_the_buttock()
    points = track.points_px.copy()
    for mark in (Landmark.RIGHT_WRIST, Landmark.RIGHT_THUMB):
        points[12:, mark] = points[0, mark] - [24, 0]  # inwards by 0.16 of the trunk
    task = MeasurementTask(Movement.HAND_BEHIND_BACK, Side.RIGHT, View.BACK)
    scan = scan_for_trials(replace(track, points_px=points), task)
    assert scan.trials == ()
    assert scan.gate_result.refused_for == (Reason.NO_MOVE,)


def test_a_stir_on_the_way_back_does_not_hide_the_hand_that_was_held():
    track = at_the_buttock()
    points = track.points_px.copy()
    hanging = points[0, Landmark.RIGHT_THUMB]
    points[21:, Landmark.RIGHT_THUMB] = hanging
    points[22, Landmark.RIGHT_THUMB] = points[23, Landmark.RIGHT_THUMB] = hanging - [0, 22]
    task = MeasurementTask(Movement.HAND_BEHIND_BACK, Side.RIGHT, View.BACK)
    (trial,) = scan_for_trials(replace(track, points_px=points), task).trials
    assert trial.little
    assert trial.hold_start_s is not None


def test_a_hand_that_was_behind_the_back_from_the_start_is_none():
    track = at_the_buttock()
    points = track.points_px.copy()
    points[:12, Landmark.RIGHT_THUMB] = points[12, Landmark.RIGHT_THUMB] + [15, -4]
    task = MeasurementTask(Movement.HAND_BEHIND_BACK, Side.RIGHT, View.BACK)
    assert scan_for_trials(replace(track, points_px=points), task).trials == ()


def test_segmentation_of_a_small_move_allows_for_scatter():
    params = replace(
        model_of(Movement.EXTERNAL_ROTATION).segmentation, least_travel=3, hold_share=0.5
    )
    values = np.array([0.0] * 8 + [2, 4] + [6.9, 6.9, 4.3, 3.9, 4.4, 6.1, 5.0, 6.5] + [2, 0, 0])
    time_s = np.arange(len(values)) / COARSE_HZ
    assert segment_trials(time_s, values, params).candidates[0].hold_start_s is not None
