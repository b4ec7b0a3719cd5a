"""Interval of a ratio: Fieller's, checked by hand and against chance."""

import math

import numpy as np
import pytest

from measure.trend.ratio_interval import MOST_UNCERTAIN, ratio_interval


def test_without_errors_it_is_the_ratio() -> None:
    assert ratio_interval(30, 0, 60, 0) == pytest.approx((0.5, 0.5, 0.5))


def test_an_exact_denominator_scales_the_interval() -> None:
    assert ratio_interval(30, 6, 60, 0) == pytest.approx((0.5, 0.4, 0.6))


def test_every_ratio_inside_differs_from_nothing() -> None:
    """At both ends, value - q * of_value is just as far from 0 as its own half-width."""
    found = ratio_interval(20, 8, 65, 12)
    assert found is not None
    for end in found[1:]:
        assert abs(20 - end * 65) == pytest.approx(math.hypot(8, end * 12))


@pytest.mark.parametrize("value", [-5.0, 0.0, 90.0])
def test_value_of_any_sign_lies_inside(value: float) -> None:
    found = ratio_interval(value, 8, 60, 10)
    assert found is not None
    ratio, low, high = found
    assert low < ratio == value / 60 < high


@pytest.mark.parametrize(("of_value", "of_half"), [(0, 0), (-20, 1), (10, 5.1), (3, 6)])
def test_near_zero_there_is_no_ratio(of_value: float, of_half: float) -> None:
    assert ratio_interval(30, 5, of_value, of_half) is None


def test_just_certain_enough() -> None:
    assert ratio_interval(30, 5, 10, 10 * MOST_UNCERTAIN) is not None


@pytest.mark.parametrize(("value", "of_value"), [(12.0, 45.0), (40.0, 65.0), (0.0, 60.0)])
def test_it_holds_the_truth_in_95_of_100(value: float, of_value: float) -> None:
    random = np.random.default_rng(5)
    held = []
    for a, b in random.normal((value, of_value), (5.0, 6.0), size=(4000, 2)):
        found = ratio_interval(a, 1.96 * 5.0, b, 1.96 * 6.0)
        if found is not None:
            held.append(found[1] <= value / of_value <= found[2])
    assert np.mean(held) == pytest.approx(0.95, abs=0.012)
