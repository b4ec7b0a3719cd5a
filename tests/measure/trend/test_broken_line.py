"""Two lines that meet: a bend without scatter is found exactly, whichever way it is turned."""

import numpy as np
import pytest

from measure.trend.broken_line import Bend, fit_bends
from measure.trend.trend_line import fit_slopes, mean_variance

DAYS = np.arange(0.0, 84.0, 2.0)


def bend_of(value: np.ndarray, at: float | None = None) -> Bend:
    parts = [(DAYS, value)]
    (bend,) = fit_bends(parts, fit_slopes(parts, 5.0), 5.0, at)
    assert bend is not None
    return bend


#: Up by 0.3 a day until day 49, midway between two sessions, then down by 0.2 a day.
BENT = 90 + 0.3 * np.minimum(DAYS, 49) - 0.2 * np.maximum(DAYS - 49, 0)


def test_a_bend_without_scatter_is_exact() -> None:
    bend = bend_of(BENT)
    assert bend.day == pytest.approx(49)
    assert bend.low <= 49 <= bend.high
    assert (bend.before_per_day, bend.after_per_day) == (pytest.approx(0.3), pytest.approx(-0.2))
    assert bend.level == pytest.approx(BENT[-1])
    assert bend.evidence < -3


def test_turned_over_and_shifted_it_is_the_same_bend() -> None:
    bend, over = bend_of(BENT), bend_of(300 - BENT)
    assert over.day == bend.day
    assert over.evidence == pytest.approx(-bend.evidence)
    assert over.change_error == pytest.approx(bend.change_error)


def test_a_straight_line_has_no_bend() -> None:
    assert abs(bend_of(90 + 0.3 * DAYS).evidence) < 1e-6


def test_a_known_day_is_taken_as_it_is() -> None:
    assert bend_of(BENT, at=49.0).after_per_day == pytest.approx(-0.2)


def test_too_few_days_have_no_bend() -> None:
    parts = [(DAYS[:10], BENT[:10])]
    assert fit_bends(parts, fit_slopes(parts, 5.0), 5.0) == [None]


def test_the_variance_of_a_mean_by_hand() -> None:
    """Three days with r = 0.5: (1 + 2 (2/3 * 0.5 + 1/3 * 0.25)) / 3."""
    assert mean_variance(3, 0.5) == pytest.approx((1 + 2 * (1 / 3 + 1 / 12)) / 3)
    assert mean_variance(4, 0.0) == 0.25
