"""The home programme: which plan holds, what was done of it, how much testing to ask for."""

import datetime as dt

import pytest

from measure.domain.movements import Movement
from measure.domain.records import Pain, Plan, PlannedStretch, Stretch, StretchLog
from measure.progress.home_programme import (
    STRETCHES,
    Irritability,
    assessment_dose,
    irritability,
    plan_on,
    weeks_done,
)
from tests.support.record_samples import moment, some_id

MONDAY = dt.date(2026, 4, 6)


def _plan(first_day: dt.date, **times: int) -> Plan:
    return Plan(
        id=some_id(f"plan {first_day} {times}"),
        person_id=some_id("Rosa"),
        first_day=first_day,
        stretches=tuple(
            PlannedStretch(stretch=Stretch[name], times_a_day=count, hold_s=10)
            for name, count in times.items()
        ),
        pain_limit=3,
    )


def _tap(utc: str, stretch: Stretch, offset_min: int = 120) -> StretchLog:
    return StretchLog(
        id=some_id(utc + stretch + str(offset_min)),
        person_id=some_id("Rosa"),
        stretch=stretch,
        done=moment(utc, offset_min),
    )


def test_every_stretch_has_its_facts() -> None:
    assert set(STRETCHES) == set(Stretch)
    assert [each for each in Stretch if STRETCHES[each].swinging] == [Stretch.PENDULUM]
    assert all(facts.how.endswith(".") for facts in STRETCHES.values())


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
        _tap("2026-04-06T08:00:00+00:00", Stretch.PENDULUM),
        _tap("2026-04-06T18:00:00+00:00", Stretch.PENDULUM),
        _tap("2026-04-06T19:00:00+00:00", Stretch.PENDULUM),  # beyond the plan
        _tap("2026-04-07T08:00:00+00:00", Stretch.TOWEL),
        _tap("2026-04-07T09:00:00+00:00", Stretch.CROSS_BODY),  # not planned
        _tap("2026-04-13T08:00:00+00:00", Stretch.TOWEL),
    ]
    first, second = weeks_done(plans, taps, MONDAY, MONDAY + dt.timedelta(days=7))
    assert (first.monday, first.planned, first.done) == (MONDAY, 21, 3)
    assert first.share == pytest.approx(3 / 21)
    # Only Monday of the second week has come so far.
    assert (second.planned, second.done, second.share) == (3, 1, pytest.approx(1 / 3))


def test_a_tap_counts_for_the_local_day() -> None:
    plans = [_plan(MONDAY, TOWEL=1)]
    late = _tap("2026-04-05T22:30:00+00:00", Stretch.TOWEL)  # 00:30 on Monday in Vienna
    (week,) = weeks_done(plans, [late], MONDAY, MONDAY)
    assert (week.planned, week.done) == (1, 1)
    (week,) = weeks_done(
        plans, [_tap("2026-04-06T00:30:00+00:00", Stretch.TOWEL, -300)], MONDAY, MONDAY
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
