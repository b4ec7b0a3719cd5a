"""What is due once a session has ended or the window is opened: exercises, unless it hurts."""

import datetime as dt
from dataclasses import replace

import pytest

from gui.session.beginning import only_exercises_due
from measure.domain.home_programme_records import Plan
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Pain
from measure.progress.measuring_plan import MeasuringPlan
from measure.system.clock import new_id
from tests.support.gui.planned_exercises import EXERCISES
from tests.support.progress_histories import history


@pytest.mark.parametrize(("rest", "due"), [(None, True), (6, True), (7, False)])
def test_after_much_pain_at_rest_no_exercises_are_offered_by_themselves(
    rest: int | None, due: bool
) -> None:
    known = history({(Movement.FLEXION, Side.LEFT): [(0, 90.0)]}, pain={0: Pain(rest=rest)})
    today = known.sessions[0].started.day
    programme = Plan(
        id=new_id(),
        person_id=known.person.id,
        first_day=today - dt.timedelta(days=1),
        exercises=EXERCISES,
        pain_limit=4,
    )
    nothing = MeasuringPlan(
        tasks=(),
        whole=False,
        due=False,
        next_day=today + dt.timedelta(days=1),
        minutes_a_task=1.0,
        first=False,
        usual_time=None,
    )
    known = replace(known, plans=(programme,))
    assert only_exercises_due(known, nothing, today) is due
