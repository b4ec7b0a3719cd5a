"""Frame of a page whose picture is what it is about: as large as the window leaves room for."""

from collections.abc import Sequence

from PySide6.QtWidgets import QPushButton, QWidget

from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.widgets.buttons import ButtonRow
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable


def frame_picture(
    page: QWidget,
    sentence: FittedSentence,
    picture: QWidget,
    buttons: Sequence[QPushButton],
) -> None:
    """Lay out a page: what to do, the picture, and the ways on and out."""
    shown = widget_with(column(sentence, (picture, 1), spacing=GAP_PX))
    area = row(scrollable(shown, wide=True), margins=(MARGIN_PX, GAP_PX, MARGIN_PX - BAR_PX, 0))
    foot = row(ButtonRow(buttons, wide=True), margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX))
    column((area, 1), separator(), foot, on=page, spacing=GAP_PX // 2)
