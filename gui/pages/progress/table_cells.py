"""Cells of the table of readings: the value in bold, its range and the month of a day in line."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QPainter
from PySide6.QtWidgets import (
    QApplication,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
)

from gui.drawing.pair_words import bold, first_width, paint_pair, pair_width, parted, parted_day
from gui.style.appearance import Appearance

#: Room that Qt keeps beside the words of a cell, pixels. [technical]
_BESIDE_PX = 3


class PairCells(QStyledItemDelegate):
    """Paints the column of the days and those of the readings."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self._appearance = appearance
        self._first_px: dict[int, float] = {}

    def line_up(self, columns: Mapping[int, Sequence[str]]) -> None:
        """Line these columns up by their words; the first is that of the days."""
        font = self._appearance.font(self._appearance.px())
        days = min(columns, default=0)
        self._first_px = {
            column: first_width(
                (parted_day(its) if column == days else parted(its) for its in words),
                font if column == days else bold(font),
            )
            for column, words in columns.items()
        }

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint a cell as the style does, its words by themselves."""
        shown = QStyleOptionViewItem(option)
        self.initStyleOption(shown, index)
        style = shown.widget.style() if shown.widget else QApplication.style()
        inside = style.subElementRect(
            QStyle.SubElement.SE_ItemViewItemText, shown, shown.widget
        ).adjusted(_BESIDE_PX, 0, 0, 0)
        if index.column() == 0:
            # Days begin where the words above the table do.
            inside.setLeft(shown.rect.left())
        words, shown.text = shown.text, ""
        style.drawControl(QStyle.ControlElement.CE_ItemViewItem, shown, painter, shown.widget)
        painter.save()
        painter.setPen(self._appearance.colour("ink"))
        pair, first_px = self._pair(words, index.column())
        paint_pair(painter, QRectF(inside), pair, self._fonts(shown, index.column()), first_px)
        painter.restore()

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return the size of the words as they are painted."""
        hint = super().sizeHint(option, index)
        words = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
        pair, first_px = self._pair(words, index.column())
        fonts = self._fonts(option, index.column())
        more = pair_width(pair, fonts, first_px) - option.fontMetrics.horizontalAdvance(words)
        return QSize(hint.width() + round(more) + 1, hint.height())

    def _pair(self, words: str, column: int) -> tuple[tuple[str, str], float]:
        if column not in self._first_px:
            return ("", words), 0.0
        first = column == min(self._first_px)
        return parted_day(words) if first else parted(words), self._first_px[column]

    def _fonts(self, option: QStyleOptionViewItem, column: int) -> tuple[QFont, QFont]:
        first = column == min(self._first_px, default=0)
        return (option.font if first else bold(option.font), option.font)
