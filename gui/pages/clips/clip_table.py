"""Table of clips: as wide as its place, never wider; the chosen row opens to be worked on."""

from PySide6.QtCore import QEvent, QItemSelection, QPoint, QRect, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import (
    QFocusEvent,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyle,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from gui.pages.clips.clip_cells import ABOVE_PX, BESIDE_PX, EDGE_PX, ClipCells
from gui.pages.clips.clip_rows import ClipRow
from gui.pages.clips.clip_table_model import COLUMNS, ClipTableModel, Column
from gui.pages.clips.row_tools import RowTools
from gui.style.appearance import Appearance
from gui.style.focus_ring import shows_ring
from gui.style.measures import CARD_RADIUS_PX, GAP_PX
from gui.text.wording import range_words, task_title, tr, value_words
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, Unit

#: Rows whose words decide how wide a column is: more would take longer than a frame. [technical]
_MEASURED_ROWS = 200
#: Least width of the clips' names and of the reasons, in widths of a digit. [technical]
_CLIP_DIGITS, _REASONS_DIGITS = 18, 34
#: Share of the room beside the results that names have where there are reasons, and where the
#: movement stands beneath them, per cent. [technical]
_CLIP_SHARE, _MERGED_SHARE = 50, 62
#: Width of the table's edge, and of the ring around it where the keyboard is in it, pixels.
#: [technical]
_LINE_PX, _RING_PX = 1, 2
#: Least height of what lies beneath the table, pixels. [technical]
_BENEATH_PX = 7 * GAP_PX
#: An angle of the most figures: readings have room for it, degrees. [technical]
_WIDEST_DEG = 188.0


class ClipTable(QTableView):
    """Shows the rows; several can be chosen at once.

    Parameters
    ----------
    tools
        What is done with the chosen rows; it lies in the one that is current.
    """

    #: The columns have their widths.
    fitted = Signal()
    #: Whether the ring of the keyboard's place is shown around the table.
    ringed = Signal(bool)

    def __init__(
        self,
        appearance: Appearance,
        model: ClipTableModel,
        tools: RowTools,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._rows, self._tools = model, tools
        self._cells = ClipCells(appearance, model)
        self.setItemDelegate(self._cells)
        self.setModel(model)
        tools.lie_in(self.viewport())
        self.setAccessibleName(tr("clips"))
        # The card that it lies on shows through.
        self.setProperty("role", "clear")
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.verticalHeader().hide()
        self.verticalHeader().setMinimumSectionSize(1)
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setProperty("role", "edged")
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for change in (
            model.rowsInserted,
            model.modelReset,
            model.dataChanged,
            model.layoutChanged,
        ):
            change.connect(self.fit)
        self.fit()

    @property
    def chosen(self) -> list[ClipRow]:
        """The chosen rows, in their order."""
        places = sorted(index.row() for index in self.selectionModel().selectedRows())
        return [self._rows.rows[place] for place in places]

    def fit(self) -> None:
        """Share the width among the columns: those that have no room are left out."""
        digit = QFontMetrics(self.font()).horizontalAdvance("0")
        cells, room = self._cells, self.viewport().width()
        # Of all words that may come, so that no column moves when others come.
        task = max(self._tools.widest_choice() + 2 * BESIDE_PX, self._widest_task())
        cells.with_reasons = True
        result = min(max(self._usual_result(), self._needed(Column.RESULT)), room // 2)
        least = (_CLIP_DIGITS + _REASONS_DIGITS) * digit
        with_task = room - result - task >= least
        with_reasons = room - result >= least
        # Words at the end keep off the scroll bar.
        if not with_reasons:
            result = max(result + EDGE_PX - BESIDE_PX, room - room * _MERGED_SHARE // 100)
        rest = room - result - (task if with_task else 0)
        share = rest * (_CLIP_SHARE if with_task else _MERGED_SHARE) // 100
        clip = max(_CLIP_DIGITS * digit, share) if with_reasons else rest
        widths = (clip, task, result, max(1, rest - clip))
        shown = (True, with_task, True, with_reasons)
        cells.merged, cells.with_reasons = not with_task, with_reasons
        for place, (width, is_shown) in enumerate(zip(widths, shown, strict=True)):
            self.setColumnHidden(place, not is_shown)
            self.setColumnWidth(place, width)
        self.horizontalHeader().setVisible(with_task or with_reasons)
        self.open_row()
        self.fitted.emit()

    @property
    def shows_reasons(self) -> bool:
        """Whether there is room for the reasons."""
        return not self.isColumnHidden(COLUMNS.index(Column.REASONS))

    def open_row(self) -> None:
        """Make room in the current row for what is done with the chosen ones."""
        cells, header = self._cells, self.verticalHeader()
        usual = self._usual_height()
        header.setDefaultSectionSize(usual)
        for place in range(len(self._rows.rows)):
            if self.rowHeight(place) != usual and not self.isRowHidden(place):
                header.resizeSection(place, usual)
        cells.opened = self._current()
        if cells.opened >= 0:
            header.resizeSection(cells.opened, self._opened_height())
        self._place_tools()
        self.viewport().update()

    def _usual_height(self) -> int:
        """Return the height of every row that is not opened: that of the one that needs most."""
        cells = self._cells
        if cells.merged:
            return cells.row_height()
        shown = {column: self.columnWidth(place) for place, column in enumerate(COLUMNS)}
        rows = self._rows.rows[:_MEASURED_ROWS]
        needed = max((cells.height_of(row, shown) for row in rows), default=0)
        return max(needed, cells.row_height(), self._tools.choices_height + 2 * GAP_PX)

    def _opened_height(self) -> int:
        """Return the height of the opened row: beside its words, or beneath them, are the tools."""
        tools, cells = self._tools, self._cells
        row = self._rows.rows[cells.opened]
        # While nothing is chosen they have the whole row: there is no result beside them.
        has_room = row.entry is None or tools.row_width <= self._name_width()
        cells.tools_beneath_name = cells.merged and has_room
        cells.middle = cells.links_px = 0
        tools.stack_in(None)
        if cells.merged:
            name = cells.name_height(row, self.columnWidth(0))
            beneath = name if cells.tools_beneath_name else cells.row_height() - ABOVE_PX
            return beneath + GAP_PX + self._tools_height() + ABOVE_PX
        tools.stack_in(self._tools_width())
        cells.links_px = tools.links_width + 2 * GAP_PX
        lines = max(
            cells.lines_in(row, column, self.columnWidth(place), opened=True)
            for place, column in enumerate(COLUMNS)
            if column is not Column.TASK
        )
        words = max(lines * cells.line, tools.choices_height)
        level = max(self._usual_height(), words + 2 * ABOVE_PX)
        # Words, choices and links have one middle; a note stands beneath the choices.
        cells.middle = level // 2
        note = tools.note_height(self._tools_width())
        return max(level, cells.middle + (tools.choices_height + 1) // 2 + note + GAP_PX)

    def _tools_height(self) -> int:
        """Return the height of the choices and the note."""
        return self._tools.choices_height + self._tools.note_height(self._tools_width())

    def _name_width(self) -> int:
        return self.columnWidth(0) - sum(self._cells.sides(Column.CLIP))

    def _tools_width(self) -> int:
        if not self._cells.merged:
            return self.columnWidth(1) - 2 * BESIDE_PX
        whole = self.columnWidth(0) if self._cells.tools_beneath_name else self.viewport().width()
        return whole - EDGE_PX - BESIDE_PX

    def _current(self) -> int:
        """Return the place of the chosen row that is current, or of the first; -1 without one."""
        places = sorted(index.row() for index in self.selectionModel().selectedRows())
        current = self.currentIndex().row()
        return current if current in places else (*places, -1)[0]

    def _place_tools(self) -> None:
        """Lay the tools into the row that is opened."""
        cells, tools = self._cells, self._tools
        tools.show(cells.opened >= 0)
        if cells.opened < 0:
            return
        clip = self._rows.rows[cells.opened]
        row = self.visualRect(self._rows.index(cells.opened, 0))
        wide, high = self._tools_width(), self._tools_height()
        if cells.merged:
            top = row.bottom() + 1 - ABOVE_PX - high
            end = self.viewport().width() - EDGE_PX
            links = QPoint(
                end - tools.links_width, top + (tools.choices_height - tools.links_height) // 2
            )
            if cells.tools_beneath_name and cells.has_second_result(clip):
                links.setY(self._free_line(clip, row, links.x()))
            tools.place_in_row(QRect(EDGE_PX, top, wide, high), links)
            return
        middle, last = row.top() + cells.middle, len(COLUMNS) - 1
        choices = QPoint(self.columnWidth(0) + BESIDE_PX, middle - tools.choices_height // 2)
        end = self.columnViewportPosition(last) + self.columnWidth(last) - EDGE_PX
        links = QPoint(end - tools.links_width, middle - tools.links_height // 2)
        tools.place_in_columns(choices, wide, links)

    def _free_line(self, clip: ClipRow, row: QRect, left: int) -> int:
        """Return the top of links in a row with two lines of a result: at the first, or below."""
        cells, high = self._cells, self._tools.links_height
        place = COLUMNS.index(Column.RESULT)
        words = cells.least_width_of(Column.RESULT, clip.outcome[:1], bold=True)
        if self.columnViewportPosition(place) + words <= left:
            return row.top() + ABOVE_PX + (cells.line - high) // 2
        return row.top() + cells.row_height() - ABOVE_PX

    def whole_height(self, room: int) -> int:
        """Return the height, of a room at most, in which no row is cut."""
        header = self.horizontalHeader()
        high = 2 * self.frameWidth() + (0 if header.isHidden() else header.sizeHint().height())
        for place in range(len(self._rows.rows)):
            row = self.rowHeight(place)
            if place and high + row > room:
                break
            high += row
        return min(room, high)

    def minimumSizeHint(self) -> QSize:
        """Return the height of the row that is opened."""
        high = self._cells.row_height() + self._tools.choices_height + 2 * GAP_PX
        header = self.horizontalHeader()
        high += 2 * self.frameWidth() + (0 if header.isHidden() else header.sizeHint().height())
        return QSize(super().minimumSizeHint().width(), high)

    def _widest_task(self) -> int:
        """Return the width of the longest movement with a side."""
        tasks = (task_title(movement, side) for movement in Movement for side in Side)
        return self._cells.least_width_of(Column.TASK, tasks)

    def _usual_result(self) -> int:
        """Return the width of an angle with its range, or of the words that ask for an answer."""
        angle = value_words(_WIDEST_DEG, Unit.DEGREES)
        reading = f"{angle} ({range_words(_WIDEST_DEG, _WIDEST_DEG, Unit.DEGREES)})"
        asked = self._cells.least_width_of(Column.RESULT, [tr("Needs an answer")], bold=True)
        return max(asked, self._cells.least_width_of(Column.RESULT, [reading], bold=True))

    def _needed(self, column: Column) -> int:
        """Return the width that heading and words of a column need."""
        rows = self._rows.rows[:_MEASURED_ROWS]
        cells = (self._cells.width_of(row, column) for row in rows)
        return max(self._heading(column), *cells, 0)

    def _heading(self, column: Column) -> int:
        return self.horizontalHeader().sectionSizeHint(COLUMNS.index(column))

    def scrollContentsBy(self, across: int, down: int) -> None:
        super().scrollContentsBy(across, down)
        self._place_tools()
        self.update()

    def selectionChanged(self, chosen: QItemSelection, left: QItemSelection) -> None:
        super().selectionChanged(chosen, left)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the rows within the corners of the card."""
        self._place_card()
        super().paintEvent(event)

    def _place_card(self) -> None:
        self._cells.card = self.rect().translated(-self.viewport().pos())

    def event(self, event: QEvent) -> bool:
        """Paint the rows' grounds on beneath the scroll bar too."""
        done = super().event(event)
        if event.type() is QEvent.Type.Paint and self.verticalScrollBar().isVisible():
            self._paint_gutter()
        return done

    def _paint_gutter(self) -> None:
        """Let the rows end at the table's edge, where the scroll bar lies on them."""
        seen, shown = self.viewport().geometry(), QStyleOptionViewItem()
        self._place_card()
        painter = QPainter(self)
        gutter = QRect(seen.right() + 1, seen.top(), self.width() - seen.right() - 1, seen.height())
        painter.setClipRect(gutter & self.contentsRect())
        painter.translate(seen.topLeft())
        chosen = {index.row() for index in self.selectionModel().selectedRows()}
        for place in range(len(self._rows.rows)):
            top, high = self.rowViewportPosition(place), self.rowHeight(place)
            if self.isRowHidden(place) or top + high < 0 or top > seen.height():
                continue
            shown.rect = QRect(0, top, self.width(), high)
            state = QStyle.StateFlag
            shown.state = state.State_Selected if place in chosen else state.State_None
            self._cells.paint_ground(painter, shown, first=False)
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self.fit()

    def _show_ring(self) -> None:
        """Show the frame of the keyboard's place where the keyboard is in use."""
        self.ringed.emit(shows_ring(self))

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


class WholeRows(QWidget):
    """Place of the table: a card as high as whole rows, a slim row beneath where it has room."""

    def __init__(self, appearance: Appearance, table: ClipTable, beneath: QWidget) -> None:
        super().__init__()
        self._appearance, self._table, self._beneath = appearance, table, beneath
        self._edge_px = _LINE_PX
        for part in (table, beneath):
            part.setParent(self)
        table.fitted.connect(self.arrange)
        table.ringed.connect(self._show_ring)

    def minimumSizeHint(self) -> QSize:
        return self._table.minimumSizeHint() + QSize(0, 2 * self._edge_px)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.arrange()

    @Slot(bool)
    def _show_ring(self, shown: bool) -> None:
        edge = _RING_PX if shown else _LINE_PX
        if edge != self._edge_px:
            self._edge_px = edge
            self.arrange()

    @Slot()
    def arrange(self) -> None:
        """Give the table the place's width and the height of whole rows, and leave the rest."""
        self.updateGeometry()
        edge = self._edge_px
        self._table.setGeometry(self._card().adjusted(edge, edge, -edge, -edge))
        # Rows of another width may have another height.
        top = self._card().bottom() + 1 + 2 * GAP_PX
        high = max(_BENEATH_PX, self._beneath.heightForWidth(self.width()))
        self._beneath.setVisible(top + high + GAP_PX // 2 <= self.height())
        self._beneath.setGeometry(0, top, self.width(), high)
        self.update()

    def _card(self) -> QRect:
        """Return the place of the card, edge and all."""
        edges = 2 * self._edge_px
        return QRect(0, 0, self.width(), self._table.whole_height(self.height() - edges) + edges)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the card, and the ring as its edge where the keyboard is in the table."""
        colour, edge = self._appearance.colour, self._edge_px
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(colour("arm" if edge == _RING_PX else "line"), edge))
        painter.setBrush(colour("raised"))
        half = edge / 2
        inside = QRectF(self._card()).adjusted(half, half, -half, -half)
        painter.drawRoundedRect(inside, CARD_RADIUS_PX, CARD_RADIUS_PX)
        painter.end()
