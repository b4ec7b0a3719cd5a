"""Frame of a page: content in a column in the middle, a foot that never leaves the window."""

from collections.abc import Sequence

from PySide6.QtCore import QRect
from PySide6.QtWidgets import QPushButton, QStyle, QWidget

from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.text.wording import notice
from gui.widgets.buttons import ButtonRow
from gui.widgets.layouts import Content, centred, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar, label

#: Shares of the empty room of a short page above and below what it says. [technical]
_ABOVE, _BELOW = 2, 3
#: Least room for the caution between buttons, in widths of a digit. [technical]
_LEAST_DIGITS = 24


def frame_page(
    page: QWidget,
    *contents: Content,
    buttons: Sequence[QPushButton] = (),
    caution: bool = False,
    spacing: int = 2 * GAP_PX,
    short: bool = False,
) -> None:
    """Lay out a page: contents that scroll where they must, buttons and caution beneath them.

    Parameters
    ----------
    contents
        Widgets and layouts one below the other, in a column in the middle;
        a number is empty room.
    buttons
        The page's ways on and out; the one of the role main stands at the line's end.
    caution
        Whether the page shows numbers, and so the line that they are an estimate.
    spacing
        Space between the contents, pixels.
    short
        Whether the page says little: then it stands in the optical middle, a little above the
        true one, its running text in larger type.
    """
    beside = MARGIN_PX - BAR_PX
    if short:
        contents = (_ABOVE, *contents, _BELOW)
    shown = widget_with(column(*contents, margins=(0, MARGIN_PX, 0, MARGIN_PX), spacing=spacing))
    shown.setProperty("short", short)
    area = scrollable(shown)
    framed = row(area, margins=(beside, 0, beside, 0))
    if not buttons and not caution:
        column((framed, 1), on=page)
        return
    low = _foot(buttons, caution)
    low.installEventFilter(area)
    margins = (MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX)
    column((framed, 1), separator(), centred(low, margins=margins), on=page, spacing=0)


def _foot(buttons: Sequence[QPushButton], caution: bool) -> QWidget:
    if not buttons:
        return NoticeBar()
    return PageFoot(buttons) if caution else ButtonRow(buttons)


class PageFoot(ButtonRow):
    """Shows the caution in the row of the buttons, or beneath them where that takes less height."""

    def __init__(self, buttons: Sequence[QPushButton], parent: QWidget | None = None) -> None:
        self._caution = label(notice(), "notice")
        super().__init__(buttons, parent)
        self._caution.setParent(self)

    def _arrange(self) -> None:
        super()._arrange()
        room, left = self._room(), (self.width() - self._room()) // 2
        between = self._between(self._widths_here())
        if between is not None:
            place = between
        else:
            high = self._caution.heightForWidth(room)
            place = QRect(left, self._lines_height() - high, room, high)
        self._caution.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))

    def _widths_here(self) -> list[int]:
        """Return the widths of the buttons, without their keys if the caution needs that room."""
        usual, least = super()._widths_here(), self._widths()
        beside = self._between(usual) is None and self._between(least) is not None
        return least if beside else usual

    def _lines_height(self) -> int:
        buttons = super()._lines_height()
        between = self._between(self._widths_here())
        if between is not None:
            return between.height()
        return buttons + GAP_PX * bool(buttons) + self._caution.heightForWidth(self._room())

    def _between(self, widths: list[int]) -> QRect | None:
        """Return the place between buttons of these widths, if the caution fits beside them."""
        room = self._room() - self._wide(widths) - 2 * 2 * GAP_PX
        high = max(self._button_height(), self._caution.heightForWidth(room))
        if len(self._lines(widths)) > 1 or room < _LEAST_DIGITS * self._digit_px():
            return None
        if high > self._button_height() + GAP_PX:
            return None
        shown = zip(self._shown(), widths, strict=True)
        before = sum(wide + 2 * GAP_PX for member, wide in shown if not self._at_end(member))
        needed = self._caution.fontMetrics().horizontalAdvance(self._caution.text()) + 1
        wide = min(room, needed)
        left = (self.width() - self._room()) // 2 + before
        return QRect(left + (room - wide) // 2, 0, wide, high)

    def _digit_px(self) -> int:
        return self._caution.fontMetrics().horizontalAdvance("0")
