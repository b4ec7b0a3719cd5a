"""What is due to be measured: little and often, everything once a week."""

import datetime as dt
from dataclasses import replace

import pytest

from measure.domain.home_programme_records import Plan
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.progress.measuring_plan import USUAL_MIN, measuring_plan
from measure.progress.person_evidence import PRIMARY_MOVEMENTS
from measure.system.clock import Timestamp
from tests.support import record_samples as sample
from tests.support.progress_histories import FIRST, day, history
from tests.support.record_samples import person, some_id

EVERYTHING = (Movement.FLEXION, Movement.ABDUCTION)
WHOLE = {(movement, side) for movement in EVERYTHING for side in Side}
LEFT_PRIMARY = {(movement, Side.LEFT) for movement in PRIMARY_MOVEMENTS}


def _measured(*days: int, whole: tuple[int, ...] = ()) -> History:
    """Return primary movements of the left side on days, and everything on others."""
    values: dict[tuple[Movement, Side], list[tuple[int, float | None]]] = {}
    for tasks, numbers in ((LEFT_PRIMARY, days), (WHOLE, whole)):
        for task in tasks:
            values.setdefault(task, []).extend((number, 0.5) for number in numbers)
    return history(values)


def test_a_first_session_is_short() -> None:
    plan = measuring_plan(History(person=person()), EVERYTHING, FIRST)
    assert (plan.first, plan.due, plan.whole) == (True, True, False)
    assert set(plan.tasks) == LEFT_PRIMARY
    assert plan.minutes_a_task == USUAL_MIN
    assert plan.minutes(len(plan.tasks)) == 3


def test_the_second_takes_in_both_sides_the_good_one_first() -> None:
    plan = measuring_plan(_measured(0), EVERYTHING, day(1))
    assert (plan.whole, plan.due) == (True, True)
    assert set(plan.tasks) == WHOLE
    assert [side for _, side in plan.tasks] == [Side.RIGHT, Side.LEFT] * 2


def test_what_a_first_session_left_out_is_offered_again_that_day() -> None:
    begun = history({(Movement.FLEXION, Side.LEFT): [(0, 100.0)]})
    assert (Movement.FLEXION, Side.LEFT) in LEFT_PRIMARY
    plan = measuring_plan(begun, EVERYTHING, day(0))
    assert (plan.due, plan.whole, plan.next_day) == (True, False, day(0))
    assert set(plan.tasks) == LEFT_PRIMARY - {(Movement.FLEXION, Side.LEFT)}
    assert measuring_plan(begun, EVERYTHING, day(1)).whole
    assert not measuring_plan(_measured(0), EVERYTHING, day(0)).due


def test_between_whole_sessions_the_primary_movements_every_other_day() -> None:
    found = _measured(0, whole=(1,))
    assert not measuring_plan(found, EVERYTHING, day(2)).due
    plan = measuring_plan(found, EVERYTHING, day(3))
    assert (plan.due, plan.whole) == (True, False)
    assert set(plan.tasks) == LEFT_PRIMARY
    assert measuring_plan(found, EVERYTHING, day(2)).next_day == day(3)
    assert measuring_plan(found, EVERYTHING, day(8)).whole
    assert not measuring_plan(found, EVERYTHING, day(7)).whole


def test_after_a_long_pause_today_is_due_and_not_a_day_gone_by() -> None:
    plan = measuring_plan(_measured(0, whole=(1,)), EVERYTHING, day(100))
    assert plan.next_day == day(100)
    assert plan.due


def test_the_same_day_asks_for_nothing_more() -> None:
    plan = measuring_plan(_measured(whole=(1,)), EVERYTHING, day(1))
    assert not plan.due
    assert plan.next_day > day(1)


def test_without_one_stiff_side_both_are_measured() -> None:
    for affected in ((), tuple(Side)):
        who = person(affected=affected)
        plan = measuring_plan(History(person=who), EVERYTHING, FIRST)
        assert {side for _, side in plan.tasks} == set(Side)


def test_a_clinicians_movements_stand_above_the_usual_ones() -> None:
    who = person()
    chosen = Plan(
        id=some_id("plan"),
        person_id=who.id,
        first_day=FIRST,
        exercises=(),
        pain_limit=4,
        primary=(Movement.ABDUCTION,),
    )
    plan = measuring_plan(History(person=who, plans=(chosen,)), EVERYTHING, FIRST)
    assert plan.tasks == ((Movement.ABDUCTION, Side.LEFT),)


def _taken_at(found: History, *minutes: float, trials: int = 3) -> History:
    """Return the history with its movements done at these minutes, the sessions left open."""
    made = tuple(sample.trial(90.0 + number) for number in range(trials))
    in_order = sorted(found.measurements, key=lambda record: record.taken.utc)
    records = tuple(
        replace(
            record,
            taken=Timestamp(utc=record.taken.utc + dt.timedelta(minutes=minute)),
            measurement=replace(record.measurement, trials=made),
        )
        for record, minute in zip(in_order, minutes, strict=True)
    )
    open_long = tuple(replace(session, duration_s=7200.0) for session in found.sessions)
    return replace(found, measurements=records, sessions=open_long)


def test_minutes_are_those_of_the_persons_own_movements() -> None:
    found = _taken_at(_measured(0, 2), 1.0, 3.0, 5.0, 1.0, 2.5, 5.0)
    plan = measuring_plan(found, EVERYTHING, day(4))
    assert plan.minutes_a_task == pytest.approx(2.0)
    assert plan.minutes(3) == 6


def test_neither_breaks_nor_an_open_window_make_movements_long() -> None:
    found = _taken_at(_measured(0, 2), 1.0, 61.0, 62.5, 1.0, 2.5, 4.0)
    assert measuring_plan(found, EVERYTHING, day(4)).minutes_a_task == pytest.approx(1.5)


def test_too_few_movements_say_nothing_of_how_long_they_take() -> None:
    found = _taken_at(_measured(0), 1.0, 5.0, 9.0)
    assert measuring_plan(found, EVERYTHING, day(2)).minutes_a_task == USUAL_MIN


def test_two_trials_in_a_clinic_say_how_long_three_take_at_home() -> None:
    found = _taken_at(_measured(0, 2), 1.0, 1.4, 1.8, 1.0, 1.4, 1.8, trials=2)
    # Two trials in 0.4 minutes.
    assert measuring_plan(found, EVERYTHING, day(4)).minutes_a_task == pytest.approx(0.6)


def _begun_at(*times: str) -> History:
    """Return a history with a session on each day, begun at these local times."""
    found = _measured(*range(len(times)))
    begun = [
        dt.datetime.combine(day(number), dt.time.fromisoformat(time), dt.UTC)
        for number, time in enumerate(times)
    ]
    # Written by a clock one hour ahead of UTC, as in winter in Vienna.
    started = [Timestamp(utc=at - dt.timedelta(hours=1), offset_min=60) for at in begun]
    sessions = zip(found.sessions, started, strict=True)
    return replace(found, sessions=tuple(replace(session, started=at) for session, at in sessions))


def test_the_usual_time_is_that_of_most_of_the_latest_sessions() -> None:
    found = _begun_at("18:20", "18:40", "09:00", "18:30")
    assert measuring_plan(found, EVERYTHING, day(4)).usual_time == dt.time(18, 30)


def test_the_usual_time_may_lie_about_midnight() -> None:
    found = _begun_at("23:50", "00:10", "23:55", "00:05")
    assert measuring_plan(found, EVERYTHING, day(4)).usual_time == dt.time(0, 0)


def test_few_or_scattered_sessions_have_no_usual_time() -> None:
    for times in (("18:00", "18:00"), ("08:00", "12:00", "18:00", "22:00")):
        found = _begun_at(*times)
        assert measuring_plan(found, EVERYTHING, day(len(times))).usual_time is None


def test_a_changed_habit_becomes_the_usual_time() -> None:
    found = _begun_at(*["18:00"] * 12, *["07:30"] * 6)
    assert measuring_plan(found, EVERYTHING, day(18)).usual_time == dt.time(7, 30)
