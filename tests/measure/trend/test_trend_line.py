"""The line through a series: exact cases, and what must not change it."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from measure.trend.trend_line import DAYS_A_MONTH, Slope, fit_slope, fit_slopes, theil_sen

DAYS = np.arange(0.0, 60.0, 3.0)


def fit(day: np.ndarray, value: np.ndarray, usual_spread: float = 5.0) -> Slope:
    found = fit_slope(day, value, usual_spread)
    assert found is not None
    return found


def noise(seed: int, days: int = len(DAYS)) -> np.ndarray:
    return np.random.default_rng(seed).normal(0, 5, days)


def test_a_straight_line_is_found() -> None:
    found = fit(DAYS, 90 + 0.25 * DAYS)
    assert found.per_day == pytest.approx(0.25)
    assert found.per_month == pytest.approx(0.25 * DAYS_A_MONTH)
    assert found.inlier_weight == pytest.approx(np.ones(20), abs=0.06)
    # Eight days' worth of the usual 5 degrees remain beside twenty days without any scatter.
    assert 2.0 < found.spread < 3.5


@pytest.mark.parametrize(
    ("day", "value"),
    [([], []), ([1.0], [90.0]), ([1.0, 2.0], [90.0, 91.0])],
)
def test_too_few_days_have_no_line(day: list[float], value: list[float]) -> None:
    assert fit_slope(np.array(day), np.array(value), 5.0) is None


def test_below_eight_days_the_usual_spread_decides() -> None:
    day = np.arange(7.0)
    assert fit(day, 90 + day).spread == 5.0
    assert fit(day, 90 + day, 6.0).spread == 6.0
    assert fit(np.arange(8.0), 90 + np.arange(8.0)).spread < 5.0


def test_below_eight_days_the_interval_is_the_usual_ones() -> None:
    day = np.arange(7.0)
    # 1.96 spreads over the root of the days' squares about their middle, 28.
    half = 1.96 * 5 / np.sqrt(28) * DAYS_A_MONTH
    low, high = fit(day, 90 + day).interval_per_month()
    # No day is certain to be a usual one, so the interval is a little wider.
    assert half < (high - low) / 2 < 1.1 * half


@given(st.integers(0, 1000))
@settings(max_examples=30, deadline=None)
def test_theil_sen_agrees_with_scipy(seed: int) -> None:
    value = 90 + noise(seed)
    assert theil_sen(DAYS, value) == pytest.approx(stats.theilslopes(value, DAYS).slope)


@given(st.integers(0, 1000), st.floats(-500, 500), st.integers(-800_000, 800_000))
@settings(max_examples=30, deadline=None)
def test_raising_and_shifting_a_series_leaves_its_slope(seed: int, up: float, later: int) -> None:
    value = 90 + noise(seed)
    first, moved = fit(DAYS, value), fit(DAYS + later, value + up)
    assert moved.per_day == pytest.approx(first.per_day, abs=1e-6)
    assert moved.evidence == pytest.approx(first.evidence, abs=1e-4)


@given(st.integers(0, 1000))
@settings(max_examples=30, deadline=None)
def test_a_series_upside_down_falls_as_fast(seed: int) -> None:
    value = noise(seed)
    assert fit(DAYS, -value).per_day == pytest.approx(-fit(DAYS, value).per_day, abs=1e-9)
    assert fit(DAYS, -value).evidence == pytest.approx(-fit(DAYS, value).evidence, abs=1e-6)


@given(st.integers(0, 1000), st.floats(0.01, 3.0))
@settings(max_examples=30, deadline=None)
def test_another_unit_changes_no_evidence(seed: int, scale: float) -> None:
    value = noise(seed)
    assert fit(DAYS, value * scale, 5.0 * scale).evidence == pytest.approx(
        fit(DAYS, value).evidence, abs=1e-6
    )


def test_an_odd_day_hardly_moves_the_line() -> None:
    value = 90 + 0.2 * DAYS + 0.3 * noise(4)
    odd = value.copy()
    odd[-2] -= 25
    found, plain = fit(DAYS, odd), np.polyfit(DAYS, odd, 1)[0]
    assert found.inlier_weight[-2] < 0.05
    assert found.per_day == pytest.approx(fit(DAYS, value).per_day, abs=0.02)
    assert abs(plain - fit(DAYS, value).per_day) > 0.08


def test_related_days_widen_the_interval() -> None:
    waves = 5 * np.sin(np.arange(20) * 0.9)
    alternating = 5 * (-1.0) ** np.arange(20)
    related, apart = fit(DAYS, 90 + waves), fit(DAYS, 90 + alternating)
    assert related.related > 0.4
    assert apart.related < 0.0
    level = fit(DAYS, 90 + waves * 0).allowing_for(0.0).error_per_day
    assert fit(DAYS, 90 + waves * 0).error_per_day == level
    unwidened = related.error_per_day / np.sqrt((1 + related.related) / (1 - related.related))
    assert unwidened < related.error_per_day / 1.5


def test_days_far_apart_are_not_neighbours() -> None:
    value = 90 + 5 * np.sin(np.arange(12) * 0.9)
    assert fit(np.arange(12) * 3.0, value).related > 0.3
    assert fit(np.arange(12) * 30.0, value).related == 0.0


def test_somebody_who_scatters_much_is_judged_by_that() -> None:
    calm, wild = noise(7, 30), 4 * noise(7, 30)
    day = np.arange(30.0) * 3
    assert fit(day, wild).spread > 2.5 * fit(day, calm).spread


@pytest.mark.parametrize("confidence", [0.5, 0.9, 0.99])
def test_intervals_hold_the_truth_as_often_as_they_say(confidence: float) -> None:
    hit = 0
    for seed in range(300):
        low, high = fit(DAYS, 90 + 0.1 * DAYS + noise(seed)).interval_per_month(confidence)
        hit += low <= 0.1 * DAYS_A_MONTH <= high
    # Three standard deviations of a binomial count either way, and slightly wide is right.
    slack = 3 * np.sqrt(confidence * (1 - confidence) / 300)
    assert confidence - slack <= hit / 300 <= confidence + slack + 0.05


def test_evidence_is_a_normal_deviate() -> None:
    found = fit(DAYS, 90 + 0.2 * DAYS + noise(3))
    chance = 2 * stats.t.sf(abs(found.per_day / found.error_per_day), found.degrees_of_freedom)
    assert 2 * stats.norm.sf(abs(found.evidence)) == pytest.approx(chance)


def test_overwhelming_evidence_stays_finite() -> None:
    found = fit(np.arange(400.0), np.arange(400.0) * 5.0)
    assert np.isfinite(found.evidence)
    assert found.evidence > 20


@given(st.integers(0, 1000), st.lists(st.integers(0, 40), min_size=1, max_size=6))
@settings(max_examples=25, deadline=None)
def test_series_of_any_lengths_fitted_together_are_as_if_alone(seed: int, sizes: list[int]) -> None:
    random = np.random.default_rng(seed)
    parts = []
    for size in sizes:
        day = np.sort(random.choice(np.arange(112.0), size, replace=False))
        parts.append((day, 90 + random.normal(0, 5, size) - 20 * (random.random(size) < 0.1)))
    together = fit_slopes(parts, 5.0)
    for (day, value), found in zip(parts, together, strict=True):
        alone = fit_slope(day, value, 5.0)
        assert (alone is None) == (found is None) == (len(day) < 3)
        if alone is not None and found is not None:
            assert found.per_day == pytest.approx(alone.per_day, rel=1e-9, abs=1e-12)
            assert found.error_per_day == pytest.approx(alone.error_per_day, rel=1e-9)
            assert found.inlier_weight == pytest.approx(alone.inlier_weight, abs=1e-9)
            assert (found.days, found.span_day) == (len(day), day[-1] - day[0])
