"""Frame of a page: content in a column in the middle, a foot that never leaves the window."""

from collections.abc import Sequence

from PySide6.QtWidgets import QPushButton, QWidget

from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.widgets.buttons import ButtonRow
from gui.widgets.layouts import Content, centred, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar


def frame_page(
    page: QWidget,
    *contents: Content,
    buttons: Sequence[QPushButton] = (),
    caution: bool = False,
    spacing: int = 2 * GAP_PX,
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
    """
    beside = MARGIN_PX - BAR_PX
    shown = widget_with(column(*contents, margins=(0, MARGIN_PX, 0, MARGIN_PX), spacing=spacing))
    foot = [ButtonRow(buttons)] if buttons else []
    under = foot + ([NoticeBar()] if caution else [])
    area = row(scrollable(shown), margins=(beside, 0, beside, 0))
    if not under:
        column((area, 1), on=page)
        return
    low = widget_with(column(*under, spacing=GAP_PX // 2))
    margins = (MARGIN_PX, GAP_PX * 3 // 2, MARGIN_PX, GAP_PX * 3 // 2)
    column((area, 1), separator(), centred(low, margins=margins), on=page, spacing=0)
