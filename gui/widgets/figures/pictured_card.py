"""Card with a drawn person in a panel at its left and words beside it."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QFrame, QLayout, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.widgets.layouts import card, column, row

#: Shares of a card for its person and for its words. [technical]
_PERSON, _WORDS = 4, 7
#: Height of the person at 100 %, pixels, and how much lower per cent of larger text, which needs
#: the page. [technical]
_HIGH_PX, _LOWER_PX = 336, 0.8
#: Width of who stands upright, a share of the height. [technical]
_WIDE = 0.54


def figure_panel(figure: QWidget) -> QFrame:
    """Return a panel let into its card, with a figure in its middle."""
    return card(row(1, figure, 1), role="sunken-card")


def figure_tile(figure: QWidget) -> QFrame:
    """Return a tile let into a card, filled by a figure."""
    made = card(figure, role="sunken-card")
    inside = made.layout()
    assert inside is not None
    inside.setContentsMargins(GAP_PX, GAP_PX, GAP_PX, GAP_PX)
    return made


class PicturedCard(QWidget):
    """Says what a page is about beside a person as high as the page has room for.

    Parameters
    ----------
    wide
        Width of the person, a share of the height.
    """

    def __init__(
        self, appearance: Appearance, figure: QWidget, words: QLayout, *, wide: float = _WIDE
    ) -> None:
        super().__init__()
        self._appearance, self._figure, self._wide = appearance, figure, wide
        members = row((figure_panel(figure), _PERSON), (words, _WORDS), spacing=4 * GAP_PX)
        column(card(members), on=self)
        appearance.changed.connect(self._fit)
        self._fit()

    @Slot()
    def _fit(self) -> None:
        high = _HIGH_PX - _LOWER_PX * (self._appearance.percent - 100)
        self._figure.setFixedSize(round(self._wide * high), round(high))
