"""Export of a person's history as a file, and import of such a file."""

import os
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFileDialog, QFrame, QPushButton

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.pages.settings.file_figures import LockMark
from gui.pages.settings.format_list import FormatList
from gui.session.services import Services
from gui.style.measures import GAP_PX
from gui.text.wording import listed_name, tr
from gui.widgets.beside_row import BesideRow
from gui.widgets.buttons import ButtonRow, MenuButton, button
from gui.widgets.layouts import card, column, row, separator, widget_with
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.domain.records import History, Merged, Person
from measure.export.formats import Format, export, file_name
from measure.export.history_csv import DecimalSign
from measure.export.history_json import read_history
from measure.system.atomic_files import write_new
from measure.system.clock import SystemClock

#: Text size from which the buttons stand in the foot, per cent. [technical]
_BELOW_FROM_PERCENT = 125


@dataclass(frozen=True, slots=True)
class _Written:
    path: Path
    history: History


def decimal_name(sign: DecimalSign) -> str:
    return tr("Decimal comma: 1,5") if sign is DecimalSign.COMMA else tr("Decimal point: 1.5")


class TransferPage(TitledPage):
    """Asks for person and format, then for a file; nothing is ever overwritten."""

    #: People were added or changed.
    changed = Signal()

    def __init__(self, services: Services) -> None:
        super().__init__(services.appearance, data_page_title(DataPage.TRANSFER))
        self._services = services
        self.decimal = MenuButton(tr("Decimal sign"))
        self.decimal.offer((DecimalSign.COMMA, DecimalSign.POINT), decimal_name)
        self.person = MenuButton(tr("Export"))
        self.kind = FormatList(services.appearance)
        self.kind.button(Format.SPREADSHEET).toggled.connect(self.decimal.setVisible)
        #: Beside what they are about, or in the foot where that would lie out of sight.
        self._to_beside, self._to_below = (
            button(tr("Export to a file..."), "main") for _ in range(2)
        )
        self._from_beside, self._from_below = (button(tr("Import a file...")) for _ in range(2))
        self.outcome, self._care, self._line = label("", "strong"), label("", "quiet"), separator()
        for way in (self._to_beside, self._to_below):
            way.clicked.connect(self.ask_for_target)
        for way in (self._from_beside, self._from_below):
            way.clicked.connect(self.ask_for_source)
        self._from_below.setProperty("leads_on", True)
        self.lay_out(
            self.outcome,
            self._about_export(),
            self._about_import(),
            buttons=[self._from_below, self._to_below],
            short=True,
        )
        services.appearance.changed.connect(self._place_buttons)
        self._place_buttons()
        self._tell("")

    @property
    def to_file(self) -> QPushButton:
        """The button that asks for a file to export to."""
        return self._to_beside if self._beside else self._to_below

    @property
    def from_file(self) -> QPushButton:
        """The button that asks for a file to import."""
        return self._from_beside if self._beside else self._from_below

    @property
    def _beside(self) -> bool:
        return self._appearance.percent < _BELOW_FROM_PERCENT

    @Slot()
    def _place_buttons(self) -> None:
        """Show the buttons where they are reached without scrolling."""
        for beside in (self._to_beside, self._from_beside):
            beside.setVisible(self._beside)
        for below in (self._to_below, self._from_below):
            below.setVisible(not self._beside)
        # Of large words the whole choice is seen without scrolling.
        self._line.setVisible(self._beside)
        words = [tr("Name and notes are in the file: share it with care.")]
        if os.name != "nt" and self._beside:
            words.append(tr("On this computer, only your account can read it."))
        self._care.setText(" ".join(words))

    def _about_export(self) -> QFrame:
        """Return what is chosen for a file: of whom and how, and in which format."""
        choices = ButtonRow([self.decimal, self.person, self._to_beside], wide=True)
        lock = column(LockMark(self._appearance), 1)
        note = row(lock, (self._care, 1), spacing=GAP_PX)
        return card(
            label(tr("Export"), "title"),
            self.kind,
            choices,
            self._line,
            note,
        )

    def _about_import(self) -> QFrame:
        advice = tr("Adds what is missing here; what is here stays as it is.")
        words = column(label(tr("Import"), "title"), label(advice, "quiet"), spacing=GAP_PX // 2)
        return card(BesideRow(widget_with(words), self._from_beside))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._tell("")
        self._read_people()

    def _read_people(self) -> None:
        """Look up who can be exported."""
        services = self._services
        services.records.run(
            lambda: services.keeper.store.people(), self._show_people, self.message_raised.emit
        )

    def _show_people(self, people: list[Person]) -> None:
        words = tr("Person: {name}")
        names = {person.id: words.format(name=listed_name(person)) for person in people}
        for way in (self._to_beside, self._to_below):
            way.setEnabled(bool(people))
        self.person.setEnabled(bool(people))
        nobody = tr("No one has been added yet.")
        self.person.offer(list(names) or [""], lambda person_id: names.get(person_id, nobody))
        if self._services.person_id in names:
            self.person.choose(self._services.person_id)

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
        kind = self.kind.value
        decimal = self.decimal.value
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
            else tr("{name} was already here.")
        )
        counts = tr("Records added: {added}. Already here: {same}.").format(
            added=merged.added, same=merged.same + merged.kept
        )
        self._tell(f"{words.format(name=name)} {counts}")
        self._read_people()
        self.changed.emit()
