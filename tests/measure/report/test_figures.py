"""The figures of a report: where their marks stand."""

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reading_scale import scale_of
from measure.domain.records import EventKind, Pain
from measure.progress.comparison import Block
from measure.progress.overview import progress_of
from measure.progress.series import PRACTICE_SESSIONS
from measure.report.choices import ReportChoices
from measure.report.figures import (
    MOST_BANDS,
    band_diagram,
    curve_diagram,
    empty_frame,
    pain_diagram,
    span_of,
    ticks_of,
)
from measure.report.svg import Box, Diagram, Dot, Line, Words
from tests.support.progress_histories import Values, day, history
from tests.support.record_samples import event, person

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)
TWELVE = [(7 * week, 90.0 + week) for week in range(12)]


def block(value: float, half: float) -> Block:
    return Block(
        value=value,
        low=value - half,
        high=value + half,
        half_width=5.0,
        days=5,
        first=day(0),
        last=day(7),
    )


def boxes(picture: Diagram) -> list[Box]:
    return [mark for mark in picture.marks if isinstance(mark, Box)]


def dots(picture: Diagram) -> list[Dot]:
    return [mark for mark in picture.marks if isinstance(mark, Dot)]


def words(picture: Diagram) -> list[str]:
    return [mark.text for mark in picture.marks if isinstance(mark, Words)]


def curve(values: Values, **more: object) -> Diagram:
    records = history(values, **more)  # type: ignore[arg-type]
    progress = progress_of(records, day(84))
    span = span_of([session.started.day.toordinal() for session in records.sessions], day(84))
    return curve_diagram(progress.usual, [(Side.LEFT, day(10))], span, ReportChoices())


def test_a_band_reaches_from_end_to_end_with_the_mark_in_it() -> None:
    picture = band_diagram(Movement.FLEXION, block(90, 9), None)
    (band,) = boxes(picture)
    mark = picture.marks[-1]
    assert isinstance(mark, Line)
    # 90 degrees is the middle of 0 to 180; 18 degrees a tenth of its length.
    assert mark.x1 == pytest.approx(picture.width / 2)
    assert band.width == pytest.approx((picture.width - 8) / 10)
    assert band.x < mark.x1 < band.x + band.width


def test_a_wide_band_is_pale_and_a_narrow_one_dark() -> None:
    narrow, wide = (
        boxes(band_diagram(Movement.FLEXION, block(90, half), None))[0].fill for half in (4, 16)
    )
    assert narrow is not None
    assert wide is not None
    assert 0 < narrow < wide < 1


def test_the_first_days_are_an_open_mark() -> None:
    picture = band_diagram(Movement.FLEXION, block(120, 8), block(60, 8))
    (first,) = dots(picture)
    assert not first.filled
    assert first.x == pytest.approx(4 + (picture.width - 8) / 3)


@pytest.mark.parametrize("value", [-50.0, 250.0])
def test_values_beyond_the_scale_stay_in_the_picture(value: float) -> None:
    picture = band_diagram(Movement.FLEXION, block(value, 8), None)
    assert all(0 <= box.x <= box.x + box.width <= picture.width for box in boxes(picture))


def test_a_refusal_is_an_empty_dashed_frame() -> None:
    (frame,) = boxes(empty_frame())
    assert frame.fill is None
    assert frame.dashed


@pytest.mark.parametrize("movement", list(Movement))
def test_named_places_lie_on_the_scale(movement: Movement) -> None:
    low, high = scale_of(movement)
    values = [value for value, _ in ticks_of(movement)]
    assert values == sorted(values)
    assert low <= values[0] < values[-1] <= high


def test_the_affected_side_is_filled_left_is_round() -> None:
    marks = dots(curve({LEFT: TWELVE, RIGHT: [(number, 160.0) for number, _ in TWELVE]}))
    practice = [(False, False)] * PRACTICE_SESSIONS
    assert [(mark.square, mark.filled) for mark in marks] == [
        *[(True, False)] * 12,
        *practice,
        *[(False, True)] * (12 - PRACTICE_SESSIONS),
    ]
    # Up is more: the open marks of 160 degrees stand above all others.
    assert max(mark.y for mark in marks[:12]) < min(mark.y for mark in marks[12:])


def test_a_refusal_stands_at_the_foot_of_the_curve() -> None:
    picture = curve({LEFT: TWELVE})
    (frame,) = [mark for mark in boxes(picture) if mark.fill is None]
    assert frame.y > max(mark.y for mark in dots(picture))


def test_a_break_is_a_named_dashed_line_and_the_trend_begins_after_it() -> None:
    hurt = event(person(), kind=EventKind.INJECTION, day=day(20), side=Side.LEFT)
    days = [(number, 90.0 + number / 7) for number in range(0, 84, 2)]
    picture = curve({LEFT: days}, events=[hurt])
    (dashed,) = [mark for mark in picture.marks if isinstance(mark, Line) and mark.dashed]
    assert "injection" in words(picture)
    trend = picture.marks[-1]
    assert isinstance(trend, Line)
    assert trend.x1 > dashed.x1
    assert trend.y2 < trend.y1


def test_long_times_are_drawn_by_the_week() -> None:
    values = [(number, 90 + 0.1 * number) for number in range(84)]
    assert len(dots(curve({LEFT: values}))) == 84
    records = history({LEFT: [(number, 90.0) for number in range(200)]})
    progress = progress_of(records, day(200))
    span = span_of([day(0).toordinal()], day(200))
    picture = curve_diagram(progress.usual, [], span, ReportChoices())
    assert 28 <= len(dots(picture)) <= 30 < MOST_BANDS


def test_the_axis_shows_a_year_at_most_and_four_weeks_at_least() -> None:
    today = day(0)
    first, last = span_of([today.toordinal() - 3000.0], today)
    assert 360 < last - first < 375
    first, last = span_of([today.toordinal()], today)
    assert last - first >= 28


def test_both_affected_are_told_apart_in_grey_print() -> None:
    who = person(affected=(Side.LEFT, Side.RIGHT))
    picture = curve({LEFT: TWELVE, RIGHT: [(number, 95.0) for number, _ in TWELVE]}, who=who)
    later = [mark for mark in dots(picture) if mark.x > 100]
    assert {(mark.square, mark.filled) for mark in later} == {(False, True), (True, False)}


def test_the_sides_are_named_beside_their_latest_readings() -> None:
    picture = curve({LEFT: TWELVE, RIGHT: [(number, 102.0) for number, _ in TWELVE]})
    left, right = (
        next(m for m in picture.marks if isinstance(m, Words) and m.text == side)
        for side in ("left", "right")
    )
    assert (left.bold, right.bold) == (True, False)
    # Close readings: the names stand clear of each other all the same.
    assert left.y - right.y >= 8
    assert "left" not in words(curve({LEFT: TWELVE}))


def test_no_word_in_a_figure_is_smaller_than_eight_points() -> None:
    picture = curve({LEFT: TWELVE, RIGHT: TWELVE})
    assert min(mark.size for mark in picture.marks if isinstance(mark, Words)) >= 8


def test_pain_and_the_days_with_exercises() -> None:
    records = history({}, pain={7: Pain(rest=0, night=3, worst_24h=10), 14: Pain()})
    span = (day(0).toordinal(), day(30).toordinal())
    picture = pain_diagram(records.sessions, [day(3), day(5), day(40)], span, ReportChoices())
    worst, night = dots(picture)
    assert (worst.filled, night.filled) == (True, False)
    assert worst.y < night.y
    # One stroke a day, however much was done on it, and none for a day that is not shown.
    foot = max(mark.y1 for mark in picture.marks if isinstance(mark, Line) and mark.y1 == mark.y2)
    strokes = [m for m in picture.marks if isinstance(m, Line) and m.y1 > foot + 5]
    assert len(strokes) == 2
    assert "Days with exercises logged" in words(picture)
    without = pain_diagram(records.sessions, [], span, ReportChoices())
    assert "Days with exercises logged" not in words(without)


def test_every_mark_of_the_figures_lies_in_its_picture() -> None:
    rng = np.random.default_rng(1)
    values = [(number, float(rng.uniform(-50, 250))) for number in range(0, 84, 2)]
    picture = curve({LEFT: values})
    for mark in dots(picture):
        assert 0 < mark.x < picture.width
        assert 0 < mark.y < picture.height


def test_words_of_an_event_stand_above_the_readings_unless_the_name_is_there() -> None:
    values = {
        (Movement.EXTERNAL_ROTATION, Side.LEFT): [(number, 30.0) for number in range(0, 200, 7)]
    }
    for number, above in ((100, False), (190, True)):
        injected = event(person(), kind=EventKind.INJECTION, day=day(number), side=Side.LEFT)
        progress = progress_of(history(values, events=[injected]), day(200))
        span = (day(0).toordinal(), day(200).toordinal())
        picture = curve_diagram(progress.usual, [], span, ReportChoices())
        (shown,) = [
            mark for mark in picture.marks if isinstance(mark, Words) and mark.text == "injection"
        ]
        (highest,) = [
            mark.y for mark in picture.marks if isinstance(mark, Words) and mark.text == "90°"
        ]
        assert (shown.y < highest - 4) is above
