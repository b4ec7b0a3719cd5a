"""Page of the programme for the person: as a PDF, or in a preview that prints."""

import datetime as dt
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtPrintSupport import QPrinter, QPrintPreviewDialog
from PySide6.QtWidgets import QFileDialog, QWidget

from gui.report.files import report_name
from gui.report.handout import print_handout
from gui.report.handout_file import write_handout
from gui.report.handout_words import HandoutWords, handout_words
from gui.report.language import translate_into
from gui.report.pdf import page_layout
from gui.text.wording import error_text, tr
from measure.domain.home_programme_records import Plan
from measure.domain.records import Person
from measure.errors import ThawlineError


class HandoutDialogs(QObject):
    """Asks where the page goes, in front of the widget that it belongs to."""

    message_raised = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._window = parent

    def write(self, person: Person, plan: Plan, language: str, today: dt.date) -> None:
        """Ask for a file and write the page to it."""
        name, _ = QFileDialog.getSaveFileName(
            self._window,
            tr("Save the exercise sheet"),
            report_name(person, today, ".pdf"),
            "PDF (*.pdf)",
        )
        if not name:
            return
        try:
            write_handout(person, plan, language, Path(name))
        except ThawlineError as error:
            self.message_raised.emit(error_text(error))
        else:
            self.message_raised.emit(tr("Saved as {file}.").format(file=Path(name).name))

    def preview(self, person: Person, plan: Plan, language: str) -> None:
        """Show the page as it will be printed; the preview prints it."""
        words = handout_words(person, plan, translate_into(language))
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setPageLayout(page_layout(printer.pageLayout().pageSize().id()))
        printer.setCreator("Thawline")
        dialog = QPrintPreviewDialog(printer, self._window)
        dialog.setWindowTitle(words.title)
        dialog.paintRequested.connect(partial(self.paint, words=words))
        dialog.exec()

    @staticmethod
    def paint(printer: QPrinter, words: HandoutWords) -> None:
        """Paint the page on a printer, or on its preview."""
        print_handout(printer, words)
