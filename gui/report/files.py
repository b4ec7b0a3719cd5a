"""A report as a file or on a printer, for the command line and the window."""

import datetime as dt
from pathlib import Path

from PySide6.QtGui import QPagedPaintDevice

from gui.report.pdf import make_pdf, print_pages
from measure.domain.records import History, Person
from measure.errors import InputError
from measure.report.page import report_foot, report_html, report_title
from measure.system.atomic_files import safe_name, write_new

#: The endings that a report can have.
ENDINGS = (".html", ".pdf")


def report_name(person: Person, today: dt.date, ending: str) -> str:
    """Return a name for a report's file that every system takes."""
    return f"{safe_name(person.pseudonym)}-{today.isoformat()}{ending}"


def report_bytes(history: History, today: dt.date, ending: str) -> tuple[bytes, str]:
    """Return a report as a file's contents, and the characters that its font has not."""
    if ending == ".html":
        return report_html(history, today).encode("utf-8"), ""
    made = make_pdf(
        lambda draw: report_html(history, today, draw=draw, for_screen=False),
        report_title(history.person),
        report_foot(history.person, today),
    )
    return made.content, made.lacking


def write_report(history: History, today: dt.date, target: Path) -> str:
    """Write a report to a new file; return the characters that the PDF's font has not.

    Raises
    ------
    InputError
        When the name has another ending, or a file has it already.
    MachineError
        When the disk refuses.
    """
    ending = target.suffix.lower()
    if ending not in ENDINGS:
        raise InputError(f"{target.name} ends neither in .html nor in .pdf. Choose one of them.")
    content, lacking = report_bytes(history, today, ending)
    write_new(target, content)
    return lacking


def print_report(history: History, today: dt.date, printer: QPagedPaintDevice) -> int:
    """Print a report on paper; return how many pages."""
    return print_pages(
        printer,
        lambda draw: report_html(history, today, draw=draw, for_screen=False),
        report_foot(history.person, today),
    )
