"""Content of the history chart."""

import datetime as dt
from dataclasses import replace

import pytest

from gui.drawing.curves import ChartContent, chart_content, conducts_of, movements_of
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, BodyPosition, History
from measure.domain.session_facts import ExerciseTiming, SessionState
from measure.progress.overview import progress_of
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY
from tests.support.record_samples import person


@pytest.fixture(scope="module")
def history() -> History:
    return demo_history(person(), TODAY, weeks=20)


def content(history: History, conduct: AssessmentCondition | None = None) -> ChartContent:
    sides = [
        side for side in progress_of(history, TODAY).sides if side.movement is Movement.FLEXION
    ]
    conduct = conduct or AssessmentCondition()
    return chart_content(history, Movement.FLEXION, conduct, sides, TODAY)


def test_what_was_done_differently_shares_no_chart(history: History) -> None:
    assert Movement.EXTENSION not in movements_of(history)
    assert conducts_of(history, Movement.FLEXION) == (AssessmentCondition(),)
    sitting = AssessmentCondition(posture=BodyPosition.SITTING)
    assert content(history, sitting).curves == ()


def test_both_sides_with_every_measurement_on_its_own_day(history: History) -> None:
    drawn = content(history)
    assert [curve.side for curve in drawn.curves] == [Side.LEFT, Side.RIGHT]
    assert [curve.affected for curve in drawn.curves] == [True, False]
    assert len(drawn.points) == len(history.sessions) * 2
    assert all(point.day == point.record.taken.day for point in drawn.points)
    days = [point.day for point in drawn.points]
    assert days == sorted(days)
    refused = [point for point in drawn.points if point.value is None]
    assert refused
    assert {point.side for point in refused} <= set(Side)


def test_the_first_sessions_are_practice_and_under_no_ribbon(history: History) -> None:
    left = content(history).curves[0]
    practised = [point.day for point in left.points if point.practice]
    assert len(practised) == 2
    (ribbon,) = left.ribbons
    assert ribbon.day[0] > max(practised).toordinal()


def test_the_ribbon_runs_through_the_readings(history: History) -> None:
    left = content(history).curves[0]
    (ribbon,) = left.ribbons
    value = {
        dt.date.fromordinal(int(day)): v for day, v in zip(ribbon.day, ribbon.value, strict=True)
    }
    away = [
        abs(point.value - value[point.day])
        for point in left.points
        if point.value is not None and point.day in value
    ]
    assert sorted(away)[len(away) // 2] < 5
    assert max(ribbon.high - ribbon.low) < 30


def test_pain_is_that_of_the_affected_side(history: History) -> None:
    (pain,) = content(history).pain
    assert pain.value[0] > 3
    assert pain.value[-1] < 3
    assert pain.low.min() >= 0


def test_sessions_after_exercises_lie_apart_from_the_line(history: History) -> None:
    session = history.sessions[20]
    after = replace(session, state=SessionState(timing=ExerciseTiming.AFTER))
    sessions = tuple(after if each.id == session.id else each for each in history.sessions)
    drawn = content(replace(history, sessions=sessions, exercises_done=()))
    apart = [point for point in drawn.points if point.apart]
    assert {point.record.session_id for point in apart} == {session.id}
    assert {point.side for point in apart} == set(Side)
    assert not any(point.practice for point in apart)
