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


def settled(value):
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


def book(trials=3, practice=0):
    return TrialLedger(Movement.FLEXION, Side.LEFT, trials, practice)


def make(book, *values):
    """Capture and settle trials with these values; None is a refused one."""
    entries = []
    for value in values:
        entry = book.capture(View.SIDE)
        book.refine(entry.trial_id, settled(value), coarse_only=False)
        entries.append(entry)
    return entries


def test_practice_comes_first_and_never_counts():
    one = book(practice=1)
    assert [each.practice for each in make(one, 50.0, 90.0, 92.0)] == [True, False, False]
    assert one.measurement(FROM).value == 91.0


def test_a_refused_practice_is_practised_again():
    one = book(practice=1)
    assert [each.practice for each in make(one, None, 50.0, 90.0)] == [True, True, False]


def test_practice_alone_has_captured_nothing():
    one = book(practice=1)
    make(one, 50.0)
    assert not one.has_captured
    assert not one.has_refined
    assert one.measurement(FROM).trials == ()


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
    one = book()
    make(one, *values)
    assert one.wants_more is wants_more
    assert one.is_complete is complete


def test_pending_trials_count_as_if_scored_until_they_are_refused():
    one = book(trials=1)
    entry = one.capture(View.SIDE)
    assert not one.wants_more
    assert not one.is_complete
    assert one.pending == 1
    one.refine(entry.trial_id, settled(None), coarse_only=False)
    assert one.wants_more
    assert one.pending == 0


def test_discarding_takes_the_last_that_counts():
    one = book()
    make(one, 90.0, 99.0, None)
    assert one.discard_last() == 2
    assert one.measurement(FROM).value == 90.0
    assert one.discard_last() == 1
    assert one.discard_last() is None


def test_numbers_are_never_used_twice():
    one = book()
    make(one, 90.0)
    one.discard_last()
    assert make(one, 91.0)[0].trial_id == 2


def test_settling_a_discarded_trial_changes_nothing():
    one = book()
    entry = one.capture(View.SIDE)
    one.discard_last()
    assert one.refine(entry.trial_id, settled(90.0), coarse_only=False) is None
    assert not one.has_captured


def test_hasty_trials_are_noted_with_the_measurement():
    one = book()
    make(one, 90.0)
    assert "trials_looked_at_once" not in one.measurement(FROM).provenance.source
    entry = one.capture(View.SIDE)
    one.refine(entry.trial_id, settled(91.0), coarse_only=True)
    assert one.measurement(FROM).provenance.source["trials_looked_at_once"] == "1"


def test_without_trials_the_measurement_says_why():
    measurement = book().measurement(FROM, refuse(Reason.WRONG_VIEW))
    assert measurement.status is Status.REFUSED
    assert measurement.reasons == (Reason.WRONG_VIEW,)
