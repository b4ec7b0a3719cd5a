"""The form before a report: the question, since when, how many pages."""

import datetime as dt

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.pages.report.choices_form import ChangesSince, ReportChoicesForm
from gui.style.appearance import Appearance
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY, WindowHarness


def form_of(qapp: QApplication) -> ReportChoicesForm:
    form = ReportChoicesForm(Appearance())
    form.show()
    return form


def test_everything_can_be_left_as_it_is(qapp: QApplication) -> None:
    choices = form_of(qapp).choices
    assert (choices.question, choices.since) == ("", None)
    assert not choices.details
    assert not choices.landscape


def test_what_was_typed_and_ticked_is_chosen_and_told_once_a_field(qapp: QApplication) -> None:
    form = form_of(qapp)
    announced: list[bool] = []
    form.changed.connect(lambda: announced.append(True))
    QTest.keyClicks(form.question, "May I dig again?")
    assert not announced
    QTest.keyClick(form.question, Qt.Key.Key_Return)
    QTest.keyClick(form.question, Qt.Key.Key_Return)
    form.period._pick(ChangesSince.DAY)
    assert form.since.isVisible()
    QTest.keyClicks(form.since.text, "2026-03-14")
    QTest.keyClick(form.since.text, Qt.Key.Key_Return)
    form.details.click()
    form.landscape.click()
    assert len(announced) == 4
    choices = form.choices
    assert choices.question == "May I dig again?"
    assert choices.since == dt.date(2026, 3, 14)
    assert choices.details
    assert choices.landscape


def test_what_is_no_day_is_said_and_counts_as_empty(qapp: QApplication) -> None:
    form = form_of(qapp)
    assert form.since.isHidden()
    form.period._pick(ChangesSince.DAY)
    QTest.keyClicks(form.since.text, "14 March")
    QTest.keyClick(form.since.text, Qt.Key.Key_Return)
    assert "14 Mar 2026" in form.problem.text()
    assert form.choices.since is None
    form.since.text.clear()
    QTest.keyClick(form.since.text, Qt.Key.Key_Return)
    assert form.problem.isHidden()


def test_a_day_counts_only_while_one_is_asked_for(qapp: QApplication) -> None:
    form = form_of(qapp)
    form.period._pick(ChangesSince.DAY)
    QTest.keyClicks(form.since.text, "2026-03-14")
    assert form.choices.since == dt.date(2026, 3, 14)
    form.period._pick(ChangesSince.VISIT)
    assert form.choices.since is None


def test_the_preview_shows_the_question_and_the_further_pages(stage: WindowHarness) -> None:
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=12))
    stage.window.show_report()
    stage.settle()
    stage.settle()
    page = stage.window.report
    assert len(page.sheets) == 1
    QTest.keyClicks(page.form.question, "May I dig again?")
    page.form.details.click()
    stage.settle()
    stage.settle()
    assert len(page.sheets) > 1
    assert "May I dig again?" in page.sheets[0].accessibleDescription()
