"""List of clips: the table, movement and side of those chosen, reading them all, saving results."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QFontMetrics, QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import QProgressBar, QWidget

from gui.pages.clips.action_menu import ActionMenuButton
from gui.pages.clips.clip_rows import ClipRow
from gui.pages.clips.clip_table import ClipTable, WholeRows
from gui.pages.clips.clip_table_model import ClipTableModel
from gui.pages.clips.empty_clips import DropTarget
from gui.pages.clips.list_view import LEAST_CLIPS, Order, ShownClips
from gui.pages.clips.row_tools import RowTools
from gui.session.clip_batch import ClipBatch
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX, MARGIN_PX
from gui.text.wording import tr
from gui.widgets.buttons import MenuButton, bind_keys, button, give_role
from gui.widgets.layouts import column, row, separator
from gui.widgets.page_frame import PageFoot
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: Room between the heading, the progress and the table, and beneath it, pixels. [technical]
_APART_PX = 2 * GAP_PX
#: Seconds of a minute. [technical]
_MINUTE_S = 60


def time_left_words(seconds: float | None) -> str:
    """Return in words how long a run still takes."""
    if seconds is None:
        return tr("working out the time left")
    if seconds < _MINUTE_S:
        return tr("less than a minute left")
    minutes = round(seconds / _MINUTE_S)
    if minutes == 1:
        return tr("about a minute left")
    return tr("about {minutes} minutes left").format(minutes=minutes)


class ClipList(QWidget):
    """Shows all clips with their results; reads them, and opens one of them."""

    clips_wanted = Signal()
    folder_wanted = Signal()
    manifest_wanted = Signal()
    #: "csv" or "json".
    save_wanted = Signal(str)
    read_wanted = Signal()
    #: The ClipRow to look at.
    opened = Signal(object)
    #: The list of ClipRow whose movement or side is now another.
    rows_changed = Signal(object)
    emptied = Signal()

    def __init__(self, appearance: Appearance, model: ClipTableModel, batch: ClipBatch) -> None:
        super().__init__()
        self._appearance, self._model, self._batch = appearance, model, batch
        self.add = ActionMenuButton(
            tr("Add"),
            (
                (tr("Clips..."), self.clips_wanted.emit),
                (tr("A folder..."), self.folder_wanted.emit),
                (tr("A manifest..."), self.manifest_wanted.emit),
            ),
        )
        self.save = ActionMenuButton(
            tr("Export results"),
            (
                (tr("Table (CSV)..."), lambda: self.save_wanted.emit("csv")),
                (tr("All details (JSON)..."), lambda: self.save_wanted.emit("json")),
            ),
        )
        self.tools = RowTools()
        self.movement, self.side = self.tools.movement, self.tools.side
        self.open_clip, self.remove = self.tools.open_clip, self.tools.remove
        self.note = self.tools.note
        self.read = button(tr("Read all"), "main", key="R")
        self.progress = QProgressBar()
        self.progress.setRange(0, 1000)
        self.progress.setAccessibleName(tr("progress of reading"))
        self.progress.setTextVisible(False)
        self.progress.setFixedHeight(GAP_PX)
        self.shown = MenuButton(tr("Clips that are shown"))
        self.shown.offer(tuple(ShownClips), lambda shown: shown.words)
        self.order = MenuButton(tr("Order of the clips"))
        self.order.offer(tuple(Order), lambda order: order.words)
        self.words = label("", "display")
        self.detail = label("", "quiet")
        self._where = ""
        self.table = ClipTable(appearance, model, self.tools)
        #: Where more clips can be dropped, beneath the table where there is room.
        self.more = DropTarget(appearance, "ground")
        self._invitation = label("", "quiet")
        self._invitation.setAlignment(Qt.AlignmentFlag.AlignCenter)
        column(self._invitation, on=self.more, margins=(GAP_PX, GAP_PX, GAP_PX, GAP_PX))
        self._rows = WholeRows(appearance, self.table, self.more)
        self._lay_out()
        self._connect()
        self.show_chosen()
        self.show_batch()
        self._show_some()

    def _lay_out(self) -> None:
        beneath = row((self.detail, 1), self.shown, self.order, spacing=GAP_PX)
        titled = column(self.words, beneath, spacing=GAP_PX // 2)
        self._head = column(titled, self.progress, spacing=_APART_PX)
        foot = row(
            PageFoot([self.add, self.save, self.read], wide=True),
            margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX),
        )
        page = column(
            self._head,
            (self._rows, 1),
            margins=(MARGIN_PX, MARGIN_PX, MARGIN_PX, GAP_PX),
            spacing=_APART_PX,
        )
        column((page, 1), separator(), foot, on=self, spacing=0)

    def _connect(self) -> None:
        self.table.activated.connect(self._open)
        self.table.selectionModel().selectionChanged.connect(self.show_chosen)
        self._model.modelReset.connect(self.show_chosen)
        self._model.dataChanged.connect(self.show_batch)
        self.movement.picked.connect(self._choose_movement)
        self.side.picked.connect(self._choose_side)
        self.open_clip.clicked.connect(self._open)
        self.remove.clicked.connect(self._remove)
        self.read.clicked.connect(self._read)
        bind_keys(self, self.read, "R")
        delete = QShortcut(QKeySequence.StandardKey.Delete, self.table)
        delete.activated.connect(self.remove.click)
        self.shown.picked.connect(self._show_some)
        self.order.picked.connect(self._sort)
        for change in (self._model.layoutChanged, self._model.modelReset, self._model.rowsInserted):
            change.connect(self._show_some)
        self._batch.progressed.connect(self.show_batch)
        self._batch.ended.connect(self.show_batch)
        self._appearance.changed.connect(self._fit_detail)

    @Slot()
    def show_chosen(self) -> None:
        """Show what the chosen rows have in common, and what can be done with them."""
        chosen = self.table.chosen
        movements = {clip.movement for clip in chosen}
        sides = {clip.side for clip in chosen}
        self.movement.choose(movements.pop() if len(movements) == 1 else None)
        self.side.choose(sides.pop() if len(sides) == 1 else None)
        self.open_clip.setVisible(len(chosen) == 1)
        for control in (self.movement, self.side):
            control.setEnabled(not any(clip.queued for clip in chosen))
            lacking = any(clip.entry is None for clip in chosen) and control.value is None
            give_role(control, "lacking" if lacking else "")
        self.remove.setEnabled(bool(chosen) and not self._batch.running)
        self.note.setText(_note(chosen, with_reasons=not self.table.shows_reasons))
        self.table.fit()

    @Slot()
    def _show_some(self) -> None:
        """Show the rows of the chosen state, and the choice itself where there are many."""
        rows = self._model.rows
        for control in (self.shown, self.order):
            control.setVisible(len(rows) >= LEAST_CLIPS)
        shown = self.shown.value if len(rows) >= LEAST_CLIPS else ShownClips.ALL
        for place, clip in enumerate(rows):
            self.table.setRowHidden(place, not shown.holds(clip))
        if self.table.chosen and not any(shown.holds(clip) for clip in self.table.chosen):
            self.table.clearSelection()
        self.table.fit()

    @Slot(object)
    def _sort(self, order: Order) -> None:
        self._model.key = order.key
        self._model.sort_rows(order.key)

    @Slot()
    def show_batch(self) -> None:
        """Show how far reading is."""
        running, rows = self._batch.running, self._model.rows
        waiting = sum(clip.waits for clip in rows)
        open_rows = sum(clip.entry is None for clip in rows)
        read = sum(clip.measurement is not None for clip in rows)
        failed = sum(clip.error is not None for clip in rows)
        self.progress.setVisible(running)
        self.add.setVisible(not running)
        self._invitation.setText(
            tr("More clips can be added after reading")
            if running
            else tr("Drop more clips or a folder here")
        )
        self.read.setProperty("leads_on", running)
        self.save.setVisible(read + failed > 0 and not running)
        self.remove.setEnabled(bool(self.table.chosen) and not running)
        self.read.setEnabled(running or waiting > 0 or open_rows > 0)
        if running:
            self.read.say(tr("Stop"))
            self.progress.setValue(round(1000 * self._batch.share))
            self.words.setText(tr("Reading the clips"))
            words = tr("Clips read: {read} of {total}, {time_left}").format(
                read=self._batch.finished,
                total=self._batch.total,
                time_left=time_left_words(self._batch.remaining_s),
            )
            # What waits for an answer can have it meanwhile.
            more = _open_words(open_rows) if open_rows else self._where
        else:
            self.read.say(_read_words(read + failed, waiting, failed, open_rows))
            heading, words = _heading(read, len(rows), waiting, failed, open_rows)
            self.words.setText(heading)
            can = waiting - failed if open_rows else 0
            now = _counted(can, tr("1 can be read now"), tr("{number} can be read now"))
            more = now if can else self._where * bool(read)
        self.detail.setText(" \u00b7 ".join(filter(None, (words, more))))
        self._fit_detail()
        done = read > 0 and waiting == failed and not running and not open_rows
        self.read.setVisible(not done or waiting > 0)
        give_role(self.save, "main" if done else "")
        give_role(self.read, "" if done or running else "main")
        self.show_chosen()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_detail()

    @Slot()
    def _fit_detail(self) -> None:
        """Set how far reading is in running text, or smaller where one line is too short for it."""
        room = self.width() - 2 * MARGIN_PX
        for control in (self.shown, self.order):
            room -= (control.sizeHint().width() + GAP_PX) * control.isVisibleTo(self)
        font = self._appearance.font(self._appearance.px())
        fits = QFontMetrics(font).horizontalAdvance(self.detail.text()) <= room
        give_role(self.detail, "quiet" if fits else "small")

    def show_where(self, words: str, path: str = "") -> None:
        """Say where results are saved while reading; the whole path where the mouse rests."""
        self._where = words
        self.detail.setToolTip(path)
        self.show_batch()

    @Slot(object)
    def _choose_movement(self, movement: Movement | None) -> None:
        if movement is not None:
            self._choose(movement, None)
        else:
            self.show_chosen()

    @Slot(object)
    def _choose_side(self, side: Side | None) -> None:
        if side is not None:
            self._choose(None, side)
        else:
            self.show_chosen()

    def _choose(self, movement: Movement | None, side: Side | None) -> None:
        rows = self.table.chosen
        for clip in rows:
            clip.choose(movement, side)
        self._model.all_changed()
        self.show_chosen()
        self.rows_changed.emit(rows)

    @Slot()
    def _read(self) -> None:
        """Read what can be read; else go to the first clip that needs movement and side."""
        rows = self._model.rows
        if self._batch.running or any(clip.waits for clip in rows):
            self.read_wanted.emit()
            return
        self.table.selectRow(next(i for i, clip in enumerate(rows) if clip.entry is None))
        lacking = self.movement if self.movement.value is None else self.side
        lacking.setFocus(Qt.FocusReason.TabFocusReason)

    @Slot()
    def _open(self) -> None:
        chosen = self.table.chosen
        if chosen:
            self.opened.emit(chosen[0])

    @Slot()
    def _remove(self) -> None:
        self._model.remove(self.table.chosen)
        self.show_batch()
        if not self._model.rows:
            self.emptied.emit()


def _heading(read: int, total: int, waiting: int, failed: int, open_rows: int) -> tuple[str, str]:
    """Return what the list is about now, and how far reading is.

    What needs somebody comes first, then what is read, then what is to be read.
    """
    count = tr("Clips read: {read} of {total}").format(read=read, total=total)
    if open_rows:
        return _open_words(open_rows), count
    if failed:
        left = _counted(
            failed, tr("1 clip could not be read"), tr("{number} clips could not be read")
        )
        whole = tr("{read} of {total} clips read").format(read=read, total=total)
        return (whole, left) if read else (left, count)
    if waiting:
        return _counted(waiting, tr("1 clip to read"), tr("{number} clips to read")), count
    return tr("All clips are read"), count


def _open_words(number: int) -> str:
    return _counted(
        number, tr("1 clip needs movement and side"), tr("{number} clips need movement and side")
    )


def _counted(number: int, single: str, several: str) -> str:
    return single if number == 1 else several.format(number=number)


def _note(chosen: list[ClipRow], *, with_reasons: bool) -> str:
    """Return how many clips a choice applies to, or the reasons of the only one if wanted."""
    if len(chosen) > 1:
        return tr("Movement and side apply to the {number} selected clips.").format(
            number=len(chosen)
        )
    # Of a clip that was not read its result says what to do, and its page the cause.
    shown = chosen and with_reasons and chosen[0].error is None
    return chosen[0].reasons if shown else ""


def _read_words(read: int, waiting: int, failed: int, open_rows: int) -> str:
    """Return what the button that reads says; `failed` of those that wait could not be read."""
    if open_rows and not waiting:
        return tr("Choose movement and side")
    if waiting and waiting == failed:
        return tr("Try again")
    if read and waiting:
        return tr("Continue reading")
    if open_rows:
        return _counted(waiting, tr("Read 1 clip"), tr("Read {number} clips"))
    return tr("Read all")
