"""Report as a file or on a printer, for the command line and the window."""

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtGui import QPagedPaintDevice

from gui.report.pdf import make_pdf, page_layout, print_pages
from measure.domain.records import History, Person
from measure.errors import InputError
from measure.report.page import report_foot, report_html, report_title
from measure.system.atomic_files import safe_name, write_new

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter
    from PySide6.QtWidgets import QWidget

#: File name endings of a report.
ENDINGS = (".html", ".pdf")


def report_name(person: Person, today: dt.date, ending: str) -> str:
    """Return a file name for a report that is valid on every system."""
    return f"{safe_name(person.pseudonym)}-{today.isoformat()}{ending}"


def report_bytes(history: History, today: dt.date, ending: str) -> tuple[bytes, str]:
    """Return the contents of a report's file, and the characters that its font does not have."""
    if ending == ".html":
        return report_html(history, today).encode("utf-8"), ""
    pdf = make_pdf(
        lambda draw: report_html(history, today, draw=draw, for_screen=False),
        report_title(history.person),
        report_foot(history.person, today),
    )
    return pdf.content, pdf.lacking


def write_report(history: History, today: dt.date, target: Path) -> str:
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
    content, lacking = report_bytes(history, today, ending)
    write_new(target, content)
    return lacking


def print_report(history: History, today: dt.date, printer: QPagedPaintDevice) -> int:
    """Print a report; return the number of pages."""
    return print_pages(
        printer,
        lambda draw: report_html(history, today, draw=draw, for_screen=False),
        report_foot(history.person, today),
    )


def chosen_printer(parent: "QWidget") -> "QPrinter | None":
    """Ask for a printer, set up for a report; return None when the dialog was cancelled.

    Qt's own dialog asks; it also offers printing to a file.
    """
    # The command line writes reports without these libraries.
    from PySide6.QtPrintSupport import QPrintDialog, QPrinter

    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    # The paper that the printer is set to stays, be it A4 or letter.
    printer.setPageLayout(page_layout(printer.pageLayout().pageSize().id()))
    printer.setCreator("Thawline")
    dialog = QPrintDialog(printer, parent)
    return printer if dialog.exec() == QPrintDialog.DialogCode.Accepted else None
