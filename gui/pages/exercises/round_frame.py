"""Frame of the pages of a round: a sentence, what belongs to it, buttons that stay in place."""

from collections.abc import Mapping, Sequence
from math import ceil

from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QPushButton, QWidget

from gui.pages.measuring.live_buttons import LiveButtons
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, BUTTON_PADDING_PX, GAP_PX, MARGIN_PX
from gui.widgets.buttons import BUTTON_GAP_PX
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import Content, column, row, widget_with
from gui.widgets.scroll_page import scrollable

#: Border and rounding beside the padding of a button, and most room for the key, pixels.
#: [technical]
_BORDER_PX, _KEY_PX = 4, 120


class _PlacedButtons(LiveButtons):
    """Buttons that stay where they are whatever stands on them, as high as the large one.

    Parameters
    ----------
    words
        What may stand on each button, from the left.
    """

    def __init__(
        self,
        appearance: Appearance,
        words: Mapping[QPushButton, Sequence[str]],
        large: QPushButton,
    ) -> None:
        self._words, self._large = words, large
        super().__init__(appearance, list(words))

    @staticmethod
    def _at_end(_member: QPushButton) -> bool:
        return False

    def _button_height(self) -> int:
        return max(super()._button_height(), self._large.sizeHint().height())

    def _width_with_keys(self, px: int) -> float:
        return self._width_at(px)

    def _width_at(self, px: int) -> float:
        places = self._places(px)
        return sum(places) + BUTTON_GAP_PX * max(0, len(places) - 1)

    def _places(self, px: int) -> list[int]:
        """Return how wide the place of each button that is shown must be in this type, pixels."""
        metrics = QFontMetricsF(self._appearance.font(px, bold=True))
        around = 2 * (BUTTON_PADDING_PX[1] + _BORDER_PX)
        return [
            around + ceil(max(map(metrics.horizontalAdvance, self._words[member])))
            for member in self._shown()
        ]

    def _widths_here(self) -> list[int]:
        places = self._places(self._largest_px())
        spare = self._room() - self._wide(places)
        if spare < 0:
            return super()._widths_here()
        more = min(_KEY_PX, spare // max(1, len(places)))
        return [place + more for place in places]


def frame_round(
    page: QWidget,
    appearance: Appearance,
    sentence: FittedSentence,
    *contents: Content,
    others: Mapping[QPushButton, Sequence[str]],
    large: QPushButton,
) -> None:
    """Lay out a page of a round.

    Parameters
    ----------
    others
        At most three buttons, from the left, each with what may stand on it.
    large
        The button at the right end, on every page of a round in the same place.
    """
    seen = widget_with(column(*contents, spacing=2 * GAP_PX))
    beside = _PlacedButtons(appearance, others, large)
    # The scroll bar lies in the margin, so that what scrolls ends where the buttons end.
    bar = (0, 0, BAR_PX, 0)
    column(
        row((sentence, 1), margins=bar),
        (scrollable(seen, wide=True), 1),
        row((beside, 2), (large, 1), margins=bar, spacing=2 * GAP_PX),
        on=page,
        margins=(MARGIN_PX, 2 * GAP_PX, MARGIN_PX - BAR_PX, 2 * GAP_PX),
        spacing=GAP_PX,
    )
