"""The reading path on a stick figure: from tracks to a measurement."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Landmark, Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import IntervalBasis, Provenance, Status
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState
from measure.kinematics.keypoints import arm_keypoints
from measure.trials.aggregation import aggregate_refined
from measure.trials.refinement import consensus, refine_trial
from measure.trials.scan import (
    LEAD_S,
    REST_EVERY,
    SHORT_HOLD_S,
    decimation_plan,
    fine_rate_factor,
    recognised_view,
    scan_for_trials,
)
from measure.trials.segmentation import TrialCandidate
from measure.video.sampling import FINE_HZ, Decimator
from tests.support.stick_figure import elevation_track, raise_and_hold

CASES = [
    (Movement.FLEXION, View.SIDE, 118.0),
    (Movement.EXTENSION, View.SIDE, 42.0),
    (Movement.ABDUCTION, View.FRONT, 95.0),
    (Movement.ABDUCTION, View.BACK, 150.0),
]


def read(track, movement, side, view=None, others=()):
    scan = scan_for_trials(track, MeasurementTask(movement, side, view))
    refined = [
        refine_trial(
            [each_pass.between(*window) for each_pass in (track, *others)],
            trial,
            scan.task,
            "heavy",
        )
        for trial, window in zip(scan.trials, scan.windows, strict=True)
    ]
    return scan, aggregate_refined(
        refined, scan.task, Provenance(model="heavy"), nothing_found=scan.gate_result
    )


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(("movement", "view", "peak"), CASES)
def test_a_perfect_clip_reads_its_hold(movement, view, peak, side):
    track = elevation_track(raise_and_hold(peak), movement, side, view, trunk_px=110)
    scan, measurement = read(track, movement, side)
    assert scan.view is view
    assert measurement.status is Status.READING
    assert measurement.value == pytest.approx(peak, abs=0.6)
    assert measurement.low < measurement.value < measurement.high
    assert measurement.against_vertical == pytest.approx(measurement.value, abs=0.1)


def test_three_repeats_give_their_median_and_keep_the_best_apart():
    series = np.concatenate([raise_and_hold(peak) for peak in (80, 95, 88)])
    track = elevation_track(series, Movement.FLEXION, Side.RIGHT, View.SIDE)
    _, measurement = read(track, Movement.FLEXION, Side.RIGHT)
    values = sorted(trial.value for trial in measurement.trials)
    assert len(values) == 3
    assert measurement.value == pytest.approx(values[1])
    assert measurement.best == pytest.approx(values[2])
    assert Reason.SPREAD_TRIALS in measurement.reasons


def test_one_bad_trial_is_set_aside_with_its_reason():
    series = np.concatenate([raise_and_hold(90), raise_and_hold(90)])
    bend = np.where(np.arange(len(series)) > len(series) / 2, 50.0, 0.0)
    track = elevation_track(series, Movement.ABDUCTION, Side.LEFT, View.FRONT, elbow_bend_deg=bend)
    _, measurement = read(track, Movement.ABDUCTION, Side.LEFT)
    assert [trial.scored for trial in measurement.trials] == [True, False]
    assert Reason.ELBOW_BENT in measurement.trials[1].refused_for
    assert measurement.status is Status.READING
    assert Reason.ELBOW_BENT in measurement.reasons


def test_flexion_from_the_front_is_refused_for_its_view():
    track = elevation_track(raise_and_hold(90), Movement.ABDUCTION, Side.LEFT, View.FRONT)
    for view in (None, View.FRONT):
        _, measurement = read(track, Movement.FLEXION, Side.LEFT, view)
        assert measurement.status is Status.REFUSED
        assert Reason.WRONG_VIEW in measurement.reasons
        assert measurement.value is None


def test_an_empty_room_a_still_arm_and_no_neutral():
    still = elevation_track(np.zeros(60), Movement.FLEXION, Side.LEFT, View.SIDE)
    empty = replace(
        still,
        points_px=np.full_like(still.points_px, np.nan),
        state=np.full(len(still), int(FrameState.NOBODY), dtype=np.int64),
    )
    high = np.concatenate([np.full(20, 70.0), np.linspace(70, 120, 20), np.full(20, 120.0)])
    raised = elevation_track(high, Movement.FLEXION, Side.LEFT, View.SIDE)
    for track, reason in (
        (empty, Reason.NOBODY),
        (still, Reason.NO_MOVE),
        (raised, Reason.NO_NEUTRAL),
    ):
        _, measurement = read(track, Movement.FLEXION, Side.LEFT)
        assert measurement.reasons[0] is reason
        assert measurement.trials == ()


def test_without_a_hold_there_is_no_reading():
    series = raise_and_hold(120, hold_s=0.15, move_s=1.6)
    track = elevation_track(series, Movement.FLEXION, Side.LEFT, View.SIDE)
    _, measurement = read(track, Movement.FLEXION, Side.LEFT)
    assert Reason.NO_HOLD in measurement.reasons
    assert measurement.value is None


def trial_at(start_s, *, hold=True, hold_s=2.0):
    return TrialCandidate(
        rest_start_s=start_s - 2.0,
        rest_end_s=start_s,
        start_s=start_s,
        end_s=start_s + 5.0,
        hold_start_s=start_s + 1.5 if hold else None,
        hold_end_s=start_s + 1.5 + hold_s if hold else None,
        rest_value=0.0,
        steady=True,
        gap=False,
    )


def taken_between(plan, start_s, end_s, times=1):
    """Return which frames of the fine rate are taken."""
    decimator = Decimator(plan)
    rate = FINE_HZ * times
    grid = [n / rate for n in range(round(start_s * rate), round(end_s * rate) + 1)]
    return [time_s for time_s in grid if decimator.takes(time_s)]


def test_holds_are_sampled_densely_and_their_surroundings_sparsely():
    first, second = trial_at(2.0), trial_at(9.0)
    taken = taken_between(decimation_plan([first, second], Movement.FLEXION), 2.0 - LEAD_S, 13.0)
    for trial in (first, second):
        hold = [t for t in taken if trial.hold_start_s <= t <= trial.hold_end_s]
        rest = [t for t in taken if trial.start_s - LEAD_S <= t <= trial.rest_end_s]
        move = [t for t in taken if trial.rest_end_s < t < trial.hold_start_s]
        assert np.diff(hold) == pytest.approx(1 / FINE_HZ)
        assert len(hold) == 9
        assert np.diff(rest) == pytest.approx(REST_EVERY / FINE_HZ)
        assert not move


def test_only_a_short_hold_is_sampled_twice_as_densely():
    short, long, none = trial_at(2.0, hold_s=1.2), trial_at(9.0), trial_at(16.0, hold=False)
    trials = [short, long, none]
    times = fine_rate_factor(trials, Movement.FLEXION, 30.0)
    assert times == 2
    taken = taken_between(decimation_plan(trials, Movement.FLEXION, times), 0.5, 21.0, times)
    for trial, step in ((short, 0.5 / FINE_HZ), (long, 1 / FINE_HZ)):
        hold = [t for t in taken if trial.hold_start_s <= t <= trial.hold_end_s]
        rest = [t for t in taken if trial.start_s - LEAD_S <= t <= trial.rest_end_s]
        assert np.diff(hold) == pytest.approx(step)
        assert len(hold) >= 8
        assert np.diff(rest) == pytest.approx(REST_EVERY / FINE_HZ)
    searched = [t for t in taken if none.start_s - LEAD_S <= t <= none.end_s]
    assert np.diff(searched) == pytest.approx(1 / FINE_HZ)


def test_longer_holds_turns_and_slow_cameras_are_sampled_as_usual():
    short, long = trial_at(2.0, hold_s=SHORT_HOLD_S - 0.1), trial_at(9.0, hold_s=SHORT_HOLD_S + 0.1)
    assert fine_rate_factor([long], Movement.FLEXION, 30.0) == 1
    assert fine_rate_factor([trial_at(2.0, hold=False)], Movement.FLEXION, 30.0) == 1
    assert fine_rate_factor([short, long], Movement.EXTERNAL_ROTATION, 30.0) == 1
    assert fine_rate_factor([short, long], Movement.FLEXION, 7.0) == 1


def test_a_person_who_turns_is_followed_on_the_way_in_every_other_picture():
    trial = trial_at(6.0)
    taken = taken_between(decimation_plan([trial], Movement.EXTERNAL_ROTATION), 0.0, trial.end_s)
    hold = [t for t in taken if trial.hold_start_s <= t <= trial.hold_end_s]
    way = [t for t in taken if t < trial.hold_start_s]
    assert np.diff(hold) == pytest.approx(1 / FINE_HZ)
    assert np.diff(way) == pytest.approx(REST_EVERY / FINE_HZ)
    assert way[0] == 0.0


def test_where_no_hold_was_seen_every_picture_counts():
    trial = trial_at(2.0, hold=False)
    taken = taken_between(decimation_plan([trial], Movement.ABDUCTION), 0.6, 7.0)
    assert np.diff(taken) == pytest.approx(1 / FINE_HZ)


def test_passes_that_disagree_are_refused():
    track = elevation_track(raise_and_hold(90), Movement.FLEXION, Side.LEFT, View.SIDE)
    other = elevation_track(raise_and_hold(106), Movement.FLEXION, Side.LEFT, View.SIDE)
    _, measurement = read(track, Movement.FLEXION, Side.LEFT, others=[other])
    assert Reason.PASSES_DISAGREE in measurement.reasons


def test_a_wrist_lost_during_the_hold_makes_no_value():
    series = raise_and_hold(90)
    track = elevation_track(series, Movement.FLEXION, Side.LEFT, View.SIDE)
    points = track.points_px.copy()
    points[series > 60] = np.nan
    _, measurement = read(replace(track, points_px=points), Movement.FLEXION, Side.LEFT)
    assert measurement.value is None


@pytest.mark.parametrize(
    ("means", "value", "spread"),
    [
        ([90, 92], 91, 2),
        ([90, 99], None, 9),
        ([90, 97], 93.5, 7),
        ([90], 90, 0),
        ([90, 91, np.nan], 90.5, 1),
    ],
)
def test_what_passes_agree_on(means, value, spread):
    result = consensus(np.array(means, dtype=float), 7.0)
    assert result[0] == (None if value is None else pytest.approx(value))
    assert result[1] == pytest.approx(spread)


def test_half_the_passes_blind_is_no_agreement():
    assert consensus(np.array([90.0, np.nan]), 7.0)[0] is None


def test_views_are_recognised():
    for view in (View.FRONT, View.BACK):
        track = elevation_track(np.zeros(20), Movement.ABDUCTION, Side.LEFT, view)
        assert recognised_view(arm_keypoints(track, Side.LEFT), Movement.ABDUCTION) is view


def test_a_reading_says_what_its_interval_rests_on():
    for movement, view, basis in (
        (Movement.ABDUCTION, View.FRONT, IntervalBasis.REAL_PEOPLE),
        (Movement.EXTENSION, View.SIDE, IntervalBasis.VIRTUAL_PEOPLE),
    ):
        track = elevation_track(raise_and_hold(40), movement, Side.LEFT, view)
        _, measurement = read(track, movement, Side.LEFT)
        assert measurement.interval_basis is basis


def test_trials_that_scatter_too_widely_make_no_reading():
    series = np.concatenate([raise_and_hold(peak) for peak in (50, 80, 115)])
    track = elevation_track(series, Movement.FLEXION, Side.RIGHT, View.SIDE)
    _, measurement = read(track, Movement.FLEXION, Side.RIGHT)
    assert [trial.scored for trial in measurement.trials] == [True, True, True]
    assert measurement.status is Status.REFUSED
    assert measurement.reasons[0] is Reason.TOO_UNCERTAIN
    assert measurement.interval_basis is None
    assert measurement.against_vertical is None


def test_nose_and_ears_may_be_missing():
    track = elevation_track(raise_and_hold(90), Movement.ABDUCTION, Side.LEFT, View.FRONT)
    points = track.points_px.copy()
    points[:, Landmark.LEFT_EAR] = np.nan
    _, measurement = read(replace(track, points_px=points), Movement.ABDUCTION, Side.LEFT)
    assert measurement.status is Status.READING
