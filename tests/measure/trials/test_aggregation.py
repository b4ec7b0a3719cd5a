"""The session's interval: how the scatter of trials counts, and how often it holds."""

import math

import numpy as np
import pytest

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance, Trial
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import GateResult, Reason
from measure.trials.aggregation import (
    MEDIAN_EFFICIENCY,
    aggregate_trials,
    pooled_trial_sd,
    scatter_of_median,
)


def measured(*values: float, half: float = 6.0, setup: Setup | None = None) -> Measurement:
    trials = [
        Trial(
            value=value, low=value - half, high=value + half, start_s=0.0, end_s=4.0,
            hold_start_s=2.0, hold_end_s=3.0,
        )
        for value in values
    ]  # fmt: skip
    task = MeasurementTask(Movement.FLEXION, Side.LEFT, View.SIDE, setup or Setup())
    return aggregate_trials(trials, task, Provenance(model="heavy"))


def half_of(measurement: Measurement) -> float:
    assert measurement.low is not None
    assert measurement.high is not None
    return (measurement.high - measurement.low) / 2


def test_a_damaged_recording_is_named_before_what_it_leads_to() -> None:
    trial = Trial(
        value=None,
        low=None,
        high=None,
        start_s=0.0,
        end_s=4.0,
        hold_start_s=2.0,
        hold_end_s=3.0,
        refused_for=(Reason.HIDDEN, Reason.UNREADABLE_FRAMES),
    )
    task = MeasurementTask(Movement.FLEXION, Side.LEFT, View.SIDE, Setup())
    measurement = aggregate_trials([trial], task, Provenance(model="heavy"))
    assert measurement.reasons == (Reason.UNREADABLE_FRAMES, Reason.HIDDEN)
    found = GateResult(refused_for=(Reason.PERSON_LOST, Reason.UNREADABLE_FRAMES))
    nothing = aggregate_trials([], task, Provenance(model="heavy"), nothing_found=found)
    assert nothing.reasons == (Reason.UNREADABLE_FRAMES, Reason.PERSON_LOST)


def test_three_trials_worked_by_hand() -> None:
    # Squares about 100: 4 + 0 + 4 = 8, less than usual: 2.5 counts.
    half = 1.96 * 1.16 * 2.5 / math.sqrt(3)
    assert half_of(measured(98, 100, 102)) == pytest.approx(math.hypot(6, half))
    # 36 + 0 + 36 = 72, more than usual: pooled with 2 of 2.5 squared, 84.5 / 4.
    half = 1.96 * 1.16 * math.sqrt(84.5 / 4 / 3)
    assert half_of(measured(94, 100, 106)) == pytest.approx(math.hypot(6, half))


def test_the_persons_own_scatter_takes_the_place_of_the_usual() -> None:
    # 2 of 1 squared and 8: 10 / 4.
    half = 1.96 * 1.16 * math.sqrt(10 / 4 / 3)
    own = measured(98, 100, 102, setup=Setup(trial_sd=1.0))
    assert half_of(own) == pytest.approx(math.hypot(6, half))


def test_a_single_trial_has_its_own_interval() -> None:
    assert half_of(measured(100)) == pytest.approx(6)


def test_alike_trials_do_not_promise_more_than_usual() -> None:
    assert half_of(measured(100, 100, 100)) > half_of(measured(100)) + 0.4


def test_the_efficiency_of_the_median_by_simulation() -> None:
    random = np.random.default_rng(2)
    for count, factor in MEDIAN_EFFICIENCY.items():
        medians = np.median(random.normal(0, 1, (200_000, count)), axis=1)
        assert medians.std() * math.sqrt(count) == pytest.approx(factor, abs=0.01)


@pytest.mark.parametrize("trial_sd", [1.5, 3.0, 5.0])
@pytest.mark.parametrize("sittings", [0, 8, 30])
def test_the_interval_holds_what_the_person_can_do_today(trial_sd: float, sittings: int) -> None:
    """After so many sittings of three trials, with a shared error of 7.6 degrees in 95 of 100."""
    random = np.random.default_rng(round(10 * trial_sd) + sittings)
    held = []
    for _ in range(3000):
        before = random.normal(0, trial_sd, (sittings, 3))
        about = before - before.mean(axis=1, keepdims=True) if sittings else before
        known = pooled_trial_sd(float(np.sum(about**2)), 2 * sittings, 2.5)
        today = random.normal(0, 7.6 / 1.96) + random.normal(0, trial_sd, 3)
        half = math.hypot(7.6, scatter_of_median(today, Unit.DEGREES, known))
        held.append(abs(np.median(today)) <= half)
    # The worst, 92.5 %, is somebody who scatters twice as much as usual in the very first session.
    least = 0.915 if (trial_sd, sittings) == (5.0, 0) else 0.93
    assert least <= np.mean(held) <= 0.97
