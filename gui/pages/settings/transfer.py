"""Export of a person's history as a file, and import of such a file."""

from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFileDialog

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.text.wording import tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card, row
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.domain.records import History, Merged, Person
from measure.export.formats import Format, export, file_name
from measure.export.history_csv import DecimalSign
from measure.export.history_json import read_history
from measure.system.atomic_files import write_new
from measure.system.clock import SystemClock


@dataclass(frozen=True, slots=True)
class _Written:
    path: Path
    history: History


def format_name(kind: Format) -> str:
    return {
        Format.SPREADSHEET: tr("Table for a spreadsheet"),
        Format.CSV: tr("Table for other programs"),
        Format.JSON: tr("Everything, to import again"),
        Format.FHIR: tr("For a health record"),
    }[kind]


def format_words(kind: Format) -> str:
    """Return what a format is for."""
    return {
        Format.SPREADSHEET: tr("One row for each trial. Opens in any spreadsheet program."),
        Format.CSV: tr("One row for each trial, with commas and decimal points (CSV)."),
        Format.JSON: tr(
            "Everything that is saved about the person (JSON). The only format that Thawline "
            "can import, here or on another computer."
        ),
        Format.FHIR: tr("The readings as observations of the FHIR standard, release 4."),
    }[kind]


def decimal_name(sign: DecimalSign) -> str:
    return tr("Decimal comma: 1,5") if sign is DecimalSign.COMMA else tr("Decimal point: 1.5")


class TransferPage(TitledPage):
    """Asks for person and format, then for a file; nothing is ever overwritten."""

    #: People were added or changed.
    changed = Signal()

    def __init__(self, services: Services) -> None:
        super().__init__(services.appearance, data_page_title(DataPage.TRANSFER))
        self._services = services
        self.person = MenuButton(tr("Person to export"))
        kinds = [Format.SPREADSHEET, Format.CSV, Format.JSON, Format.FHIR]
        self.kind = ChoiceRow(kinds, format_name, columns=2, title=tr("Format"))
        self.kind.choose(Format.SPREADSHEET)
        self.decimal = ChoiceRow(list(DecimalSign), decimal_name, title=tr("Decimal sign"))
        self.decimal.choose(DecimalSign.COMMA)
        self.explained = label("", "quiet")
        self.to_file = button(tr("Export to a file..."), "main")
        self.from_file = button(tr("Import a file..."))
        self.outcome = label("", "strong")
        self.kind.picked.connect(self._show_kind)
        self.to_file.clicked.connect(self.ask_for_target)
        self.from_file.clicked.connect(self.ask_for_source)
        private = tr(
            "The file can be read by your account only. It holds the name and every note: pass it "
            "on with care."
        )
        advice = tr(
            "Takes a file that was exported as \u201cEverything, to import again\u201d. What is "
            "missing here is added; what is here stays as it is."
        )
        gap = self._appearance.gap(1)
        self.lay_out(
            self.outcome,
            card(
                label(tr("Export"), "strong"),
                self.person,
                self.kind.row,
                self.explained,
                self.decimal.row,
                label(private, "quiet"),
                spacing=gap,
            ),
            card(
                label(tr("Import"), "strong"),
                label(advice, "quiet"),
                row(self.from_file, 1),
                spacing=gap,
            ),
            buttons=[self.to_file],
        )
        self._show_kind()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._tell("")
        services = self._services
        services.records.run(
            lambda: services.keeper.store.people(), self._show_people, self.message_raised.emit
        )

    def _show_people(self, people: list[Person]) -> None:
        names = {
            person.id: person.pseudonym + (tr(" (demo data)") if person.demo else "")
            for person in people
        }
        self.to_file.setEnabled(bool(people))
        self.person.setEnabled(bool(people))
        nobody = tr("No one has been added yet.")
        self.person.offer(list(names) or [""], lambda person_id: names.get(person_id, nobody))
        if self._services.person_id in names:
            self.person.choose(self._services.person_id)

    @Slot()
    def _show_kind(self) -> None:
        kind = self.kind.value or Format.SPREADSHEET
        self.explained.setText(format_words(kind))
        self.decimal.row.setVisible(kind is Format.SPREADSHEET)

    def _tell(self, words: str) -> None:
        """Show how it went, at the top of the page."""
        self.outcome.setText(words)
        self.outcome.setVisible(bool(words))

    # -- export -------------------------------------------------------------------------------

    @Slot()
    def ask_for_target(self) -> None:
        """Look the history up, ask for a file, and write it."""
        services, person_id = self._services, str(self.person.value)
        services.records.run(
            lambda: services.keeper.store.history(person_id), self._ask_for_file, self._tell
        )

    def _ask_for_file(self, history: History) -> None:
        kind = self.kind.value or Format.SPREADSHEET
        decimal = self.decimal.value or DecimalSign.COMMA
        now = SystemClock().now()
        name, _ = QFileDialog.getSaveFileName(
            self, tr("Export to a file"), file_name(history, kind, now)
        )
        if not name:
            return
        target = Path(name)

        def write() -> _Written:
            write_new(target, export(history, kind, now, decimal=decimal))
            return _Written(target, history)

        self._services.slow_worker.run(write, self._written, self._tell)

    def _written(self, written: _Written) -> None:
        self._tell(
            tr("Exported to {file}. Sessions: {sessions}, measurements: {measurements}.").format(
                file=written.path.name,
                sessions=len(written.history.sessions),
                measurements=len(written.history.measurements),
            )
        )

    # -- import -------------------------------------------------------------------------------

    @Slot()
    def ask_for_source(self) -> None:
        """Ask for a file, read it, and add what is missing here."""
        name, _ = QFileDialog.getOpenFileName(
            self,
            tr("Import a file"),
            "",
            tr("Exported histories ({endings})").format(endings="*.json"),
        )
        if name:
            path = Path(name)
            self._services.slow_worker.run(lambda: read_history(path), self._merge, self._tell)

    def _merge(self, history: History) -> None:
        keeper = self._services.keeper
        self._services.records.run(lambda: keeper.store.merge(history), self._merged, self._tell)

    def _merged(self, merged: Merged) -> None:
        name = merged.person.pseudonym
        words = (
            tr("Imported as a new person: {name}.")
            if merged.new_person
            else tr("{name} was here already.")
        )
        counts = tr("Records added: {added}. Here already: {same}.").format(
            added=merged.added, same=merged.same + merged.kept
        )
        self._tell(f"{words.format(name=name)} {counts}")
        self.changed.emit()
