"""Frame of the pages of a round: a sentence, what belongs to it, buttons that stay in place."""

from collections.abc import Mapping, Sequence

from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from gui.pages.measuring.live_buttons import PlacedButtons
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import Content, column, row, widget_with
from gui.widgets.scroll_page import scrollable

#: Lines of the headline that always have room: one, which may be larger than its least. [technical]
HEADLINE_LINES = 1.4


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
    beside = PlacedButtons(appearance, others, large=large)
    # The scroll bar lies in the margin, so that what scrolls ends where the buttons end.
    bar = (0, 0, BAR_PX, 0)
    # The large button takes a third, like what is said above it, whatever stands on the others.
    beside.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
    foot = row((beside, 2), (large, 1), margins=bar, spacing=2 * GAP_PX)
    column(
        row((sentence, 1), margins=bar),
        (scrollable(seen, wide=True), 1),
        foot,
        on=page,
        margins=(MARGIN_PX, 2 * GAP_PX, MARGIN_PX - BAR_PX, 2 * GAP_PX),
        spacing=GAP_PX,
    )
