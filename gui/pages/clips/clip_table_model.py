"""Model of the table of clips: four columns, of two lines each."""

from collections.abc import Callable, Iterable, Sequence
from enum import Enum, auto
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from gui.pages.clips.clip_rows import ClipRow
from gui.text.wording import tr

Index = QModelIndex | QPersistentModelIndex
_NO_INDEX = QModelIndex()


class Column(Enum):
    """Columns of the table, in their order."""

    CLIP = auto()
    TASK = auto()
    RESULT = auto()
    REASONS = auto()


COLUMNS = tuple(Column)


def lines_of(row: ClipRow, column: Column) -> tuple[str, str]:
    """Return the two lines of a cell; the second may be empty, and the reasons wrap."""
    match column:
        case Column.CLIP:
            return row.clip.name, ""
        case Column.TASK:
            return row.task, ""
        case Column.RESULT:
            return row.outcome
        case Column.REASONS:
            return row.reasons_briefly, ""


class ClipTableModel(QAbstractTableModel):
    """The rows of the list, one clip each."""

    def __init__(self) -> None:
        super().__init__()
        self.rows: list[ClipRow] = []
        #: What a person wants the rows to be sorted by.
        self.key: Callable[[ClipRow], Any] | None = None
        #: Whether any row has a result.
        self.with_results = False

    def add(self, rows: Iterable[ClipRow]) -> int:
        """Add rows that are not there yet; return how many.

        What a manifest says of a clip takes the place of what its name alone said.
        """
        rows = list(rows)
        listed = {row.clip for row in rows if row.listed}
        self.remove([row for row in self.rows if row.clip in listed and row.gives_way])
        present = {row.key for row in self.rows}
        clips = {row.clip for row in self.rows} | listed
        new = []
        for row in rows:
            if row.key not in present and (row.listed or row.clip not in clips):
                new.append(row)
                present.add(row.key)
        last = max((row.number for row in self.rows), default=0)
        for number, row in enumerate(new, start=last + 1):
            row.number = number
        if new:
            first = len(self.rows)
            self.beginInsertRows(QModelIndex(), first, first + len(new) - 1)
            self.rows.extend(new)
            self.endInsertRows()
            self._show_headings()
        return len(new)

    @property
    def in_order(self) -> list[ClipRow]:
        """The rows in the order in which they were added."""
        return sorted(self.rows, key=lambda row: row.number)

    def sort_by_urgency(self) -> None:
        """Put what needs an answer first, then what failed, unless another order is chosen."""
        self.sort_rows(lambda row: row.urgency if self.key is None else self.key(row))

    def sort_rows(self, key: Callable[[ClipRow], Any]) -> None:
        """Put the rows into another order; what was chosen stays chosen."""
        before = self.rows
        places = sorted(range(len(before)), key=lambda place: key(before[place]))
        if places == list(range(len(before))):
            return
        self.layoutAboutToBeChanged.emit()
        self.rows = [before[place] for place in places]
        new = {old: now for now, old in enumerate(places)}
        for index in self.persistentIndexList():
            self.changePersistentIndex(index, self.index(new[index.row()], index.column()))
        self.layoutChanged.emit()

    def remove(self, rows: Sequence[ClipRow]) -> None:
        """Take rows out of the list; files stay where they are."""
        if not rows:
            return
        self.beginResetModel()
        self.rows = [row for row in self.rows if all(row is not other for other in rows)]
        self.endResetModel()
        self._show_headings()

    def changed(self, row: ClipRow) -> None:
        """Show what is new in a row."""
        place = next(place for place, other in enumerate(self.rows) if other is row)
        self._show_headings()
        self.dataChanged.emit(self.index(place, 0), self.index(place, len(COLUMNS) - 1))

    def all_changed(self) -> None:
        """Show what is new in any row."""
        self._show_headings()
        if self.rows:
            last = self.index(len(self.rows) - 1, len(COLUMNS) - 1)
            self.dataChanged.emit(self.index(0, 0), last)

    def _show_headings(self) -> None:
        """Head the notes once there may be some."""
        with_results = any(row.result is not None for row in self.rows)
        if with_results is not self.with_results:
            self.with_results = with_results
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(COLUMNS) - 1)

    def rowCount(self, parent: Index = _NO_INDEX) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NO_INDEX) -> int:
        return 0 if parent.isValid() else len(COLUMNS)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        row, column = self.rows[index.row()], COLUMNS[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return "\n".join(filter(None, lines_of(row, column)))
        if role == Qt.ItemDataRole.ToolTipRole:
            if column is Column.REASONS:
                return row.reasons
            return str(row.clip) if column is Column.CLIP else " ".join(lines_of(row, column))
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        if role != Qt.ItemDataRole.DisplayRole or orientation is not Qt.Orientation.Horizontal:
            return None
        return {
            Column.CLIP: tr("Clip"),
            Column.TASK: tr("Movement"),
            Column.RESULT: tr("Result"),
            Column.REASONS: tr("Notes") * self.with_results,
        }[COLUMNS[section]]
