"""Pain in the report: latest answers, the highest one, and what is a point to check."""

from dataclasses import replace

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import LimitingFactor, Pain
from measure.report.page import report_html
from tests.support.progress_histories import day, history
from tests.support.record_samples import exercise_log, person, plan
from tests.support.report_text import Page

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)


def test_the_box_holds_the_latest_pain_the_highest_and_a_stop_for_pain() -> None:
    """What was answered today stands on the first page, however mild the weeks before were."""
    records = history(
        {LEFT: [(0, 90.0), (60, 91.0), (70, 92.0)], RIGHT: [(70, 160.0)]},
        pain={60: Pain(worst_24h=7), 70: Pain(rest=2, night=3, worst_24h=5)},
        who=person(affected=(Side.LEFT,)),
    )
    asked = tuple(
        replace(record, pain_during=8, stopped_by=LimitingFactor.PAIN)
        if (record.taken.day, record.measurement.side) == (day(70), Side.LEFT)
        else replace(record, pain_during=0, stopped_by=LimitingFactor.STIFFNESS)
        for record in records.measurements
    )
    hurt = replace(records, measurements=asked)
    box = Page(report_html(hurt, day(70))).text.split("First and last readings")[0]
    assert (
        "Latest answers, 15 Jun 2026: at rest 2; at night 3; worst in 24 hours 5; during "
        "movement up to 8, flexion; stopped by pain: flexion." in box
    )
    assert "Highest in" not in box
    assert "Points to check Pain 8 of 10 during flexion (left) on 15 Jun 2026." in box
    # The day after, with a milder answer, the highest has its day.
    milder = history({}, pain={71: Pain(worst_24h=2)}, who=hurt.person).sessions
    after = replace(hurt, sessions=(*hurt.sessions, *milder))
    box = Page(report_html(after, day(71))).text.split("First and last readings")[0]
    assert "Latest answers, 16 Jun 2026: worst in 24 hours 2." in box
    assert "Highest in 4 weeks: 8 on 15 Jun 2026, during flexion (left)." in box
    # A month later it is neither the highest of the last weeks nor a point to check.
    later = Page(report_html(hurt, day(101))).text.split("First and last readings")[0]
    assert "Highest in" not in later
    assert "Thawline found none." in later
    assert "Latest answers, 15 Jun 2026" in later
    # Without any answer nothing is said of it.
    assert "Latest answers" not in Page(report_html(history({LEFT: [(0, 90.0)]}), day(9))).text


def test_pain_that_reached_the_limit_of_the_programme_is_a_point_to_check() -> None:
    records = history({LEFT: [(70, 92.0)]})
    log = exercise_log(records.person, pain=5, done=records.sessions[0].started)
    unplanned = replace(records, exercises_done=(log,))
    assert "Thawline found none." in Page(report_html(unplanned, day(70))).text
    stopping_at_5 = plan(records.person, first_day=day(0), pain_limit=5)
    box = Page(report_html(replace(unplanned, plans=(stopping_at_5,)), day(70))).text
    assert (
        "Points to check Pain 5 of 10 in the exercise Pendulum on 15 Jun 2026 (the programme "
        "stops at 5)." in box
    )
    allowed = replace(unplanned, plans=(replace(stopping_at_5, pain_limit=6),))
    assert "Thawline found none." in Page(report_html(allowed, day(70))).text
