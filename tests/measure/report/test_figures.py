"""The figures of a report: where their marks stand."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog
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
    NamedDay,
    band_diagram,
    curve_diagram,
    empty_frame,
    pain_diagram,
    span_of,
    ticks_of,
)
from measure.report.svg import Box, Diagram, Dot, Line, Shape, Words
from tests.support.progress_histories import Values, day, history
from tests.support.record_samples import event, moment, person, some_id

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


def test_each_look_of_a_mark_means_one_thing() -> None:
    """Round is left, square right; black the affected side, grey the other; open is practice."""
    marks = dots(curve({LEFT: TWELVE, RIGHT: [(number, 160.0) for number, _ in TWELVE]}))
    filled = [*[False] * PRACTICE_SESSIONS, *[True] * (12 - PRACTICE_SESSIONS)]
    assert [mark.filled for mark in marks] == [*filled, *filled]
    assert {(mark.shape, mark.shade == 0) for mark in marks[:12]} == {(Shape.SQUARE, False)}
    assert {(mark.shape, mark.shade == 0) for mark in marks[12:]} == {(Shape.ROUND, True)}
    # Up is more: the marks of 160 degrees stand above all others.
    assert max(mark.y for mark in marks[:12]) < min(mark.y for mark in marks[12:])


def test_a_refusal_is_a_cross_at_the_foot_of_the_curve_and_no_mark_of_a_reading() -> None:
    picture = curve({LEFT: TWELVE})
    crossing = [
        mark
        for mark in picture.marks
        if isinstance(mark, Line) and mark.x2 - mark.x1 == pytest.approx(abs(mark.y2 - mark.y1))
    ]
    assert len(crossing) == 2
    assert min(line.y1 for line in crossing) > max(mark.y for mark in dots(picture))
    assert len(dots(picture)) == len(TWELVE)
    assert not [mark for mark in boxes(picture) if mark.fill is None]


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


def test_events_that_begin_no_series_are_drawn_and_named_too() -> None:
    """An injection before the first reading, a clinic visit: both stand in the curve."""
    progress = progress_of(history({LEFT: TWELVE}), day(84))
    span = (day(-20).toordinal(), day(86).toordinal())
    events = [
        NamedDay(day(-10), "injection"),
        NamedDay(day(40), "visit"),
        NamedDay(day(41), "flare"),
    ]
    picture = curve_diagram(progress.usual, [], span, ReportChoices(), events)
    lines = [mark for mark in picture.marks if isinstance(mark, Line) and mark.dashed]
    assert len(lines) == 3
    assert {"injection", "visit"} <= set(words(picture))
    # Words that would run into others are left out; the line stands.
    assert "flare" not in words(picture)


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
    assert {(mark.shape, mark.shade == 0) for mark in later} == {
        (Shape.ROUND, True),
        (Shape.SQUARE, False),
    }


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
    records = history(
        {LEFT: [(14, 90.0)]}, pain={7: Pain(rest=0, night=3, worst_24h=10), 14: Pain()}
    )
    hurt = tuple(replace(record, pain_during=8) for record in records.measurements)
    pendulum = Exercise(listed=ListedExercise.PENDULUM)
    logs = tuple(
        ExerciseLog(
            id=some_id(f"log {count}"),
            person_id=records.person.id,
            exercise=pendulum,
            done=moment(f"{day(number).isoformat()}T10:0{count}:00+00:00"),
        )
        for count, number in enumerate((3, 3, 5, 40))
    )
    records = replace(records, measurements=hurt, exercises_done=logs)
    span = (day(0).toordinal(), day(30).toordinal())
    picture = pain_diagram(records, span, ReportChoices())
    during, worst = dots(picture)
    assert (during.shape, worst.shape) == (Shape.TRIANGLE, Shape.DIAMOND)
    assert during.filled
    assert worst.filled
    assert worst.y < during.y
    # One stroke a day, however much was done on it, and none for a day that is not shown.
    foot = max(mark.y1 for mark in picture.marks if isinstance(mark, Line) and mark.y1 == mark.y2)
    strokes = [m for m in picture.marks if isinstance(m, Line) and m.y1 > foot + 5]
    assert len(strokes) == 2
    assert "Days with exercises logged" in words(picture)
    without = pain_diagram(replace(records, exercises_done=()), span, ReportChoices())
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
