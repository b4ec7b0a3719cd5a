"""Comparison of two blocks of days, and drift shared with the other shoulder."""

import datetime as dt

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.progress.comparison import shared_drift
from measure.progress.series import Series
from measure.progress.weekly_verdicts import weekly_checks
from tests.bench.progress_people import FIRST_DAY, Course, plain_series, series_of
from tests.bench.progress_rules import first_beside

DAYS = np.array([7.0 * week + each for week in range(12) for each in (0, 2, 4)])
WEEKLY = np.arange(0.0, 84.0, 7.0)
#: One above, one below, so that no noise hides what is tested.
WAVE = np.array([1.0, -1.0])


def stepped(days: np.ndarray, step: float, side: Side = Side.LEFT, at: float = 42.0) -> Series:
    value = 100 + step * (days >= at) + np.resize(WAVE, len(days))
    return plain_series(FIRST_DAY + days, value, side)


def drift(series: Series, twin: Series, day: int = 84) -> float | None:
    today = dt.date.fromordinal(FIRST_DAY + day)
    return shared_drift(series, twin, weekly_checks(series, today)[-1])


@pytest.mark.parametrize("step", [12.0, -12.0])
def test_both_shoulders_a_step_higher_is_the_set_up(step: float) -> None:
    found = drift(stepped(DAYS, step), stepped(WEEKLY, step, Side.RIGHT))
    assert found == pytest.approx(step, abs=2)


@pytest.mark.parametrize("other", [0.0, 3.0, -12.0])
def test_another_way_of_the_other_shoulder_is_no_drift(other: float) -> None:
    assert drift(stepped(DAYS, 12.0), stepped(WEEKLY, other, Side.RIGHT)) is None


def test_a_step_of_the_other_shoulder_at_another_time_is_no_drift() -> None:
    twin = stepped(WEEKLY, 12.0, Side.RIGHT, at=70.0)
    assert drift(stepped(DAYS, 12.0, at=21.0), twin) is None


@pytest.mark.parametrize("days", [WEEKLY[:6], WEEKLY[6:], WEEKLY[5:7], WEEKLY[:0]])
def test_too_few_days_of_the_other_shoulder_say_nothing(days: np.ndarray) -> None:
    assert drift(stepped(DAYS, 12.0), stepped(days, 12.0, Side.RIGHT)) is None


def test_what_comes_after_the_weekly_check_is_not_seen() -> None:
    """The other shoulder steps up with the first, but only on days after the look."""
    twin = stepped(np.append(WEEKLY[:6], [63.0, 70.0, 77.0]), 12.0, Side.RIGHT)
    assert drift(stepped(DAYS, 12.0), twin, 56) is None
    assert drift(stepped(DAYS, 12.0), twin, 84) is not None


def test_too_early_for_a_line_is_too_early_for_a_drift() -> None:
    assert drift(stepped(DAYS, 12.0, at=7.0), stepped(WEEKLY, 12.0, Side.RIGHT, at=7.0), 21) is None


def test_a_moved_camera_is_seldom_taken_for_a_gain() -> None:
    """Eighty simulated people each: most would be told without the other shoulder."""
    random = np.random.default_rng(3)
    moved = [
        first_beside(
            series_of(Course(step=12), random),
            series_of(Course(step=12, a_week=1), random, Side.RIGHT),
        )
        for _ in range(80)
    ]
    doubted, told = np.isfinite(np.array(moved)).mean(axis=0)
    assert told > 0.8
    assert doubted < 0.25


def test_a_gain_on_one_side_is_still_told() -> None:
    random = np.random.default_rng(4)
    gained = [
        first_beside(
            series_of(Course(a_month=10), random), series_of(Course(a_week=1), random, Side.RIGHT)
        )
        for _ in range(60)
    ]
    assert np.isfinite(np.array(gained)[:, 0]).mean() > 0.9
