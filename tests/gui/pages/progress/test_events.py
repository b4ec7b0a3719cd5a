"""What happened between sessions: noted, shown, deleted; it breaks the curves."""

import datetime as dt
from collections import defaultdict
from itertools import pairwise

import pytest
from PySide6.QtCore import QDate, QRect
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel

from gui.app.application import configure_application
from gui.app.window_pages import MainPage
from gui.drawing.chart_flags import flags
from gui.pages.progress.event_kinds import CHANGES, OTHERS, TREATMENTS
from gui.style.palette import Scheme
from gui.text.wording import event_name
from measure.domain.landmarks import Side
from measure.domain.records import (
    Event,
    EventKind,
    History,
)
from measure.system.clock import new_id
from tests.support.gui.demo_history import demo_history
from tests.support.gui.screenshots import PERCENTS, SIZES
from tests.support.gui.stage import TODAY, WindowHarness
from tests.support.record_samples import event, own_plan, plan


@pytest.fixture
def events_page(stage: WindowHarness) -> WindowHarness:
    stage.window.show_events()
    stage.settle()
    return stage


def test_an_event_is_noted_shown_and_deleted(events_page: WindowHarness) -> None:
    page = events_page.window.progress.events
    assert not page.keep.isEnabled()
    assert page.keep.accessibleName() == "Choose an event first"
    page.kind.button(EventKind.FLARE).click()
    page.kind.button(EventKind.INJECTION).click()
    assert not page.kind.button(EventKind.FLARE).isChecked()
    assert page.keep.isEnabled()
    assert page.day.text.text() == "25 Nov 2026"
    assert page.side.value is Side.LEFT  # the affected one
    page.day.text.setText("2026-09-17")
    page.day.earlier.click()
    page.note.setText("before the harvest")
    page.keep.click()
    events_page.settle()
    (event,) = events_page.history().events
    assert (event.day, event.kind, event.side, event.note) == (
        dt.date(2026, 9, 16),
        EventKind.INJECTION,
        Side.LEFT,
        "before the harvest",
    )
    messages = events_page.window.messages
    assert not messages.isVisible()
    assert "Saved: injection, left, 16 Sep" in page.said.text()
    assert page.undo.isVisible()
    assert page.undo.accessibleName() == "Undo: Saved: injection, left, 16 Sep"
    (delete,) = page.delete_buttons
    assert "16 Sep 2026: Injection, left. before the harvest" in delete.accessibleName()
    assert isinstance(delete, QAbstractButton)
    delete.click()
    events_page.settle()
    assert events_page.history().events == ()
    assert page.delete_buttons == []
    assert messages.undo.isVisible()
    assert events_page.services.undo.next is not None
    events_page.services.undo.undo()
    events_page.settle()
    assert events_page.history().events == (event,)
    assert len(page.delete_buttons) == 1


def test_a_plan_that_follows_is_listed_and_cannot_be_deleted(stage: WindowHarness) -> None:
    person = stage.history().person
    plans = (own_plan(person), plan(person))
    stage.store.merge(History(person=person, plans=plans, events=(event(person),)))
    stage.window.show_events()
    stage.settle()
    page = stage.window.progress.events
    texts = [label.text() for label in page.findChildren(QLabel)]
    assert "16 Apr 2026: Home programme changed" in texts
    assert len(page.delete_buttons) == 1


def test_every_kind_but_the_one_of_earlier_versions_is_offered(
    events_page: WindowHarness,
) -> None:
    offered = {button.text() for button in events_page.window.progress.events.kind.buttons}
    assert offered == {event_name(kind) for kind in EventKind} - {"Therapy started or changed"}


def test_the_group_of_a_kind_is_open_and_what_is_seen_no_more_is_not_saved(
    events_page: WindowHarness,
) -> None:
    page = events_page.window.progress.events
    treatments, changes, _ = page.kind.heads
    assert treatments.isChecked()
    assert not page.kind.button(EventKind.FLARE).isVisible()
    changes.click()
    assert page.kind.button(EventKind.FLARE).isVisible()
    assert not page.kind.button(EventKind.INJECTION).isVisible()
    page.kind.button(EventKind.FLARE).click()
    changes.click()
    assert page.kind.value is EventKind.FLARE
    treatments.click()
    assert page.kind.value is None
    assert not page.keep.isEnabled()
    page.kind.choose(EventKind.CAMERA_CHANGED)
    assert page.kind.button(EventKind.CAMERA_CHANGED).isVisible()
    page.keep.click()
    events_page.settle()
    assert treatments.isChecked()
    assert page.kind.button(EventKind.INJECTION).hasFocus()


@pytest.mark.parametrize("day", ["2026-02-30", "yesterday", "", "2026-11-26"])
def test_a_day_that_is_none_or_to_come_is_not_noted(events_page: WindowHarness, day: str) -> None:
    page = events_page.window.progress.events
    page.kind.choose(EventKind.FLARE)
    page.day.text.setText(day)
    page.keep.click()
    events_page.settle()
    assert "25 Nov 2026" in page.lacking.text()
    assert not page.lacking.visibleRegion().isEmpty()
    assert events_page.history().events == ()


def test_events_break_the_curves_and_stand_in_them(stage: WindowHarness) -> None:
    person = stage.history().person
    stage.store.merge(demo_history(person, TODAY, weeks=20))
    day = TODAY - dt.timedelta(days=50)
    for kind, side in ((EventKind.INJECTION, Side.LEFT), (EventKind.OTHER, None)):
        stage.store.save_event(
            Event(id=new_id(), person_id=person.id, day=day, kind=kind, side=side)
        )
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    page = stage.window.progress
    content = page.curves.chart.content
    left, right = content.curves
    assert (len(left.ribbons), len(right.ribbons)) == (2, 1)
    assert left.ribbons[0].day[-1] <= day.toordinal() < left.ribbons[1].day[0]
    assert flags(content) == [(day, "injection, left", "injection"), (day, "noted", "other")]
    assert "then injection: increasing" in page.curves.notes.text()
    # A course that seems to rise beside no clear change is no contradiction in words above it.
    assert "no clear change" in page.overview.sentence.text()
    assert page.curves.rate.text().startswith("Left: +")
    assert page.curves.rate.text().endswith(" a month, not certain enough to call it a change.")


def test_a_day_is_chosen_in_the_calendar(events_page: WindowHarness) -> None:
    day = events_page.window.progress.events.day
    day.show_day(dt.date(2026, 9, 17))
    day._show_month()
    assert day.calendar.selectedDate().toPython() == dt.date(2026, 9, 17)
    day.calendar.clicked.emit(QDate(2026, 9, 16))
    assert day.day == dt.date(2026, 9, 16)
    assert day.open.accessibleName().startswith("Calendar: ")


def test_an_event_that_was_saved_by_mistake_is_taken_back_at_once(
    events_page: WindowHarness,
) -> None:
    page = events_page.window.progress.events
    page.kind.button(EventKind.FLARE).click()
    page.keep.click()
    events_page.settle()
    assert len(events_page.history().events) == 1
    page.undo.click()
    events_page.settle()
    assert events_page.history().events == ()
    assert not page.undo.isVisible()
    assert not page.said.isVisible()


def test_what_is_entered_outlasts_other_pages_before_the_first_session(
    events_page: WindowHarness,
) -> None:
    assert not events_page.history().sessions
    page = events_page.window.progress.events
    page.note.setText("before the harvest")
    events_page.window.go(MainPage.MEASURE)
    events_page.window.go(MainPage.PROGRESS)
    events_page.settle()
    assert page.isVisible()
    assert page.note.text() == "before the harvest"


@pytest.mark.parametrize("percent", PERCENTS)
def test_names_follow_each_other_at_one_distance_in_every_column(
    qapp: QApplication, percent: int
) -> None:
    configure_application(qapp)
    stage = WindowHarness(Scheme.LIGHT, percent, SIZES[0])
    stage.keeper.add_person("Rowan")
    stage.window.show_events()
    stage.settle()
    kinds = stage.window.progress.events.kind
    between: set[int] = set()
    for head, members in zip(kinds.heads, (TREATMENTS, CHANGES, OTHERS), strict=True):
        head.click()
        stage.settle()
        buttons = [kinds.button(kind) for kind in members]
        assert all(button.isVisibleTo(kinds) for button in buttons)
        columns: dict[int, list[QRect]] = defaultdict(list)
        for place in (button.geometry() for button in buttons):
            columns[place.left()].append(place)
        assert len(columns) <= 3
        for places in columns.values():
            between |= {low.top() - high.bottom() for high, low in pairwise(places)}
    assert len(between) == 1
    fields = (stage.window.progress.events.side, stage.window.progress.events.day)
    assert len({(field.y(), field.height()) for field in fields}) == 1
    stage.close()
