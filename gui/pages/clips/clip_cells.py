"""Cells of the table of clips: a line of ink above a quiet one, or words that wrap."""

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QApplication, QStyle, QStyledItemDelegate, QStyleOptionViewItem

from gui.pages.clips.clip_table_model import COLUMNS, ClipTableModel, Column, lines_of
from gui.style.appearance import Appearance
from gui.style.measures import SMALL

#: Room of a cell beside its words, and above and beneath them, pixels. [technical]
_BESIDE_PX, _ABOVE_PX = 12, 5
#: Most lines of a reason. [technical]
_REASON_LINES = 3
#: Width of the mark of a row that needs somebody, pixels. [technical]
_MARK_PX = 6
#: Urgency of a row that needs nobody. [technical]
_CALM = 2
#: What a width in whole pixels may be short of, pixels. [technical]
_ROUNDING_PX = 4


class ClipCells(QStyledItemDelegate):
    """Paints cells; where the movement has no column, it stands beneath the clip's name."""

    def __init__(self, appearance: Appearance, model: ClipTableModel) -> None:
        super().__init__()
        self._appearance, self._model = appearance, model
        #: Whether the movement stands beneath the name.
        self.merged = False
        #: Whether the reasons have a column.
        self.with_reasons = True

    def _fonts(self) -> tuple[QFont, QFont]:
        """Return the fonts of the two lines."""
        appearance = self._appearance
        return appearance.font(appearance.px()), appearance.font(appearance.px(SMALL))

    def row_height(self) -> int:
        first, second = (QFontMetrics(font).lineSpacing() for font in self._fonts())
        lines = max(first + second, _REASON_LINES * second * self.with_reasons)
        return lines + 2 * _ABOVE_PX

    def width_of(self, lines: tuple[str, str]) -> int:
        """Return the width that the lines of a cell need."""
        first, second = map(QFontMetrics, self._fonts())
        widest = max(first.horizontalAdvance(lines[0]), second.horizontalAdvance(lines[1]))
        return widest + _ROUNDING_PX + 2 * _BESIDE_PX

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
        self.initStyleOption(shown, index)
        shown.text = ""
        style = shown.widget.style() if shown.widget else QApplication.style()
        style.drawControl(QStyle.ControlElement.CE_ItemViewItem, shown, painter, shown.widget)
        chosen = bool(shown.state & QStyle.StateFlag.State_Selected)
        row, column = self._model.rows[index.row()], COLUMNS[index.column()]
        place = shown.rect.adjusted(_BESIDE_PX, _ABOVE_PX, -_BESIDE_PX, -_ABOVE_PX)
        lines = lines_of(row, column)
        painter.save()
        if column is Column.CLIP and row.urgency < _CALM:
            mark = QRect(shown.rect.topLeft(), QSize(_MARK_PX, shown.rect.height()))
            painter.fillRect(mark, self._appearance.colour("hold"))
        if column is Column.REASONS:
            small = self._fonts()[1]
            self._write(painter, place, _wrapped(lines[0], small, place.width()), chosen)
        else:
            if column is Column.CLIP and self.merged:
                lines = (lines[0], row.task)
            self._write_two(painter, place, lines, chosen)
        painter.restore()

    def _write_two(
        self, painter: QPainter, place: QRect, lines: tuple[str, str], chosen: bool
    ) -> None:
        """Write a name, shortened in its middle, and a quiet line beneath it."""
        font = self._fonts()[0]
        high = QFontMetrics(font).lineSpacing()
        left = Qt.AlignmentFlag.AlignLeft
        first = place if not lines[1] else QRect(place.topLeft(), QSize(place.width(), high))
        painter.setFont(font)
        painter.setPen(self._appearance.colour("on_arm" if chosen else "ink"))
        middle = QFontMetrics(font).elidedText(
            lines[0], Qt.TextElideMode.ElideMiddle, place.width()
        )
        painter.drawText(first, int(left | Qt.AlignmentFlag.AlignVCenter), middle)
        self._write(painter, place.adjusted(0, high, 0, 0), [lines[1]], chosen)

    def _write(self, painter: QPainter, place: QRect, lines: list[str], chosen: bool) -> None:
        """Write quiet lines, each shortened at its end."""
        font = self._fonts()[1]
        metrics = QFontMetrics(font)
        painter.setFont(font)
        painter.setPen(self._appearance.colour("on_arm" if chosen else "quiet"))
        space = (place.height() - len(lines) * metrics.lineSpacing()) // 2
        top = place.top() + max(0, space)
        for line in lines:
            words = metrics.elidedText(line, Qt.TextElideMode.ElideRight, place.width())
            room = QRect(place.left(), top, place.width(), metrics.lineSpacing())
            painter.drawText(room, int(Qt.AlignmentFlag.AlignLeft), words)
            top += metrics.lineSpacing()


def _wrapped(text: str, font: QFont, width: int) -> list[str]:
    """Return text in lines of whole words; the last takes the rest."""
    metrics = QFontMetrics(font)
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        fits = metrics.horizontalAdvance(longer) <= width
        if lines and (fits or len(lines) == _REASON_LINES):
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
