"""Scales of the history chart: every day in its place, the same range whatever is measured."""

import datetime as dt
import itertools

import pytest

from gui.drawing.chart_scales import (
    ChartRange,
    DayScale,
    TickUnit,
    ValueScale,
    first_day,
    value_ticks,
)
from measure.domain.movements import Movement

TODAY = dt.date(2026, 11, 25)


def scale(days: int) -> DayScale:
    return DayScale(
        first=TODAY - dt.timedelta(days=days), last=TODAY, left_px=100.0, right_px=900.0
    )


def test_days_lie_evenly_between_both_ends() -> None:
    days = scale(80)
    steps = {
        round(days.x(TODAY - dt.timedelta(days=k)) - days.x(TODAY - dt.timedelta(days=k + 1)), 6)
        for k in range(80)
    }
    assert len(steps) == 1
    assert 100 < days.x(days.first) < days.x(days.last) < 900


@pytest.mark.parametrize(
    ("days", "unit"),
    [
        (28, TickUnit.DAY),
        (91, TickUnit.DAY),
        (160, TickUnit.MONTH),
        (900, TickUnit.MONTH),
        (9000, TickUnit.YEAR),
    ],
)
def test_ticks_are_whole_days_with_room_for_their_names(days: int, unit: TickUnit) -> None:
    unit_shown, ticks = scale(days).ticks(70)
    assert unit_shown is unit
    assert ticks
    places = [scale(days).x(day) for day in ticks]
    assert all(after - before >= 65 for before, after in itertools.pairwise(places))
    if unit is TickUnit.DAY:
        assert {day.weekday() for day in ticks} == {0}
    else:
        assert {day.day for day in ticks} == {1}


def test_a_value_beyond_the_scale_lies_at_its_end() -> None:
    values = ValueScale(low=0, high=180, top_px=10, bottom_px=190)
    assert (values.y(0), values.y(90), values.y(180)) == (190, 100, 10)
    assert values.y(-20) == 190
    assert values.beyond(-20)
    assert not values.beyond(180)


@pytest.mark.parametrize("movement", Movement)
def test_the_axis_names_degrees_or_levels(movement: Movement) -> None:
    names = [name for _, name in value_ticks(movement)]
    if movement is Movement.HAND_BEHIND_BACK:
        assert names == ["buttock", "S2", "L3", "T12", "T7"]
    else:
        assert names[0] == "0°"
        assert names[-1] in ("90°", "180°")


def test_a_range_ends_today_and_begins_as_chosen() -> None:
    days = [dt.date(2026, 7, 8), dt.date(2026, 11, 22)]
    assert first_day(days, TODAY, ChartRange.FOUR_WEEKS) == dt.date(2026, 10, 28)
    assert first_day(days, TODAY, ChartRange.THREE_MONTHS) == dt.date(2026, 8, 26)
    assert first_day(days, TODAY, ChartRange.ALL) == dt.date(2026, 7, 8)
    assert first_day(days[1:], TODAY, ChartRange.ALL) == dt.date(2026, 11, 11)
