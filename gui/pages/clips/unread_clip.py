"""A clip that could not be read: a torn film in place of its picture, the cause, and what to do."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.pages.clips.film import TornFilm
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.widgets.layouts import card, column, row, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label

#: Shares of the width for the drawing and for the words. [technical]
_SHARES = (1, 2)
#: Most width of drawing and words together, in sizes of the text. [technical]
_MOST_WIDE = 58.0


class UnreadClip(QWidget):
    """Stands where the player would."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self.remedy = label("", "title")
        self.cause = label("", "lead")
        words = column(
            1,
            self.cause,
            self.remedy,
            1,
            spacing=2 * GAP_PX,
        )
        drawing, beside = _SHARES
        self._appearance = appearance
        self._group = widget_with(
            row((TornFilm(appearance), drawing), (words, beside), spacing=3 * GAP_PX)
        )
        shown = card(row((self._group, 1)))
        page = widget_with(column((shown, 1)))
        column((scrollable(page, wide=True), 1), on=self)

        appearance.changed.connect(self._fit)
        self._fit()

    @Slot()
    def _fit(self) -> None:
        """Let drawing and words stand together in the middle of a card that is wider."""
        self._group.setMaximumWidth(self._appearance.px(_MOST_WIDE))

    def say(self, cause: str, remedy: str, name: str = "") -> None:
        """Say what happened, and what to do about it; the clip's name is in the heading."""
        self.cause.setText(cause.replace(f" {name} ", " ", 1))
        self.remedy.setText(remedy)
        self.remedy.setVisible(bool(remedy))
