"""Backup of everything in one file, and putting such a backup in place of what is here."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFileDialog, QProgressBar, QWidget

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.pages.settings.file_figures import FileFigure, FileSign
from gui.session.services import Services
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.beside_row import BesideRow, aligned
from gui.widgets.buttons import button
from gui.widgets.figures.pictured_card import figure_panel
from gui.widgets.layouts import card, column, widget_with
from gui.widgets.plain_dialog import plain_dialog
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.progress.dates import date_words
from measure.storage.backup import Contents, backup, inspect

_ENDING = ".sqlite"
#: Space above a button that stands beneath its words, pixels. [technical]
_ABOVE_BUTTON_PX = GAP_PX * 7 // 4


def contents_words(contents: Contents) -> str:
    """Return how much a store holds."""
    return tr("It holds {people}, {sessions} and {measurements}.").format(
        people=_counted(contents.people, tr("1 person"), tr("{number} people")),
        sessions=_counted(contents.sessions, tr("1 session"), tr("{number} sessions")),
        measurements=_counted(
            contents.measurements, tr("1 measurement"), tr("{number} measurements")
        ),
    )


def _counted(number: int, single: str, several: str) -> str:
    return single if number == 1 else several.format(number=number)


class BackupPage(TitledPage):
    """Asks for a file, and before replacing anything says what would take its place."""

    #: People and sessions are those of another store now.
    changed = Signal()

    def __init__(self, services: Services) -> None:
        super().__init__(services.appearance, data_page_title(DataPage.BACKUP))
        self._services = services
        self.save = button(tr("Make a backup..."), "main")
        self.latest = label("", "quiet")
        self.restore = button(tr("Restore a backup..."))
        self.outcome = label("", "strong")
        self.busy = QProgressBar()
        self.busy.setRange(0, 0)
        self.busy.setAccessibleName(tr("Working"))
        self.save.clicked.connect(self.ask_for_target)
        self.restore.clicked.connect(self.ask_for_source)
        about_backup = tr("Saves everything in one new file and checks it.")
        private = tr("It is not encrypted: keep it where only you can reach it.")
        about_restore = tr(
            "Replaces everything saved here with a backup. What is here now stays in a separate "
            "file."
        )
        #: Drawings above the words, where those leave room for them.
        self._panels = [figure_panel(FileFigure(self._appearance, sign)) for sign in FileSign]
        backups = self._about(tr("Backup"), label(about_backup), label(private), self.latest)
        restoring = self._about(tr("Restore"), label(about_restore))
        ways = aligned(
            BesideRow(backups, self.save, above=_ABOVE_BUTTON_PX),
            BesideRow(restoring, self.restore, above=_ABOVE_BUTTON_PX),
        )
        cards = [(card(panel, (way, 1)), 1) for panel, way in zip(self._panels, ways, strict=True)]
        both = SideBySide(self._appearance, *cards, spacing=2 * GAP_PX)
        services.appearance.changed.connect(self._show_figures)
        self._show_figures()
        self.lay_out(self.outcome, self.busy, both, short=True)
        self._tell("")

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._tell("")

    def _about(self, name: str, *words: QWidget) -> QWidget:
        low = self._appearance.gap(1)
        return widget_with(column(label(name, "title"), *words, spacing=low))

    @Slot()
    def _show_figures(self) -> None:
        """Show the drawings where type is small enough for both."""
        for panel in self._panels:
            panel.setVisible(self._appearance.percent < LARGE_FROM_PERCENT)

    def _tell(self, words: str) -> None:
        """Show how it went, at the top of the page, and which backup was the latest."""
        latest = self._services.settings.latest_backup
        self.latest.setVisible(latest is not None)
        if latest is not None:
            name, day = latest
            said = tr("The latest backup made here: {file}, {day}.")
            self.latest.setText(said.format(file=name, day=date_words(day, tr)))
        self._set_busy(False)
        self.outcome.setText(words)
        self.outcome.setVisible(bool(words))

    def _set_busy(self, busy: bool) -> None:
        self.busy.setVisible(busy)
        self.save.setEnabled(not busy)
        self.restore.setEnabled(not busy)

    # -- backup -------------------------------------------------------------------------------

    @Slot()
    def ask_for_target(self) -> None:
        day = self._services.today().isoformat()
        name, _ = QFileDialog.getSaveFileName(
            self, tr("Make a backup"), f"thawline-{day}{_ENDING}", f"*{_ENDING}"
        )
        if name:
            target, keeper = Path(name), self._services.keeper
            self._set_busy(True)
            self._services.records.run(
                lambda: backup(keeper.store.path, target),
                partial(self._saved, target),
                self._tell,
            )

    def _saved(self, target: Path, contents: Contents) -> None:
        self._services.settings.latest_backup = (target.name, self._services.today())
        saved = tr("The backup is saved as {file}.").format(file=target.name)
        self._tell(f"{saved} {contents_words(contents)}")

    # -- restore ------------------------------------------------------------------------------

    @Slot()
    def ask_for_source(self) -> None:
        """Ask for a backup, whatever its name, and read it through; nothing is changed yet."""
        name, _ = QFileDialog.getOpenFileName(self, tr("Restore a backup"))
        if name:
            source = Path(name)
            self._set_busy(True)
            self._services.slow_worker.run(
                lambda: inspect(source), partial(self.ask_to_restore, source), self._tell
            )

    def ask_to_restore(self, source: Path, contents: Contents) -> None:
        """Ask whether the backup at `source`, which holds this, is to replace everything."""
        self._tell("")
        undo = tr("You can undo this until Thawline is closed.")
        asked = plain_dialog(
            tr("Replace everything here with this backup?"),
            tr("Leave everything as it is"),
            self,
            more=f"{contents_words(contents)}\n{undo}",
            agree=tr("Replace with the backup"),
        )
        asked.accepted.connect(partial(self._restore, source))
        asked.open()

    def _restore(self, source: Path) -> None:
        keeper = self._services.keeper
        self._set_busy(True)
        self._services.records.run(lambda: keeper.replace_with(source), self._restored, self._tell)

    def _restored(self, done: tuple[Contents, Path | None]) -> None:
        contents, aside = done
        restored = tr("The backup is restored.")
        self._tell(f"{restored} {contents_words(contents)}")
        if aside is not None:
            keeper = self._services.keeper
            self._services.undo.offer(
                tr("A backup was restored. You can undo this until Thawline is closed."),
                lambda: keeper.replace_with(aside),
            )
        self.changed.emit()
