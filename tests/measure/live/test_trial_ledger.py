"""Bookkeeping of a movement's trials."""

import math

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.measurements import Provenance, Status, Trial
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason, refuse
from measure.kinematics.fusion import FusedSeries
from measure.kinematics.keypoints import arm_keypoints
from measure.live.trial_ledger import TrialLedger
from measure.trials.refinement import RefinedTrial
from tests.support.stick_figure import elevation_track

FROM = Provenance(model="heavy")


def refined_trial(value):
    refused = () if value is not None else (Reason.NO_HOLD,)
    trial = Trial(
        value=value,
        low=None if value is None else value - 5,
        high=None if value is None else value + 5,
        start_s=0.0,
        end_s=4.0,
        hold_start_s=None,
        hold_end_s=None,
        refused_for=refused,
    )
    nothing = np.empty(0)
    track = elevation_track(nothing, Movement.FLEXION, Side.LEFT, View.SIDE)
    keypoints = arm_keypoints(track, Side.LEFT)
    fused = FusedSeries(keypoints=keypoints, per_pass=nothing, value=nothing)
    return RefinedTrial(trial=trial, against_vertical=None, spread=math.nan, fused=fused)


def empty_ledger(trials=3, practice=0):
    return TrialLedger(Movement.FLEXION, Side.LEFT, trials, practice)


def make(ledger, *values):
    """Capture and settle trials with these values; None is a refused one."""
    entries = []
    for value in values:
        entry = ledger.capture(View.SIDE)
        ledger.refine(entry.trial_id, refined_trial(value), coarse_only=False)
        entries.append(entry)
    return entries


def test_practice_comes_first_and_never_counts():
    ledger = empty_ledger(practice=1)
    assert [entry.practice for entry in make(ledger, 50.0, 90.0, 92.0)] == [True, False, False]
    assert ledger.measurement(FROM).value == 91.0


def test_a_refused_practice_is_practised_again():
    ledger = empty_ledger(practice=1)
    assert [entry.practice for entry in make(ledger, None, 50.0, 90.0)] == [True, True, False]


def test_practice_alone_has_captured_nothing():
    ledger = empty_ledger(practice=1)
    make(ledger, 50.0)
    assert not ledger.has_captured
    assert not ledger.has_refined
    assert ledger.measurement(FROM).trials == ()


@pytest.mark.parametrize(
    ("values", "wants_more", "complete"),
    [
        ((), True, False),
        ((90.0, 91.0), True, False),
        ((90.0, 91.0, 92.0), False, True),
        ((90.0, None, 92.0), True, False),
        ((90.0, None, 92.0, 91.0), False, True),
    ],
)
def test_when_there_are_enough(values, wants_more, complete):
    ledger = empty_ledger()
    make(ledger, *values)
    assert ledger.wants_more is wants_more
    assert ledger.is_complete is complete


def test_pending_trials_count_as_if_scored_until_they_are_refused():
    ledger = empty_ledger(trials=1)
    entry = ledger.capture(View.SIDE)
    assert not ledger.wants_more
    assert not ledger.is_complete
    assert ledger.pending == 1
    ledger.refine(entry.trial_id, refined_trial(None), coarse_only=False)
    assert ledger.wants_more
    assert ledger.pending == 0


def test_discarding_takes_the_last_that_counts():
    ledger = empty_ledger()
    make(ledger, 90.0, 99.0, None)
    assert ledger.discard_last() == 2
    assert ledger.measurement(FROM).value == 90.0
    assert ledger.discard_last() == 1
    assert ledger.discard_last() is None


def test_numbers_are_never_used_twice():
    ledger = empty_ledger()
    make(ledger, 90.0)
    ledger.discard_last()
    assert make(ledger, 91.0)[0].trial_id == 2


def test_settling_a_discarded_trial_changes_nothing():
    ledger = empty_ledger()
    entry = ledger.capture(View.SIDE)
    ledger.discard_last()
    assert ledger.refine(entry.trial_id, refined_trial(90.0), coarse_only=False) is None
    assert not ledger.has_captured


def test_hasty_trials_are_noted_with_the_measurement():
    ledger = empty_ledger()
    make(ledger, 90.0)
    assert "trials_looked_at_once" not in ledger.measurement(FROM).provenance.source
    entry = ledger.capture(View.SIDE)
    ledger.refine(entry.trial_id, refined_trial(91.0), coarse_only=True)
    assert ledger.measurement(FROM).provenance.source["trials_looked_at_once"] == "1"


def test_without_trials_the_measurement_says_why():
    measurement = empty_ledger().measurement(FROM, refuse(Reason.WRONG_VIEW))
    assert measurement.status is Status.REFUSED
    assert measurement.reasons == (Reason.WRONG_VIEW,)


def test_a_discarded_trial_goes_back_to_its_place():
    ledger = empty_ledger()
    make(ledger, 80.0, 90.0)
    ledger.discard_last()
    make(ledger, 100.0)
    assert ledger.measurement(FROM).value == 90.0
    assert ledger.restore_last().trial_id == 2
    assert ledger.restore_last() is None
    assert [trial.value for trial in ledger.measurement(FROM).trials] == [80.0, 90.0, 100.0]
    assert ledger.is_complete


def test_a_discarded_trial_stays_out_once_others_took_its_place():
    ledger = empty_ledger()
    make(ledger, 80.0)
    ledger.discard_last()
    make(ledger, 90.0, 91.0, 92.0)
    assert ledger.restore_last() is None


def test_what_became_of_a_trial_while_it_was_discarded_comes_back_with_it():
    ledger = empty_ledger()
    entry = ledger.capture(View.SIDE)
    ledger.discard_last()
    assert ledger.refine(entry.trial_id, refined_trial(77.0), coarse_only=False) is None
    assert not ledger.has_refined
    assert ledger.restore_last().refined.trial.value == 77.0
    assert ledger.measurement(FROM).value == 77.0
