"""Reports of the measured person: ask where one goes, then write or print it in the background."""

from pathlib import Path

from PySide6.QtCore import QObject, Signal, Slot
from PySide6.QtWidgets import QFileDialog, QWidget

from gui.session.services import Services
from gui.text.wording import tr
from measure.domain.records import History, Person
from measure.report.choices import ReportChoices


class ReportDialogs(QObject):
    """Asks for a file or a printer, in front of the window that it belongs to."""

    message_raised = Signal(str)

    def __init__(self, services: Services, parent: QWidget) -> None:
        super().__init__(parent)
        self._services, self._window = services, parent
        self.person: Person | None = None

    @Slot(object)
    def write(self, choices: ReportChoices) -> None:
        """Ask for a file and write the report to it."""
        # Diagrams and PDF are loaded when a report is first wanted.
        from gui.report.files import report_name, with_ending, write_report

        person, services, tell = self._measured(), self._services, self.message_raised.emit
        if person is None:
            return
        today = services.today()
        name, kind = QFileDialog.getSaveFileName(
            self._window,
            tr("Save a report"),
            report_name(person, today, ".pdf"),
            "PDF (*.pdf);;HTML (*.html)",
        )
        if not name:
            return
        target = with_ending(Path(name), kind)

        def write_history(history: History) -> None:
            services.slow_worker.run(
                lambda: write_report(history, today, target, choices),
                lambda _: tell(tr("Saved as {file}.").format(file=target.name)),
                tell,
            )

        services.records.run(lambda: services.keeper.store.history(person.id), write_history, tell)

    @Slot(object)
    def print(self, choices: ReportChoices) -> None:
        """Ask for a printer and print the report."""
        from gui.report.files import chosen_printer, print_report

        person, services, tell = self._measured(), self._services, self.message_raised.emit
        if person is None:
            return
        today = services.today()
        printer = chosen_printer(self._window, landscape=choices.landscape)
        if printer is None:
            return

        # A printer that writes a file, such as a PDF, has its name.
        file = printer.outputFileName()

        def tell_where(pages: int) -> None:
            if file:
                tell(tr("Pages printed to {path}: {pages}.").format(path=file, pages=pages))
            else:
                tell(tr("Pages sent to the printer: {pages}.").format(pages=pages))

        def print_history(history: History) -> None:
            services.slow_worker.run(
                lambda: print_report(history, today, printer, choices),
                tell_where,
                tell,
            )

        services.records.run(lambda: services.keeper.store.history(person.id), print_history, tell)

    def _measured(self) -> Person | None:
        if self.person is None:
            self.message_raised.emit(tr("No one has been measured yet."))
        return self.person
