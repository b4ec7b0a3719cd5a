"""Which printer a report goes to. Qt's own dialog asks; a file can be chosen there as well."""

from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QWidget

from gui.report.pdf import page_layout


def chosen_printer(parent: QWidget) -> QPrinter | None:
    """Return the printer that somebody chose, set for a report; None when they went back."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    # The paper that the printer is set to stays, be it A4 or letter.
    printer.setPageLayout(page_layout(printer.pageLayout().pageSize().id()))
    printer.setCreator("Thawline")
    dialog = QPrintDialog(printer, parent)
    return printer if dialog.exec() == QPrintDialog.DialogCode.Accepted else None
