"""Which events are compared, and with which days."""

import datetime as dt
from dataclasses import replace

import pytest

from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EVENT_WORDS, Event, EventKind, History
from measure.progress.before_after import (
    COMPARED_FOR_DAY,
    BeforeAfter,
    before_after,
    change_since,
    latest_visit,
    treatment_events,
)
from measure.progress.comparison import Scatter
from measure.progress.series import PRACTICE_SESSIONS, all_series
from tests.support.progress_histories import MADE, day, history
from tests.support.record_samples import event, person, some_id

LEFT = (Movement.FLEXION, Side.LEFT)
SCATTER = Scatter(spread=5.0)
#: Mondays, Wednesdays and Fridays of twenty weeks: level until day 69, then 20 degrees higher.
DAYS = [7 * week + number for week in range(20) for number in (0, 2, 4)]
STEP = {LEFT: [(number, 90.0 if number < 70 else 110.0) for number in DAYS]}


def happened(kind: EventKind, number: int, side: Side | None = Side.LEFT) -> Event:
    return event(person(), kind=kind, day=day(number), side=side, id=some_id(f"{kind} {number}"))


def compared(records: History, today: int = 140) -> tuple[BeforeAfter, ...]:
    (series,) = all_series(records)
    return before_after(series, treatment_events(records), day(today))


def plan(first: int, limit: int = 4) -> Plan:
    return Plan(
        id=some_id(f"plan {first}"),
        person_id=person().id,
        first_day=day(first),
        exercises=(
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise.PENDULUM), times_a_day=1, hold_s=0
            ),
        ),
        pain_limit=limit,
    )


@pytest.mark.parametrize(
    ("kind", "before"),
    [
        (EventKind.INJECTION, True),
        (EventKind.PROCEDURE, True),
        (EventKind.THERAPY, True),
        (EventKind.FLARE, False),
    ],
)
def test_a_session_on_the_day_counts_as_people_measure(kind: EventKind, before: bool) -> None:
    (found,) = compared(history(STEP, events=[happened(kind, 70)]))
    assert found.event.day == day(70)
    # The first sessions are practice.
    assert found.effect.days_before == 30 - PRACTICE_SESSIONS + before
    assert found.effect.days_before + found.effect.days_after == len(DAYS) - PRACTICE_SESSIONS


def test_a_step_is_seen_at_its_event() -> None:
    (found,) = compared(history(STEP, events=[happened(EventKind.FLARE, 70)]))
    assert found.effect.step.value == pytest.approx(20, abs=3)
    assert found.effect.step.low > 10
    assert found.effect.change_since.low > 10


@pytest.mark.parametrize(
    "kind", [EventKind.OTHER, EventKind.CLINIC_VISIT, EventKind.CAMERA_CHANGED]
)
def test_other_events_are_not_compared(kind: EventKind) -> None:
    assert compared(history(STEP, events=[happened(kind, 70)])) == ()


def test_the_other_sides_event_is_not_compared_and_one_of_both_is() -> None:
    for side, count in ((Side.RIGHT, 0), (None, 1), (Side.LEFT, 1)):
        assert len(compared(history(STEP, events=[happened(EventKind.FLARE, 70, side)]))) == count


def test_the_first_programme_is_no_change_and_the_next_is() -> None:
    records = replace(history(STEP), plans=(plan(0), plan(70, limit=3)))
    (found,) = compared(records)
    assert (found.event.what, found.event.day, found.event.side) == (
        EVENT_WORDS[EventKind.PROGRAMME_CHANGED],
        day(70),
        None,
    )
    assert compared(replace(records, plans=(plan(70),))) == ()


def test_a_programme_that_prescribes_the_same_is_no_change() -> None:
    assert compared(replace(history(STEP), plans=(plan(0), plan(70)))) == ()


def test_each_event_is_compared_from_the_one_before_to_the_one_after() -> None:
    events = [happened(EventKind.THERAPY, number) for number in (41, 69, 97)]
    first, second = compared(history(STEP, events=events))
    assert (first.event.day, second.event.day) == (day(69), day(97))
    assert (first.effect.days_before, first.effect.days_after) == (12, 12)
    assert (second.effect.days_before, second.effect.days_after) == (12, 18)


def test_events_of_one_day_are_compared_with_the_same_days() -> None:
    kinds = (EventKind.INJECTION, EventKind.THERAPY_BEGAN)
    first, second = compared(history(STEP, events=[happened(kind, 69) for kind in kinds]))
    assert (first.event.what, second.event.what) == tuple(EVENT_WORDS[kind] for kind in kinds)
    assert first.effect == second.effect
    assert first.effect.days_before + first.effect.days_after == len(DAYS) - PRACTICE_SESSIONS


def test_old_events_are_not_compared_any_more() -> None:
    records = history(STEP, events=[happened(EventKind.FLARE, 70)])
    assert len(compared(records, 70 + COMPARED_FOR_DAY)) == 1
    assert compared(records, 71 + COMPARED_FOR_DAY) == ()


def test_days_of_another_model_are_not_compared() -> None:
    other = replace(MADE, model="full")
    records = history(STEP, events=[happened(EventKind.FLARE, 70)], made={70: other})
    assert compared(records) == ()


def test_the_latest_visit_before_today() -> None:
    visits = [happened(EventKind.CLINIC_VISIT, number, None) for number in (10, 60, 90)]
    assert latest_visit(visits, day(90)) == day(60)
    assert latest_visit(visits, day(91)) == day(90)
    assert latest_visit([happened(EventKind.FLARE, 3)], day(90)) is None
    assert latest_visit(visits, dt.date.min) is None


def test_the_change_since_a_visit() -> None:
    (series,) = all_series(history(STEP))
    since = change_since(series, day(60), SCATTER)
    assert since is not None
    assert since.day == day(60)
    assert since.change.value == 20
    assert 0 < since.change.low < 20 < since.change.high
    # No visit, one before the first day, one after the last.
    assert change_since(series, None, SCATTER) is None
    assert change_since(series, day(-1), SCATTER) is None
    assert change_since(series, day(200), SCATTER) is None


def test_a_visit_amid_the_latest_days_shows_no_change_yet() -> None:
    (series,) = all_series(history(STEP))
    assert change_since(series, day(max(DAYS) - 2), SCATTER) is None


def test_practice_alone_shows_no_change_since_a_visit() -> None:
    (series,) = all_series(history({LEFT: [(0, 90.0), (2, 95.0)]}))
    assert change_since(series, day(1), SCATTER) is None
