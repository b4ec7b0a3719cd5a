"""One patient after the other: what is measured and entered belongs to whom it was measured on."""

from contextlib import closing
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.app.window_pages import MainPage
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.storage.store import Store
from tests.support.gui.measuring_steps import (
    begin_clinic_session,
    begin_single,
    measured_after_questions,
)
from tests.support.gui.stage import StageClock, WindowHarness


def type_value(stage: WindowHarness, degrees: str) -> None:
    """Type what a goniometer said of the movement, as it is typed by hand."""
    field = next(iter(stage.window.measure.summary.typed.fields.values()))
    QTest.keyClicks(field, degrees)


def typed_of(stage: WindowHarness, pseudonym: str) -> list[float]:
    """Return the typed values that are saved of a person."""
    (person,) = [each for each in stage.store.people() if each.pseudonym == pseudonym]
    sessions = stage.store.history(person.id).sessions
    return [value.value_deg for session in sessions for value in session.clinician_values]


def measured_of(stage: WindowHarness, pseudonym: str) -> list[tuple[Movement, Side]]:
    (person,) = [each for each in stage.store.people() if each.pseudonym == pseudonym]
    records = stage.store.history(person.id).measurements
    return [(record.measurement.movement, record.measurement.side) for record in records]


def test_escape_leads_from_another_movement_back_to_the_results(new_stage: WindowHarness) -> None:
    """From there nobody else could be chosen: the session is this patient's."""
    begin_clinic_session(new_stage)
    page = new_stage.window.measure
    type_value(new_stage, "84")
    page.summary.next_movement.click()
    new_stage.settle()
    what = page.start.in_clinic.what
    assert what.isVisible()
    QTest.keyClick(what, Qt.Key.Key_Escape)
    new_stage.settle()
    assert page.summary.isVisible()
    assert [value.value_deg for value in page.summary.typed.values] == [84.0]


def test_somebody_chosen_elsewhere_gets_a_session_of_their_own(new_stage: WindowHarness) -> None:
    store = new_stage.store
    begin_clinic_session(new_stage, "Linden")
    page = new_stage.window.measure
    other = new_stage.keeper.add_person("Fern")
    type_value(new_stage, "84")
    page.summary.next_movement.click()
    new_stage.settle()
    page.choose_person(other.id)
    new_stage.settle()
    assert page.measuring is None
    assert typed_of(new_stage, "Linden") == [84.0]
    assert page.start.in_clinic.who.isVisible()
    page.start.in_clinic.who.last.click()
    new_stage.settle()
    measured_after_questions(new_stage, Movement.ABDUCTION, Side.RIGHT, 100.0, 102.0)
    assert measured_of(new_stage, "Linden") == [(Movement.FLEXION, Side.LEFT)]
    assert measured_of(new_stage, "Fern") == [(Movement.ABDUCTION, Side.RIGHT)]
    assert "Fern" in page.summary.line
    assert not page.summary.typed.values
    assert len(store.screenings(other.id)) == 1


def test_nobody_is_changed_in_the_middle_of_a_movement(new_stage: WindowHarness) -> None:
    begin_clinic_session(new_stage, "Linden")
    page = new_stage.window.measure
    other = new_stage.keeper.add_person("Fern")
    page.summary.next_movement.click()
    begin_single(page, Movement.ABDUCTION, Side.RIGHT)
    new_stage.settle()
    assert page.under_way
    page.choose_person(other.id)
    new_stage.settle()
    assert page.people.name == "Linden"
    assert "Finish this session first." in new_stage.window.messages.text


def test_somebody_who_is_not_saved_stays_until_the_session_ends(new_stage: WindowHarness) -> None:
    begin_clinic_session(new_stage, "Linden")
    page = new_stage.window.measure
    page.summary.finish.click()
    new_stage.settle()
    page.start.in_clinic.who.not_saved.click()
    new_stage.settle()
    measured_after_questions(new_stage, Movement.ABDUCTION, Side.RIGHT, 100.0, 102.0)
    page.people.load()  # as any change of what is saved does
    new_stage.settle()
    assert page.people.guest
    page.summary.finish.click()
    new_stage.settle()
    assert page.people.name == "Linden"
    assert measured_of(new_stage, "Linden") == [(Movement.FLEXION, Side.LEFT)]


def test_closing_the_window_keeps_what_was_entered(qapp: QApplication, tmp_path: Path) -> None:
    path = tmp_path / "sessions.sqlite"
    stage = WindowHarness(open_store=lambda: Store.open(path, clock=StageClock()))
    begin_clinic_session(stage, "Linden")
    summary = stage.window.measure.summary
    type_value(stage, "84")
    summary.noting.click()
    summary.note.setPlainText("Warm room")
    stage.window.go(MainPage.PROGRESS)
    stage.close()
    with closing(Store.open(path)) as store:
        (person,) = store.people()
        (session,) = store.history(person.id).sessions
    assert [value.value_deg for value in session.clinician_values] == [84.0]
    assert (session.note, session.finished) == ("Warm room", True)
