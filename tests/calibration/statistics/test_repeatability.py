"""Test-retest series of one person: exact small cases, intervals, plain answers."""

import math
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from calibration.statistics.repeatability import (
    RetestSession,
    repeatability,
    repeatability_paragraph,
)
from measure.domain.movements import Movement
from measure.errors import InputError


def series(values: Sequence[float], *, step: float = 1.0) -> list[RetestSession]:
    return [RetestSession(day=step * n, trials=(value,)) for n, value in enumerate(values)]


def test_four_sessions_worked_by_hand() -> None:
    # Days 0..3, values 100, 104, 98, 102: mean 101, slope sum((d - 1.5)(v - 101)) / 5 =
    # (1.5 - 1.5 + -1.5 + 1.5) / 5 = 0. Residuals -1, 3, -3, 1: 20 over 2 degrees: 10.
    result = repeatability(Movement.FLEXION, series([100, 104, 98, 102]))
    assert result.typical_error is not None
    assert result.typical_error.value == pytest.approx(10**0.5)
    assert result.drift_per_week is not None
    assert result.drift_per_week.value == pytest.approx(0)
    # t(0.975; 2) = 4.302653; error of the slope sqrt(10 / 5); neighbours' r = (-3 - 9 - 3)/20.
    assert result.drift_per_week.high == pytest.approx(7 * 4.302653 * 2**0.5, rel=1e-6)
    assert not result.own
    assert result.error_for_change == 5.0
    assert result.mdc95 == pytest.approx(1.959964 * 2**0.5 * 5, rel=1e-6)


def test_eight_sessions_are_judged_by_their_own_scatter() -> None:
    seven = repeatability(Movement.FLEXION, series([100, 102] * 3 + [100]))
    eight = repeatability(Movement.FLEXION, series([100, 102] * 4))
    assert not seven.own
    assert eight.own
    assert eight.typical_error is not None
    assert eight.error_for_change == eight.typical_error.value
    t = float(stats.t.ppf(0.975, 6))
    assert eight.mdc95 == pytest.approx(t * 2**0.5 * eight.error_for_change)
    assert eight.mdc90 < eight.mdc95 < seven.mdc95


def test_change_between_blocks() -> None:
    result = repeatability(Movement.FLEXION, series([100, 101]))
    change = result.change([100, 102, 104], [110, 112, 114])
    # Usual error 5: half of the interval 1.96 * 5 * sqrt(1/3 + 1/3) = 8.0.
    assert change.value == pytest.approx(10)
    assert round(change.half_width, 1) == 8.0
    single = result.change([100], [110])
    assert single.half_width == pytest.approx(result.mdc95)
    for bad in ([], [math.nan]):
        with pytest.raises(ValueError, match="a block"):
            result.change(bad, [100])


def test_a_drift_is_found_and_not_taken_for_scatter() -> None:
    result = repeatability(Movement.ABDUCTION, series([80, 83, 86, 89.3, 92, 95, 98, 101], step=7))
    assert result.drift_per_week is not None
    assert result.drift_per_week.low > 2.9
    assert result.typical_error is not None
    assert result.typical_error.value < 0.3
    assert "The values drift" in repeatability_paragraph(result)


def test_neighbours_that_resemble_each_other_widen_the_drift() -> None:
    # The same residuals, in runs and alternating, about a flat line.
    runs = repeatability(Movement.FLEXION, series([101, 101, 99, 99, 99, 99, 101, 101]))
    mixed = repeatability(Movement.FLEXION, series([101, 99, 99, 101, 101, 99, 99, 101]))
    assert runs.drift_per_week is not None
    assert mixed.drift_per_week is not None
    assert runs.drift_per_week.value == pytest.approx(mixed.drift_per_week.value)
    assert runs.drift_per_week.half_width > 1.3 * mixed.drift_per_week.half_width


def test_trials_within_a_session() -> None:
    sessions = [RetestSession(day=n, trials=(90.0, 92.0, 94.0)) for n in range(3)]
    result = repeatability(Movement.FLEXION, sessions)
    assert result.trial_sd is not None
    assert result.trial_sd.value == pytest.approx(2)
    assert result.typical_error is not None
    assert result.typical_error.value == pytest.approx(0)
    assert "Trials within a session scatter by 2.0 degrees" in repeatability_paragraph(result)


def test_a_session_counts_by_its_median() -> None:
    odd = [RetestSession(day=n, trials=(90.0, 91.0, 150.0)) for n in range(3)]
    result = repeatability(Movement.FLEXION, odd)
    assert result.typical_error is not None
    assert result.typical_error.value == pytest.approx(0)


def test_sessions_of_one_day_have_scatter_but_no_drift() -> None:
    result = repeatability(Movement.FLEXION, series([90, 92, 94], step=0))
    assert result.typical_error is not None
    assert result.typical_error.value == pytest.approx(2)
    assert result.drift_per_week is None


def test_one_session_has_only_the_usual_scatter() -> None:
    result = repeatability(Movement.HAND_BEHIND_BACK, series([0.4]))
    assert result.typical_error is None
    text = repeatability_paragraph(result)
    assert "1 session of one shoulder" in text
    assert "a typical scatter of 0.06 is assumed" in text
    assert "0.17 (95 %)" in text


@pytest.mark.parametrize(
    ("sessions", "part"),
    [
        ([], "no sessions yet"),
        ([RetestSession(day=0, trials=())], "no scored trial"),
        ([RetestSession(day=0, trials=(math.nan,))], "not a number"),
        ([RetestSession(day=math.inf, trials=(1.0,))], "not a number"),
    ],
)
def test_series_that_cannot_be_judged(sessions: list[RetestSession], part: str) -> None:
    with pytest.raises(InputError, match=part):
        repeatability(Movement.FLEXION, sessions)


def test_change_holds_the_truth_as_often_as_it_says() -> None:
    random = np.random.default_rng(2)
    held, rounds = 0, 500
    for _ in range(rounds):
        result = repeatability(Movement.FLEXION, series(list(random.normal(120, 3, 9))))
        later = 6 + random.normal(120, 3, 2)
        held += result.change(list(random.normal(120, 3, 2)), list(later)).holds(6)
    assert 0.92 <= held / rounds <= 0.98


values = st.lists(st.integers(0, 1800).map(lambda tenths: tenths / 10), min_size=3, max_size=12)


@settings(max_examples=60, deadline=None)
@given(values=values, shift=st.floats(-40, 40), seed=st.integers(0, 50))
def test_a_constant_offset_and_the_order_change_nothing(
    values: list[float], shift: float, seed: int
) -> None:
    sessions = series(values)
    moved = series([value + shift for value in values])
    np.random.default_rng(seed).shuffle(moved)
    plain = repeatability(Movement.FLEXION, sessions)
    other = repeatability(Movement.FLEXION, moved)
    assert plain.typical_error is not None
    assert other.typical_error is not None
    assert other.typical_error.value == pytest.approx(plain.typical_error.value, abs=1e-6)
    assert plain.drift_per_week is not None
    assert other.drift_per_week is not None
    assert other.drift_per_week.value == pytest.approx(plain.drift_per_week.value, abs=1e-6)
