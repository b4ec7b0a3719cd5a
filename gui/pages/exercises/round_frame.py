"""Frame of the pages of a round: a sentence, what belongs to it, buttons that stay in place."""

from collections.abc import Mapping, Sequence
from math import ceil

from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

from gui.pages.measuring.live_buttons import LiveButtons
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, BODY_PX, BUTTON_PADDING_PX, GAP_PX, MARGIN_PX, TITLE
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import Content, column, row, widget_with
from gui.widgets.scroll_page import scrollable

#: Border and rounding beside the padding of a button, and most room to spare in it, pixels.
#: [technical]
_BORDER_PX, _MORE_PX = 4, 120
#: Lines of the headline that always have room: one, which may be larger than its least. [technical]
HEADLINE_LINES = 1.4


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

    def _most_px(self) -> int:
        """Return the size of a section's heading: they are read from some steps away."""
        return max(self._appearance.px(), round(BODY_PX * TITLE))

    def _button_height(self) -> int:
        return max(super()._button_height(), self._large.sizeHint().height())

    def _width_with_keys(self, px: int) -> float:
        return self._wide(self._places(px, with_keys=True))

    def _width_at(self, px: int) -> float:
        return self._wide(self._places(px))

    def _places(self, px: int, *, with_keys: bool = False) -> list[int]:
        """Return how wide the place of each button that is shown must be in this type, pixels."""
        metrics = QFontMetricsF(self._appearance.font(px, bold=True))
        around = 2 * (BUTTON_PADDING_PX[1] + _BORDER_PX)
        places = []
        for member in self._shown():
            key = f"  \u00b7  {member.accessibleDescription()}" if with_keys else ""
            widths = (metrics.horizontalAdvance(words + key) for words in self._words[member])
            places.append(around + ceil(max(widths)))
        return places

    def _widths_here(self) -> list[int]:
        """Return places with their keys where these have room, and a share of what is left."""
        for with_keys in (True, False):
            places = self._places(self._largest_px(), with_keys=with_keys)
            spare = self._room() - self._wide(places)
            if spare >= 0:
                more = min(_MORE_PX, spare // max(1, len(places)))
                return [place + more for place in places]
        return super()._widths_here()


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
    seen = widget_with(column(*contents, spacing=GAP_PX))
    beside = _PlacedButtons(appearance, others, large)
    # The scroll bar lies in the margin, so that what scrolls ends where the buttons end.
    bar = (0, 0, BAR_PX, 0)
    # The large button takes a third, like what stands above it.
    foot = QGridLayout()
    foot.setContentsMargins(*bar)
    foot.setHorizontalSpacing(2 * GAP_PX)
    foot.addWidget(beside, 0, 0, 1, 2)
    foot.addWidget(large, 0, 2)
    for third in range(3):
        foot.setColumnStretch(third, 1)
    column(
        row((sentence, 1), margins=bar),
        (scrollable(seen, wide=True), 1),
        foot,
        on=page,
        margins=(MARGIN_PX, 2 * GAP_PX, MARGIN_PX - BAR_PX, 2 * GAP_PX),
        spacing=GAP_PX,
    )
