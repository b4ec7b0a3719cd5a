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
    to page.
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
        middle = Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter
        self._caution.setAlignment(middle if between else Qt.AlignmentFlag.AlignLeading)
        self._caution.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))

    def _lines_height(self) -> int:
        buttons = super()._lines_height()
        if self._between() is not None:
            return buttons
        return buttons + GAP_PX * bool(buttons) + self._caution.heightForWidth(self._room())

    def _between(self) -> QRect | None:
        """Return the place between the buttons of the one line, if the caution goes there.

        It does where it needs no more lines than beneath them.
        """
        widths = self._widths_here()
        lines, high = self._lines(widths), self._button_height()
        first, last = ([w for m, w in lines[0] if self._at_end(m) is end] for end in (False, True))
        taken = sum(wide + BUTTON_GAP_PX for wide in (*first, *last))
        room = self._room() - taken
        beneath = self._caution.heightForWidth(self._room())
        if len(lines) > 1 or self._caution.heightForWidth(max(0, room)) > min(high, beneath):
            return None
        left = (self.width() - self._room()) // 2 + sum(wide + BUTTON_GAP_PX for wide in first)
        place = QRect(left, 0, room, high)
        # As far from the page's middle at one end as at the other.
        beside = min(self.width() // 2 - left, left + room - self.width() // 2)
        centred_place = QRect(self.width() // 2 - beside, 0, 2 * beside, high)
        one_line = self._caution.fontMetrics().horizontalAdvance(self._caution.text())
        return centred_place if one_line + GAP_PX <= centred_place.width() else place

    def _beneath(self) -> QRect:
        room = self._room()
        high = self._caution.heightForWidth(room)
        return QRect((self.width() - room) // 2, self._lines_height() - high, room, high)
