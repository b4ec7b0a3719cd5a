"""The progress page: curves, sessions, and what stands there before there are any."""

from dataclasses import replace

import pytest
from PySide6.QtWidgets import QDialog, QLabel, QPushButton

from gui.app.window_pages import MainPage
from measure.domain.movements import Movement
from tests.support.gui.demo_history import demo_history
from tests.support.gui.measuring_steps import measured_up_to_summary, shown
from tests.support.gui.stage import TODAY, WindowHarness


@pytest.fixture
def grown(stage: WindowHarness) -> WindowHarness:
    """A stage whose person has twenty weeks behind them."""
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=20))
    return stage


def test_an_empty_history_says_what_will_stand_here(stage: WindowHarness) -> None:
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    page = stage.window.progress
    texts = [one.text() for one in page.empty.findChildren(type(page.curves.verdict))]
    assert any("four weeks" in text for text in texts)
    assert not page.curves.chart.isVisible()


def test_curves_of_both_shoulders_with_pain(grown: WindowHarness) -> None:
    grown.window.go(MainPage.PROGRESS)
    grown.settle()
    page = grown.window.progress
    assert page.curves.chart.isVisible()
    words = [entry.words for entry in page.curves.legend.entries]
    # Most of these sessions were after exercises, and so is the line.
    assert words[0] == "likely course after exercises (95 %)"
    assert Movement.EXTENSION not in page.curves.movement.offered
    page.curves.movement.button(Movement.HAND_BEHIND_BACK).click()
    grown.settle()
    assert page.curves.verdict.text().startswith("Left: increasing, shown since ")
    assert "levels, +" in page.curves.notes.text()
    assert "compared with the first weeks" in page.curves.notes.text()
    assert "practice session" in words


def test_a_mark_leads_to_its_session(grown: WindowHarness) -> None:
    grown.window.go(MainPage.PROGRESS)
    grown.settle()
    page = grown.window.progress
    history = grown.history()
    record = history.measurements[0]
    page.curves.chart.picked.emit(record)
    grown.settle()
    assert page.details.isVisible()
    assert page.details.list.currentRow() == len(history.sessions) - 1
    page.to_curves.click()
    assert page.curves.chart.isVisible()


def answer(stage: WindowHarness, words: str) -> None:
    """Press a button of the dialog that is open."""
    (asked,) = [each for each in stage.window.findChildren(QDialog) if each.isVisible()]
    (wanted,) = [each for each in asked.findChildren(QPushButton) if each.text() == words]
    wanted.click()
    stage.settle()


def test_a_mistaken_session_is_deleted_after_asking(grown: WindowHarness) -> None:
    grown.window.go(MainPage.PROGRESS)
    grown.settle()
    page = grown.window.progress
    who = grown.store.people()[0].id
    before = grown.store.history(who)
    page.show_details()
    page.details.list.setCurrentRow(1)
    page.details.drop.click()
    (asked,) = [each for each in grown.window.findChildren(QDialog) if each.isVisible()]
    assert "Readings in it: 8." in asked.findChildren(QLabel)[1].text()
    assert asked.focusWidget() is asked.findChildren(QPushButton)[0]  # Enter keeps it
    answer(grown, "Keep it")
    assert grown.store.history(who) == before
    page.details.drop.click()
    answer(grown, "Delete it")
    after = grown.store.history(who)
    gone = before.sessions[-2]
    assert after.sessions == (*before.sessions[:-2], before.sessions[-1])
    assert all(each.session_id != gone.id for each in after.measurements)
    assert len(after.measurements) == len(before.measurements) - 8
    assert page.details.list.count() == len(after.sessions)
    assert page.details.isVisible()
    assert not grown.window.messages.undo.isHidden()
    grown.window.messages.undo.click()
    grown.settle()
    assert grown.store.history(who) == before
    assert page.details.list.count() == len(before.sessions)
    assert grown.window.messages.undo.isHidden()


def test_after_the_only_session_the_empty_page_is_shown(stage: WindowHarness) -> None:
    person = stage.store.people()[0]
    one = demo_history(person, TODAY, weeks=20)
    session = one.sessions[0]
    stage.store.merge(
        replace(
            one,
            sessions=(session,),
            measurements=tuple(e for e in one.measurements if e.session_id == session.id),
        )
    )
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    page = stage.window.progress
    page.show_details()
    page.details.drop.click()
    answer(stage, "Delete it")
    assert stage.store.history(person.id).sessions == ()
    assert page.empty.isVisible()


def test_an_early_history_gives_no_verdict(stage: WindowHarness) -> None:
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=1))
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    assert "four weeks and eight sessions" in stage.window.progress.curves.verdict.text()


def test_a_deleted_session_leaves_the_results_page_too(stage: WindowHarness) -> None:
    measured_up_to_summary(stage)
    (session,) = stage.history().sessions
    stage.window.progress.details.dropped.emit(session)
    stage.settle()
    stage.window.go(MainPage.MEASURE)
    stage.settle()
    assert shown(stage) is stage.window.measure.start
    assert "no longer saved" not in stage.window.messages.text
