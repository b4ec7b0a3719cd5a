"""Ribbons of a chart: none across a break, none from practice, pain within its scale."""

import datetime as dt

from measure.demo.story import story_histories
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.progress.overview import progress_of
from measure.system.clock import Timestamp
from measure.trend.pain_course import pain_ribbons

NOW = Timestamp(utc=dt.datetime(2026, 11, 25, 18, tzinfo=dt.UTC))
_, BRAMBLE, THISTLE, _ = story_histories(NOW)


def test_no_ribbon_runs_across_an_injection() -> None:
    side = progress_of(THISTLE, NOW.day).of(Movement.FLEXION, Side.LEFT)
    assert side is not None
    before, after = side.ribbons()
    (injection,) = THISTLE.events
    assert before.day[-1] <= injection.day.toordinal() < after.day[0]
    assert before.day[0] == side.series.day[2]  # two sessions of practice


def test_the_ribbon_is_as_wide_as_the_scatter_makes_it() -> None:
    side = progress_of(BRAMBLE, NOW.day).of(Movement.FLEXION, Side.RIGHT)
    assert side is not None
    (ribbon,) = side.ribbons()
    middle = len(ribbon.day) // 2
    half = (ribbon.high - ribbon.low)[middle] / 2
    assert 0.3 * side.spread < half < 1.5 * side.spread
    inside = sum(
        ribbon.low[int(day - ribbon.day[0])] - 2 * side.spread
        < value
        < ribbon.high[int(day - ribbon.day[0])] + 2 * side.spread
        for day, value in zip(side.series.day[2:], side.series.value[2:], strict=True)
    )
    assert inside > 0.9 * (len(side.series) - 2)


def test_pain_follows_the_worst_of_each_day() -> None:
    worst = {
        record.taken.day.toordinal(): record.pain_during or 0
        for record in THISTLE.measurements
        if record.measurement.side is Side.LEFT
    }
    (pain,) = pain_ribbons(worst)
    assert pain.value.max() > 7
    assert pain.value[-1] < 4
    assert pain.low.min() >= 0
    assert pain.high.max() <= 10
    assert pain_ribbons({}) == ()
