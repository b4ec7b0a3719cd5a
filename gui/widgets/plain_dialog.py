"""Frame of every dialog, as large as what it says, and a dialog with one question or message."""

from collections.abc import Sequence

from PySide6.QtWidgets import QDialog, QPushButton, QWidget

from gui.style.measures import BAR_PX, GAP_PX
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import Content, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import end_together, label

#: Width of what a dialog says, in widths of a digit. [technical]
_DIGITS = 50
#: Room inside a dialog, and around it in its window, pixels. [technical]
DIALOG_MARGIN_PX = 4 * GAP_PX
#: Room between what scrolls in a dialog and its bar; both lie in the margin, pixels. [technical]
_BESIDE_BAR_PX = 2 * GAP_PX
#: Room at the right of what scrolls in a dialog, the bar's included, pixels. [technical]
DIALOG_BAR_PX = BAR_PX + _BESIDE_BAR_PX
#: Room between what a dialog says and its buttons, pixels. [technical]
_ABOVE_BUTTONS_PX = 4 * GAP_PX


def frame_dialog(
    made: QDialog,
    *contents: Content,
    buttons: Sequence[QPushButton],
    spacing: int = 2 * GAP_PX,
    digits: int = _DIGITS,
) -> None:
    """Lay out a dialog: contents one below the other, which scroll where they must, and buttons.

    The dialog is as high as its contents need, no larger than the window that it belongs to.

    Parameters
    ----------
    spacing
        Space between the contents, pixels.
    digits
        Width of the contents, in widths of a digit.
    """
    page = widget_with(column(*contents, margins=(0, 0, _BESIDE_BAR_PX, 0), spacing=spacing))
    foot = ButtonRow(buttons, wide=True)
    area = scrollable(page, wide=True)
    margin, rule = DIALOG_MARGIN_PX, separator()
    # The bar of the area stands in the margin.
    above = column((area, 1), margins=(margin, margin, margin - DIALOG_BAR_PX, 0))
    low = row(foot)
    column((above, 1), rule, low, on=made, spacing=0)
    # The style sheet gives its sizes to what is polished.
    for member in (made, *made.findChildren(QWidget)):
        member.ensurePolished()
    parent = made.parentWidget()
    room = parent.window().size() if parent is not None else made.screen().availableSize()
    wanted = max(digits * made.fontMetrics().horizontalAdvance("0"), foot.sizeHint().width())
    wide = min(wanted, room.width() - 4 * margin)
    foot.resize(wide, 0)
    page.resize(wide + _BESIDE_BAR_PX, 0)
    rest = foot.sizeHint().height() + _ABOVE_BUTTONS_PX + 2 * margin - GAP_PX
    high = page.sizeHint().height()
    if page.hasHeightForWidth():
        high = page.heightForWidth(wide + _BESIDE_BAR_PX)
    most = room.height() - 2 * margin
    # What scrolls ends at a line, as pages do.
    rule.setVisible(high + rest > most)
    between = 2 * GAP_PX if high + rest > most else _ABOVE_BUTTONS_PX
    low.setContentsMargins(margin, between, margin, margin - GAP_PX)
    made.resize(wide + 2 * margin, min(high + rest, most))


def plain_dialog(
    text: str, close: str, parent: QWidget | None = None, *, more: str = "", agree: str = ""
) -> QDialog:
    """Return a dialog with a question or message, to be closed or, with `agree`, agreed to.

    Agreeing loses something, and its button says so; closing without agreeing rejects the dialog.

    Parameters
    ----------
    more
        What else is to be known before it is answered.
    """
    made = QDialog(parent)
    made.setWindowTitle("Thawline")
    closing = button(close, "main")
    closing.clicked.connect(made.reject)
    buttons = [closing]
    if agree:
        other = button(agree, "loss")
        other.clicked.connect(made.accept)
        buttons.append(other)
    lines = [label(text, "title"), *([label(end_together(more))] if more else [])]
    frame_dialog(made, *lines, buttons=buttons)
    closing.setFocus()
    return made
