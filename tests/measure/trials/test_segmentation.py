import numpy as np
import pytest

from measure.trials.segmentation import SegmentationParams, segment_trials
from measure.video.sampling import COARSE_HZ
from tests.support.stick_figure import raise_and_hold

STEPS = SegmentationParams(rest=(0, 25), least_travel=15, steady=2.5)
RATE = COARSE_HZ


def times(values):
    return np.arange(len(values)) / RATE


def noisy(values, seed=0, sd=0.3):
    return values + np.random.default_rng(seed).normal(0, sd, len(values))


@pytest.mark.parametrize("peak", [20, 45, 90, 120, 170])
def test_one_trial_and_its_hold(peak):
    values = noisy(raise_and_hold(peak))
    segmentation = segment_trials(times(values), values, STEPS)
    (trial,) = segmentation.candidates
    assert trial.hold_start_s is not None
    inside = (times(values) >= trial.hold_start_s) & (times(values) <= trial.hold_end_s)
    assert np.mean(values[inside]) == pytest.approx(peak, abs=1.6)
    assert trial.hold_end_s - trial.hold_start_s >= 0.9
    assert trial.steady
    assert not trial.gap


def test_three_repeats_make_three_trials():
    values = noisy(raise_and_hold(90, repeats=3))
    segmentation = segment_trials(times(values), values, STEPS)
    assert len(segmentation.candidates) == 3
    starts = [trial.start_s for trial in segmentation.candidates]
    assert starts == sorted(starts)


def test_no_hold_is_said():
    values = noisy(raise_and_hold(120, hold_s=0.15, move_s=1.6))
    (trial,) = segment_trials(times(values), values, STEPS).candidates
    assert trial.hold_start_s is None


@pytest.mark.parametrize(("rate_hz", "last"), [(7.5, 94), (RATE, 96)])
def test_a_drifting_hold_is_unsteady(rate_hz, last):
    rest, drift = np.zeros(9), np.linspace(84, last, round(1.6 * rate_hz))
    values = np.concatenate([rest, [20, 45, 70], drift, [70, 45, 20], rest])
    (trial,) = segment_trials(np.arange(len(values)) / rate_hz, values, STEPS).candidates
    assert trial.hold_start_s is not None
    assert not trial.steady


def test_a_stir_just_before_the_arm_leaves_loses_neither_rest_nor_trial():
    stir = [10.0, 12.0, 10.0, 2.0, 2.0]
    up, down = [20.0, 45.0, 70.0], [70.0, 45.0, 20.0]
    values = np.concatenate([np.zeros(9), stir, up, np.full(10, 85.0), down, np.zeros(9)])
    (trial,) = segment_trials(times(values), values, STEPS).candidates
    assert trial.start_s == pytest.approx(13 / RATE)
    assert trial.rest_value == 0.0
    assert trial.hold_end_s - trial.hold_start_s == pytest.approx(9 / RATE)


def test_a_stir_alone_is_no_trial_however_often():
    stir = [0.0, 0.0, 10.0, 12.0, 10.0]
    segmentation = segment_trials(times(np.zeros(59)), np.array([*np.zeros(9), *stir * 10]), STEPS)
    assert segmentation.candidates == ()
    assert segmentation.neutral_seen


def test_still_arm_is_no_trial():
    values = noisy(np.zeros(60))
    segmentation = segment_trials(times(values), values, STEPS)
    assert segmentation.candidates == ()
    assert segmentation.neutral_seen
    assert not segmentation.moved


def test_without_neutral_nothing_starts():
    values = noisy(np.concatenate([np.full(20, 70.0), np.linspace(70, 120, 20), np.full(20, 120)]))
    segmentation = segment_trials(times(values), values, STEPS)
    assert segmentation.candidates == ()
    assert not segmentation.neutral_seen
    assert segmentation.moved


def test_spikes_make_neither_trial_nor_peak():
    values = raise_and_hold(90)
    values[[3, 22, 25]] = [150, 170, 10]
    (trial,) = segment_trials(times(values), values, STEPS).candidates
    assert trial.hold_start_s is not None
    inside = (times(values) >= trial.hold_start_s) & (times(values) <= trial.hold_end_s)
    assert np.median(values[inside]) == pytest.approx(90, abs=1)


def test_a_long_gap_is_told_and_a_short_one_is_not():
    values = raise_and_hold(90)
    short, long = values.copy(), values.copy()
    short[26] = np.nan
    long[20:28] = np.nan
    assert not segment_trials(times(values), short, STEPS).candidates[0].gap
    assert segment_trials(times(values), long, STEPS).candidates[0].gap


@pytest.mark.parametrize("values", [np.array([]), np.full(30, np.nan), np.array([1.0, 2.0])])
def test_nothing_known_finds_nothing(values):
    assert segment_trials(times(values), values, STEPS).candidates == ()


def test_uneven_times_are_used_as_they_are():
    values = raise_and_hold(90, rate_hz=30)
    keep = np.sort(np.random.default_rng(1).choice(len(values), len(values) // 3, replace=False))
    time_s = np.arange(len(values))[keep] / 30
    (trial,) = segment_trials(time_s, values[keep], STEPS).candidates
    assert trial.hold_start_s == pytest.approx(3.1, abs=0.4)
    assert trial.hold_end_s == pytest.approx(4.9, abs=0.4)


def test_an_excursion_at_the_very_end_has_no_hold():
    values = np.concatenate([np.zeros(20), [60.0, 60.0]])
    segmentation = segment_trials(times(values), values, STEPS)
    assert all(candidate.hold_start_s is None for candidate in segmentation.candidates)
    alone = np.concatenate([np.zeros(20), [60.0]])
    assert segment_trials(times(alone), alone, STEPS).neutral_seen
