"""Table behind a chart: every measurement in words."""

from collections.abc import Sequence

from PySide6.QtCore import QPoint, Qt, Signal, Slot
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QScrollArea,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from gui.drawing.curves import CurvePoint
from gui.style.appearance import Appearance
from gui.text.wording import measurement_words, side_title, stopped_by_name, tr
from measure.progress.dates import date_words

#: Height of a row, in sizes of the text. [technical]
_ROW = 2.0
#: Place of the column of readings. [technical]
_READING = 2
#: Last column that large text has room for, and the text size up to which the others have, per
#: cent. Their words are in the reading's tool tip then. [technical]
_PAIN, _WIDE_PERCENT = 3, 130


class ReadingsTable(QTableWidget):
    """The latest first. Enter or a double click opens the session of a row."""

    #: A MeasurementRecord.
    picked = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._points: list[CurvePoint] = []
        heads = [tr("Day"), tr("Side"), tr("Reading"), tr("Pain"), tr("Stopped by")]
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
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        self.cellActivated.connect(self._open)
        self.currentCellChanged.connect(self._follow)
        appearance.changed.connect(self._fill)

    def show_points(self, points: Sequence[CurvePoint], title: str) -> None:
        """Show these measurements under this name."""
        self._points = list(reversed(points))
        self.setAccessibleName(tr("Table: {title}").format(title=title))
        self.setRowCount(len(self._points))
        self._fill()

    @Slot()
    def _fill(self) -> None:
        """Write the cells; of practice, and of what ended a trial, large text says it unseen."""
        for row, point in enumerate(self._points):
            cells = row_words(point)
            practice = tr("Practice") if point.practice else ""
            for place, words in enumerate(cells):
                item = QTableWidgetItem(words)
                if place == _READING:
                    whole = measurement_words(point.record.measurement).rstrip(".")
                    whole = ". ".join(filter(None, (whole, *cells[_PAIN + 1 :], practice)))
                    item.setToolTip(whole)
                    item.setData(Qt.ItemDataRole.AccessibleTextRole, whole)
                    if practice and self._appearance.percent <= _WIDE_PERCENT:
                        item.setText(tr("{reading}, practice").format(reading=words))
                self.setItem(row, place, item)
        self._fit_cells()

    def _narrow(self) -> None:
        """Hide columns without a word, and those that large text has no room for."""
        for place in range(self.columnCount()):
            written = any(row_words(point)[place] for point in self._points)
            beyond = self._appearance.percent > _WIDE_PERCENT and place > _PAIN
            self.setColumnHidden(place, beyond or not written)

    @Slot(int, int)
    def _open(self, row: int, _place: int) -> None:
        self.picked.emit(self._points[row].record)

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

    def _fit_cells(self) -> None:
        """Be as high as all rows: there is one scroll bar, the page's."""
        self._narrow()
        modes, wide = QHeaderView.ResizeMode, self._appearance.percent <= _WIDE_PERCENT
        self.horizontalHeader().setSectionResizeMode(modes.Stretch if wide else modes.Interactive)
        self.resizeColumnsToContents()
        self.horizontalHeader().setStretchLastSection(True)
        high = self._appearance.px(_ROW)
        self.verticalHeader().setDefaultSectionSize(high)
        for row in range(self.rowCount()):
            self.setRowHeight(row, high)
        head = self.horizontalHeader().sizeHint().height()
        self.setFixedHeight(head + self.rowCount() * high + 2 * self.frameWidth())


def row_words(point: CurvePoint) -> tuple[str, ...]:
    """Return the cells of a measurement."""
    stopped_by = point.record.stopped_by
    return (
        date_words(point.day, tr),
        side_title(point.side),
        tr("no result") if point.value is None else measurement_words(point.record.measurement),
        "" if point.pain is None else str(point.pain),
        "" if stopped_by is None else stopped_by_name(stopped_by),
    )
