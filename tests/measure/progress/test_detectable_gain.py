"""When gains would show: by hand, by what must hold, and against simulated people."""

import datetime as dt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.progress.current_verdict import current_verdict
from measure.progress.detectable_gain import (
    LONGEST_AHEAD_WEEKS,
    Limit,
    Outlook,
    TimeToKnow,
    verdict_limit,
)
from measure.progress.series import Series
from measure.progress.weekly_verdicts import Verdict
from measure.trend.evidence_limits import REVIEW_WEEKS, review_limit, weekly_limit
from measure.trend.trend_line import DAYS_A_MONTH
from tests.bench.progress_people import Course, many, planned_days

#: Three sessions a week for three weeks.
DAYS = np.array([7.0 * week + d for week in range(3) for d in (0, 2, 4)])


def always(evidence: float, least_days: int = 0) -> Limit:
    return lambda _week, _weeks, days: evidence if days >= least_days else np.inf


def outlook(
    day: np.ndarray = DAYS, spread: float = 5.0, limit: Limit | None = None, first: float = 0.0
) -> Outlook:
    return Outlook(
        day=day, first_day=first, spread=spread, limit=limit or verdict_limit(True, alone=True)
    )


def test_by_hand_with_a_fixed_limit() -> None:
    """Weekly sessions, hundreds of days' worth of degrees of freedom do not matter at t = 2.

    n weekly days have the sum of squares 49 n (n^2 - 1) / 12 about their mean.
    """
    gain = 5.0
    expected = next(
        n
        for n in range(4, 30)
        if gain / DAYS_A_MONTH * np.sqrt(49 * n * (n**2 - 1) / 12) / 5.0 >= 2.84 + 0.3
    )
    weeks = outlook(np.array([0.0, 7, 14]), limit=always(2.0)).weeks_to_show(gain, 7.0)
    # The third check is this week's; one more day, one more week. A t value of few degrees of
    # freedom counts a little less than one of the normal distribution: about 0.3 here.
    assert weeks == pytest.approx(expected - 3, abs=1)


def test_sessions_further_apart_than_the_window_show_nothing() -> None:
    answer = outlook(np.array([20.0, 32, 300])).time_to_know((2.0, 5.0, 10.0))
    assert answer is not None
    assert [gain.weeks for gain in answer.gains] == [None, None, None]


def test_a_gain_that_is_clear_shows_by_now() -> None:
    assert outlook(limit=always(2.0)).weeks_to_show(60.0, 2.33) == 0


def test_a_gain_too_slow_never_shows() -> None:
    assert outlook().weeks_to_show(0.5, 2.33) is None


def test_nothing_shows_before_anything_is_said() -> None:
    weeks = outlook(limit=always(0.0, least_days=12)).weeks_to_show(100.0, 7 / 3)
    # Nine days are there; the next week's check has twelve.
    assert weeks == 1


@given(st.floats(2, 20), st.floats(1.5, 7), st.floats(2, 10))
@settings(max_examples=40, deadline=None)
def test_more_gain_more_sessions_or_less_scatter_never_take_longer(
    gain: float, gap: float, spread: float
) -> None:
    def weeks(gain: float, gap: float, spread: float) -> int:
        found = outlook(spread=spread).weeks_to_show(gain, gap)
        return LONGEST_AHEAD_WEEKS + 1 if found is None else found

    usual = weeks(gain, gap, spread)
    assert weeks(gain * 1.5, gap, spread) <= usual
    assert weeks(gain, gap, spread * 0.8) <= usual
    assert weeks(gain, gap / 2, spread) <= usual


@given(st.integers(-1000, 800_000))
@settings(max_examples=20, deadline=None)
def test_the_calendar_does_not_matter(later: int) -> None:
    moved = outlook(DAYS + later, first=float(later))
    assert moved.weeks_to_show(5.0, 7 / 3) == outlook().weeks_to_show(5.0, 7 / 3)


def test_the_limit_is_the_verdicts() -> None:
    limit = verdict_limit(True, alone=False)
    assert limit(6, 3.9, 20) == np.inf
    assert limit(6, 6.0, 7) == np.inf
    assert limit(6, 6.0, 8) == weekly_limit(6.0)
    assert limit(REVIEW_WEEKS, 12.0, 30) == min(weekly_limit(12.0), review_limit(1))
    assert limit(REVIEW_WEEKS + 1, 13.0, 30) == weekly_limit(13.0)
    assert verdict_limit(False, alone=False)(8, 8.0, 30) > limit(8, 8.0, 30)
    alone = verdict_limit(True, alone=True)
    assert alone(REVIEW_WEEKS, 12.0, 30) == min(weekly_limit(12.0), review_limit(1, alone=True))


def test_gains_and_the_rhythms_that_would_shorten_it() -> None:
    weekly = np.arange(0.0, 28.0, 7.0)
    found = outlook(weekly).time_to_know((2.0, 5.0, 10.0))
    assert found is not None
    assert found.sessions_a_week == pytest.approx(1)
    slow, middle, quick = (gain.weeks for gain in found.gains)
    assert slow is None
    assert quick is not None
    assert middle is None or middle > quick
    assert [rhythm for rhythm, _ in found.other_rhythms] == [2, 3]
    assert found.other_rhythms[1][1] < found.other_rhythms[0][1]


def test_nobody_is_asked_for_more_than_three_a_week() -> None:
    found = outlook().time_to_know((2.0, 5.0, 10.0))
    assert isinstance(found, TimeToKnow)
    assert found.other_rhythms == ()


def test_the_rhythm_is_that_of_late() -> None:
    day = np.concatenate([np.arange(0.0, 40.0, 2.0), np.arange(60.0, 90.0, 7.0)])
    found = outlook(day).time_to_know((5.0,))
    assert found is not None
    assert found.sessions_a_week == pytest.approx(1)


def test_two_days_have_no_rhythm() -> None:
    assert outlook(DAYS[:2]).time_to_know((5.0,)) is None


@pytest.mark.parametrize(
    ("a_week", "gain"), [(1, 10.0), (2, 5.0), (2, 10.0), (3, 5.0), (3, 10.0), (7, 10.0)]
)
def test_it_is_so_within_a_week(a_week: int, gain: float) -> None:
    """Simulated: of people with that gain about 80 in 100 are told of it within a week of then.

    The bounds leave two standard errors of a hundred people.
    """
    course = Course(a_month=gain, a_week=a_week, weeks=20)
    weeks = np.array([_week_told(series.day[0], series) for series in many(course, 100, 5)])
    day = planned_days(course)[2:5]
    ahead = outlook(day).weeks_to_show(gain, 7 / a_week)
    assert ahead is not None
    # The check of this week is that after the fifth day.
    formula = ahead + int(day[-1] // 7) + 1
    assert (weeks <= formula + 1).mean() >= 0.72
    assert (weeks <= formula - 2).mean() <= 0.88


def _week_told(first: float, series: Series) -> float:
    for week in range(4, 22):
        today = dt.date.fromordinal(int(first) + 7 * week)
        if current_verdict(series, today).verdict is Verdict.GAINING:
            return week
    return np.inf
