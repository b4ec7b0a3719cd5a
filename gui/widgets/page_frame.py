"""Frame of a page: content in a column in the middle, a foot that never leaves the window."""

from collections.abc import Sequence

from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import QPushButton, QStyle, QWidget

from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.text.wording import notice
from gui.widgets.buttons import BUTTON_GAP_PX, ButtonRow
from gui.widgets.layouts import Content, centred, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar, label

#: Shares of the empty room of a short page above and below what it says. [technical]
_ABOVE, _BELOW = 2, 3
#: Space above and below the buttons of the foot, pixels. [technical]
_FOOT_PX = 3 * GAP_PX // 2
#: How much lower than the buttons beside it two lines of the caution are, pixels. [technical]
_AROUND_LINES_PX = GAP_PX // 2


def frame_page(
    page: QWidget,
    *contents: Content,
    buttons: Sequence[QPushButton] = (),
    caution: bool = False,
    spacing: int = 2 * GAP_PX,
    short: bool = False,
    from_top: bool = False,
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
    from_top
        Whether a short page begins where longer ones do, so that titles of a family of pages
        stand at one height.
    """
    beside = MARGIN_PX - BAR_PX
    if short:
        contents = (*contents, _BELOW) if from_top else (_ABOVE, *contents, _BELOW)
    shown = widget_with(column(*contents, margins=(0, MARGIN_PX, 0, MARGIN_PX), spacing=spacing))
    shown.setProperty("short", short)
    area = scrollable(shown)
    framed = row(area, margins=(beside, 0, beside, 0))
    if not buttons and not caution:
        column((framed, 1), on=page)
        return
    low = _foot(buttons, caution)
    low.installEventFilter(area)
    margins = (MARGIN_PX, _FOOT_PX, MARGIN_PX, _FOOT_PX)
    column((framed, 1), separator(), centred(low, margins=margins), on=page, spacing=0)


def _foot(buttons: Sequence[QPushButton], caution: bool) -> QWidget:
    if not buttons:
        return NoticeBar()
    return PageFoot(buttons) if caution else ButtonRow(buttons)


class PageFoot(ButtonRow):
    """Shows the caution in the middle between the buttons where it has room, or else beneath them.

    The middle is the page's if nothing stands there, so that the caution keeps its place from page
    to page. It may go on there in a second line, as two are lower than a button; large text is
    higher, and always stands beneath. Where no button stands at the line's end, the caution ends
    there.
    """

    def __init__(
        self,
        buttons: Sequence[QPushButton],
        parent: QWidget | None = None,
        *,
        wide: bool = False,
    ) -> None:
        self._caution = label(notice(), "notice")
        super().__init__(buttons, parent, wide=wide)
        self._caution.setParent(self)

    def _arrange(self) -> None:
        super()._arrange()
        between = self._between()
        place = between or self._beneath()
        ends = between is not None and self._ends_the_line(between)
        beside = Qt.AlignmentFlag.AlignTrailing if ends else Qt.AlignmentFlag.AlignHCenter
        middle = beside | Qt.AlignmentFlag.AlignVCenter
        self._caution.setAlignment(middle if between else Qt.AlignmentFlag.AlignLeading)
        self._caution.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))

    def _lines_height(self) -> int:
        buttons = super()._lines_height()
        if self._between() is not None:
            return buttons
        return buttons + GAP_PX * bool(buttons) + self._caution.heightForWidth(self._room())

    def _between(self) -> QRect | None:
        """Return the place between the buttons of the one line, if the caution goes there."""
        widths = self._widths_here()
        lines, high = self._lines(widths), self._button_height()
        first, last = ([w for m, w in lines[0] if self._at_end(m) is end] for end in (False, True))
        taken = sum(wide + BUTTON_GAP_PX for wide in (*first, *last))
        room = self._room() - taken
        two_lines = 2 * self._caution.fontMetrics().height() + _AROUND_LINES_PX
        needed = self._caution.heightForWidth(max(0, room)) + _AROUND_LINES_PX
        if len(lines) > 1 or max(two_lines, needed) > high:
            return None
        left = (self.width() - self._room()) // 2 + sum(wide + BUTTON_GAP_PX for wide in first)
        place = QRect(left, 0, room, high)
        # As far from the page's middle at one end as at the other.
        beside = min(self.width() // 2 - left, left + room - self.width() // 2)
        centred_place = QRect(self.width() // 2 - beside, 0, 2 * beside, high)
        one_line = self._caution.fontMetrics().horizontalAdvance(self._caution.text())
        if one_line + GAP_PX <= centred_place.width():
            return centred_place
        if one_line <= room:
            return place
        narrow = self._least_width(room)
        return QRect(left + (room - narrow) // 2, 0, narrow, high)

    def _ends_the_line(self, place: QRect) -> bool:
        """Whether the caution's place is what is left behind the buttons, not the page's middle."""
        last = any(self._at_end(member) for member in self._shown())
        return not last and abs(place.center().x() - self.width() // 2) > 1

    def _least_width(self, room: int) -> int:
        """Return the least width in which the caution is as high, so that its lines are even."""
        high, lowest = self._caution.heightForWidth(room), 0
        highest = room
        while lowest + 1 < highest:
            middle = (lowest + highest) // 2
            fits = self._caution.heightForWidth(middle) <= high
            lowest, highest = (lowest, middle) if fits else (middle, highest)
        return highest

    def _beneath(self) -> QRect:
        room = self._room()
        high = self._caution.heightForWidth(room)
        return QRect((self.width() - room) // 2, self._lines_height() - high, room, high)
