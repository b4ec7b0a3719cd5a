"""Table of clips: as wide as its place, never wider."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QFontMetrics, QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from gui.pages.clips.clip_cells import ClipCells
from gui.pages.clips.clip_rows import ClipRow
from gui.pages.clips.clip_table_model import COLUMNS, ClipTableModel, Column, lines_of
from gui.style.appearance import Appearance
from gui.style.focus_ring import shows_ring
from gui.text.wording import tr
from gui.widgets.buttons import give_role

#: Rows whose words decide how wide a column is: more would take longer than a frame. [technical]
_MEASURED_ROWS = 200
#: Rows that can be seen at least. [technical]
_LEAST_ROWS = 4
#: Least width of the clips' names and of the reasons, in widths of a digit. [technical]
_CLIP_DIGITS, _REASONS_DIGITS = 18, 26
#: Most of the room beside the results that names take from the reasons, per cent. [technical]
_CLIP_SHARE = 45


class ClipTable(QTableView):
    """Shows the rows; several can be chosen at once."""

    #: The columns have their widths.
    fitted = Signal()

    def __init__(
        self, appearance: Appearance, model: ClipTableModel, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._rows = model
        self._cells = ClipCells(appearance, model)
        self.setItemDelegate(self._cells)
        self.setModel(model)
        self.setAccessibleName(tr("clips"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.verticalHeader().hide()
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        model.rowsInserted.connect(self.fit)
        model.modelReset.connect(self.fit)
        model.dataChanged.connect(self.fit)
        self.fit()

    @property
    def chosen(self) -> list[ClipRow]:
        """The chosen rows, in their order."""
        places = sorted(index.row() for index in self.selectionModel().selectedRows())
        return [self._rows.rows[place] for place in places]

    def fit(self) -> None:
        """Share the width among the columns: those that have no room are left out."""
        digit = QFontMetrics(self.font()).horizontalAdvance("0")
        clip, task, result = (self._needed(column) for column in COLUMNS[:3])
        room = self.viewport().width()
        result = min(result, room // 2)
        least = (_CLIP_DIGITS + _REASONS_DIGITS) * digit
        with_task = room - result - task >= least
        with_reasons = room - result >= least
        rest = room - result - (task if with_task else 0)
        most = max(_CLIP_DIGITS * digit, rest * _CLIP_SHARE // 100)
        clip = min(clip, most) if with_reasons else rest
        widths = (clip, task, result, max(1, rest - clip))
        shown = (True, with_task, True, with_reasons)
        self._cells.merged, self._cells.with_reasons = not with_task, with_reasons
        for place, (width, is_shown) in enumerate(zip(widths, shown, strict=True)):
            self.setColumnHidden(place, not is_shown)
            self.setColumnWidth(place, width)
        high_px = self._cells.row_height()
        self.verticalHeader().setDefaultSectionSize(high_px)
        header = self.horizontalHeader().sizeHint().height()
        rows = min(_LEAST_ROWS, max(1, len(self._rows.rows)))
        self.setMinimumHeight(header + rows * high_px + 2 * self.frameWidth())
        self.fitted.emit()

    @property
    def shows_reasons(self) -> bool:
        """Whether there is room for the reasons."""
        return not self.isColumnHidden(COLUMNS.index(Column.REASONS))

    def _needed(self, column: Column) -> int:
        """Return the width that heading and words of a column need."""
        heading = self.horizontalHeader().sectionSizeHint(COLUMNS.index(column))
        rows = self._rows.rows[:_MEASURED_ROWS]
        cells = (self._cells.width_of(lines_of(row, column)) for row in rows)
        return max(heading, *cells, 0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fit()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self.fit()

    def _show_ring(self) -> None:
        """Show the frame of the keyboard's place where the keyboard is in use."""
        give_role(self, "ringed" if shows_ring(self) else "")

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._show_ring()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._show_ring()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        self._show_ring()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter open the clip also where the style does not."""
        self._show_ring()
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.activated.emit(self.currentIndex())
            return
        super().keyPressEvent(event)
