"""Printing a report from the window: the pages that a printer gets, and who is asked."""

import shutil
import subprocess
from pathlib import Path

import pytest
from PySide6.QtPrintSupport import QPrintDialog, QPrinter

import gui.app.main_window
from gui.report.printer import chosen_printer
from measure.report.wording import NOTICE
from tests.support.gui.memory_keeper import demo_history
from tests.support.gui.stage import TODAY, WindowHarness


def pages_of(path: Path) -> list[str]:
    """Return the text of each page of a PDF, blanks joined."""
    if not shutil.which("pdftotext"):
        pytest.skip("not on this system: pdftotext")
    done = subprocess.run(["pdftotext", path, "-"], capture_output=True, check=True, timeout=60)
    return [" ".join(page.split()) for page in done.stdout.decode("utf-8").split("\f") if page]


def test_the_report_goes_to_the_chosen_printer(
    stage: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "paper.pdf"

    def into_a_file(_parent: object) -> QPrinter:
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(target))
        return printer

    monkeypatch.setattr(gui.app.report_dialogs, "chosen_printer", into_a_file)
    stage.keeper.put(demo_history(stage.keeper.people()[0], TODAY, weeks=20))
    stage.window.reports.print()
    stage.settle()
    pages = pages_of(target)
    assert 1 <= len(pages) <= 2
    assert "Rowan" in pages[0]
    for number, page in enumerate(pages, start=1):
        assert NOTICE in page
        assert f"page {number} of {len(pages)}" in page
    assert str(len(pages)) in stage.window.messages.text


@pytest.mark.parametrize("answer", list(QPrintDialog.DialogCode))
def test_who_goes_back_prints_nothing(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch, answer: QPrintDialog.DialogCode
) -> None:
    monkeypatch.setattr(QPrintDialog, "exec", lambda _: answer)
    found = chosen_printer(stage.window)
    assert (found is not None) == (answer is QPrintDialog.DialogCode.Accepted)
    if found is not None:
        assert found.pageLayout().margins().left() == pytest.approx(11.0)


def test_nobody_measured_is_told_before_a_printer_is_asked_for(
    new_stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(gui.app.report_dialogs, "chosen_printer", pytest.fail)
    new_stage.window.reports.print()
    assert "Nobody has been measured" in new_stage.window.messages.text
