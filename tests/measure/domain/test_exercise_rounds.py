"""What is left of a day's exercises, and which morning to ask about."""

import datetime as dt

import pytest

from measure.domain.exercise_rounds import (
    DAYS_REMEMBERED,
    DayPart,
    day_of_exercises,
    unanswered_day,
)
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan, PlannedExercise
from measure.system.clock import Timestamp
from tests.support.record_samples import moment, some_id

PENDULUM = Exercise(listed=ListedExercise.PENDULUM)
TOWEL = Exercise(listed=ListedExercise.TOWEL)
LEAN = Exercise(own_name="Door lean")
TODAY = dt.date(2026, 4, 6)


def plan(**times: int) -> Plan:
    exercises = {"pendulum": PENDULUM, "towel": TOWEL, "lean": LEAN}
    return Plan(
        id=some_id("plan"),
        person_id=some_id("Rosa"),
        first_day=TODAY,
        exercises=tuple(
            PlannedExercise(exercise=exercises[name], times_a_day=count, hold_s=5)
            for name, count in times.items()
        ),
        pain_limit=3,
    )


def at(clock: str, day: dt.date = TODAY) -> Timestamp:
    return moment(f"{day.isoformat()}T{clock}:00+00:00", 0)


def log(
    exercise: Exercise,
    clock: str,
    day: dt.date = TODAY,
    pain: int | None = None,
    repetitions: int | None = None,
) -> ExerciseLog:
    return ExerciseLog(
        id=some_id(f"{exercise.name} {day} {clock}"),
        person_id=some_id("Rosa"),
        exercise=exercise,
        done=at(clock, day),
        pain=pain,
        repetitions=repetitions,
    )


def due(of: Plan, *logs: ExerciseLog, now: str) -> tuple[list[Exercise], bool]:
    day = day_of_exercises(of, logs, at(now))
    return [planned.exercise for planned in day.due], day.begun


def test_a_new_day_has_the_whole_round() -> None:
    yesterday = log(TOWEL, "18:00", TODAY - dt.timedelta(days=1))
    both = plan(pendulum=2, towel=1)
    assert due(both, yesterday, now="08:00") == ([PENDULUM, TOWEL], False)
    assert due(plan(), now="08:00") == ([], False)
    assert day_of_exercises(None, [], at("08:00")).due == ()


def test_a_round_that_was_begun_goes_on_with_its_rest() -> None:
    three = plan(pendulum=2, towel=2, lean=2)
    assert due(three, log(PENDULUM, "08:00"), now="08:20") == ([TOWEL, LEAN], True)
    # Hours later it is another round.
    assert due(three, log(PENDULUM, "08:00"), now="12:00") == ([PENDULUM, TOWEL, LEAN], False)


def test_nothing_is_due_beyond_its_times_a_day() -> None:
    both = plan(pendulum=2, towel=1)
    morning = (log(PENDULUM, "08:00"), log(TOWEL, "08:05"))
    assert due(both, *morning, now="08:10") == ([PENDULUM], False)
    assert due(both, *morning, log(PENDULUM, "19:00"), now="23:00") == ([], False)


def test_an_exercise_stopped_before_its_first_repetition_is_offered_again() -> None:
    both = plan(pendulum=1, towel=1)
    stopped = log(TOWEL, "08:05", pain=4, repetitions=0)
    assert due(both, log(PENDULUM, "08:00"), stopped, now="08:10") == ([TOWEL], False)
    assert due(both, log(PENDULUM, "08:00"), stopped, now="20:00") == ([TOWEL], False)
    # One that was done in part is not.
    begun = log(TOWEL, "08:05", pain=4, repetitions=1)
    assert due(both, log(PENDULUM, "08:00"), begun, now="20:00") == ([], False)


def test_a_clock_that_was_put_back_changes_nothing() -> None:
    assert due(plan(pendulum=2), log(PENDULUM, "20:00"), now="08:00") == ([PENDULUM], False)


def test_parts_of_the_day_and_the_highest_pain() -> None:
    logs = [
        log(PENDULUM, "19:00", pain=2),
        log(TOWEL, "11:59", pain=5),
        log(PENDULUM, "12:00"),
        log(TOWEL, "17:59"),
    ]
    day = day_of_exercises(plan(pendulum=3), logs, at("21:00"))
    assert day.parts == (DayPart.MORNING, DayPart.AFTERNOON, DayPart.EVENING)
    assert day.highest_pain() == 5
    assert day_of_exercises(None, [], at("21:00")).highest_pain() is None


@pytest.mark.parametrize("days", [1, DAYS_REMEMBERED, DAYS_REMEMBERED + 1])
def test_the_last_day_is_asked_about_while_it_is_remembered(days: int) -> None:
    day = TODAY - dt.timedelta(days=days)
    logs = [log(TOWEL, "08:00", day - dt.timedelta(days=3)), log(TOWEL, "08:00", day)]
    assert unanswered_day(logs, [], TODAY) == (day if days <= DAYS_REMEMBERED else None)


def test_an_answered_day_and_today_are_not_asked_about() -> None:
    day = TODAY - dt.timedelta(days=2)
    logs = [log(TOWEL, "08:00", day), log(TOWEL, "08:00")]
    answer = NextMorning(id=some_id("x"), person_id=some_id("Rosa"), day=day, eased=False)
    assert unanswered_day(logs, [], TODAY) == day
    assert unanswered_day(logs, [answer], TODAY) is None
    assert unanswered_day(logs[1:], [], TODAY) is None
