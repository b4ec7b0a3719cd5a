"""What is told when something of ours breaks."""

import sys
import threading
from pathlib import Path

import pytest
from PySide6.QtWidgets import (
    QApplication,
    QWidget,
)

from gui.app.crash_report import CrashDialog, CrashReporter, crash_report_text
from tests.support.gui.stage import WindowHarness


def test_details_name_versions_and_place_but_not_the_persons_home(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(Path, "home", lambda: Path(__file__).parents[3])
    try:
        raise ZeroDivisionError("a mistake of ours")
    except ZeroDivisionError as error:
        told = crash_report_text(type(error), error, error.__traceback__)
    assert "qt " in told
    assert "opencv" in told
    assert Path(__file__).name in told
    assert "a mistake of ours" in told
    assert str(Path(__file__).parents[3]) not in told


def test_a_crash_is_told_with_versions_and_the_window_goes_on(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    reporter = CrashReporter()
    reporter.install()
    try:
        error = ZeroDivisionError("division by zero")
        sys.excepthook(type(error), error, None)
        stage.settle()
        assert reporter.dialog is not None
        text = reporter.dialog.text.toPlainText()
        for part in ("thawline", "python", "qt", "ZeroDivisionError"):
            assert part in text
        reporter.dialog.copy.click()
        assert QApplication.clipboard().text() == text
        first = reporter.dialog
        sys.excepthook(type(error), error, None)
        stage.settle()
        assert reporter.dialog is first
        first.go_on.click()
        assert not first.isVisible()
    finally:
        reporter.remove()
    assert "ZeroDivisionError" in capsys.readouterr().err
    assert stage.window.isVisible()


def test_a_crash_in_another_thread_is_told_in_the_windows_thread(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    reporter = CrashReporter()
    shown_in: list[int] = []
    original = CrashDialog.__init__

    def noted(dialog: CrashDialog, text: str, parent: QWidget | None = None) -> None:
        shown_in.append(threading.get_ident())
        original(dialog, text, parent)

    monkeypatch.setattr(CrashDialog, "__init__", noted)
    reporter.install()
    try:
        worker = threading.Thread(target=lambda: 1 / 0)
        worker.start()
        worker.join()
        stage.settle()
    finally:
        reporter.remove()
    assert shown_in == [threading.get_ident()]
    assert reporter.dialog is not None
    reporter.dialog.close()
    assert "ZeroDivisionError" in capsys.readouterr().err


def test_the_details_name_versions_and_the_error() -> None:
    try:
        raise RuntimeError("of ours")
    except RuntimeError as error:
        text = crash_report_text(type(error), error, error.__traceback__)
    assert "RuntimeError: of ours" in text
    assert "numpy" in text


def test_the_details_are_shown_in_whole_lines_when_asked_for(stage: WindowHarness) -> None:
    text = "\n".join(f"line {number}" for number in range(40))
    dialog = CrashDialog(text, stage.window)
    dialog.open()
    stage.settle()
    closed = dialog.height()
    assert dialog.text.isHidden()
    dialog.details.click()
    stage.settle()
    assert dialog.text.isVisible()
    seen, line = dialog.text.viewport().height(), dialog.text.fontMetrics().lineSpacing()
    assert seen % line == round(dialog.text.document().documentMargin())
    assert dialog.height() > closed + 3 * line
    assert dialog.height() <= stage.window.height()
    dialog.details.click()
    stage.settle()
    assert dialog.text.isHidden()
    assert dialog.height() == closed
    dialog.close()
