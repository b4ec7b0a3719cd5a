"""Values of the clinician's own hand: typed with a point or a comma, whatever the language."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from gui.pages.measuring.typed_values import TypedValues
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.session_facts import ClinicianMethod
from tests.support import record_samples as sample
from tests.support.gui.measuring_steps import (
    begin_clinic_session,
    begin_home,
    begin_single,
    give_history,
    trials,
)
from tests.support.gui.stage import WindowHarness

LEFT_FLEXION = {(Movement.FLEXION, Side.LEFT): sample.measurement()}


def words_of(widget: QWidget) -> str:
    return " ".join(text.text() for text in widget.findChildren(QLabel))


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [("92", 92.0), ("92.5", 92.5), ("92,5", 92.5), ("-5", -5.0), ("", None), ("-", None)],
)
def test_a_point_and_a_comma_are_alike(qtbot: QtBot, typed: str, degrees: float | None) -> None:
    form = TypedValues()
    qtbot.addWidget(form)
    form.offer(LEFT_FLEXION)
    QTest.keyClicks(next(iter(form.fields.values())), typed)
    assert [value.value_deg for value in form.values] == ([] if degrees is None else [degrees])


def test_an_impossible_angle_is_left_out(qtbot: QtBot) -> None:
    form = TypedValues()
    qtbot.addWidget(form)
    form.offer(LEFT_FLEXION)
    QTest.keyClicks(next(iter(form.fields.values())), "925")
    assert form.values == ()


@pytest.mark.parametrize(
    ("active", "passive", "asked"),
    [("112", "84", True), ("112", "107", False), ("84", "112", False), ("112", "", False)],
)
def test_a_passive_value_less_than_the_active_one_is_questioned(
    qtbot: QtBot, active: str, passive: str, asked: bool
) -> None:
    """It is kept all the same: who measured decides."""
    form = TypedValues()
    qtbot.addWidget(form)
    form.offer(LEFT_FLEXION)
    for field, typed in zip(form.fields.values(), (active, passive), strict=True):
        field.setText(typed)
        field.editingFinished.emit()
    (fault,) = form.faults.values()
    assert fault.text() == ("Passive is less than active. Is that right?" if asked else "")
    assert {field.accessibleDescription() for field in form.fields.values()} == {fault.text()}
    assert not form.holds_at_fault()
    assert len(form.values) == 1 + bool(passive)


def test_an_impossible_angle_is_kept_and_named(new_stage: WindowHarness) -> None:
    begin_clinic_session(new_stage)
    summary = new_stage.window.measure.summary
    active, passive = summary.typed.fields.values()
    (fault,) = summary.typed.faults.values()
    QTest.keyClicks(active, "840")
    QTest.keyClick(active, Qt.Key.Key_Return)
    assert active.hasFocus()
    assert active.text() == "840"
    assert fault.text() == "Possible: \N{MINUS SIGN}90\u00b0 to 200\u00b0. Correct it or clear it."
    assert active.accessibleDescription() == fault.text()
    summary.typing.click()
    summary.finish.click()
    new_stage.settle()
    assert summary.isVisible(), "nothing is dropped without a word"
    assert active.isVisible()
    assert active.hasFocus()
    QTest.keyClicks(active, "84")
    QTest.keyClick(active, Qt.Key.Key_Return)
    assert not fault.isVisible()
    assert passive.hasFocus()
    summary.finish.click()
    new_stage.settle()
    (session,) = new_stage.history().sessions
    assert [value.value_deg for value in session.clinician_values] == [84.0]


def test_enter_leads_on_and_ends_nothing(new_stage: WindowHarness) -> None:
    """A clinician types one value after the other; Enter on the page would finish the session."""
    begin_clinic_session(new_stage)
    summary = new_stage.window.measure.summary
    assert "camera: 91\u00b0" in words_of(summary.typed)
    active, passive = summary.typed.fields.values()
    assert "Active, goniometer Passive, goniometer" in words_of(summary.typed)
    assert active.hasFocus()
    QTest.keyClicks(active, "112")
    QTest.keyClick(active, Qt.Key.Key_Return)
    new_stage.settle()
    assert summary.isVisible()
    assert passive.hasFocus()
    QTest.keyClick(passive, Qt.Key.Key_Return)
    new_stage.settle()
    assert summary.isVisible()
    assert summary.finish.hasFocus()
    QTest.keyClicks(passive, "84")
    summary.finish.click()
    new_stage.settle()
    (session,) = new_stage.history().sessions
    values = [(value.method, value.value_deg) for value in session.clinician_values]
    assert values == [(ClinicianMethod.GONIOMETER, 112.0), (ClinicianMethod.PASSIVE, 84.0)]


def test_typed_values_stand_on_the_card(new_stage: WindowHarness) -> None:
    begin_clinic_session(new_stage)
    summary = new_stage.window.measure.summary
    active, passive = summary.typed.fields.values()
    assert "By hand" not in words_of(summary.card)
    for field, typed in ((active, "112"), (passive, "84")):
        QTest.keyClicks(field, typed)
        QTest.keyClick(field, Qt.Key.Key_Return)
    assert "By hand: active 112\u00b0, passive 84\u00b0" in words_of(summary.card)


def test_the_copied_line_holds_the_other_side_of_earlier_today(new_stage: WindowHarness) -> None:
    """What the card compares stands in the line as well."""
    begin_clinic_session(new_stage)
    page = new_stage.window.measure
    page.summary.finish.click()
    new_stage.settle()
    page.start.in_clinic.who.last.click()
    new_stage.settle()
    begin_single(page, Movement.FLEXION, Side.RIGHT)
    new_stage.settle()
    trials(new_stage, 120.0, 122.0)
    page.pain.done.click()
    new_stage.settle()
    (difference,) = page.summary.card.differences
    line = page.summary.line
    assert "; right 121\u00b0 (115 to 127), 2 trials counted" in line
    assert "left 91\u00b0 (85 to 97), 2 trials counted, measured earlier today; " in line
    assert difference
    assert difference in line
    assert "Ranges in brackets are 95 % ranges." in line


@pytest.mark.parametrize("by_key", [True, False])
def test_the_report_leads_back_to_the_results(new_stage: WindowHarness, by_key: bool) -> None:
    """Values, note and copying stay in reach; the report holds what was typed by then."""
    begin_clinic_session(new_stage)
    window = new_stage.window
    summary = window.measure.summary
    QTest.keyClicks(next(iter(summary.typed.fields.values())), "120")
    summary.noting.click()
    summary.note.setPlainText("Warm room")
    line = summary.line
    summary.report.click()
    new_stage.settle()
    assert window.report.isVisible()
    (session,) = new_stage.history().sessions
    assert [value.value_deg for value in session.clinician_values] == [120.0]
    if by_key:
        QTest.keyClick(window.report, Qt.Key.Key_Escape)
    else:
        window.report.leave.click()
    new_stage.settle()
    assert summary.isVisible()
    assert summary.line == line
    assert summary.note.toPlainText() == "Warm room"
    assert summary.typed.isVisible()
    summary.finish.click()
    new_stage.settle()
    (session,) = new_stage.history().sessions
    assert (session.note, len(session.clinician_values)) == ("Warm room", 1)


def test_the_report_leads_back_to_the_results_at_home(stage: WindowHarness) -> None:
    give_history(stage)
    begin_home(stage)
    page = stage.window.measure
    trials(stage, 90.0, 92.0)
    page.live.stop.click()
    stage.settle()
    page.pain.finish.click()
    stage.settle()
    assert page.summary.isVisible()
    page.summary.report.click()
    stage.settle()
    assert stage.window.report.isVisible()
    QTest.keyClick(stage.window.report, Qt.Key.Key_Escape)
    stage.settle()
    assert page.summary.isVisible()
