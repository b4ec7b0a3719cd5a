"""The dialog before a report: the question, since when, how many pages."""

import datetime as dt

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog

from gui.app.report_choices import ReportChoicesDialog
from tests.support.gui.stage import WindowHarness


@pytest.fixture
def dialog(stage: WindowHarness) -> ReportChoicesDialog:
    return ReportChoicesDialog(stage.services.appearance, stage.window)


def test_everything_can_be_left_as_it_is(dialog: ReportChoicesDialog) -> None:
    dialog.show()
    QTest.keyClick(dialog.question, Qt.Key.Key_Return)
    assert dialog.result() == QDialog.DialogCode.Accepted
    choices = dialog.choices
    assert (choices.question, choices.since, choices.details, choices.landscape) == (
        "",
        None,
        False,
        False,
    )


def test_what_was_typed_and_ticked_is_chosen(dialog: ReportChoicesDialog) -> None:
    QTest.keyClicks(dialog.question, "May I dig again?")
    QTest.keyClicks(dialog.since.text, "2026-03-14")
    dialog.details.click()
    dialog.landscape.click()
    choices = dialog.choices
    assert choices.question == "May I dig again?"
    assert choices.since == dt.date(2026, 3, 14)
    assert choices.details
    assert choices.landscape


def test_what_is_no_day_is_asked_for_again(dialog: ReportChoicesDialog) -> None:
    dialog.show()
    QTest.keyClicks(dialog.since.text, "14 March")
    QTest.keyClick(dialog.question, Qt.Key.Key_Return)
    assert dialog.result() != QDialog.DialogCode.Accepted
    assert "2026-03-14" in dialog.problem.text()


def test_escape_writes_nothing(dialog: ReportChoicesDialog) -> None:
    dialog.show()
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert dialog.result() == QDialog.DialogCode.Rejected
