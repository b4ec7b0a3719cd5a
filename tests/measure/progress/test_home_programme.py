"""The home programme: which plan holds, what was done of it, how much testing to ask for."""

import datetime as dt
from dataclasses import replace

import pytest

from measure.domain.exercises import EXERCISE_FACTS, Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History, Pain
from measure.progress.home_programme import (
    Irritability,
    assessment_dose,
    done_in_part,
    dose_words,
    eased_on,
    events_with_plans,
    exercises_done,
    irritability,
    irritability_on,
    pain_to_rest_from,
    plan_on,
    programme_done,
    programme_done_sentences,
    weeks_done,
)
from tests.support import record_samples as sample
from tests.support.record_samples import event, moment, person, some_id

MONDAY = dt.date(2026, 4, 6)
TOWELS = PlannedExercise(exercise=Exercise(listed=ListedExercise.TOWEL), times_a_day=2, hold_s=10)


def _plan(first_day: dt.date, **times: int) -> Plan:
    return Plan(
        id=some_id(f"plan {first_day} {times}"),
        person_id=some_id("Rosa"),
        first_day=first_day,
        exercises=tuple(
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise[name]), times_a_day=count, hold_s=10
            )
            for name, count in times.items()
        ),
        pain_limit=3,
    )


def _tap(utc: str, listed: ListedExercise, offset_min: int = 120) -> ExerciseLog:
    return ExerciseLog(
        id=some_id(utc + listed + str(offset_min)),
        person_id=some_id("Rosa"),
        exercise=Exercise(listed=listed),
        done=moment(utc, offset_min),
    )


def test_every_known_exercise_has_its_facts() -> None:
    assert set(EXERCISE_FACTS) == set(ListedExercise)
    assert [each for each in ListedExercise if EXERCISE_FACTS[each].swinging] == [
        ListedExercise.PENDULUM
    ]
    assert all(facts.how.endswith(".") for facts in EXERCISE_FACTS.values())


@pytest.mark.parametrize(
    ("pain", "during", "band"),
    [
        (Pain(), None, None),
        (Pain(), 0, Irritability.LOW),
        (Pain(rest=3), None, Irritability.LOW),
        (Pain(rest=0, night=4), None, Irritability.MODERATE),
        (Pain(rest=1, night=1, worst_24h=6), 2, Irritability.MODERATE),
        (Pain(worst_24h=7), None, Irritability.HIGH),
        (Pain(rest=0), 10, Irritability.HIGH),
    ],
)
def test_irritability(pain: Pain, during: int | None, band: Irritability | None) -> None:
    assert irritability(pain, during) is band


def test_a_shoulder_easily_upset_is_asked_for_less() -> None:
    high = assessment_dose(Irritability.HIGH)
    assert high.trials == 2
    assert high.left_out == (Movement.HAND_BEHIND_BACK,)
    assert "Stop where pain begins" in high.sentence
    for band in (Irritability.MODERATE, Irritability.LOW, None):
        assert (assessment_dose(band).trials, assessment_dose(band).left_out) == (3, ())


def test_the_plan_that_holds() -> None:
    first, second = _plan(MONDAY, TOWEL=1), _plan(MONDAY + dt.timedelta(days=3), TOWEL=2)
    corrected = _plan(second.first_day, TOWEL=3)
    plans = [first, second, corrected]
    assert plan_on(plans, MONDAY - dt.timedelta(days=1)) is None
    assert plan_on(plans, MONDAY) is first
    assert plan_on(plans, MONDAY + dt.timedelta(days=2)) is first
    assert plan_on(plans, MONDAY + dt.timedelta(days=30)) is corrected
    assert plan_on([], MONDAY) is None


def test_done_over_planned_a_week() -> None:
    plans = [_plan(MONDAY, PENDULUM=2, TOWEL=1)]
    taps = [
        _tap("2026-04-06T08:00:00+00:00", ListedExercise.PENDULUM),
        _tap("2026-04-06T18:00:00+00:00", ListedExercise.PENDULUM),
        _tap("2026-04-06T19:00:00+00:00", ListedExercise.PENDULUM),  # beyond the plan
        _tap("2026-04-07T08:00:00+00:00", ListedExercise.TOWEL),
        _tap("2026-04-07T09:00:00+00:00", ListedExercise.CROSS_BODY),  # not planned
        _tap("2026-04-13T08:00:00+00:00", ListedExercise.TOWEL),
    ]
    first, second = weeks_done(plans, taps, MONDAY, MONDAY + dt.timedelta(days=7))
    assert (first.monday, first.planned, first.done) == (MONDAY, 21, 3)
    assert first.share == pytest.approx(3 / 21)
    # Only Monday of the second week has come so far.
    assert (second.planned, second.done, second.share) == (3, 1, pytest.approx(1 / 3))


def test_a_tap_counts_for_the_local_day() -> None:
    plans = [_plan(MONDAY, TOWEL=1)]
    late = _tap("2026-04-05T22:30:00+00:00", ListedExercise.TOWEL)  # 00:30 on Monday in Vienna
    (week,) = weeks_done(plans, [late], MONDAY, MONDAY)
    assert (week.planned, week.done) == (1, 1)
    (week,) = weeks_done(
        plans, [_tap("2026-04-06T00:30:00+00:00", ListedExercise.TOWEL, -300)], MONDAY, MONDAY
    )
    assert (week.planned, week.done) == (1, 0)


def test_weeks_without_a_plan_have_no_share() -> None:
    plans = [_plan(MONDAY, TOWEL=1), _plan(MONDAY + dt.timedelta(days=7))]
    before, during, after = weeks_done(
        plans, [], MONDAY - dt.timedelta(days=3), MONDAY + dt.timedelta(days=13)
    )
    assert (before.planned, before.share) == (0, None)
    assert (during.planned, during.share) == (7, 0.0)
    assert (after.planned, after.share) == (0, None)


def test_an_exercise_done_in_part_is_counted_and_named() -> None:
    plan = replace(_plan(MONDAY, TOWEL=2), exercises=(replace(TOWELS, repetitions=10),))
    whole = _tap("2026-04-06T08:00:00+00:00", ListedExercise.TOWEL)
    half = replace(_tap("2026-04-06T18:00:00+00:00", ListedExercise.TOWEL), repetitions=6)
    (week,) = weeks_done([plan], [whole, half], MONDAY, MONDAY)
    assert (week.planned, week.done, week.in_part) == (2, 2, 1)
    # A third one that was whole takes its place.
    third = _tap("2026-04-06T20:00:00+00:00", ListedExercise.TOWEL)
    (week,) = weeks_done([plan], [whole, half, third], MONDAY, MONDAY)
    assert (week.done, week.in_part) == (2, 0)


def _held(day: int, hour: int, repetitions: int | None) -> ExerciseLog:
    log = _tap(f"2026-04-{day:02}T{hour:02}:00:00+00:00", ListedExercise.TOWEL)
    return replace(log, repetitions=repetitions)


TEN_TOWELS = replace(_plan(MONDAY, TOWEL=2), exercises=(replace(TOWELS, repetitions=10),))


def test_minutes_at_end_range_are_repetitions_times_hold() -> None:
    logs = [_held(6, 8, 10), _held(6, 18, 6), _held(7, 8, 10)]
    (towel,) = exercises_done([TEN_TOWELS], logs, MONDAY, MONDAY + dt.timedelta(days=1))
    assert (towel.planned, towel.done, towel.in_part) == (4, 3, 1)
    assert (towel.held_s, towel.uncounted) == (260, 0)
    # Logs of other days are left out.
    (towel,) = exercises_done([TEN_TOWELS], logs, MONDAY, MONDAY)
    assert (towel.planned, towel.done, towel.held_s) == (2, 2, 160)


def test_no_minutes_are_made_up() -> None:
    (towel,) = exercises_done([TEN_TOWELS], [_held(6, 8, None)], MONDAY, MONDAY)
    assert (towel.done, towel.held_s, towel.uncounted) == (1, None, 1)
    # Pain that stopped it before its first repetition: not done.
    (towel,) = exercises_done([TEN_TOWELS], [_held(6, 8, 0)], MONDAY, MONDAY)
    assert (towel.planned, towel.done, towel.held_s, towel.uncounted) == (2, 0, None, 0)
    # One that is not held has no end range to hold.
    swings = replace(TEN_TOWELS, exercises=(replace(TOWELS, repetitions=10, hold_s=0),))
    (towel,) = exercises_done([swings], [_held(6, 8, 10)], MONDAY, MONDAY)
    assert (towel.done, towel.held_s, towel.uncounted) == (1, None, 0)


def test_each_day_has_the_hold_of_its_own_plan() -> None:
    longer = replace(
        TEN_TOWELS,
        id=some_id("longer"),
        first_day=MONDAY + dt.timedelta(days=1),
        exercises=(replace(TOWELS, repetitions=10, hold_s=30, times_a_day=1),),
    )
    logs = [_held(6, 8, 10), _held(7, 8, 10), _held(7, 9, 10)]
    (towel,) = exercises_done([TEN_TOWELS, longer], logs, MONDAY, MONDAY + dt.timedelta(days=1))
    # What was held beyond the plan was held all the same.
    assert (towel.planned, towel.done, towel.held_s) == (3, 2, 100 + 300 + 300)


def test_exercises_are_told_since_the_visit_or_the_latest_weeks() -> None:
    today = MONDAY + dt.timedelta(days=60)
    recent = programme_done([TEN_TOWELS], [], None, today)
    assert recent is not None
    assert recent.since == dt.date(2026, 5, 11)
    visit = MONDAY + dt.timedelta(days=50)
    since = programme_done([TEN_TOWELS], [], visit, today)
    assert since is not None
    assert since.since == visit + dt.timedelta(days=1)
    assert since.exercises[0].planned == 20
    # A programme younger than that is told from its first day.
    early = programme_done([TEN_TOWELS], [], None, MONDAY + dt.timedelta(days=2))
    assert early is not None
    assert early.since == MONDAY
    assert programme_done([], [], None, today) is None
    assert programme_done_sentences(None) == ()


def test_what_was_done_in_words() -> None:
    logs = [_held(6, 8, 10), _held(6, 18, 6), _held(7, 8, None)]
    done = programme_done([TEN_TOWELS], logs, None, MONDAY + dt.timedelta(days=1))
    said, caution = programme_done_sentences(done)
    assert said.startswith("Exercises since 6 Apr 2026: ")
    assert said.endswith(
        " 3 of 4 planned (1 partly done, 3 min at end range, 1 logged without repetitions)."
    )
    assert "no minutes are counted" in caution
    briefly = programme_done([TEN_TOWELS], [_held(6, 8, 1)], None, MONDAY)
    assert "under 1 min at end range" in programme_done_sentences(briefly)[0]
    # Nothing was held, so nothing is said of minutes.
    (nothing,) = programme_done_sentences(programme_done([TEN_TOWELS], [], None, MONDAY))
    assert nothing.endswith(" 0 of 2 planned.")


@pytest.mark.parametrize(
    ("planned", "done", "in_part"),
    [(10, 6, True), (10, 0, True), (10, 10, False), (10, None, False), (None, 6, False)],
)
def test_done_in_part(planned: int | None, done: int | None, in_part: bool) -> None:
    plan = replace(_plan(MONDAY), exercises=(replace(TOWELS, repetitions=planned),))
    log = replace(_tap("2026-04-06T08:00:00+00:00", ListedExercise.TOWEL), repetitions=done)
    assert done_in_part(log, plan) is in_part
    assert not done_in_part(log, None)
    assert not done_in_part(replace(log, exercise=Exercise(own_name="Door lean")), plan)


def test_a_dose_says_what_was_set_and_no_more() -> None:
    assert dose_words(TOWELS) == "held for 10 s, 2 times a day"
    whole = replace(TOWELS, repetitions=10, sides=(Side.LEFT,), times_a_day=1)
    assert dose_words(whole) == "10 repetitions, held for 10 s, once a day, left"
    swinging = replace(whole, repetitions=1, hold_s=0, sides=tuple(Side))
    assert dose_words(swinging) == "1 repetition, once a day, both sides"
    assert dose_words(swinging, with_side=False) == "1 repetition, once a day"


def test_a_plan_that_follows_another_is_an_event_once() -> None:
    first, second = _plan(MONDAY, TOWEL=1), _plan(MONDAY + dt.timedelta(days=9), TOWEL=2)
    corrected = _plan(second.first_day, TOWEL=3)
    rosa = person()
    plans = tuple(replace(plan, person_id=rosa.id) for plan in (first, second, corrected))
    noted = event(rosa, day=second.first_day + dt.timedelta(days=1), kind=EventKind.FLARE)
    change, flare = events_with_plans(History(person=rosa, plans=plans, events=(noted,)))
    assert (change.kind, change.day) == (EventKind.PROGRAMME_CHANGED, second.first_day)
    assert flare == noted
    by_hand = replace(noted, kind=EventKind.PROGRAMME_CHANGED, day=second.first_day)
    assert events_with_plans(History(person=rosa, plans=plans, events=(by_hand,))) == (by_hand,)
    assert events_with_plans(History(person=rosa, plans=plans[:1])) == ()


def test_the_last_answer_about_a_morning_holds() -> None:
    yes, no = (
        NextMorning(id=some_id(str(word)), person_id=some_id("Rosa"), day=MONDAY, eased=word)
        for word in (True, False)
    )
    assert eased_on([], MONDAY) is None
    assert eased_on([yes, no], MONDAY) is False
    assert eased_on([no, yes], MONDAY) is True
    assert eased_on([yes], MONDAY + dt.timedelta(days=1)) is None


def test_a_pain_limit_of_nothing_becomes_the_first_pain() -> None:
    plan = replace(_plan(MONDAY, TOWEL=1), pain_limit=0)
    assert plan.pain_limit == 1
    assert replace(plan, exercises=(), pain_limit=0).pain_limit == 0


def test_a_plan_that_prescribes_the_same_is_no_change() -> None:
    first = _plan(MONDAY, TOWEL=1, PENDULUM=2)
    later = MONDAY + dt.timedelta(days=14)
    again = replace(
        _plan(later, PENDULUM=2, TOWEL=1), chosen_by="surgeon", primary=(Movement.ABDUCTION,)
    )
    other = replace(again, id=some_id("other"), pain_limit=2)
    assert events_with_plans(History(person=person(), plans=(first, again))) == ()
    (change,) = events_with_plans(History(person=person(), plans=(first, other)))
    assert (change.kind, change.day) == (EventKind.PROGRAMME_CHANGED, later)


def test_days_with_exercises_are_counted_once() -> None:
    plans = [_plan(MONDAY, TOWEL=2)]
    logs = [
        _tap("2026-04-06T08:00:00+00:00", ListedExercise.TOWEL),
        _tap("2026-04-06T18:00:00+00:00", ListedExercise.TOWEL),
        _tap("2026-04-08T18:00:00+00:00", ListedExercise.PENDULUM),
    ]
    (week,) = weeks_done(plans, logs, MONDAY, MONDAY + dt.timedelta(days=6))
    assert week.days == 2


def test_pain_of_a_day_asks_for_a_rest_on_that_day_alone() -> None:
    who = person()
    session = sample.session(who, pain=Pain(rest=7))
    day = session.started.day
    measured = sample.record(session, pain_during=4, taken=session.started)
    found = History(person=who, sessions=(session,), measurements=(measured,))
    # Pain said beforehand asks for less, and only pain in a movement for a rest.
    assert irritability_on(found, day) is Irritability.HIGH
    assert pain_to_rest_from(found, day) == 4
    assert pain_to_rest_from(found, day + dt.timedelta(days=1)) is None
    assert irritability_on(found, day + dt.timedelta(days=1)) is None
    assert irritability_on(History(person=who), day, Pain(night=7)) is Irritability.HIGH
    mild = replace(measured, pain_during=3)
    assert pain_to_rest_from(replace(found, measurements=(mild,)), day) is None
    exercised = sample.exercise_log(who, done=session.started, pain=6)
    assert pain_to_rest_from(History(person=who, exercises_done=(exercised,)), day) == 6
