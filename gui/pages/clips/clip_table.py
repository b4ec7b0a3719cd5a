"""Table of clips: its model, and a view that gives every column the room that its words need."""

from collections.abc import Iterable, Sequence
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QEvent, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from gui.pages.clips.clip_rows import COLUMNS, ClipRow, Column
from gui.text.wording import tr

Index = QModelIndex | QPersistentModelIndex
_NO_INDEX = QModelIndex()

#: Rows whose words decide how wide a column is: more would take longer than a frame. [technical]
_MEASURED_ROWS = 200
#: Room of a cell around its words, pixels. [technical]
_AROUND_PX = 40
#: Room of a row above and beneath its words, pixels. [technical]
_ABOVE_PX = 14
#: Rows that can be seen at least. [technical]
_LEAST_ROWS = 3
#: Widest column but the last, in widths of a digit; longer names are shortened, with a tool tip.
#: [technical]
_WIDEST_DIGITS = 22
#: Least width of the reasons, in widths of a digit. [technical]
_REASONS_DIGITS = 44
#: Lines of words in a row. [technical]
_LINES = 2


class ClipTableModel(QAbstractTableModel):
    """The rows of the list, one clip each."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[ClipRow] = []

    def add(self, rows: Iterable[ClipRow]) -> int:
        """Add rows that are not there yet; return how many."""
        present = {row.key for row in self.rows}
        new = [row for row in rows if row.key not in present]
        if new:
            first = len(self.rows)
            self.beginInsertRows(QModelIndex(), first, first + len(new) - 1)
            self.rows.extend(new)
            self.endInsertRows()
        return len(new)

    def remove(self, rows: Sequence[ClipRow]) -> None:
        """Take rows out of the list; files stay where they are."""
        self.beginResetModel()
        self.rows = [row for row in self.rows if all(row is not other for other in rows)]
        self.endResetModel()

    def changed(self, row: ClipRow) -> None:
        """Show what is new in a row."""
        place = next(place for place, other in enumerate(self.rows) if other is row)
        self.dataChanged.emit(self.index(place, 0), self.index(place, len(COLUMNS) - 1))

    def all_changed(self) -> None:
        """Show what is new in any row."""
        if self.rows:
            last = self.index(len(self.rows) - 1, len(COLUMNS) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def rowCount(self, parent: Index = _NO_INDEX) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NO_INDEX) -> int:
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        row, column = self.rows[index.row()], COLUMNS[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return row.text(column)
        if role == Qt.ItemDataRole.ToolTipRole:
            return str(row.clip) if column is Column.CLIP else row.text(column)
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        if role != Qt.ItemDataRole.DisplayRole or orientation is not Qt.Orientation.Horizontal:
            return None
        return {
            Column.CLIP: tr("Clip"),
            Column.STATUS: tr("Status"),
            Column.MOVEMENT: tr("Movement"),
            Column.SIDE: tr("Side"),
            Column.READING: tr("Reading"),
            Column.RANGE: tr("95 % range"),
            Column.REASONS: tr("Reasons and notes"),
        }[COLUMNS[section]]


class ClipTable(QTableView):
    """Shows the rows; several can be chosen at once."""

    def __init__(self, model: ClipTableModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = model
        self.setModel(model)
        self.setAccessibleName(tr("clips"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setWordWrap(True)
        self.verticalHeader().hide()
        header = self.horizontalHeader()
        header.setStretchLastSection(True)
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
        """Give columns and rows the room that their words need."""
        metrics = QFontMetrics(self.font())
        digit = metrics.horizontalAdvance("0")
        rows = self._rows.rows[:_MEASURED_ROWS]
        for place, column in enumerate(COLUMNS):
            heading = self.horizontalHeader().sectionSizeHint(place)
            if column is Column.REASONS:
                needed = _REASONS_DIGITS * digit
            else:
                widest = max(
                    (metrics.horizontalAdvance(row.text(column)) for row in rows), default=0
                )
                needed = min(widest + _AROUND_PX, _WIDEST_DIGITS * digit)
            self.setColumnWidth(place, max(heading, needed))
        high_px = _LINES * metrics.lineSpacing() + _ABOVE_PX
        self.verticalHeader().setDefaultSectionSize(high_px)
        header = self.horizontalHeader().sizeHint().height()
        self.setMinimumHeight(header + _LEAST_ROWS * high_px)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self.fit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter open the clip also where the style does not."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentIndex().isValid():
            self.activated.emit(self.currentIndex())
            return
        super().keyPressEvent(event)
