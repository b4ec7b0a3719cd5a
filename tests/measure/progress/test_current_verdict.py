"""What weekly checks add up to: gains, losses, turns, how long a verdict holds."""

import datetime as dt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.progress.current_verdict import EXPIRES_DAY, CurrentVerdict, current_verdict
from measure.progress.person_evidence import PersonEvidence
from measure.progress.series import Series
from measure.progress.weekly_verdicts import Verdict, WeeklyCheck
from measure.trend.evidence_limits import likely_limit, review_limit, weekly_limit
from tests.bench.progress_people import FIRST_DAY, plain_series
from tests.measure.progress.checks import check_of, date

#: Monday, Wednesday and Friday of twenty-six weeks.
DAYS = np.array([7 * week + day for week in range(26) for day in (0, 2, 4)], dtype=float)


def series(values: np.ndarray, days: np.ndarray = DAYS, noise: float = 2.0) -> Series:
    scatter = noise * np.random.default_rng(5).normal(size=len(days))
    return plain_series(FIRST_DAY + days, values + scatter)


def after(checks: list[WeeklyCheck]) -> CurrentVerdict:
    """Return the verdict of these checks on a flat series that shows nothing else."""
    flat = series(np.full(len(DAYS), 90.0), noise=0.5)
    key = (flat.movement, flat.conduct, flat.side)
    person = PersonEvidence(checks={key: tuple(checks)}, primary=(flat.movement,))
    return current_verdict(flat, date(26 * 7), person)


@pytest.mark.parametrize(
    ("before", "now", "expected"),
    [
        (0.5, 0.5, Verdict.NO_CLEAR_CHANGE),
        (0.5, 4.4, Verdict.GAINING),
        (0.5, 3.1, Verdict.LIKELY_GAINING),
        (-0.5, 4.4, Verdict.LIKELY_GAINING),
        (4.5, 1.8, Verdict.GAINING),
        (4.5, 1.2, Verdict.NO_CLEAR_CHANGE),
        (4.5, -4.4, Verdict.LIKELY_LOSING),
        (-0.5, -4.4, Verdict.LOSING),
        (-0.5, -3.1, Verdict.LIKELY_LOSING),
    ],
)
def test_a_change_takes_two_checks(before: float, now: float, expected: Verdict) -> None:
    assert after([check_of(before, week=8), check_of(now, week=9)]).verdict is expected


def test_one_check_alone_confirms_nothing() -> None:
    assert after([check_of(9.0)]).verdict is Verdict.LIKELY_GAINING


def test_a_review_needs_less_than_a_weekly_check() -> None:
    now = (review_limit(1, alone=True) + weekly_limit(12)) / 2
    assert after([check_of(1.0, week=11), check_of(now, week=12)]).verdict is Verdict.GAINING
    assert after([check_of(1.0, week=12), check_of(now, week=13)]).verdict is not Verdict.GAINING


def test_a_review_that_was_missed_is_made_at_the_next_check() -> None:
    now = (review_limit(1) + weekly_limit(12)) / 2
    assert after([check_of(1.0, week=11), check_of(now, week=14)]).verdict is Verdict.GAINING


def test_a_confirmed_gain_stays_until_the_line_leans_no_more() -> None:
    course = [check_of(1.0, week=8), *(check_of(z, week=9 + k) for k, z in enumerate((4, 2, 1.4)))]
    stays = after(course)
    assert stays.verdict is Verdict.GAINING
    assert stays.since == date(63)
    assert after([*course, check_of(1.0, week=12)]).verdict is Verdict.GAINING
    ended = after([*course, check_of(1.0, week=12), check_of(0.9, week=13)])
    assert ended.verdict is Verdict.NO_CLEAR_CHANGE
    assert ended.since == date(91)


def test_a_bend_leaves_a_gain_in_doubt_and_a_clear_one_ends_it() -> None:
    gain = [check_of(5.0, week=14, bend=-1.0), check_of(5.0, week=15, bend=-2.5)]
    assert after(gain).verdict is Verdict.GAINING
    assert after([*gain, check_of(5.0, week=16, bend=-2.5)]).verdict is Verdict.NO_CLEAR_CHANGE
    # Not where what lies after the bend still gains.
    slower = [
        check_of(5.0, week=15, bend=-2.5, after=2.0),
        check_of(5.0, week=16, bend=-2.5, after=2.0),
    ]
    assert after([gain[0], *slower]).verdict is Verdict.GAINING


def test_gained_until_a_day_and_level_since() -> None:
    """Twelve weeks of 10 degrees a month, then none: a turn with its day and interval."""
    value = 60 + 10 / 30.4 * np.minimum(DAYS, 84)
    course = current_verdict(series(value), date(182))
    assert course.verdict is Verdict.LEVEL
    assert course.turn is not None
    assert course.turn.before is Verdict.GAINING
    assert course.turn.low <= date(84) <= course.turn.high
    assert abs((course.turn.day - date(84)).days) < 10
    assert (course.turn.shown_on - date(84)).days <= 42
    assert not course.turn.sudden
    assert course.shown is not None
    assert course.shown.low < 0 < course.shown.high


def test_gained_until_a_day_and_losing_since() -> None:
    value = 60 + 10 / 30.4 * np.minimum(DAYS, 84) - 10 / 30.4 * np.maximum(DAYS - 84, 0)
    course = current_verdict(series(value), date(182))
    assert course.verdict is Verdict.LOSING
    assert course.turn is not None
    assert course.turn.before is Verdict.GAINING
    assert abs((course.turn.day - date(84)).days) < 7


def test_a_sudden_loss_ends_a_gain_with_its_day_and_size() -> None:
    value = 60 + 5 / 30.4 * DAYS - np.where(DAYS >= 100, 25.0, 0.0)
    course = current_verdict(series(value), date(112))
    assert course.verdict is Verdict.TOO_EARLY
    assert course.turn is not None
    assert course.turn.sudden
    assert course.turn.before is Verdict.GAINING
    assert course.turn.day == date(100)
    assert course.turn.by == pytest.approx(-25, abs=4)


def test_nothing_older_than_three_weeks_is_todays() -> None:
    gaining = series(60 + 10 / 30.4 * DAYS[:36], DAYS[:36])
    last = gaining.date(-1)
    for ago in (7, EXPIRES_DAY):
        held = current_verdict(gaining, last + dt.timedelta(days=ago))
        assert (held.verdict, held.lapsed) == (Verdict.GAINING, None)
        assert held.expires == last + dt.timedelta(days=EXPIRES_DAY)
    for ago in (EXPIRES_DAY + 1, 30, 90, 300):
        old = current_verdict(gaining, last + dt.timedelta(days=ago))
        assert (old.verdict, old.lapsed) == (Verdict.NO_RECENT, Verdict.GAINING)
        assert old.as_of is not None
        assert (old.as_of - last).days <= 7


def test_a_slope_is_shrunk_in_the_first_two_weeks_of_a_verdict() -> None:
    value = 60 + 6 / 30.4 * DAYS
    seen = [
        current_verdict(series(value, noise=4.0), date(7 * week)).shown for week in range(5, 16)
    ]
    shrunk = [shown.shrunk for shown in seen if shown is not None]
    assert shrunk.count(True) == 2
    first = shrunk.index(True)
    shown, later = seen[-len(shrunk) :][first], seen[-1]
    assert shown is not None
    assert later is not None
    assert 0 < shown.low < shown.per_month < shown.high
    assert not later.shrunk


def test_sessions_of_practice_count_for_nothing() -> None:
    value = np.full(len(DAYS), 90.0)
    low = value.copy()
    low[:2] -= 30
    plain, learned = (current_verdict(series(item), date(84)) for item in (value, low))
    assert plain.shown == learned.shown
    assert plain.said == learned.said


@given(st.integers(0, 40), st.sampled_from((-0.3, -0.1, 0.1, 0.3)))
@settings(max_examples=12, deadline=None)
def test_shifted_and_upside_down(seed: int, a_day: float) -> None:
    """A constant on top changes nothing; upside down, gains are losses."""
    days = DAYS[:48]
    values = 90 + a_day * days + np.random.default_rng(seed).normal(0, 2.0, len(days))
    today = date(112)
    plain = current_verdict(plain_series(FIRST_DAY + days, values), today)
    higher = current_verdict(plain_series(FIRST_DAY + days, values + 30), today)
    later = current_verdict(
        plain_series(FIRST_DAY + days + 700, values), today + dt.timedelta(days=700)
    )
    assert plain.said == higher.said == later.said
    turned_over = current_verdict(plain_series(FIRST_DAY + days, 180 - values), today)
    if plain.turn is None and turned_over.turn is None:
        opposite = {
            Verdict.GAINING: Verdict.LOSING,
            Verdict.LOSING: Verdict.GAINING,
            Verdict.LIKELY_GAINING: Verdict.LIKELY_LOSING,
            Verdict.LIKELY_LOSING: Verdict.LIKELY_GAINING,
        }
        assert turned_over.said == tuple(opposite.get(said, said) for said in plain.said)


@given(st.integers(0, 40))
@settings(max_examples=10, deadline=None)
def test_backwards_a_gain_is_a_loss(seed: int) -> None:
    days = DAYS[:36]
    values = 90 + 0.33 * days + np.random.default_rng(seed).normal(0, 3.0, len(days))
    there = current_verdict(plain_series(FIRST_DAY + days, values), date(84))
    back = current_verdict(
        plain_series(FIRST_DAY + (days[-1] - days)[::-1], values[::-1].copy()), date(84)
    )
    assert there.verdict is Verdict.GAINING
    assert back.verdict is Verdict.LOSING


def test_limits_are_monotone() -> None:
    weekly = [weekly_limit(week) for week in range(4, 60)]
    assert weekly == sorted(weekly, reverse=True)
    reviews = [review_limit(number) for number in range(1, 60)]
    assert reviews == sorted(reviews)
    assert all(likely_limit(week) < weekly_limit(week) for week in range(4, 60))
    for limit in (weekly_limit, review_limit, likely_limit):
        assert all(limit(number, False) > limit(number) for number in range(1, 60))


def test_all_reviews_together_spend_a_fixed_chance_of_error() -> None:
    """2 % as reviews without end add up: 1/2 + 1/6 + 1/12 + ... = 1."""
    from scipy import stats

    spent = [2 * stats.norm.sf(review_limit(number)) for number in range(1, 2000)]
    assert sum(spent) == pytest.approx(0.02, rel=1e-3)
