"""Levels, changes, the other shoulder and what is said about a person on a day."""

import math
from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind
from measure.progress.comparison import (
    Block,
    Scatter,
    baseline_block,
    change_between,
    recent_block,
)
from measure.progress.overview import Progress, progress_of
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import Verdict
from tests.bench.progress_people import FIRST_DAY, plain_series
from tests.support.progress_histories import Values, day, history
from tests.support.record_samples import event, person, plan

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)
ROTATION = (Movement.EXTERNAL_ROTATION, Side.LEFT)
#: Monday, Wednesday and Friday of twelve weeks.
DAYS = [7 * week + each for week in range(12) for each in (0, 2, 4)]
WEEKLY = DAYS[::3]


def course(
    start: float, a_week: float, *, days: list[int] = DAYS, seed: int = 1, noise: float = 2.0
) -> list[tuple[int, float]]:
    scatter = np.random.default_rng(seed).normal(0, noise, len(days))
    return [
        (number, start + a_week * number / 7 + float(off))
        for number, off in zip(days, scatter, strict=True)
    ]


def progress(values: Values, today: int = 84, **more: object) -> Progress:
    return progress_of(history(values, **more), day(today))  # type: ignore[arg-type]


def of(found: Progress, which: tuple[Movement, Side] = LEFT) -> SideProgress:
    side = found.of(*which)
    assert side is not None
    return side


def test_nobody_measured_yet() -> None:
    found = progress({})
    assert found.sides == ()
    assert found.prompts == ()


def test_a_gain_with_the_other_side_level() -> None:
    found = of(progress({LEFT: course(90, 2), RIGHT: course(160, 0, days=WEEKLY, seed=2)}))
    assert found.verdict is Verdict.GAINING
    assert found.affected
    assert found.drifted_by is None
    assert found.change is not None
    assert found.change.low > 15
    # The first two sessions are practice.
    assert found.baseline.first == day(4)
    assert found.recent.last == day(81)
    assert found.other is not None
    assert found.short_by == pytest.approx(found.other.value - found.recent.value)
    assert 40 < found.short_by < 55


def test_a_loss() -> None:
    assert of(progress({LEFT: course(120, -2)})).verdict is Verdict.LOSING


def test_a_stall_needs_the_other_side() -> None:
    alone = progress({LEFT: course(100, 0)})
    assert of(alone).verdict is Verdict.NO_CLEAR_CHANGE
    assert of(alone).other is None
    assert of(alone).short_by is None
    both = progress({LEFT: course(100, 0, seed=3), RIGHT: course(160, 0, days=WEEKLY, seed=2)})
    assert of(both).verdict is Verdict.STALLED
    # The other side has nothing to gain.
    assert of(both, RIGHT).verdict is Verdict.NO_CLEAR_CHANGE


def test_no_stall_where_both_are_affected() -> None:
    who = person(affected=(Side.LEFT, Side.RIGHT))
    values = {LEFT: course(100, 0), RIGHT: course(160, 0, days=WEEKLY, seed=2)}
    found = progress(values, who=who)
    assert of(found).verdict is Verdict.NO_CLEAR_CHANGE
    assert of(found).other is None


def test_both_sides_moving_together_blame_the_set_up() -> None:
    values = {LEFT: course(90, 1.5), RIGHT: course(140, 1.5, days=WEEKLY, seed=2)}
    found = of(progress(values))
    assert found.verdict is Verdict.NO_CLEAR_CHANGE
    assert found.drifted_by == pytest.approx(12, abs=3)
    # Two affected shoulders may well come back together.
    both = progress(values, who=person(affected=(Side.LEFT, Side.RIGHT)))
    assert of(both).verdict is Verdict.GAINING
    assert of(both).drifted_by is None


@pytest.mark.parametrize("a_week", [0.3, -1.5])
def test_other_ways_of_the_other_side_blame_nothing(a_week: float) -> None:
    values = {LEFT: course(90, 1.5), RIGHT: course(150, a_week, days=WEEKLY, seed=2)}
    assert of(progress(values)).drifted_by is None
    assert of(progress(values)).verdict is Verdict.GAINING


def test_an_injection_starts_the_trend_anew_but_not_the_comparison() -> None:
    injected = event(person(), kind=EventKind.INJECTION, day=day(60), side=Side.LEFT)
    found = of(progress({LEFT: course(90, 2)}, events=[injected]))
    assert found.verdict is Verdict.TOO_EARLY
    assert found.baseline.first == day(4)
    assert found.change is not None


def test_another_camera_starts_both_anew() -> None:
    changed = event(person(), kind=EventKind.CAMERA_CHANGED, day=day(60), side=None)
    values = {LEFT: course(90, 2), RIGHT: course(160, 0, days=WEEKLY[:8], seed=2)}
    found = of(progress(values, events=[changed]))
    assert found.verdict is Verdict.TOO_EARLY
    assert found.baseline.first == day(65)
    # The other side was not measured with it yet, so it is no reference.
    assert found.other is None


def test_an_earlier_day_shows_what_could_be_said_then() -> None:
    values = {LEFT: course(90, 2)}
    assert of(progress(values, 20)).verdict is Verdict.TOO_EARLY
    early = {LEFT: [each for each in values[LEFT] if each[0] <= 56]}
    then, now = of(progress(values, 56)), of(progress(early, 56))
    assert then.verdict is now.verdict
    assert (then.recent, then.change) == (now.recent, now.change)
    assert [each.evidence for each in then.weekly_checks] == [
        each.evidence for each in now.weekly_checks
    ]


def test_the_spread_is_usual_first_and_then_the_persons_own() -> None:
    early = of(progress({LEFT: course(90, 0)[:7]}))
    assert (early.spread, early.own_spread) == (5.0, False)
    late = of(progress({LEFT: course(90, 0, noise=1.0)}))
    assert late.own_spread
    assert late.spread < 3.5
    rotation = of(progress({ROTATION: course(20, 0)[:7]}), ROTATION)
    assert rotation.spread == 6.0


def test_the_change_since_a_visit_is_as_uncertain_as_that_since_the_first_days() -> None:
    """Two sessions of practice and five more: at a visit then, both begin with the same days."""
    visit = event(person(), kind=EventKind.CLINIC_VISIT, day=day(DAYS[6]), side=None)
    found = of(progress({LEFT: course(90, 1)}, events=[visit]))
    assert found.since_visit is not None
    assert found.since_visit.change == found.change


def test_who_stated_no_side_is_affected_on_both() -> None:
    found = progress({LEFT: course(90, 2), RIGHT: course(160, 0)}, who=person(affected=()))
    assert of(found).affected
    assert of(found, RIGHT).affected


#: Five degrees, known for sure.
SCATTER = Scatter(spread=5.0)


def block(values: list[float], *, of_recent: bool = False, scatter: Scatter = SCATTER) -> Block:
    series = plain_series(FIRST_DAY + np.arange(len(values)) * 2.0, np.array(values))
    return recent_block(series, scatter) if of_recent else baseline_block(series, scatter)


def test_a_baseline_is_the_median_of_the_first_five_days() -> None:
    found = block([90, 70, 92, 94, 91, 150, 150])
    assert (found.value, found.low, found.high, found.days) == (91, 83, 99, 5)


def test_a_recent_block_is_the_median_of_the_last_five_days() -> None:
    assert block([150, 150, 90, 70, 92, 94, 91], of_recent=True).value == 91


def test_a_baseline_takes_three_days_where_they_are_rare() -> None:
    series = plain_series(FIRST_DAY + np.arange(6) * 14.0, np.arange(90.0, 96.0))
    assert baseline_block(series, SCATTER).days == 3


@pytest.mark.parametrize(("every", "days"), [(2, 5), (5, 5), (7, 3), (14, 3), (21, 2), (42, 1)])
def test_a_recent_block_reaches_back_six_weeks_for_three_days(every: int, days: int) -> None:
    series = plain_series(FIRST_DAY + np.arange(8.0) * every, np.arange(90.0, 98.0))
    assert recent_block(series, SCATTER).days == days


def test_one_day_is_a_block_of_one() -> None:
    found = block([90])
    assert found.days == 1
    assert found.half_width == pytest.approx(1.96 * 5, rel=2e-3)
    assert found.first == found.last


def test_the_median_of_five_is_known_better_than_one() -> None:
    """Simulated: the half-width holds 95 % of medians of five."""
    medians = np.median(np.random.default_rng(1).normal(0, 5, (20_000, 5)), axis=1)
    share = float((np.abs(medians) <= block([90] * 5).half_width).mean())
    assert share == pytest.approx(0.95, abs=0.01)


def test_related_days_and_an_uncertain_spread_widen_a_block() -> None:
    """By hand: five days with r = 0.5 have the variance (1 + 2 * 0.6125) / 5; t(10) is 2.228."""
    scatter = Scatter(spread=5.0, related=0.5, degrees_of_freedom=10.0)
    half = block([90] * 5, scatter=scatter).half_width
    assert half == pytest.approx(2.228 * 1.2 * 5 * math.sqrt(0.445), rel=1e-3)


def test_a_change_has_the_interval_of_both_blocks() -> None:
    before = block([90, 90, 90, 100, 100, 100])
    series = plain_series(FIRST_DAY + 40 + np.arange(5) * 2.0, np.full(5, 110.0))
    after = recent_block(series, SCATTER)
    change = change_between(before, after)
    assert change is not None
    assert change.value == 20
    half = np.hypot(before.half_width, after.half_width)
    assert (change.low, change.high) == (pytest.approx(20 - half), pytest.approx(20 + half))


def test_blocks_that_share_days_show_no_change() -> None:
    found = block([90, 92, 94])
    assert change_between(found, found) is None


def test_the_plan_chooses_the_primary_movements() -> None:
    values = {LEFT: course(90, 2), (Movement.ABDUCTION, Side.LEFT): course(80, 2, seed=3)}
    usual = {side.movement: side.primary for side in progress(values).sides}
    assert usual == {Movement.FLEXION: True, Movement.ABDUCTION: False}
    chosen = replace(plan(person(), first_day=day(0)), primary=(Movement.ABDUCTION,))
    kept = replace(history(values), plans=(chosen,))
    sides = progress_of(kept, day(83)).sides
    assert {side.movement: side.primary for side in sides} == {
        Movement.FLEXION: False,
        Movement.ABDUCTION: True,
    }
