"""Table behind a chart: every measurement in words."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from gui.drawing.curves import CurvePoint
from gui.style.appearance import Appearance
from gui.text.wording import measurement_words, side_title, stopped_by_name, tr
from measure.progress.dates import date_words

#: Height: so many pixels at every text size, and so many sizes of the text. [technical]
_HEIGHT_PX, _HEIGHT = 200, 6
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
        heads = [tr("Day"), tr("Side"), tr("Reading"), tr("Pain"), tr("Stopped by"), tr("Note")]
        self.setColumnCount(len(heads))
        self.setHorizontalHeaderLabels(heads)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setTabKeyNavigation(False)
        self.setWordWrap(True)
        self.verticalHeader().hide()
        self.setShowGrid(False)
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setStretchLastSection(True)
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        self.cellActivated.connect(self._open)
        appearance.changed.connect(self._fit)
        self._fit()

    def show_points(self, points: Sequence[CurvePoint], title: str) -> None:
        """Show these measurements under this name."""
        self._points = list(reversed(points))
        self.setAccessibleName(tr("Table: {title}").format(title=title))
        self.setRowCount(len(self._points))
        for row, point in enumerate(self._points):
            cells = row_words(point)
            for place, words in enumerate(cells):
                item = QTableWidgetItem(words)
                if place == _READING:
                    whole = measurement_words(point.record.measurement)
                    whole = ". ".join(filter(None, (whole.rstrip("."), *cells[_PAIN + 1 :])))
                    item.setToolTip(whole)
                    item.setData(Qt.ItemDataRole.AccessibleTextRole, whole)
                self.setItem(row, place, item)
        self._narrow()
        self.resizeRowsToContents()

    def _narrow(self) -> None:
        """Hide columns without a word, and those that large text has no room for."""
        for place in range(self.columnCount()):
            written = any(row_words(point)[place] for point in self._points)
            beyond = self._appearance.percent > _WIDE_PERCENT and place > _PAIN
            self.setColumnHidden(place, beyond or not written)

    @Slot(int, int)
    def _open(self, row: int, _place: int) -> None:
        self.picked.emit(self._points[row].record)

    @Slot()
    def _fit(self) -> None:
        self.setFixedHeight(_HEIGHT_PX + self._appearance.px(_HEIGHT))
        self._narrow()


def row_words(point: CurvePoint) -> tuple[str, ...]:
    """Return the cells of a measurement."""
    stopped_by = point.record.stopped_by
    return (
        date_words(point.day, tr),
        side_title(point.side),
        tr("no result") if point.value is None else measurement_words(point.record.measurement),
        "" if point.pain is None else str(point.pain),
        "" if stopped_by is None else stopped_by_name(stopped_by),
        tr("Practice") if point.practice else "",
    )
