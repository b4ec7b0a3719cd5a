"""Layouts of a page: contents in a column, a row or lines, on a card; what places its members."""

from collections.abc import Sequence
from math import lcm
from typing import TypeVar

from PySide6.QtCore import QEvent, QRect, QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QBoxLayout,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLayout,
    QStyle,
    QVBoxLayout,
    QWidget,
)

from gui.style.measures import CARD_PADDING_PX, CARD_RADIUS_PX, CONTENT_PX, GAP_PX

#: A widget or a layout, with its share of the room where it has one; a number is empty room.
Content = QWidget | QLayout | tuple[QWidget | QLayout, int] | int

#: Room above a group in the optical middle of a card, and beneath it. [technical]
ABOVE_GROUP, BELOW_GROUP = 2, 3
#: Space beside and above the words of a strip, pixels. [technical]
_STRIP_PX = (3 * GAP_PX, GAP_PX)
#: Width of the bar at the edge of what deserves to be seen first, pixels. [technical]
EDGE_BAR_PX = 6
#: Role of that frame.
_NOTICE = "notice-card"

AnyBox = TypeVar("AnyBox", bound=QBoxLayout)


def column(
    *contents: Content,
    on: QWidget | None = None,
    margins: tuple[int, int, int, int] | None = (0, 0, 0, 0),
    spacing: int | None = None,
) -> QVBoxLayout:
    """Return a layout of contents one below the other.

    Parameters
    ----------
    on
        The widget that the layout belongs to, if any.
    margins
        Left, top, right and bottom, pixels; None leaves the style's.
    spacing
        Pixels between the contents; None leaves the style's or the outer layout's.
    """
    return _filled(QVBoxLayout(on) if on is not None else QVBoxLayout(), contents, margins, spacing)


def row(
    *contents: Content,
    on: QWidget | None = None,
    margins: tuple[int, int, int, int] | None = (0, 0, 0, 0),
    spacing: int | None = None,
) -> QHBoxLayout:
    """Return a layout of contents side by side; parameters as of :func:`column`."""
    return _filled(QHBoxLayout(on) if on is not None else QHBoxLayout(), contents, margins, spacing)


def widget_with(layout: QLayout, name: str = "") -> QWidget:
    """Return a new widget with this layout, and with an object name for the style sheet."""
    made = QWidget()
    made.setObjectName(name)
    made.setLayout(layout)
    return made


def centred(widget: QWidget, *, margins: tuple[int, int, int, int] = (0, 0, 0, 0)) -> QHBoxLayout:
    """Return a layout with a widget in the middle, at most as wide as text is read with ease."""
    widget.setMaximumWidth(CONTENT_PX)
    return row(0, (widget, 1), 0, margins=margins)


def _filled(
    layout: AnyBox,
    contents: tuple[Content, ...],
    margins: tuple[int, int, int, int] | None,
    spacing: int | None,
) -> AnyBox:
    if margins is not None:
        layout.setContentsMargins(*margins)
    if spacing is not None:
        layout.setSpacing(spacing)
    for content in contents:
        item, share = content if isinstance(content, tuple) else (content, 0)
        if isinstance(item, int):
            layout.addStretch(item)
        elif isinstance(item, QWidget):
            layout.addWidget(item, share)
        else:
            layout.addLayout(item, share)
    return layout


def card(*contents: Content, role: str = "card", spacing: int = 2 * GAP_PX) -> QFrame:
    """Return a frame with the contents one below the other.

    Roles: card, sunken-card (let into the page), notice-card (what deserves to be seen first),
    lacking-card (where something is missing), alarm-card (emergency wording) and alarm-fill (get
    help now).
    """
    made = _frame(role)
    beside, above = CARD_PADDING_PX, CARD_PADDING_PX - 4
    column(*contents, on=made, margins=(beside, above, beside, above), spacing=spacing)
    return made


def strip(words: QWidget, role: str = _NOTICE) -> QFrame:
    """Return a low frame around a line of words; roles as of :func:`card`."""
    made = _frame(role)
    column(words, on=made, margins=(*_STRIP_PX, *_STRIP_PX))
    return made


def fill_edge_bar(painter: QPainter, card: QRect, bar: QRect, colour: QColor) -> None:
    """Fill a bar at the edge of a card, within the card's round corners."""
    whole, strip = QPainterPath(), QPainterPath()
    whole.addRoundedRect(QRectF(card), CARD_RADIUS_PX, CARD_RADIUS_PX)
    strip.addRect(QRectF(bar))
    painter.fillPath(whole.intersected(strip), colour)


class _NoticeBar(QFrame):
    """The part of a frame's edge that is painted within its round corners."""

    def __init__(self, frame: QFrame) -> None:
        super().__init__(frame)
        self._frame = frame
        self.setProperty("role", "notice-bar")

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        card = self._frame.rect().translated(-self.pos())
        fill_edge_bar(painter, card, self.rect(), self.palette().color(self.foregroundRole()))
        painter.end()


class _NoticeFrame(QFrame):
    """A frame whose edge is a broad bar where lines begin."""

    def __init__(self) -> None:
        super().__init__()
        self._bar = _NoticeBar(self)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._bar.setGeometry(mirrored(self, QRect(0, 0, EDGE_BAR_PX, self.height())))


def _frame(role: str) -> QFrame:
    """Return an empty frame of a role."""
    made = _NoticeFrame() if role == _NOTICE else QFrame()
    made.setProperty("role", role)
    return made


def separator(*, upright: bool = False) -> QFrame:
    """Return a hairline, or an upright one between things side by side."""
    made = QFrame()
    made.setProperty("role", "hair")
    if upright:
        made.setFixedWidth(1)
    else:
        made.setFixedHeight(1)
    return made


class ArrangedWidget(QWidget):
    """A widget that places its members itself: anew in another size, and when one needs another."""

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def event(self, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Show, QEvent.Type.Polish):
            self._arrange()
            if self.layout() is None:
                self.updateGeometry()
        return super().event(event)

    def _arrange(self) -> None:
        """Place the members in the present room; they may have come or gone."""


class FlowRow(QWidget):
    """Lines of buttons in columns as wide as they need, as many as have room.

    Parameters
    ----------
    most_columns
        Greatest number of buttons in a line.
    filling
        Whether the buttons take the whole width.
    level
        Whether a last line of fewer buttons is as wide as the others.
    """

    def __init__(
        self,
        gap_px: int,
        *,
        most_columns: int = 99,
        filling: bool = True,
        level: bool = False,
    ) -> None:
        super().__init__()
        self._level = level
        self._gap_px, self._most_columns, self._filling = gap_px, most_columns, filling
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(gap_px)
        self._columns = 0
        self.buttons: list[QAbstractButton] = []

    def offer(self, buttons: Sequence[QAbstractButton]) -> None:
        """Show these buttons in place of those before."""
        clear_layout(self._grid)
        self.buttons = list(buttons)
        self._columns = 0
        self._arrange(self.width())

    def sizeHint(self) -> QSize:
        return QSize(self._width(self._most()), super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """Return one column's width, and the height of the present lines."""
        return QSize(self._width(1), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange(event.size().width())

    def _arrange(self, room: int) -> None:
        most = self._most()
        columns = next((n for n in range(most, 1, -1) if self._width(n) <= room), 1)
        if columns == self._columns:
            return
        self._columns = columns
        last = len(self.buttons) % columns if self._level else 0
        cells = lcm(columns, last or columns)
        for place, member in enumerate(self.buttons):
            line, at = divmod(place, columns)
            span = cells // (last if last and line == len(self.buttons) // columns else columns)
            self._grid.addWidget(member, line, at * span, 1, span)
        if self._level:
            for cell in range(self._grid.columnCount()):
                self._grid.setColumnStretch(cell, 1 if cell < cells else 0)
        if not self._filling:
            for column in range(most + 1):
                self._grid.setColumnStretch(column, 1 if column == columns else 0)
        self.updateGeometry()

    def _most(self) -> int:
        return max(1, min(self._most_columns, len(self.buttons)))

    def _width(self, columns: int) -> int:
        """Return the width of the buttons in this number of columns."""
        widths = [0] * columns
        for place, member in enumerate(self.buttons):
            needed = member.minimumWidth() or member.minimumSizeHint().width()
            widths[place % columns] = max(widths[place % columns], needed)
        return sum(widths) + self._gap_px * (columns - 1)


def clear_layout(layout: QLayout) -> None:
    """Take everything out of a layout, out of sight at once."""
    while (item := layout.takeAt(0)) is not None:
        widget = item.widget()
        if widget is not None:
            widget.hide()
            widget.deleteLater()


def mirrored(widget: QWidget, place: QRect) -> QRect:
    """Return a widget's part as it is, or mirrored where one reads from right to left."""
    return QStyle.visualRect(widget.layoutDirection(), widget.rect(), place)
