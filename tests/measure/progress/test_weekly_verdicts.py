"""Weekly looks and the verdicts that they add up to."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Event, EventKind
from measure.progress.overview import progress_of
from measure.progress.series import Series
from measure.progress.weekly_verdicts import (
    STALL_BELOW_DEG,
    SeriesPhase,
    Verdict,
    WeeklyCheck,
    needed_evidence,
    stalled,
    trend,
    weekly_checks,
)
from tests.bench.progress_people import FIRST_DAY, Course, plain_series, series_of
from tests.support.progress_histories import day, history
from tests.support.record_samples import event, person, some_id

#: Monday, Wednesday and Friday of twelve weeks.
DAYS = np.array([7 * week + each for week in range(12) for each in (0, 2, 4)], dtype=float)


def date(day: float) -> dt.date:
    return dt.date.fromordinal(FIRST_DAY + round(day))


def rising(a_day: float, days: np.ndarray = DAYS, noise: float = 1.0) -> Series:
    scatter = noise * np.random.default_rng(5).normal(size=len(days))
    return plain_series(FIRST_DAY + days, 90 + a_day * days + scatter)


def verdict(series: Series, day: float) -> Verdict:
    return trend(weekly_checks(series, date(day)))


def weekly_check(evidence: float, *, week: int = 12, upper: float | None = None) -> WeeklyCheck:
    """Return a look whose slope is there, but matters only through its evidence."""
    found = weekly_checks(rising(0.0), date(84))[-1]
    return replace(
        found,
        day=date(7 * week),
        evidence=evidence,
        clear=needed_evidence(week),
        upper_per_month=upper,
    )


def test_checks_are_a_week_apart_from_the_first_day_on() -> None:
    seen = weekly_checks(rising(0.3), date(84), most=100)
    assert [each.day for each in seen] == [date(7 * week) for week in range(1, 13)]
    assert [each.weeks for each in seen] == list(range(1, 13))


@pytest.mark.parametrize("weekday", range(7))
def test_the_verdict_of_a_week_is_the_same_on_each_of_its_days(weekday: int) -> None:
    series = rising(0.3)
    known = weekly_checks(series.where(series.day < FIRST_DAY + 56 + weekday), date(56 + weekday))
    assert known[-1].day == date(56)
    assert trend(known) is verdict(series, 56)


@given(st.integers(0, 200), st.integers(4, 12))
@settings(max_examples=30, deadline=None)
def test_a_check_sees_nothing_of_its_day_or_later(seed: int, week: int) -> None:
    series = series_of(Course(a_month=8, odd=0.1, missed=0.2), np.random.default_rng(seed))
    early = series.where(series.day < FIRST_DAY + 7 * week)
    then, now = weekly_checks(series, date(7 * week)), weekly_checks(early, date(7 * week))
    assert [each.evidence for each in then] == [each.evidence for each in now]
    assert trend(then) is trend(now)


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
        (np.arange(0.0, 42.0, 6.0), 84.0),  # six weeks, but seven days
    ],
)
def test_too_early_to_say(days: np.ndarray, today: float) -> None:
    assert verdict(rising(3.0, days), today) is Verdict.TOO_EARLY


def test_four_weeks_and_eight_days_are_enough() -> None:
    assert verdict(rising(3.0, np.arange(0.0, 28.0, 3.5)), 28) is not Verdict.TOO_EARLY


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
    assert verdict(series, 364) is Verdict.NO_CLEAR_CHANGE


@pytest.mark.parametrize(
    ("before", "now", "expected"),
    [
        (0.5, 0.5, Verdict.NO_CLEAR_CHANGE),
        (0.5, 2.4, Verdict.GAINING),
        (0.5, 2.1, Verdict.LIKELY_GAINING),
        (-0.5, 2.4, Verdict.LIKELY_GAINING),
        (3.1, 1.5, Verdict.GAINING),
        (3.1, 1.0, Verdict.NO_CLEAR_CHANGE),
        (3.1, -2.4, Verdict.LIKELY_LOSING),
        (-0.5, -2.4, Verdict.LOSING),
        (-0.5, -2.1, Verdict.LIKELY_LOSING),
    ],
)
def test_a_change_takes_two_checks(before: float, now: float, expected: Verdict) -> None:
    assert trend((weekly_check(before, week=11), weekly_check(now, week=12))) is expected


def test_one_check_alone_confirms_nothing() -> None:
    assert trend((weekly_check(9.0),)) is Verdict.LIKELY_GAINING


def test_strict_at_first_least_strict_at_twelve_weeks_strict_for_good() -> None:
    needed = {week: needed_evidence(week) for week in range(4, 53)}
    assert needed[4] > needed[5] > needed[6] > needed[7]
    assert min(needed, key=lambda week: needed[week]) == 12
    assert all(needed[week] == needed[52] > needed[7] for week in range(14, 53))


FLAT = (weekly_check(0.1, week=11, upper=3.0), weekly_check(0.1, week=12, upper=3.0))


@pytest.mark.parametrize(
    ("seen", "movement", "short_by", "expected"),
    [
        (FLAT, Movement.FLEXION, 40.0, True),
        (FLAT, Movement.EXTERNAL_ROTATION, 40.0, True),
        (FLAT, Movement.ABDUCTION, 40.0, False),
        (FLAT, Movement.FLEXION, 16.0, True),
        (FLAT, Movement.FLEXION, 15.0, False),
        (FLAT, Movement.FLEXION, -40.0, False),
        ((), Movement.FLEXION, 40.0, False),
        ((weekly_check(0.1, upper=None),), Movement.FLEXION, 40.0, False),
        ((weekly_check(0.1, upper=STALL_BELOW_DEG),), Movement.FLEXION, 40.0, False),
        # While the longer trend is a gain, one flat look is not enough.
        (
            (weekly_check(3.0, upper=9.0), weekly_check(3.0, upper=3.0)),
            Movement.FLEXION,
            40.0,
            False,
        ),
        (
            (weekly_check(3.0, upper=3.0), weekly_check(3.0, upper=3.0)),
            Movement.FLEXION,
            40.0,
            True,
        ),
    ],
)
def test_stalled(
    seen: tuple[WeeklyCheck, ...], movement: Movement, short_by: float, expected: bool
) -> None:
    assert stalled(seen, movement, short_by, 160.0) is expected


def test_a_fifth_short_is_short_where_degrees_are_few() -> None:
    assert stalled(FLAT, Movement.EXTERNAL_ROTATION, 13.0, 60.0)
    assert not stalled(FLAT, Movement.EXTERNAL_ROTATION, 11.0, 60.0)


def test_a_stall_is_judged_by_six_weeks_with_eight_days() -> None:
    assert weekly_checks(rising(0.0), date(35))[-1].upper_per_month is None
    assert weekly_checks(rising(0.0), date(42))[-1].upper_per_month is not None
    rare = rising(0.0, np.arange(0.0, 84.0, 7.0))
    assert weekly_checks(rare, date(84))[-1].upper_per_month is None
    # A series that falls by 3 degrees a month does not gain 5.
    upper = weekly_checks(rising(-0.1), date(84))[-1].upper_per_month
    assert upper is not None
    assert -3.5 < upper < 0


LEFT = (Movement.FLEXION, Side.LEFT)
#: Every second day of ten weeks down by 0.3 degrees a day, then of ten weeks up again.
COURSE_DAYS = np.arange(0, 140, 2)
COURSE_VALUES = 120 - 0.3 * np.minimum(COURSE_DAYS, 70) + 0.4 * np.maximum(COURSE_DAYS - 70, 0)
COURSE = list(zip(COURSE_DAYS.tolist(), COURSE_VALUES.tolist(), strict=True))


def earlier_phases(*events: Event, today: int = 140) -> tuple[SeriesPhase, ...]:
    found = progress_of(history({LEFT: COURSE}, events=events), day(today))
    side = found.of(*LEFT)
    assert side is not None
    return side.earlier


def injection(number: int) -> Event:
    return event(
        person(),
        id=some_id(f"injection {number}"),
        kind=EventKind.INJECTION,
        day=day(number),
        side=Side.LEFT,
    )


def test_without_a_break_there_is_no_earlier_phase() -> None:
    assert earlier_phases() == ()


def test_a_loss_before_an_injection_is_told_though_it_gains_since() -> None:
    (before,) = earlier_phases(injection(70))
    assert (before.first, before.last, before.ended) == (day(0), day(70), day(71))
    assert before.ended_by == "injection"
    assert before.verdict is Verdict.LOSING
    assert before.slope is not None
    assert round(before.slope.per_day, 2) == -0.3


def test_a_short_phase_is_too_early_to_say() -> None:
    first, second = earlier_phases(injection(14), injection(70))
    assert first.verdict is Verdict.TOO_EARLY
    assert first.slope is None
    assert second.verdict is Verdict.LOSING


def test_two_breaks_without_a_reading_between_end_one_phase() -> None:
    flare = event(person(), id=some_id("flare"), kind=EventKind.FLARE, day=day(72), side=Side.LEFT)
    (before,) = earlier_phases(injection(70), flare)
    assert before.ended_by == "injection and flare"


def test_a_break_still_to_come_ends_nothing() -> None:
    assert earlier_phases(injection(70), today=69) == ()
