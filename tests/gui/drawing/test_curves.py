"""Curves of the history chart."""

from gui.drawing.curves import conducts_of, curves, movements_of
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, BodyPosition
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY
from tests.support.record_samples import person


def test_what_was_done_differently_shares_no_curve() -> None:
    history = demo_history(person(), TODAY, weeks=20)
    assert Movement.EXTENSION not in movements_of(history)
    drawn = curves(history, Movement.FLEXION, AssessmentCondition())
    assert {curve.side for curve in drawn} == set(Side)
    times = [point.time_s for point in drawn[0].points]
    assert times == sorted(times)
    sitting = AssessmentCondition(posture=BodyPosition.SITTING)
    assert curves(history, Movement.FLEXION, sitting) == ()
    assert conducts_of(history, Movement.FLEXION) == (AssessmentCondition(),)
    assert any(point.value is None for curve in drawn for point in curve.points)
    assert len(drawn[0].readings) < len(drawn[0].points)
