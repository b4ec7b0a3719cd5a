"""People page: added, edited, chosen, deleted, put back."""

from dataclasses import replace

from PySide6.QtWidgets import QDialog, QLabel, QPushButton

from gui.app.window_pages import MainPage
from gui.pages.measuring.person_form import PersonForm
from gui.pages.settings.data_page import DataPage
from gui.pages.settings.people import PeoplePage
from measure.domain.records import Person
from measure.progress.wording import UNASKED_NAME
from measure.system.clock import new_id
from tests.support.gui.demo_history import demo_history
from tests.support.gui.measuring_steps import begin_home, shown, trials
from tests.support.gui.stage import TODAY, WindowHarness


def opened(stage: WindowHarness) -> PeoplePage:
    stage.window.show_data(DataPage.PEOPLE)
    stage.settle()
    return stage.window.settings.people


def dialog(stage: WindowHarness) -> QDialog:
    (shown,) = [one for one in stage.window.findChildren(QDialog) if one.isVisible()]
    return shown


def add(stage: WindowHarness, name: str) -> Person:
    page = opened(stage)
    page.add.click()
    form = dialog(stage)
    assert isinstance(form, PersonForm)
    form.name.setText(name)
    form.save.click()
    stage.settle()
    return next(one for one in stage.store.people() if one.pseudonym == name)


def test_a_person_is_added_and_edited(stage: WindowHarness) -> None:
    hazel = add(stage, "Hazel")
    page = opened(stage)
    page.buttons["edit", hazel.id].click()
    form = dialog(stage)
    assert isinstance(form, PersonForm)
    form.since.setText("2026-03")
    form.save.click()
    stage.settle()
    assert replace(hazel, since="2026-03") in stage.store.people()


def test_a_taken_name_is_said_and_nothing_is_changed(stage: WindowHarness) -> None:
    before = stage.store.people()
    page = opened(stage)
    page.add.click()
    form = dialog(stage)
    assert isinstance(form, PersonForm)
    form.name.setText("rowan")
    form.save.click()
    stage.settle()
    assert stage.store.people() == before
    assert "already called Rowan" in stage.window.messages.text


def test_another_person_is_chosen_to_be_measured(stage: WindowHarness) -> None:
    rowan = stage.store.people()[0]
    hazel = add(stage, "Hazel")
    page = opened(stage)
    assert ("choose", rowan.id) not in page.buttons
    page.buttons["choose", hazel.id].click()
    stage.settle()
    chosen = stage.window.measure.people.person
    assert chosen is not None
    assert chosen.pseudonym == "Hazel"


def test_a_deleted_person_is_gone_and_can_be_put_back(stage: WindowHarness) -> None:
    rowan = stage.store.people()[0]
    stage.store.merge(demo_history(rowan, TODAY, weeks=6))
    before = stage.store.history(rowan.id)
    page = opened(stage)
    page.buttons["delete", rowan.id].click()
    asked = dialog(stage)
    assert f"{len(before.sessions)} sessions are deleted." in asked.findChildren(QLabel)[1].text()
    assert asked.focusWidget() is asked.findChildren(QPushButton)[0]  # Enter deletes nothing
    asked.accept()
    stage.settle()
    assert stage.store.people() == []
    assert page.buttons == {}
    stage.window.messages.undo.click()
    stage.settle()
    assert stage.store.history(rowan.id) == before
    assert ("delete", rowan.id) in page.buttons


def test_of_a_deleted_person_nothing_stays_on_the_measuring_page(stage: WindowHarness) -> None:
    rowan = stage.store.people()[0]
    measure = stage.window.measure
    begin_home(stage)
    trials(stage, 100.0, 101.0, 102.0, 103.0)
    measure.pain.finish.click()
    stage.settle()
    assert shown(stage) is measure.summary
    opened(stage).buttons["delete", rowan.id].click()
    dialog(stage).accept()
    stage.settle()
    stage.window.go(MainPage.MEASURE)
    stage.settle()
    assert shown(stage) is measure.start
    assert measure.measuring is None
    assert measure.start.welcome.isVisible()
    assert measure.start.welcome.affected.value is None
    assert not measure.start.welcome.at_home.isEnabled()
    assert "no longer saved" not in stage.window.messages.text
    stage.window.messages.undo.click()
    stage.settle()
    assert measure.start.at_home.isVisible()
    assert len(stage.store.sessions(rowan.id)) == 1


def test_anybodys_progress_opens_and_made_up_people_are_not_measured(stage: WindowHarness) -> None:
    clover = Person(id=new_id(), pseudonym="Clover", demo=True)
    stage.store.merge(demo_history(clover, TODAY, weeks=6))
    page = opened(stage)
    assert ("choose", clover.id) not in page.buttons
    page.buttons["progress", clover.id].click()
    stage.settle()
    assert stage.window.place == MainPage.PROGRESS
    assert stage.window.progress.overview.accessibleName() == "Progress: Clover"
    assert stage.window.reports.person == clover


def test_who_was_never_asked_for_a_name_is_spoken_to(stage: WindowHarness) -> None:
    me = stage.keeper.add_person(UNASKED_NAME)
    page = opened(stage)
    page.buttons["delete", me.id].click()
    asked = dialog(stage)
    question, more = (words.text() for words in asked.findChildren(QLabel))
    assert question == "Delete everything that is saved about you?"
    assert more.startswith("You can undo this"), "there is no session to name"
    assert "Delete my data" in [press.text() for press in asked.findChildren(QPushButton)]
    asked.accept()
    stage.settle()
    assert stage.window.messages.text.startswith("Everything saved about you is deleted.")
