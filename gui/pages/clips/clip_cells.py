"""Cells of the table of clips: a line of ink above a quiet one, or words that wrap."""

import re
from collections.abc import Iterable, Mapping

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPointF, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from gui.drawing.tabular_figures import figure_aside, paint_tabular, tabular_width
from gui.pages.clips.clip_rows import ClipRow
from gui.pages.clips.clip_table_model import COLUMNS, ClipTableModel, Column, lines_of
from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, SMALL
from gui.widgets.layouts import fill_edge_bar

#: Room of a cell beside its words, beside those at an edge of the table, and above and beneath
#: them, pixels. [technical]
BESIDE_PX, EDGE_PX, ABOVE_PX = 12, CARD_PADDING_PX, 10
#: Room above and beneath the words where each column has its own: rows are told apart at a
#: glance. [technical]
_AIR_PX = 22
#: Most lines of a reason in its column of a row that is not opened, and of a name. [technical]
_MOST_LINES, _MOST_NAME_LINES = 2, 3
#: Most lines of a reason in its column of the opened row. [technical]
_MOST_OPENED = 4
#: Signs of a name after which it may go on in another line. [technical]
_BREAKS = r"\s_-"
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
        #: The row that is opened, and whether its tools take the place of the second line.
        self.opened, self.tools_beneath_name = -1, False
        #: Middle of the words of the opened row, pixels beneath its top; 0 where it is merged.
        self.middle = 0
        #: The card that the table lies on, in the place of the rows: they end at its corners.
        self.card = QRect()
        #: Room that the links take at the end of the reasons of the opened row, pixels.
        self.links_px = 0

    def _fonts(self) -> tuple[QFont, QFont]:
        """Return the fonts of the two lines: the second is smaller where rows are merged."""
        appearance = self._appearance
        second = SMALL if self.merged else 1.0
        return appearance.font(appearance.px()), appearance.font(appearance.px(second))

    def row_height(self) -> int:
        first, second = (QFontMetrics(font).lineSpacing() for font in self._fonts())
        if self.merged:
            return max(first + second, _MOST_LINES * second) + 2 * ABOVE_PX
        return first + 2 * _AIR_PX

    def height_of(self, row: ClipRow, widths: Mapping[Column, int]) -> int:
        """Return the height of a row: more than the usual one where words take more lines."""
        if self.merged:
            return self.row_height()
        lines = max(
            self.lines_in(row, column, width, opened=False) for column, width in widths.items()
        )
        return max(self.row_height(), lines * self.line + 2 * ABOVE_PX)

    def sides(self, column: Column) -> tuple[int, int]:
        """Return the room at the left and right of a cell's words."""
        last = Column.REASONS if self.with_reasons else Column.RESULT
        return (
            EDGE_PX if column is Column.CLIP else BESIDE_PX,
            EDGE_PX if column is last else BESIDE_PX,
        )

    def _room(self, column: Column, width: int) -> int:
        """Return the width that words have in a column."""
        return width - sum(self.sides(column))

    @property
    def line(self) -> int:
        """Height of a line of ink."""
        return QFontMetrics(self._fonts()[0]).lineSpacing()

    def name_height(self, row: ClipRow, width: int) -> int:
        """Return the height of a clip's name in a column, with the room above it."""
        return ABOVE_PX + len(self._name_lines(row, self._room(Column.CLIP, width))) * self.line

    def least_width_of(self, column: Column, lines: Iterable[str], *, bold: bool = False) -> int:
        """Return the width that the longest of some first lines needs in a column."""
        font = self._fonts()[0]
        font.setBold(bold)
        widest = max(map(QFontMetrics(font).horizontalAdvance, lines))
        return widest + _ROUNDING_PX + sum(self.sides(column))

    def _name_lines(self, row: ClipRow, width: int) -> list[str]:
        """Return the name of a clip in the lines it has."""
        most = 1 if self.merged else _MOST_NAME_LINES
        return _wrapped(row.clip.name, self._name_font(row, width), width, most, after=_BREAKS)

    def _name_font(self, row: ClipRow, width: int) -> QFont:
        """Return the font of a clip's name: smaller where it has too few lines else."""
        usual = self._fonts()[0]
        if self.merged:
            return usual
        lines = _wrapped(row.clip.name, usual, width, _MOST_NAME_LINES, after=_BREAKS)
        fits = max(map(QFontMetrics(usual).horizontalAdvance, lines)) <= width
        return usual if fits else self._appearance.font(self._appearance.px(SMALL))

    def lines_in(self, row: ClipRow, column: Column, width: int, *, opened: bool) -> int:
        """Return in how many lines the words of a row that is not merged stand in a column."""
        room = self._room(column, width)
        if column is Column.CLIP:
            return len(self._name_lines(row, room))
        if column is Column.REASONS:
            text, most = lines_of(row, column)[0], _MOST_OPENED if opened else _MOST_LINES
            return len(_wrapped(text, self._fonts()[0], room - self.links_px * opened, most))
        return sum(map(bool, lines_of(row, column)))

    def width_of(self, row: ClipRow, column: Column) -> int:
        """Return the width that the lines of a cell need."""
        lines = lines_of(row, column)
        first, second = self._fonts()
        first.setBold(bool(_stress(row, column)))
        widest = max(
            QFontMetrics(font).horizontalAdvance(line)
            for font, line in zip((first, second), lines, strict=True)
        )
        return widest + _ROUNDING_PX + sum(self.sides(column))

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
        self.paint_ground(painter, shown, first=column is Column.CLIP)
        left, right = self.sides(column)
        place = shown.rect.adjusted(left, ABOVE_PX, -right, -ABOVE_PX)
        opened = index.row() == self.opened
        if not self.merged:
            high = self.line * self.lines_in(row, column, shown.rect.width(), opened=opened)
            middle = self.middle if opened else shown.rect.height() // 2
            place.moveTop(shown.rect.top() + middle - high // 2)
        if column is Column.REASONS:
            self._write_reasons(painter, place, row, opened=opened)
        elif column is Column.CLIP:
            self._write_name(painter, place, row, opened=opened)
        elif not opened or column is Column.RESULT:
            lines = lines_of(row, column)
            stress, figures = _stress(row, column), column is Column.RESULT
            low = self._write_first(painter, place, [lines[0]], stress=stress, figures=figures)
            why = self._second(row) if column is Column.RESULT else lines[1]
            self._write(painter, low, [why])
        painter.restore()

    def _second(self, row: ClipRow) -> str:
        """Return what stands beneath a result."""
        return lines_of(row, Column.RESULT)[1] or row.why_briefly * (not self.with_reasons)

    def has_second_result(self, row: ClipRow) -> bool:
        """Whether a result has words beneath it."""
        return bool(self._second(row))

    def paint_ground(self, painter: QPainter, shown: QStyleOptionViewItem, *, first: bool) -> None:
        """Paint the ground of a cell: tinted in a chosen row, which begins with a bar.

        Beneath a row that ends with the card there is no line.
        """
        place, colour = shown.rect, self._appearance.colour
        if shown.state & QStyle.StateFlag.State_Selected:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            fill_edge_bar(painter, self.card, place, colour("arm", _TINT))
            if first:
                bar = QRect(place.topLeft(), QSize(_BAR_PX, place.height()))
                fill_edge_bar(painter, self.card, bar, colour("arm"))
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        if place.bottom() < self.card.bottom():
            painter.setPen(colour("line"))
            painter.drawLine(place.bottomLeft(), place.bottomRight())

    def _write_name(self, painter: QPainter, place: QRect, row: ClipRow, *, opened: bool) -> None:
        """Write the name, and beneath it the movement where that has no column."""
        style = (
            self._name_font(row, place.width()),
            self._appearance.colour("ink"),
            Qt.TextElideMode.ElideMiddle,
        )
        low = _write_lines(painter, place, self._name_lines(row, place.width()), style)
        if self.merged and not (opened and self.tools_beneath_name):
            self._write(painter, low, [row.task])

    def _write_first(
        self,
        painter: QPainter,
        place: QRect,
        lines: list[str],
        *,
        stress: str = "",
        figures: bool = False,
    ) -> QRect:
        """Write lines of ink, or bold in another colour, each shortened in its middle.

        Returns the place beneath them. Figures may have one width, where numbers of other rows
        stand above and below.
        """
        font = self._fonts()[0]
        font.setBold(bool(stress))
        style = font, self._appearance.colour(stress or "ink"), Qt.TextElideMode.ElideMiddle
        return _write_lines(painter, place, lines, style, figures=figures)

    def _write_reasons(
        self, painter: QPainter, place: QRect, row: ClipRow, *, opened: bool
    ) -> None:
        """Write the reasons: smaller, on the line of the others, where they have no room else."""
        fonts, room = self._fonts(), place.adjusted(0, 0, -self.links_px * opened, 0)
        for font in fonts:
            metrics = QFontMetrics(font)
            whole = opened and not self.merged
            most = _MOST_OPENED if whole else max(1, place.height() // metrics.lineSpacing())
            lines = _wrapped(lines_of(row, Column.REASONS)[0], font, room.width(), most)
            if all(metrics.horizontalAdvance(line) <= room.width() for line in lines):
                break
        room.translate(0, QFontMetrics(fonts[0]).ascent() - metrics.ascent())
        # What to do about a failure is no mere note.
        colour = self._appearance.colour("quiet" if row.error is None else "ink")
        _write_lines(painter, room, lines, (font, colour, Qt.TextElideMode.ElideRight))

    def _write(self, painter: QPainter, place: QRect, lines: list[str]) -> None:
        """Write quiet lines of the second font, each shortened at its end."""
        style = self._fonts()[1], self._appearance.colour("quiet"), Qt.TextElideMode.ElideRight
        _write_lines(painter, place, lines, style)


def _write_lines(
    painter: QPainter,
    place: QRect,
    lines: list[str],
    style: tuple[QFont, QColor, Qt.TextElideMode],
    *,
    figures: bool = False,
) -> QRect:
    """Write lines from the upper edge of a place, figures of one width where there is room.

    Returns what is left of the place.
    """
    font, colour, elided = style
    metrics = QFontMetrics(font)
    painter.setFont(font)
    painter.setPen(colour)
    top = place.top()
    for line in lines:
        if figures and tabular_width(line, font) <= place.width():
            left = place.left() - figure_aside(line, font)
            paint_tabular(painter, QPointF(left, top + metrics.ascent()), line, font)
        else:
            words = metrics.elidedText(line, elided, place.width())
            room = QRect(place.left(), top, place.width(), metrics.lineSpacing())
            painter.drawText(room, int(Qt.AlignmentFlag.AlignLeft), words)
        top += metrics.lineSpacing()
    return QRect(place.left(), top, place.width(), place.bottom() - top)


def _stress(row: ClipRow, column: Column) -> str:
    """Return the colour of a bold cell: what the row needs, that it is being read, its reading."""
    if column is not Column.RESULT:
        return ""
    if row.urgency < _CALM:
        return "hold"
    if row.under_way:
        return "arm"
    return "ink" if row.counted is not None else ""


def _wrapped(text: str, font: QFont, width: int, most: int, after: str = r"\s") -> list[str]:
    """Return text in lines, `most` at most, broken after some signs; the last takes the rest."""
    metrics = QFontMetrics(font)
    lines: list[str] = []
    for part in re.split(f"(?<=[{after}])", text):
        longer = lines[-1] + part if lines else part
        fits = metrics.horizontalAdvance(longer.rstrip()) <= width - _ROUNDING_PX
        if lines and (fits or len(lines) == most):
            lines[-1] = longer
        else:
            lines.append(part)
    return [line.rstrip() for line in lines]
