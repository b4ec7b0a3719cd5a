"""The computer's clock is set back by a day under a window with a history that is then ahead."""

import datetime as dt
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.app.application import configure_application
from gui.app.window_pages import MainPage
from measure.demo.story import load_story
from measure.progress.overview import progress_of
from measure.storage.store import Store
from tests.support import record_samples as sample
from tests.support.gui.round_process import PENDULUM, PLAN, TOWEL
from tests.support.gui.stage import TODAY, WindowHarness

DAY = dt.timedelta(days=1)


@pytest.fixture
def clock() -> sample.FixedClock:
    """A clock that shows the evening of the day after the window's."""
    return sample.FixedClock(f"{TODAY + DAY}T17:00:00+00:00", offset_min=60)


@pytest.fixture
def ahead(qapp: QApplication, qtbot: QtBot, clock: sample.FixedClock) -> Iterator[WindowHarness]:
    """A window whose store holds what was measured and done "tomorrow"."""
    configure_application(qapp)
    store = Store.in_memory(clock=clock)
    load_story(store)
    who = sample.person("Rosa")
    store.save_person(who)
    store.save_plan(PLAN)
    store.save_measurement(sample.record(store.start_session(who.id)))
    for exercise in (PENDULUM, TOWEL):
        store.log_exercise(who.id, exercise)
    clock.utc -= DAY
    made = WindowHarness(open_store=lambda: store)
    yield made
    made.close()


@pytest.mark.parametrize("name", ["Rosa", "demo-Bramble"])
def test_every_page_opens_on_a_history_that_is_ahead(ahead: WindowHarness, name: str) -> None:
    people = ahead.window.measure.people
    people.choose(next(each.id for each in ahead.store.people() if each.pseudonym == name))
    ahead.settle()
    for page in MainPage:
        ahead.window.go(page)
        ahead.settle()
    assert people.person is not None
    assert people.person.pseudonym == name


def test_what_is_done_on_the_day_that_comes_again_is_kept_in_order(
    ahead: WindowHarness, clock: sample.FixedClock
) -> None:
    store, who = ahead.store, sample.person("Rosa")
    before = store.measurements(who.id)
    again = store.start_session(who.id)
    store.save_measurement(sample.record(again))
    store.log_exercise(who.id, PENDULUM)
    assert [each.started.day for each in store.sessions(who.id)] == [TODAY, TODAY + DAY]
    assert len(progress_of(store.history(who.id), TODAY).sides) == 1
    clock.utc += DAY
    assert [each.done.day for each in store.exercises_done(who.id)] == [TODAY, *[TODAY + DAY] * 2]
    assert len(store.measurements(who.id)) == len(before) + 1
