"""Reports as files and on a printer: names, existing files, the pages that a printer gets."""

import shutil
import subprocess
from pathlib import Path

import pytest
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QApplication

import gui.report.files
from gui.report.files import chosen_printer, report_name, write_report
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.errors import InputError
from measure.report.caveats import NOTICE
from measure.report.choices import ReportChoices
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY, WindowHarness
from tests.support.progress_histories import day, history
from tests.support.record_samples import moment, person

TWELVE = [(7 * week, 90.0 + week) for week in range(12)]
NOW = moment("2026-11-25T09:00:00+00:00", 60)


def plain(name: str = "Rosa") -> History:
    return history({(Movement.FLEXION, Side.LEFT): TWELVE}, who=person(name))


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

    def into_a_file(_parent: object, *, landscape: bool) -> QPrinter:
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(target))
        return printer

    monkeypatch.setattr(gui.report.files, "chosen_printer", into_a_file)
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=20))
    stage.window.reports.print(ReportChoices(question="May I dig again?"))
    stage.settle()
    pages = pages_of(target)
    assert len(pages) == 1
    assert "Rowan" in pages[0]
    assert "May I dig again?" in pages[0]
    for number, page in enumerate(pages, start=1):
        assert NOTICE in page
        assert f"page {number} of {len(pages)}" in page
    said = stage.window.messages.text.replace("\u200b", "")
    assert said == f"Pages printed to {target}: {len(pages)}."


@pytest.mark.parametrize("answer", list(QPrintDialog.DialogCode))
def test_who_goes_back_prints_nothing(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch, answer: QPrintDialog.DialogCode
) -> None:
    monkeypatch.setattr(QPrintDialog, "exec", lambda _: answer)
    printer = chosen_printer(stage.window)
    assert (printer is not None) == (answer is QPrintDialog.DialogCode.Accepted)
    if printer is not None:
        assert printer.pageLayout().margins().left() == pytest.approx(11.0)


def test_nobody_measured_is_told_before_a_printer_is_asked_for(
    new_stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(gui.report.files, "chosen_printer", pytest.fail)
    new_stage.window.reports.print(ReportChoices())
    assert "No one has been measured" in new_stage.window.messages.text


def test_a_file_that_is_there_is_left_and_another_name_offered(
    qapp: QApplication, tmp_path: Path
) -> None:
    path = tmp_path / "report.html"
    path.write_text("mine")
    with pytest.raises(InputError, match=r"report \(2\)\.html"):
        write_report(plain(), day(90), path)
    assert path.read_text() == "mine"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("name", ["report.docx", "report", "report.pdf.txt"])
def test_other_endings_are_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(InputError, match=r"neither in \.html nor in \.pdf"):
        write_report(plain(), day(90), tmp_path / name)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("Rosa", "Rosa-2026-11-25.pdf"),
        ("a/b\\c:d", "a-b-c-d-2026-11-25.pdf"),
        ("CON", "_CON-2026-11-25.pdf"),
        ("Łukasz.", "Łukasz-2026-11-25.pdf"),
    ],
)
def test_names_of_files_that_every_system_takes(name: str, expected: str) -> None:
    assert report_name(person(name), NOW.day, ".pdf") == expected
