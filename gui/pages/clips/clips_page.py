"""Page of recorded clips: dropped or chosen, read in the background, looked at one by one."""

import os
from collections import OrderedDict
from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QDragEnterEvent, QDragLeaveEvent, QDropEvent
from PySide6.QtWidgets import QFileDialog, QStackedWidget, QWidget

from gui.pages.clips.clip_list import ClipList
from gui.pages.clips.clip_review import ClipReview
from gui.pages.clips.clip_rows import ClipRow
from gui.pages.clips.clip_saving import ClipFacts, clip_facts, noon_of, pending_of
from gui.pages.clips.clip_table_model import ClipTableModel
from gui.pages.clips.empty_clips import EmptyClips
from gui.pages.clips.result_files import (
    MANIFEST_ENDING,
    RESULTS_NAME,
    keep_accepted,
    rows_of,
    save_results,
)
from gui.session.clip_batch import ClipBatch
from gui.session.interfaces import ClipAnalysis, ReadClip
from gui.session.repository import PendingMeasurement
from gui.session.services import Services
from gui.text.day_text import day_text
from gui.text.wording import tr
from gui.widgets.layouts import column
from measure.clips.inputs import CLIP_ENDINGS
from measure.domain.records import Person
from measure.system.clock import Timestamp

#: Clips whose curve and landmarks are held in memory, about a quarter of a megabyte each; others
#: are read again for their curve. [technical]
_MOST_ANALYSES = 200


class ClipsPage(QWidget):
    """Three views: nothing there yet, the list, and one clip."""

    message_raised = Signal(str)
    session_ended = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._person: Person | None = None
        self._analyses: OrderedDict[int, ClipAnalysis] = OrderedDict()
        self._under_way: list[ClipRow] = []
        #: Where results are kept while reading, or None where nothing can be written.
        self.results: Path | None = None
        self.model = ClipTableModel()
        self.batch = ClipBatch(services.read_clips, self)
        appearance = services.appearance
        self.empty = EmptyClips(appearance)
        self.list = ClipList(appearance, self.model, self.batch)
        self.review = ClipReview(services)
        self._views = QStackedWidget()
        for view in (self.empty, self.list, self.review):
            self._views.addWidget(view)
        column((self._views, 1), on=self)
        self.setAcceptDrops(True)
        self._connect()
        self.empty.show_recent(services.settings.recent_clips)

    def _connect(self) -> None:
        self.empty.clips.clicked.connect(self.ask_for_clip)
        self.empty.folder.clicked.connect(self.ask_for_folder)
        self.empty.manifest.clicked.connect(self.ask_for_manifest)
        self.empty.folder_wanted.connect(lambda path: self.open([path]))
        self.list.clips_wanted.connect(self.ask_for_clip)
        self.list.folder_wanted.connect(self.ask_for_folder)
        self.list.manifest_wanted.connect(self.ask_for_manifest)
        self.list.save_wanted.connect(self.ask_where_to_save)
        self.list.read_wanted.connect(self.read_or_stop)
        self.list.opened.connect(self.show_clip)
        self.list.rows_changed.connect(self._forget)
        self.list.emptied.connect(lambda: self._views.setCurrentWidget(self.empty))
        self.review.left.connect(self.show_list)
        self.review.neighbour_wanted.connect(self._show_neighbour)
        self.review.read_wanted.connect(lambda row: self.read([row], fresh=True))
        self.review.row_changed.connect(self._row_changed)
        self.review.trials_accepted.connect(self._keep_accepted)
        self.review.save_wanted.connect(self._save)
        self.batch.read.connect(self._take)
        self.batch.ended.connect(self._end)

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Save readings for this person from now on."""
        self._person = person
        self.review.show_person(person)

    def stop(self, timeout_s: float) -> None:
        """Stop reading, for good."""
        self.batch.close(timeout_s)

    # -- opening ------------------------------------------------------------------------------

    @Slot()
    def ask_for_clip(self) -> None:
        endings = " ".join(f"*{ending}" for ending in sorted(CLIP_ENDINGS))
        names, _ = QFileDialog.getOpenFileNames(
            self, tr("Open clips"), "", tr("Clips ({endings})").format(endings=endings)
        )
        self.open([Path(name) for name in names])

    @Slot()
    def ask_for_folder(self) -> None:
        name = QFileDialog.getExistingDirectory(self, tr("Open a folder of clips"))
        if name:
            self.open([Path(name)])

    @Slot()
    def ask_for_manifest(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self,
            tr("Open a manifest"),
            "",
            tr("Manifest ({endings})").format(endings=f"*{MANIFEST_ENDING}"),
        )
        if name:
            self.open([Path(name)])

    def open(self, paths: Sequence[Path]) -> None:
        """Add clips, all clips below folders, and those that manifests name."""
        if not paths:
            return
        if self.batch.running:
            self.message_raised.emit(tr("Stop reading first, then add clips."))
            return
        named = list(paths)
        if not any(path.is_dir() or path.suffix.lower() == MANIFEST_ENDING for path in named):
            self._add(named, rows_of(named))
            return
        self._services.slow_worker.run(
            lambda: rows_of(named), lambda rows: self._add(named, rows), self.message_raised.emit
        )

    @property
    def opened(self) -> tuple[Path, ...]:
        """The clips of the list."""
        return tuple(row.clip for row in self.model.rows)

    def take_over(self, other: "ClipsPage") -> None:
        """Show the list of another page, with its results."""
        self.results = other.results
        self._analyses = other._analyses
        self.model.add(other.model.rows)
        self.show_list()

    def _add(self, named: list[Path], rows: list[ClipRow]) -> None:
        if not rows:
            self.message_raised.emit(tr("There are no clips in this folder."))
            return
        first = named[0]
        if self.results is None or not self.model.rows:
            folder = (first if first.is_dir() else first.parent).absolute()
            may_write = os.access(folder, os.W_OK)
            self.results = folder / RESULTS_NAME if may_write else None
        if first.is_dir() or first.suffix.lower() == MANIFEST_ENDING:
            self._services.settings.add_recent_clips(first.absolute())
            self.empty.show_recent(self._services.settings.recent_clips)
        self.model.add(rows)
        self.model.sort_by_urgency()
        self.show_list()
        if not self.list.table.chosen:
            self.list.table.selectRow(0)
        if len(self.model.rows) == 1:
            self.show_clip(self.model.rows[0])

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            self._show_over(True)
            event.acceptProposedAction()

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        self._show_over(False)

    def _show_over(self, over: bool) -> None:
        """Show that what is dragged can be dropped."""
        for target in (self.empty.target, self.list.more):
            target.show_over(over)

    def dropEvent(self, event: QDropEvent) -> None:
        self._show_over(False)
        urls = event.mimeData().urls()
        self.open([Path(url.toLocalFile()) for url in urls if url.isLocalFile()])
        event.acceptProposedAction()

    # -- views --------------------------------------------------------------------------------

    @Slot()
    def show_list(self) -> None:
        """Show the list, or where to drop clips while there is none."""
        self.review.player.pause()
        if not self.model.rows:
            self._views.setCurrentWidget(self.empty)
            self.empty.clips.setFocus()
            return
        if self.results is None:
            self.list.show_where(
                tr("Results cannot be saved beside these clips. Export them here.")
            )
        else:
            self.list.show_where(tr("Results are saved beside the clips"), str(self.results))
        self._views.setCurrentWidget(self.list)
        self.list.table.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot(object)
    def show_clip(self, row: ClipRow) -> None:
        """Show one clip of the list."""
        self._views.setCurrentWidget(self.review)
        place = self._place(row)
        self.list.table.selectRow(place)
        self.review.head.show_place(place, len(self.model.rows))
        self.review.show_row(row, self._analyses.get(id(row)))
        self.review.player.play.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot(int)
    def _show_neighbour(self, step: int) -> None:
        if self.review.row is not None:
            place = self._place(self.review.row) + step
            if 0 <= place < len(self.model.rows):
                self.show_clip(self.model.rows[place])

    def _place(self, row: ClipRow) -> int:
        return next(place for place, other in enumerate(self.model.rows) if other is row)

    @Slot(object)
    def _row_changed(self, row: ClipRow) -> None:
        if row.measurement is None:
            self._forget([row])
        self.model.changed(row)

    @Slot(object)
    def _keep_accepted(self, row: ClipRow) -> None:
        """Write into the results file which trials of a clip count."""
        path, entry, accepted = self.results, row.entry, row.accepted
        if path is not None and entry is not None:
            self._services.slow_worker.run(
                lambda: keep_accepted(path, entry, accepted),
                lambda _nothing: None,
                self.message_raised.emit,
            )

    @Slot(object)
    def _forget(self, rows: list[ClipRow]) -> None:
        """Let go of curves that no longer belong to what the rows say."""
        for row in rows:
            if row.measurement is None:
                self._analyses.pop(id(row), None)

    # -- reading ------------------------------------------------------------------------------

    @Slot()
    def read_or_stop(self) -> None:
        """Read all clips that have no result, or stop."""
        if self.batch.running:
            self.batch.stop()
        else:
            self.read([row for row in self.model.rows if row.waits])

    def read(self, rows: Sequence[ClipRow], *, fresh: bool = False) -> None:
        """Read some clips; `fresh` also where an earlier run has the result, for the curve."""
        pairs = [(row, entry) for row in rows if (entry := row.entry) is not None]
        if not pairs or self.batch.running:
            return
        self._under_way = [row for row, _ in pairs]
        for row in self._under_way:
            row.queued = True
        self._show_turn()
        entries = [entry for _, entry in pairs]
        services = self._services
        self.batch.start(entries, lambda: services.clips_setup(entries), self.results, fresh=fresh)
        self.model.all_changed()
        self.list.show_batch()
        self.review.show_busy(True)

    @Slot(object)
    def _take(self, read: ReadClip) -> None:
        row = self._under_way[read.result.number]
        row.take(read.result)
        if read.analysis is not None:
            self._analyses[id(row)] = read.analysis
            while len(self._analyses) > _MOST_ANALYSES:
                self._analyses.popitem(last=False)
        self.model.changed(row)
        self._show_turn()
        if row is self.review.row:
            self.review.show_result(read.analysis)

    def _show_turn(self) -> None:
        """Mark the first clip that has no result: clips are read in their order."""
        first = next((row for row in self._under_way if row.queued), None)
        if first is not None and not first.under_way:
            first.under_way = True
            self.model.changed(first)

    @Slot(str)
    def _end(self, why: str) -> None:
        for row in self._under_way:
            row.queued = row.under_way = False
        self._under_way = []
        self.model.all_changed()
        self.model.sort_by_urgency()
        self.list.show_batch()
        self.review.show_busy(False)
        if why:
            self.message_raised.emit(why)

    # -- saving -------------------------------------------------------------------------------

    @Slot(str)
    def ask_where_to_save(self, kind: str) -> None:
        """Write the results of the list where a person says, as CSV or JSON."""
        name, _ = QFileDialog.getSaveFileName(
            self, tr("Export results"), f"thawline-results.{kind}", f"*.{kind}"
        )
        if not name:
            return
        path, rows = Path(name).with_suffix(f".{kind}"), self.model.in_order
        folder = None if self.results is None else self.results.parent
        done = tr("Saved in {path}").format(path=path)
        saved = sum(row.result is not None for row in rows)
        if saved < len(rows):
            left_out = tr("{saved} of {all} clips; the others have not been read.")
            done += ": " + left_out.format(saved=saved, all=len(rows))
        self._services.slow_worker.run(
            lambda: save_results(path, rows, folder),
            lambda _nothing: self.message_raised.emit(done),
            self.message_raised.emit,
        )

    @Slot(object)
    def _save(self, row: ClipRow) -> None:
        """Save a reading as a session of its own, once what it asks for is answered."""
        measurement, person, services = row.counted, self._person, self._services
        if measurement is None or person is None:
            return
        if row.facts is not None:
            self._save_with(row, row.facts)
            return
        clip = row.clip
        services.records.run(
            lambda: clip_facts(services.keeper, person.id, clip, measurement),
            lambda facts: self._take_facts(row, person, facts),
            self.message_raised.emit,
        )

    def _take_facts(self, row: ClipRow, person: Person, facts: ClipFacts) -> None:
        if person is not self._person:
            return
        row.facts = facts
        if not facts.asks:
            self._save_with(row, facts)
        elif row is self.review.row:
            self.review.show_person(person)

    def _save_with(self, row: ClipRow, facts: ClipFacts) -> None:
        """Save a reading with its day, in the place of an earlier one of the same clip."""
        measurement, person, services = row.counted, self._person, self._services
        day = self.review.question.day.day
        recorded = facts.recorded or (None if day is None else noon_of(day))
        if measurement is None or person is None:
            return
        if recorded is None or recorded.day > services.today():
            self.message_raised.emit(tr("Enter the day on which the clip was recorded."))
            return
        conduct, earlier = services.settings.conduct, facts.earlier
        pending = PendingMeasurement(key="", measurement=measurement, conduct=conduct)
        kept = pending_of(facts, pending)
        note = tr("From the clip {name}").format(name=row.clip.name)
        session = None if earlier is None else earlier.session_id
        services.records.run(
            lambda: services.keeper.keep_recorded(
                person.id, kept, recorded, note=note, session_id=session
            ),
            lambda _nothing: self._was_saved(row, person, recorded),
            self.message_raised.emit,
        )

    def _was_saved(self, row: ClipRow, person: Person, recorded: Timestamp) -> None:
        row.saved_for, row.facts = person.pseudonym, None
        row.saved_day = day_text(recorded.day)
        self.model.changed(row)
        self.review.show_person(self._person)
        self.session_ended.emit()
