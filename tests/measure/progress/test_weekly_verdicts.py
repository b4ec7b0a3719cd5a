"""Weekly checks: on which days, of which days, and what a course of them tells."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.progress.current_verdict import current_verdict
from measure.progress.series import Series
from measure.progress.weekly_verdicts import Verdict, weekly_checks
from tests.bench.progress_people import FIRST_DAY, Course, plain_series, series_of

#: Monday, Wednesday and Friday of twelve weeks.
DAYS = np.array([7 * week + each for week in range(12) for each in (0, 2, 4)], dtype=float)


def date(day: float) -> dt.date:
    return dt.date.fromordinal(FIRST_DAY + round(day))


def rising(a_day: float, days: np.ndarray = DAYS, noise: float = 1.0) -> Series:
    scatter = noise * np.random.default_rng(5).normal(size=len(days))
    return plain_series(FIRST_DAY + days, 90 + a_day * days + scatter)


def verdict(series: Series, day: float) -> Verdict:
    found = current_verdict(series, date(day))
    return found.lapsed or found.verdict


def test_checks_are_a_week_apart_from_the_first_day_on() -> None:
    seen = weekly_checks(rising(0.3), date(84), most=100)
    assert [each.day for each in seen] == [date(7 * week) for week in range(1, 13)]
    assert [check.week for check in seen] == list(range(1, 13))
    # Of the days used: those of practice are left out.
    weeks = [check.weeks for check in seen[1:]]
    assert weeks == pytest.approx([number - 4 / 7 for number in range(2, 13)])


@pytest.mark.parametrize("weekday", range(7))
def test_the_verdict_of_a_week_is_the_same_on_each_of_its_days(weekday: int) -> None:
    series = rising(0.3)
    before = series.where(series.day < FIRST_DAY + 56 + weekday)
    assert weekly_checks(before, date(56 + weekday))[-1].day == date(56)
    assert current_verdict(before, date(56 + weekday)).verdict is verdict(series, 56)


@given(st.integers(0, 200), st.integers(4, 12))
@settings(max_examples=30, deadline=None)
def test_a_check_sees_nothing_of_its_day_or_later(seed: int, week: int) -> None:
    series = series_of(Course(a_month=8, odd=0.1, missed=0.2), np.random.default_rng(seed))
    early = series.where(series.day < FIRST_DAY + 7 * week)
    then, now = weekly_checks(series, date(7 * week)), weekly_checks(early, date(7 * week))
    assert [each.evidence for each in then] == [each.evidence for each in now]


def test_a_week_without_readings_has_no_check() -> None:
    paused = DAYS[(DAYS < 21) | (DAYS >= 35)]
    days = [each.day for each in weekly_checks(rising(0.3, paused), date(84), most=100)]
    assert date(21) in days
    assert date(28) not in days
    assert date(35) not in days
    assert date(42) in days


def test_checking_again_without_new_readings_confirms_nothing() -> None:
    series = rising(0.5).where(DAYS < 28)
    assert verdict(series, 28) is verdict(series, 280)


@pytest.mark.parametrize(
    ("days", "today"),
    [
        (DAYS[:0], 84.0),
        (DAYS[:1], 84.0),
        (DAYS[DAYS < 27], 27.0),  # ten days with readings, but not four weeks
        (np.arange(0.0, 54.0, 6.0), 84.0),  # seven weeks, but seven days beside practice
    ],
)
def test_too_early_to_say(days: np.ndarray, today: float) -> None:
    assert verdict(rising(3.0, days), today) is Verdict.TOO_EARLY


def test_four_weeks_and_eight_days_are_enough() -> None:
    assert verdict(rising(3.0, np.arange(0.0, 35.0, 3.5)), 35) is not Verdict.TOO_EARLY


def test_level_rising_and_falling() -> None:
    assert verdict(rising(0.0), 84) is Verdict.NO_CLEAR_CHANGE
    assert verdict(rising(0.3), 84) is Verdict.GAINING
    assert verdict(rising(-0.3), 84) is Verdict.LOSING


def test_a_verdict_counts_from_the_latest_break() -> None:
    series = rising(0.3)
    broken = replace(series, segment=(series.day >= FIRST_DAY + 63).astype(np.int64))
    assert verdict(broken, 84) is Verdict.TOO_EARLY


def test_what_was_long_ago_says_nothing_about_now() -> None:
    """Half a year of gain, then half a year without."""
    days = np.arange(0.0, 364.0, 3.5)
    value = 90 + 0.2 * np.minimum(days, 182) + np.random.default_rng(2).normal(0, 3, len(days))
    series = plain_series(FIRST_DAY + days, value)
    assert verdict(series, 182) is Verdict.GAINING
    assert verdict(series, 364) in (Verdict.NO_CLEAR_CHANGE, Verdict.LEVEL)
