"""Table behind a chart: every measurement in words, both arms of a session beside each other."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from PySide6.QtCore import QPoint, Qt, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QScrollArea,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from gui.drawing.curves import CurvePoint
from gui.pages.progress.table_cells import PairCells
from gui.style.appearance import Appearance
from gui.text.wording import measurement_words, side_title, stopped_by_name, tr
from measure.domain.landmarks import Side
from measure.progress.dates import date_words

#: Height of a row, and where the text is large, in sizes of the text. [technical]
_ROW, _LOW_ROW = 2.0, 1.55
#: How far the last whole row reaches into the fading strip: so the next one is not seen in it,
#: pixels. [technical]
_FADING_PX = 10
#: Columns of the readings, of the pain of each arm and of both, and of what stopped them.
#: [technical]
_SIDES = {1: Side.LEFT, 2: Side.RIGHT}
_PAINS, _BOTH, _STOPPED_BY = (3, 4), 5, 6
#: What is left out, the next where there is no room. [technical]
_LEFT_OUT = (
    (_BOTH,),
    (_BOTH, _STOPPED_BY),
    (*_PAINS, _STOPPED_BY),
    (*_PAINS, _BOTH, _STOPPED_BY),
)
#: Stands for a rating that was not given.
_NONE = "\u2013"
#: Text size up to which practice is named in its cell, per cent. [technical]
_WIDE_PERCENT = 130

#: The measurements of a session: no more than one of each arm.
TableRow = Mapping[Side, CurvePoint]


class ReadingsTable(QTableWidget):
    """The latest first. Enter or a double click opens the session of a row."""

    #: A MeasurementRecord.
    picked = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._rows: list[TableRow] = []
        self._row_px = 0
        self._cells = PairCells(appearance)
        self.setItemDelegate(self._cells)
        arms, pains = map(side_title, _SIDES.values()), (tr("Pain left"), tr("Pain right"))
        heads = [tr("Day"), *arms, *pains, tr("Pain L / R"), tr("Stopped by")]
        self.setColumnCount(len(heads))
        self.setHorizontalHeaderLabels(heads)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setTabKeyNavigation(False)
        self.setProperty("role", "open")
        self.verticalHeader().hide()
        self.setShowGrid(False)
        for policy in (self.setVerticalScrollBarPolicy, self.setHorizontalScrollBarPolicy):
            policy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAutoScroll(False)
        head = self.horizontalHeader()
        head.setProperty("role", "flush")
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.cellActivated.connect(self._open)
        self.currentCellChanged.connect(self._follow)
        appearance.changed.connect(self._fill)

    def show_points(self, points: Sequence[CurvePoint], title: str) -> None:
        """Show these measurements under this name."""
        self._rows = table_rows(points)
        self.setAccessibleName(tr("Table: {title}").format(title=title))
        self.setRowCount(len(self._rows))
        self._fill()

    @Slot()
    def _fill(self) -> None:
        """Write the cells; what a reading was, in full, is in its tool tip."""
        written: dict[int, list[str]] = {column: [] for column in (0, *_SIDES)}
        for place, points in enumerate(self._rows):
            for column, words in enumerate(row_words(points)):
                item = QTableWidgetItem(words)
                point = points.get(_SIDES[column]) if column in _SIDES else None
                if point is not None:
                    self._write_reading(item, point)
                self.setItem(place, column, item)
                if column in written:
                    written[column].append(item.text())
        self._cells.line_up(written)
        self._fit_cells()

    def _write_reading(self, item: QTableWidgetItem, point: CurvePoint) -> None:
        """Say of a reading that it was practice, unseen in large text, and all else unseen."""
        practice = tr("Practice") if point.practice else ""
        reading = measurement_words(point.record.measurement).rstrip(".")
        parts = (reading, _pain_words(point), _stopped_words(point), practice)
        whole = ". ".join(filter(None, parts))
        item.setToolTip(whole)
        item.setData(Qt.ItemDataRole.AccessibleTextRole, f"{side_title(point.side)}: {whole}")
        if practice and self._appearance.percent <= _WIDE_PERCENT:
            item.setText(tr("{reading}, practice").format(reading=item.text()))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._spread()

    @Slot(int, int)
    def _open(self, row: int, column: int) -> None:
        points = self._rows[row]
        point = points.get(_SIDES[column]) if column in _SIDES else None
        self.picked.emit((point or next(iter(points.values()))).record)

    @Slot(int, int, int, int)
    def _follow(self, row: int, *_: int) -> None:
        """Keep the row that the keys came to in sight: the page scrolls, not the table."""
        above = self.parentWidget()
        while above is not None and not isinstance(above, QScrollArea):
            above = above.parentWidget()
        page = None if above is None else above.widget()
        if above is None or page is None or row < 0 or not self.hasFocus():
            return
        middle = self.rowViewportPosition(row) + self.rowHeight(row) // 2
        place = self.viewport().mapTo(page, QPoint(0, middle))
        above.ensureVisible(place.x(), place.y(), 0, 2 * self.rowHeight(row))

    def fold_spans(self) -> list[tuple[int, int]]:
        """Return the edges of the words of its rows, pixels."""
        head, line = self.horizontalHeader().height(), self.fontMetrics().height()
        rows = range(self.rowCount())
        tops = [head + self.rowViewportPosition(r) + (self.rowHeight(r) - line) // 2 for r in rows]
        return [(0, head), *((top, top + line) for top in tops)]

    def fit_rows(self, room_px: int) -> None:
        """Be of whole rows down to the window's edge: this room is no cut row's."""
        room = room_px + _FADING_PX - self.horizontalHeader().sizeHint().height()
        whole = max(1, room // self._least_px)
        high = room // whole if whole < self.rowCount() else 0
        if high != self._row_px:
            self._row_px = high
            self._fit_cells()

    @property
    def _least_px(self) -> int:
        roomy = self._appearance.percent <= _WIDE_PERCENT
        return self._appearance.px(_ROW if roomy else _LOW_ROW)

    def _fit_cells(self) -> None:
        """Be as high as all rows: there is one scroll bar, the page's."""
        high = max(self._row_px, self._least_px)
        self.verticalHeader().setDefaultSectionSize(high)
        for row in range(self.rowCount()):
            self.setRowHeight(row, high)
        head = self.horizontalHeader().sizeHint().height()
        self.setFixedHeight(head + self.rowCount() * high + 2 * self.frameWidth())
        self._spread()

    def _spread(self) -> None:
        """Take the whole width; columns without a word, or without room at the end, are hidden."""
        words = [row_words(points) for points in self._rows]
        shown = [
            column for column in range(self.columnCount()) if any(cells[column] for cells in words)
        ]
        # A hidden column has no size to ask for.
        for column in shown:
            self.setColumnHidden(column, False)
        needed = {
            column: max(
                self.sizeHintForColumn(column),
                self.horizontalHeader().sectionSizeHint(column),
            )
            for column in shown
        }
        room = self.viewport().width()
        for left_out in _LEFT_OUT:
            taken = {column: wide for column, wide in needed.items() if column not in left_out}
            if sum(taken.values()) <= room:
                break
        spare = max(0, room - sum(taken.values()))
        share, rest = divmod(spare, len(taken) or 1)
        for column in range(self.columnCount()):
            self.setColumnHidden(column, column not in taken)
        for column, width in taken.items():
            last = column == max(taken)
            self.setColumnWidth(column, width + share + rest * last)


def table_rows(points: Sequence[CurvePoint]) -> list[TableRow]:
    """Return the rows of a table: of each session both arms, the latest first."""
    rows: list[dict[Side, CurvePoint]] = []
    of_session: dict[str, list[dict[Side, CurvePoint]]] = defaultdict(list)
    for point in reversed(points):
        begun = of_session[point.record.session_id]
        row = next((row for row in begun if point.side not in row), None)
        if row is None:
            row = {}
            begun.append(row)
            rows.append(row)
        row[point.side] = point
    return list(rows)


def row_words(points: TableRow) -> tuple[str, ...]:
    """Return the cells of a row."""
    day = next(iter(points.values())).day
    sides = _SIDES.values()
    pains = [_pain_words(points[side]) if side in points else "" for side in sides]
    return (
        date_words(day, tr),
        *(_reading_words(points[side]) if side in points else "" for side in sides),
        *pains,
        " / ".join(pain or _NONE for pain in pains) if any(pains) else "",
        _stopped_by_words(points),
    )


def _stopped_by_words(points: TableRow) -> str:
    """Return what stopped both arms, once where it was the same."""
    words = {side: _stopped_words(points[side]) for side in sorted(points)}
    if len(set(words.values())) == 1:
        return next(iter(words.values()))
    return ", ".join(f"{side_title(side)} {its}" for side, its in words.items() if its)


def _reading_words(point: CurvePoint) -> str:
    if point.value is None:
        return tr("no result")
    return measurement_words(point.record.measurement)


def _pain_words(point: CurvePoint) -> str:
    return "" if point.pain is None else str(point.pain)


def _stopped_words(point: CurvePoint) -> str:
    stopped_by = point.record.stopped_by
    return "" if stopped_by is None else stopped_by_name(stopped_by)
