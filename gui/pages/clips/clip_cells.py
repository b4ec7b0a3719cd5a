"""Cells of the table of clips: a line of ink above a quiet one, or words that wrap."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from gui.pages.clips.clip_rows import ClipRow
from gui.pages.clips.clip_table_model import COLUMNS, ClipTableModel, Column, lines_of
from gui.style.appearance import Appearance
from gui.style.measures import SMALL

#: Room of a cell beside its words, and above and beneath them, pixels. [technical]
BESIDE_PX, _ABOVE_PX = 12, 7
#: Most lines of a reason in its column of a row that is not opened. [technical]
_REASON_LINES = 2
#: Width of the bar of a chosen row, pixels, and how strongly the row is tinted. [technical]
_BAR_PX, _TINT = 4, 0.1
#: Urgency of a row that needs nobody. [technical]
_CALM = 2
#: What a width in whole pixels may be short of, pixels. [technical]
_ROUNDING_PX = 4


class ClipCells(QStyledItemDelegate):
    """Paints cells; where a row is merged, movement or reason stands beneath the clip's name."""

    def __init__(self, appearance: Appearance, model: ClipTableModel) -> None:
        super().__init__()
        self._appearance, self._model = appearance, model
        #: Whether the movement stands beneath the name.
        self.merged = False
        #: Whether the reasons have a column.
        self.with_reasons = True
        #: The row that is opened, and the height at its bottom that is not the cells'.
        self.opened, self.kept_free_px = -1, 0

    def _fonts(self) -> tuple[QFont, QFont]:
        """Return the fonts of the two lines: the second is smaller where rows are merged."""
        appearance = self._appearance
        second = SMALL if self.merged else 1.0
        return appearance.font(appearance.px()), appearance.font(appearance.px(second))

    def row_height(self) -> int:
        first, second = (QFontMetrics(font).lineSpacing() for font in self._fonts())
        lines = max(first + second, _REASON_LINES * second * self.with_reasons)
        return lines + 2 * _ABOVE_PX

    def width_of(self, row: ClipRow, column: Column) -> int:
        """Return the width that the lines of a cell need."""
        lines, urgent = lines_of(row, column), _is_urgent(row, column)
        first, second = self._fonts()
        first.setBold(urgent)
        widest = max(
            QFontMetrics(font).horizontalAdvance(line)
            for font, line in zip((first, second), lines, strict=True)
        )
        return widest + _ROUNDING_PX + 2 * BESIDE_PX

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        return QSize(0, self.row_height())

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        shown = QStyleOptionViewItem(option)
        row, column = self._model.rows[index.row()], COLUMNS[index.column()]
        painter.save()
        self._paint_ground(painter, shown, first=column is Column.CLIP)
        free = self.kept_free_px if index.row() == self.opened else 0
        place = shown.rect.adjusted(BESIDE_PX, _ABOVE_PX, -BESIDE_PX, -_ABOVE_PX - free)
        lines = lines_of(row, column)
        if column is Column.REASONS:
            second = self._fonts()[1]
            # A row that is opened has room for the whole reason: its tools end before that column.
            whole = shown.rect.adjusted(BESIDE_PX, _ABOVE_PX, -BESIDE_PX, -_ABOVE_PX)
            most = max(_REASON_LINES, whole.height() // QFontMetrics(second).lineSpacing())
            self._write(painter, whole, _wrapped(lines[0], second, whole.width(), most))
        elif column is Column.CLIP:
            beneath = row.reasons if index.row() != self.opened and not self.with_reasons else ""
            self._write_two(painter, place, (lines[0], (beneath or row.task) * self.merged))
        else:
            self._write_two(painter, place, lines, urgent=_is_urgent(row, column))
        painter.restore()

    def _paint_ground(self, painter: QPainter, shown: QStyleOptionViewItem, *, first: bool) -> None:
        """Paint the ground of a cell: tinted in a chosen row, which begins with a bar."""
        place, colour = shown.rect, self._appearance.colour
        painter.fillRect(place, colour("raised"))
        if shown.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(place, colour("arm", _TINT))
            if first:
                painter.fillRect(
                    QRect(place.topLeft(), QSize(_BAR_PX, place.height())), colour("arm")
                )
        painter.setPen(colour("line"))
        painter.drawLine(place.bottomLeft(), place.bottomRight())

    def _write_two(
        self, painter: QPainter, place: QRect, lines: tuple[str, str], *, urgent: bool = False
    ) -> None:
        """Write a name, shortened in its middle, and a quiet line beneath it."""
        first, second = self._fonts()
        first.setBold(urgent)
        high, low = QFontMetrics(first).lineSpacing(), QFontMetrics(second).lineSpacing()
        spare = place.height() - high - low * bool(lines[1])
        top = QRect(place.left(), place.top() + max(0, spare // 2), place.width(), high)
        painter.setFont(first)
        painter.setPen(self._appearance.colour("hold" if urgent else "ink"))
        middle = QFontMetrics(first).elidedText(
            lines[0], Qt.TextElideMode.ElideMiddle, place.width()
        )
        painter.drawText(top, int(Qt.AlignmentFlag.AlignLeft), middle)
        if lines[1]:
            beneath = QRect(place.left(), top.bottom() + 1, place.width(), low)
            self._write(painter, beneath, [lines[1]])

    def _write(self, painter: QPainter, place: QRect, lines: list[str]) -> None:
        """Write quiet lines, each shortened at its end."""
        font = self._fonts()[1]
        metrics = QFontMetrics(font)
        painter.setFont(font)
        painter.setPen(self._appearance.colour("quiet"))
        space = (place.height() - len(lines) * metrics.lineSpacing()) // 2
        top = place.top() + max(0, space)
        for line in lines:
            words = metrics.elidedText(line, Qt.TextElideMode.ElideRight, place.width())
            room = QRect(place.left(), top, place.width(), metrics.lineSpacing())
            painter.drawText(room, int(Qt.AlignmentFlag.AlignLeft), words)
            top += metrics.lineSpacing()


def _is_urgent(row: ClipRow, column: Column) -> bool:
    """Return whether a cell says that its row needs somebody."""
    return column is Column.RESULT and row.urgency < _CALM


def _wrapped(text: str, font: QFont, width: int, most: int) -> list[str]:
    """Return text in lines of whole words, `most` at most; the last takes the rest."""
    metrics = QFontMetrics(font)
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        fits = metrics.horizontalAdvance(longer) <= width
        if lines and (fits or len(lines) == most):
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
