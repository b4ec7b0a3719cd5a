"""The course that is drawn through single days: where it runs, and how often its band holds."""

import numpy as np
import pytest

from measure.domain.landmarks import FloatArray
from measure.trend.local_trend import LONGEST_GAP_DAY, Ribbon, local_trend

SPREAD = 5.0
#: Three sessions a week over twenty weeks.
DAYS = np.array([float(7 * week + day) for week in range(20) for day in (0, 2, 4)])


def whole(day: FloatArray, value: FloatArray, **known: float) -> Ribbon:
    (ribbon,) = local_trend(day, value, **({"spread": SPREAD} | known))
    return ribbon


def test_a_straight_course_without_scatter_is_found_exactly() -> None:
    ribbon = whole(DAYS, 60 + 0.4 * DAYS)
    assert ribbon.value == pytest.approx(60 + 0.4 * ribbon.day)
    assert list(ribbon.day) == list(range(int(DAYS[-1]) + 1))
    assert (ribbon.low < ribbon.value).all()
    assert (ribbon.high > ribbon.value).all()


def _bent(day: FloatArray) -> FloatArray:
    """Return a recovery that is quick at first: 45 degrees in twenty weeks."""
    return 90 + 60 * (1 - np.exp(-day / 100))


@pytest.mark.parametrize("course", [lambda day: 0 * day + 90, lambda day: 90 + day / 3, _bent])
def test_the_band_holds_the_course_nineteen_times_in_twenty(course: object) -> None:
    chance = np.random.default_rng(7)
    held = []
    for _ in range(120):
        ribbon = whole(DAYS, course(DAYS) + chance.normal(0, SPREAD, len(DAYS)))  # type: ignore[operator]
        truth = course(ribbon.day)  # type: ignore[operator]
        held.append(((ribbon.low <= truth) & (truth <= ribbon.high)).mean())
    assert 0.92 < np.mean(held) < 0.98


def test_the_band_is_wider_where_days_are_few_and_at_the_ends() -> None:
    rare = DAYS[::3]
    often, seldom = whole(DAYS, 0 * DAYS), whole(rare, 0 * rare)
    middle = len(seldom.day) // 2
    assert seldom.high[middle] > 1.3 * often.high[middle]
    assert often.high[0] > 1.5 * often.high[middle]


def test_days_that_are_related_and_a_spread_known_badly_widen_it() -> None:
    plain = whole(DAYS, 0 * DAYS)
    for known in ({"related": 0.5}, {"degrees_of_freedom": 4.0}):
        assert (whole(DAYS, 0 * DAYS, **known).high > 1.2 * plain.high).all()


def test_one_bad_day_hardly_moves_it() -> None:
    value = 0 * DAYS + 100
    value[30] = 40
    assert whole(DAYS, value).value == pytest.approx(100, abs=0.1)


def test_nothing_is_drawn_across_a_long_gap() -> None:
    late = np.r_[DAYS[:12], DAYS[12:24] + LONGEST_GAP_DAY]
    first, second = local_trend(late, 0 * late, spread=SPREAD)
    assert (first.day[-1], second.day[0]) == (late[11], late[12])


def test_three_days_make_no_course() -> None:
    assert local_trend(DAYS[:3], DAYS[:3], spread=SPREAD) == ()
