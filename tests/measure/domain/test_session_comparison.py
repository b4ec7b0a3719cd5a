"""Both sides of a session beside each other, and the time before."""

import datetime as dt
from dataclasses import replace

import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement, Unit
from measure.domain.records import AssessmentCondition, Assistance, History
from measure.domain.session_comparison import (
    last_readings,
    of_session,
    shown_difference,
    side_difference,
    times_read,
)
from measure.domain.session_facts import ExerciseTiming, SessionState
from measure.system.clock import new_id
from tests.support import record_samples as sample

LEFT = sample.measurement(value=90.0, low=84.0, high=96.0)
RIGHT = replace(LEFT, side=Side.RIGHT, value=120.0, low=112.0, high=128.0)
REFUSED = replace(sample.REFUSAL, movement=Movement.FLEXION)


def test_the_difference_names_the_side_that_moves_less() -> None:
    difference = side_difference(LEFT, RIGHT)
    assert difference is not None
    assert (difference.less, difference.value) == (Side.LEFT, 30.0)
    assert (difference.low, difference.high) == (20.0, 40.0)
    turned = side_difference(replace(RIGHT, side=Side.LEFT), replace(LEFT, side=Side.RIGHT))
    assert turned == replace(difference, less=Side.RIGHT)


def test_the_difference_agrees_with_the_whole_degrees_that_are_read() -> None:
    """149 and 80 are 69 apart for whoever reads them, whatever was rounded away."""
    left, right = replace(LEFT, value=80.4), replace(RIGHT, value=148.6)
    difference = side_difference(left, right)
    assert difference is not None
    assert difference.value == pytest.approx(68.2)
    assert difference.shown == 69
    # Heights behind the back are read as levels, so nothing is rounded before.
    assert shown_difference(0.304, 0.496, Unit.FRACTION) == pytest.approx(0.192)


def test_a_refusal_has_no_difference() -> None:
    assert side_difference(LEFT, REFUSED) is None


@pytest.mark.parametrize("order", [(LEFT, REFUSED), (REFUSED, LEFT)])
def test_a_reading_counts_before_a_refusal(order: tuple[object, ...]) -> None:
    assert of_session(order) == {(Movement.FLEXION, Side.LEFT): LEFT}  # type: ignore[arg-type]


def test_what_was_never_tried_is_left_out() -> None:
    later = replace(LEFT, value=95.0)
    assert of_session([None, replace(REFUSED, trials=())]) == {}
    assert of_session([LEFT, later]) == {(Movement.FLEXION, Side.LEFT): later}


def test_the_time_before_is_the_last_reading_in_the_same_way() -> None:
    who = sample.person()
    sessions = [sample.session(who, number) for number in (1, 2)]
    plain = AssessmentCondition()
    records = (
        sample.record(sessions[0], 1, LEFT, conduct=plain),
        sample.record(sessions[1], 1, replace(LEFT, value=95.0), conduct=plain),
        sample.record(sessions[1], 2, REFUSED, conduct=plain),
        sample.record(sessions[1], 3, RIGHT, conduct=AssessmentCondition(help=Assistance.STICK)),
    )
    history = History(person=who, sessions=tuple(sessions), measurements=records)
    assert last_readings(history, plain) == {(Movement.FLEXION, Side.LEFT): records[1]}


def test_readings_of_a_day_are_counted_where_they_were_made_alike() -> None:
    who = sample.person()
    first = sample.session(who, 1)
    again = replace(first, id=new_id())
    warm = replace(first, id=new_id(), state=SessionState(timing=ExerciseTiming.AFTER))
    records = [
        sample.record(session, number, measured, taken=first.started, conduct=first.conduct)
        for number, (session, measured) in enumerate(
            ((first, LEFT), (again, LEFT), (warm, LEFT), (again, REFUSED), (again, RIGHT)), start=1
        )
    ]
    others = replace(records[0], id=new_id(), conduct=AssessmentCondition(help=Assistance.STICK))
    history = History(person=who, sessions=(first, again, warm), measurements=(*records, others))
    day, left = first.started.day, (Movement.FLEXION, Side.LEFT)
    right = (Movement.FLEXION, Side.RIGHT)
    before = times_read(history, first.conduct, day, after_exercises=False)
    assert before == {left: 2, right: 1}
    assert times_read(history, first.conduct, day, after_exercises=True) == {left: 1}
    later = day + dt.timedelta(days=1)
    assert not times_read(history, first.conduct, later, after_exercises=False)
