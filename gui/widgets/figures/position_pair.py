"""Pair of drawings of how to stand: the movement as it is done, and which way one faces."""

from PySide6.QtCore import QRect, QSize, Qt

from gui.drawing.shown_movements import facing_angle_deg
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.figures.view_plan import ViewPlan
from gui.widgets.layouts import ArrangedWidget, mirrored
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: Least space between the two drawings, and above the words beneath them, pixels. [technical]
_BETWEEN_PX, _ABOVE_WORDS_PX = 4 * GAP_PX, GAP_PX
#: Most of the height for words that are there only where there is room. [technical]
_MOST_WORDS = 1 / 5
#: From this turn on somebody is seen from behind, degrees. [technical]
_BEHIND_DEG = 120


class PositionPair(ArrangedWidget):
    """The drawn person and the plan from above, spread evenly.

    Parameters
    ----------
    role
        Of the words beneath the drawings.
    named_px
        Size of the word in the plan, pixels.
    if_room
        Whether the words stand there only where the drawings can spare the room.
    """

    def __init__(
        self, appearance: Appearance, role: str, *, named_px: float = 0.0, if_room: bool = False
    ) -> None:
        super().__init__()
        self._if_room = if_room
        self.figure = PositionView(appearance, close=True)
        self.plan = ViewPlan(appearance, named_px=named_px)
        self.figure_words = label(tr("In the picture"), role)
        self.plan_words = label(tr("From above"), role)
        self._columns = (self.figure, self.figure_words), (self.plan, self.plan_words)
        for drawn, words in self._columns:
            words.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            for member in (drawn, words):
                member.setParent(self)

    def set_captions(self, *, shown: bool) -> None:
        """Show the words beneath the drawings, or leave their room to these."""
        self._show_words(shown=shown)
        self._arrange()

    def _show_words(self, *, shown: bool) -> None:
        for _, words in self._columns:
            words.setVisible(shown)

    def set_words_px(self, px: int) -> None:
        """Give the word in the plan the size of those beneath, pixels."""
        self.plan.set_named(px)

    def show_movement(self, movement: Movement, side: Side, *, is_mirrored: bool) -> None:
        """Show a movement on one side."""
        self.figure.show_movement(movement, side, mirrored=is_mirrored)
        turn_deg = facing_angle_deg(movement, side)
        self.plan.show_turn(turn_deg, side, mirrored=is_mirrored)
        # Seen from behind nobody knows which side is which.
        behind = is_mirrored and abs(turn_deg) > _BEHIND_DEG
        self.figure_words.setText(tr("As in a mirror") if behind else tr("In the picture"))
        self._arrange()

    def sizeHint(self) -> QSize:
        return self._with_words(self.figure.sizeHint(), self.plan.sizeHint())

    def minimumSizeHint(self) -> QSize:
        return self._with_words(self.figure.minimumSizeHint(), self.plan.minimumSizeHint())

    def _with_words(self, figure: QSize, plan: QSize) -> QSize:
        """Return the room for drawings of these sizes, and for words that are always there."""
        if self._if_room:
            wide = figure.width() + _BETWEEN_PX + plan.width()
            return QSize(wide, max(figure.height(), plan.height()))
        wide = max(figure.width(), self._words_width(0)) + _BETWEEN_PX
        wide += max(plan.width(), self._words_width(1))
        return QSize(wide, max(figure.height(), plan.height()) + self._words_height())

    def _words_width(self, which: int) -> int:
        """Return the width of the words beneath a drawing on one line; none while they are away."""
        words = self._columns[which][1]
        written = words.fontMetrics().horizontalAdvance(words.text()) + GAP_PX
        return 0 if words.isHidden() else written

    def _have_room(self) -> bool:
        """Whether the words have a line each, and leave most of the height to the drawings."""
        metrics = [words.fontMetrics() for _, words in self._columns]
        written = [
            letters.horizontalAdvance(words.text()) + GAP_PX
            for letters, (_, words) in zip(metrics, self._columns, strict=True)
        ]
        high = max(letters.height() for letters in metrics) + _ABOVE_WORDS_PX
        return high <= _MOST_WORDS * self.height() and sum(written) + _BETWEEN_PX <= self.width()

    def _words_height(self) -> int:
        """Return the height of the words and the space above them; none while they are away."""
        heights = [
            words.heightForWidth(self._words_width(which))
            for which, (_, words) in enumerate(self._columns)
            if not words.isHidden()
        ]
        return max(heights) + _ABOVE_WORDS_PX if heights else 0

    def _arrange(self) -> None:
        if self._if_room:
            self._show_words(shown=self._have_room())
        beneath = self._words_height()
        high, room = self.height() - beneath, self.width() - _BETWEEN_PX
        drawn_widths = self.figure.drawn_width(high), self.plan.drawn_width(high)
        least = [self._words_width(which) for which in range(len(self._columns))]
        wanted = [max(pair) for pair in zip(drawn_widths, least, strict=True)]
        beyond = sum(wanted) - sum(least)
        if sum(wanted) > room and beyond:
            # The words keep their line; what is wanted beyond is cut alike.
            share = max(0.0, (room - sum(least)) / beyond)
            wanted = [low + share * (wide - low) for wide, low in zip(wanted, least, strict=True)]
        elif 2 * max(wanted) <= room:
            # Of one width: the two stand alike to either side of the middle.
            wanted = [max(wanted)] * len(wanted)
        # Spare room is shared alike: beside the two, and between them.
        between = max(_BETWEEN_PX, (self.width() - sum(wanted)) / 3)
        left = (self.width() - sum(wanted) - between) / 2
        for (drawn, words), wide in zip(self._columns, wanted, strict=True):
            place = QRect(round(left), 0, round(wide), high)
            drawn.setGeometry(mirrored(self, place))
            place.setTop(high + _ABOVE_WORDS_PX)
            place.setBottom(self.height() - 1)
            words.setGeometry(mirrored(self, place))
            left += wide + between
