"""Report as a file or on a printer, for the command line and the window."""

import datetime as dt
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QPagedPaintDevice

from gui.report.pdf import PrintedReport, make_pdf, page_layout, print_pages
from measure.domain.records import History, Person
from measure.errors import InputError
from measure.progress.overview import progress_of
from measure.report.choices import ReportChoices
from measure.report.page import USUAL_CHOICES, report_foot, report_html, report_title
from measure.report.svg import Draw
from measure.system.atomic_files import safe_name, write_new

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter
    from PySide6.QtWidgets import QWidget

#: File name endings of a report.
ENDINGS = (".html", ".pdf")


def report_name(person: Person, today: dt.date, ending: str) -> str:
    """Return a file name for a report that is valid on every system."""
    return f"{safe_name(person.pseudonym)}-{today.isoformat()}{ending}"


def report_bytes(
    history: History, today: dt.date, ending: str, choices: ReportChoices = USUAL_CHOICES
) -> tuple[bytes, str]:
    """Return the contents of a report's file, and the characters that its font does not have."""
    if ending == ".html":
        return report_html(history, today, choices).encode("utf-8"), ""
    title = report_title(history.person, choices.tr)
    pdf = make_pdf(_printed(history, today, choices), title)
    return pdf.content, pdf.lacking


def _printed(history: History, today: dt.date, choices: ReportChoices) -> PrintedReport:
    tr = choices.tr
    progress = progress_of(history, today)

    def html(draw: Draw, plot_height: float) -> str:
        chosen = replace(choices, plot_height=plot_height)
        return report_html(history, today, chosen, draw=draw, for_screen=False, progress=progress)

    return PrintedReport(
        html=html,
        foot=report_foot(history.person, today, tr),
        page_words=tr("page {page} of {pages}"),
        landscape=choices.landscape,
    )


def with_ending(target: Path, kind: str = "") -> Path:
    """Return a file's name with the ending of a report: its own, or that of the kind chosen.

    Parameters
    ----------
    kind
        What a dialog calls it, such as "HTML (*.html)"; without one it is a PDF.
    """
    if target.suffix.lower() in ENDINGS:
        return target
    return target.with_name(target.name + (".html" if ".html" in kind else ".pdf"))


def write_report(
    history: History, today: dt.date, target: Path, choices: ReportChoices = USUAL_CHOICES
) -> str:
    """Write a report to a new file; return the characters that the PDF's font does not have.

    Raises
    ------
    InputError
        When the name has another ending, or the file exists.
    MachineError
        When the file cannot be written.
    """
    ending = target.suffix.lower()
    if ending not in ENDINGS:
        raise InputError(f"{target.name} ends neither in .html nor in .pdf. Choose one of them.")
    content, lacking = report_bytes(history, today, ending, choices)
    write_new(target, content)
    return lacking


def print_report(
    history: History,
    today: dt.date,
    printer: QPagedPaintDevice,
    choices: ReportChoices = USUAL_CHOICES,
) -> int:
    """Print a report; return the number of pages."""
    return print_pages(printer, _printed(history, today, choices))


def chosen_printer(parent: "QWidget", *, landscape: bool = False) -> "QPrinter | None":
    """Ask for a printer, set up for a report; return None when the dialog was cancelled.

    Qt's own dialog asks; it also offers printing to a file.
    """
    # The command line writes reports without these libraries.
    from PySide6.QtPrintSupport import QPrintDialog, QPrinter

    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    # The paper that the printer is set to stays, be it A4 or letter.
    printer.setPageLayout(page_layout(printer.pageLayout().pageSize().id(), landscape=landscape))
    printer.setCreator("Thawline")
    dialog = QPrintDialog(printer, parent)
    return printer if dialog.exec() == QPrintDialog.DialogCode.Accepted else None
