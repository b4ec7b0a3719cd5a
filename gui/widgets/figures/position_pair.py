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


class PositionPair(ArrangedWidget):
    """The drawn person and the plan from above, spread evenly.

    Parameters
    ----------
    role
        Of the words beneath the drawings.
    named_px
        Size of the word in the plan, pixels.
    """

    def __init__(self, appearance: Appearance, role: str, *, named_px: float = 0.0) -> None:
        super().__init__()
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
        for _, words in self._columns:
            words.setVisible(shown)
        self._arrange()

    def set_words_px(self, px: int) -> None:
        """Give the word in the plan the size of those beneath, pixels."""
        self.plan.set_named(px)

    def show_movement(self, movement: Movement, side: Side, *, is_mirrored: bool) -> None:
        """Show a movement on one side."""
        self.figure.show_movement(movement, side, mirrored=is_mirrored)
        self.plan.show_turn(facing_angle_deg(movement, side), side, mirrored=is_mirrored)
        self._arrange()

    def sizeHint(self) -> QSize:
        return self._with_words(self.figure.sizeHint(), self.plan.sizeHint())

    def minimumSizeHint(self) -> QSize:
        return self._with_words(self.figure.minimumSizeHint(), self.plan.minimumSizeHint())

    def _with_words(self, figure: QSize, plan: QSize) -> QSize:
        """Return the room for drawings of these sizes and the words beneath."""
        wide = max(figure.width(), self._words_width(0)) + _BETWEEN_PX
        wide += max(plan.width(), self._words_width(1))
        return QSize(wide, max(figure.height(), plan.height()) + self._words_height())

    def _words_width(self, which: int) -> int:
        """Return the width of the words beneath a drawing on one line; none while they are away."""
        words = self._columns[which][1]
        written = words.fontMetrics().horizontalAdvance(words.text()) + GAP_PX
        return 0 if words.isHidden() else written

    def _words_height(self) -> int:
        """Return the height of the words and the space above them; none while they are away."""
        heights = [
            words.heightForWidth(self._words_width(which))
            for which, (_, words) in enumerate(self._columns)
            if not words.isHidden()
        ]
        return max(heights) + _ABOVE_WORDS_PX if heights else 0

    def _arrange(self) -> None:
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
