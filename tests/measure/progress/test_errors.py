"""How often the verdicts are wrong, and how soon right: simulated people, always the same.

Small enough for every run; `make bench-progress` uses many more people and more courses. The
limits are what is promised, plus three standard deviations of a count of so few.
"""

import math

import pytest
from scipy import stats

from tests.bench.progress_limit import best_power
from tests.bench.progress_people import Course, first_weeks
from tests.bench.progress_rows import power
from tests.bench.progress_rules import first_stall, first_verdict

PEOPLE = 250
SEED = 7


def told(course: Course) -> tuple[float, float]:
    """Return the share told of a change within the course, and the median week."""
    changed, _ = first_weeks(course, PEOPLE, SEED, first_verdict)
    return changed.share, changed.median_week


def at_most(share: float) -> float:
    return share + 3 * math.sqrt(share * (1 - share) / PEOPLE)


def at_least(share: float) -> float:
    return share - 3 * math.sqrt(share * (1 - share) / PEOPLE)


@pytest.mark.parametrize(
    "course",
    [Course(), Course(missed=0.2, odd=0.1)],
    ids=["all kept", "missed and odd"],
)
def test_flat_people_are_seldom_told_of_a_change(course: Course) -> None:
    assert told(course)[0] <= at_most(0.03)


def test_related_days_fool_it_seldom() -> None:
    assert told(Course(related=0.3, missed=0.2, odd=0.1))[0] <= at_most(0.07)


@pytest.mark.parametrize(
    "course",
    [Course(a_month=5, missed=0.2), Course(a_month=5, odd=0.1)],
    ids=["missed", "odd"],
)
def test_one_movement_alone_shows_five_degrees_a_month_in_twelve_weeks(course: Course) -> None:
    """Two sessions less than there were count, and no other movement backs it."""
    assert told(course)[0] >= at_least(0.8)


@pytest.mark.parametrize(
    "course",
    [Course(a_month=5, missed=0.2), Course(a_month=5, odd=0.1)],
    ids=["missed", "odd"],
)
def test_three_movements_show_five_degrees_a_month_in_twelve_weeks(course: Course) -> None:
    shown = power(course, PEOPLE // 3, SEED)
    assert shown["told by week 12"] >= 100 * at_least(0.9)


def test_what_nobody_can_do_better() -> None:
    """Without a change only false alarms remain, half of them in either direction."""
    assert best_power(Course(), 3, SEED, 0.03) == pytest.approx(0.015)
    # 36 sessions: the slope's error is the spread over sqrt(sum of squared days).
    error = Course().spread / math.sqrt(sum((day - 40.5) ** 2 for day in _days())) * 365.25 / 12
    expected = stats.norm.sf(stats.norm.isf(0.015) - 3 / error)
    assert best_power(Course(a_month=3), 3, SEED, 0.03) == pytest.approx(expected)


def test_the_rule_in_use_sees_no_more_than_can_be_seen() -> None:
    course = Course(a_month=3, missed=0.2, odd=0.1)
    assert told(course)[0] < best_power(course, PEOPLE, SEED, 0.03)


def _days() -> list[int]:
    return [7 * week + each for week in range(12) for each in (0, 2, 4)]


def test_one_movement_alone_shows_ten_degrees_a_month_in_nine_weeks() -> None:
    share, week = told(Course(a_month=10, missed=0.2))
    assert share >= 0.98
    assert week <= 9


def test_front_loaded_recovery_is_seen_and_so_is_its_end() -> None:
    course = Course(quick=(30, 42), weeks=30)
    changed, _ = first_weeks(course, 40, SEED, first_verdict)
    (stall,) = first_weeks(course, 40, SEED, first_stall(160.0))
    assert changed.share == 1.0
    assert changed.median_week <= 9
    assert stall.share > 0.7
    assert stall.median_week > 12
