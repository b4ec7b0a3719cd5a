"""The two lines of an event: exact cases, what must not change them, and simulated coverage."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.movements import Unit
from measure.trend.event_effect import EffectEstimate, EffectPrior, EventEffect, event_effect
from measure.trend.trend_line import DAYS_A_MONTH
from tests.bench.event_courses import EventCourse, EventTruth, coverage

PRIOR = EffectPrior.of(Unit.DEGREES)
#: Mondays, Wednesdays and Fridays; no session on the day of the event, 0.
BEFORE = np.array([-7.0 * week + d for week in range(10, 0, -1) for d in (0, 2, 4)])
AFTER = np.array([7.0 * week + d for week in range(8) for d in (1, 3, 5)])
DAYS = np.concatenate([BEFORE, AFTER])


def effect(
    day: np.ndarray, value: np.ndarray, at: float = 0.0, prior: EffectPrior = PRIOR
) -> EventEffect:
    found = event_effect(day, value, at, 5.0, prior)
    assert found is not None
    return found


def lines(before: float, step: float, after: float, day: np.ndarray = DAYS) -> np.ndarray:
    months = day / DAYS_A_MONTH
    value: np.ndarray = 90.0 + np.where(day < 0, before * months, step + after * months)
    return value


def numbers(found: EventEffect) -> np.ndarray:
    each = (found.step, found.slope_before, found.slope_after, found.change_since)
    return np.array([(part.value, part.low, part.high) for part in each])


def test_two_lines_and_a_step_are_found() -> None:
    found = effect(DAYS, lines(-5, 12, 8))
    # The assumption draws slopes a little towards +2 and the step towards 0.
    assert found.slope_before.value == pytest.approx(-5, abs=0.4)
    assert found.slope_after.value == pytest.approx(8, abs=0.6)
    assert found.step.value == pytest.approx(12, abs=1.2)
    months = AFTER[-1] / DAYS_A_MONTH
    assert found.change_since.value == pytest.approx(
        found.step.value + found.slope_after.value * months
    )
    assert (found.days_before, found.days_after, found.last_day) == (30, 24, AFTER[-1])
    assert not found.step.mostly_assumed


def test_a_step_between_two_levels_by_hand() -> None:
    """Slopes held at 0: a mean on either side, and their difference shrunk.

    Four days at 90 and two at 100, far apart. With neighbours alike by r the mean of n days has
    the variance s^2 (1 + r) / (n - (n - 2) r).
    """
    day = np.array([-203.0, -202, -201, -200, 0, 1]) / 2
    value = np.array([90.0, 90, 90, 90, 100, 100])
    held = EffectPrior(slope_mean=0.0, slope_sd=1e-9, step_sd=5.0)
    found = effect(day, value, prior=held)
    r = found.related
    variance = 25 * (1 + r) * (1 / (4 - 2 * r) + 1 / 2)
    assert found.step.value == pytest.approx(10 * 25 / (25 + variance), rel=0.08)
    half = 1.96 * np.sqrt(1 / (1 / 25 + 1 / variance))
    # A little wider: no day is certain to be a usual one, and t stands for the normal.
    assert half < (found.step.high - found.step.low) / 2 < 1.25 * half
    assert found.change_since.value == pytest.approx(found.step.value)


def test_one_day_after_is_enough_and_says_little() -> None:
    found = effect(DAYS[:31], lines(0, 20, 0)[:31])
    assert found.days_after == 1
    # Of the slope after it nothing is known: the assumption stands, and is called one.
    assert found.slope_after.value == pytest.approx(2, abs=0.5)
    assert found.slope_after.mostly_assumed
    assert found.slope_after.assumed == pytest.approx(1, abs=0.05)
    assert 5 < found.step.value < 20
    assert found.step.high - found.step.low > 10


def test_shrinking_ends_with_the_data() -> None:
    value = lines(0, 20, 0)
    steps = [effect(DAYS[: 30 + n], value[: 30 + n]).step for n in (1, 3, 9, 24)]
    assert all(early.value < late.value + 0.5 for early, late in pairwise(steps))
    assert steps[-1].assumed < steps[0].assumed


@pytest.mark.parametrize("chosen", [slice(0, 30), slice(30, 54), slice(28, 54)])
def test_too_few_days_on_a_side_have_no_effect(chosen: slice) -> None:
    value = lines(0, 0, 0)
    assert event_effect(DAYS[chosen], value[chosen], 0.0, 5.0, PRIOR) is None


def test_days_long_before_and_after_are_left_out() -> None:
    day = np.concatenate([[-300.0, -200.0], DAYS, [150.0]])
    value = np.concatenate([[0.0, 0.0], lines(-5, 12, 8), [0.0]])
    assert numbers(effect(day, value)) == pytest.approx(numbers(effect(DAYS, lines(-5, 12, 8))))


def test_an_odd_day_beside_the_event_moves_little() -> None:
    noise = np.random.default_rng(1).normal(0, 3, len(DAYS))
    value = lines(-5, 12, 8) + noise
    odd = value.copy()
    odd[31] -= 40
    plain, bent = effect(DAYS, value), effect(DAYS, odd)
    assert abs(plain.step.value - bent.step.value) < 3


def test_days_that_are_alike_widen_the_intervals() -> None:
    """In the mean of fifty people: one person's scatter differs more than that."""
    random = np.random.default_rng(2)
    related, width = np.zeros((2, 50)), np.zeros((2, 50))
    for person in range(50):
        fresh = random.normal(0, 5, len(DAYS))
        alike = fresh.copy()
        for k in range(1, len(DAYS)):
            alike[k] = 0.7 * alike[k - 1] + np.sqrt(1 - 0.49) * fresh[k]
        for row, noise in enumerate((fresh, alike)):
            found = effect(DAYS, lines(0, 0, 0) + noise)
            related[row, person] = found.related
            width[row, person] = found.slope_after.high - found.slope_after.low
    assert related[1].mean() > related[0].mean() + 0.2
    assert width[1].mean() > 1.1 * width[0].mean()


@given(st.integers(0, 1000), st.floats(-500, 500), st.integers(-800_000, 800_000))
@settings(max_examples=30, deadline=None)
def test_raising_and_shifting_changes_nothing(seed: int, up: float, later: int) -> None:
    value = lines(-4, 6, 7) + np.random.default_rng(seed).normal(0, 5, len(DAYS))
    plain, moved = effect(DAYS, value), effect(DAYS + later, value + up, float(later))
    assert numbers(moved) == pytest.approx(numbers(plain), abs=1e-4)


def mirrored(prior: EffectPrior) -> EffectPrior:
    return EffectPrior(slope_mean=-prior.slope_mean, slope_sd=prior.slope_sd, step_sd=prior.step_sd)


@given(st.integers(0, 1000))
@settings(max_examples=30, deadline=None)
def test_what_falls_is_judged_like_what_rises(seed: int) -> None:
    value = lines(-4, 6, 7) + np.random.default_rng(seed).normal(0, 5, len(DAYS))
    plain, fallen = effect(DAYS, value), effect(DAYS, -value, prior=mirrored(PRIOR))
    assert numbers(fallen)[:, [0, 2, 1]] == pytest.approx(-numbers(plain), abs=1e-6)


@given(st.integers(0, 1000))
@settings(max_examples=30, deadline=None)
def test_time_reversed_turns_slopes_and_step(seed: int) -> None:
    value = lines(-4, 6, 7) + np.random.default_rng(seed).normal(0, 5, len(DAYS))
    plain = numbers(effect(DAYS, value))
    back = numbers(effect(-DAYS[::-1], value[::-1], prior=mirrored(PRIOR)))
    # In either direction of time the same lines: before and after change places and signs.
    assert back[0, 0] == pytest.approx(-plain[0, 0], abs=0.05)
    assert back[1, 0] == pytest.approx(-plain[2, 0], abs=0.05)
    assert back[2, 0] == pytest.approx(-plain[1, 0], abs=0.05)


def test_a_reach_is_judged_like_degrees() -> None:
    value = lines(-5, 12, 8) + np.random.default_rng(3).normal(0, 5, len(DAYS))
    reach = event_effect(DAYS, value / 100, 0.0, 0.05, EffectPrior.of(Unit.FRACTION))
    assert reach is not None
    assert numbers(reach) * 100 == pytest.approx(numbers(effect(DAYS, value)))


def test_mostly_assumed_is_where_half_is_left() -> None:
    estimate = [
        EffectEstimate(value=0.0, low=0.0, high=0.0, assumed=share) for share in (0.5, 0.51)
    ]
    assert [each.mostly_assumed for each in estimate] == [False, True]


@pytest.mark.parametrize(
    ("course", "least"),
    [
        (EventCourse(), 0.93),
        (EventCourse(weeks_after=1), 0.93),
        (EventCourse(related=0.3), 0.90),
        (EventCourse(related=0.3, odd=0.1, missed=0.25, clothes=3.0), 0.86),
        (EventCourse(truth=EventTruth(step=15.0, slope_before=-5.0, slope_after=5.0)), 0.91),
    ],
)
def test_the_intervals_hold(course: EventCourse, least: float) -> None:
    """Simulated; the page of progress has the table of all cases."""
    held = coverage(course, 400, 7)
    assert min(held.values()) >= least, held
