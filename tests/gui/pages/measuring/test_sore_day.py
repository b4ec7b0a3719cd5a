"""Sore days at home: what is left to measure, and what is said of it before."""

import datetime as dt

import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History, Pain
from measure.progress.person_evidence import PRIMARY_MOVEMENTS
from measure.system.clock import Timestamp
from tests.support import record_samples as sample
from tests.support.gui.measuring_steps import shown
from tests.support.gui.stage import TODAY, WindowHarness

BEHIND = Movement.HAND_BEHIND_BACK


def _measured_today(stage: WindowHarness, *left: Movement) -> None:
    """Let the shoulder be easily irritated, and all but some movements be measured today."""
    (person,) = stage.store.people()
    started = Timestamp(utc=dt.datetime.combine(TODAY, dt.time(7), dt.UTC))
    session = sample.session(person, started=started, duration_s=120.0, pain=Pain(night=8))
    done = [
        sample.measurement(movement=movement, side=side)
        for movement in PRIMARY_MOVEMENTS
        for side in person.affected or Side
        if movement not in left
    ]
    records = tuple(
        sample.record(
            session, number, each, taken=started, conduct=session.conduct, pain_during=None
        )
        for number, each in enumerate(done, start=1)
    )
    stage.store.merge(History(person=person, sessions=(session,), measurements=records))
    stage.window.measure.people.load()
    stage.settle()


def test_a_sore_day_with_nothing_left_says_so_and_has_no_dead_button(stage: WindowHarness) -> None:
    _measured_today(stage, BEHIND)
    page = stage.window.measure
    home = page.start.at_home
    assert home.sore.isChecked()
    assert home.tasks == ()
    assert home.title.text() == "Nothing to measure today"
    assert home.sentence.text() == "The hand behind the back is left out on a sore day."
    assert not home.start.isVisible()
    page.start.keep_focus()
    assert home.choose.hasFocus()
    page.begin()
    stage.settle()
    assert shown(stage) is page.start
    home.sore.click()
    assert home.title.text() == "Today"
    assert home.sentence.text().startswith("1 movement, ")
    assert home.start.isVisible()
    home.sore.click()
    assert not home.start.isVisible()
    # Another choice is still free.
    home.choose.click()
    for movement, box in home.tiles.boxes.items():
        box.setChecked(movement is BEHIND)
    assert home.title.text() == "Choose today's movements"
    assert home.sentence.text() == "The hand behind the back is left out on a sore day."
    assert not home.start.isVisible()
    home.tiles.boxes[Movement.FLEXION].setChecked(True)
    assert home.start.isVisible()
    assert home.sentence.text().startswith("1 movement, ")


@pytest.mark.parametrize(
    ("left", "measured"),
    [((BEHIND,), {BEHIND}), ((BEHIND, Movement.FLEXION), {Movement.FLEXION})],
)
def test_what_is_said_before_measuring_is_what_is_measured(
    stage: WindowHarness, left: tuple[Movement, ...], measured: set[Movement]
) -> None:
    _measured_today(stage, *left)
    page = stage.window.measure
    page.start.at_home.sore.click()
    told: list[str] = []
    page.message_raised.connect(told.append)
    page.start.at_home.start.click()
    stage.settle()
    assert shown(stage) is page.before
    assert page.before.first.length.text().startswith("1 movement, ")
    page.before.go.click()
    stage.settle()
    assert page.measuring is not None
    guide = page.measuring.guide
    tasks = [task for task in (guide.task, guide.upcoming) if task is not None]
    assert guide.task_position == (1, len(tasks))
    assert {task.movement for task in tasks} == measured
    assert {task.trials for task in tasks} == {2}
    (said,) = told
    assert "The shoulder is easily irritated today" in said
    assert ("left out" in said) is (BEHIND not in measured)
    assert "Stop where pain begins." in said
