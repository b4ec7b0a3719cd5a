"""Movements before they begin: the first one, or all in a row of drawings."""

from collections.abc import Collection, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.protocol.plan import MovementTask
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.session_wording import start_position_sentence
from gui.text.wording import movement_introduced, movement_name, side_name, tr
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.layouts import Content, column, row, separator, widget_with
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: Width and height of the drawn person, pixels. [technical]
_FIGURE_PX = (130, 122)
#: Height of a drawing in a row of all movements, pixels. [technical]
_STRIP_PX = 104


def length_words(tasks: Sequence[MovementTask], minutes: int) -> str:
    """Return how many movements there are, of which arms, and about how long they take."""
    count = len({task.movement for task in tasks})
    return tr("{movements}, {arms}, about {minutes}").format(
        movements=_counted(count, tr("1 movement"), tr("{count} movements")),
        arms=_arms_words({task.side for task in tasks}),
        minutes=_counted(minutes, tr("1 minute"), tr("{count} minutes")),
    )


def _counted(count: int, single: str, several: str) -> str:
    return single if count == 1 else several.format(count=count)


def _arms_words(sides: Collection[Side]) -> str:
    if len(sides) != 1:
        return tr("both arms")
    return tr("left arm") if Side.LEFT in sides else tr("right arm")


class MovementStrip(QWidget):
    """Shows all movements side by side, each drawn with its name beneath."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        drawn: list[Content] = []
        for movement in Movement:
            figure = PositionView(appearance, still=True, close=True)
            figure.setFixedHeight(_STRIP_PX)
            figure.show_movement(movement, Side.LEFT)
            name = label(movement_name(movement))
            name.setAlignment(Qt.AlignmentFlag.AlignHCenter)
            cell = widget_with(column(figure, name, 1, spacing=GAP_PX // 2))
            # Cells of one width, whatever their names need.
            cell.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
            drawn.append((cell, 1))
        # A hairline tells the drawings from what is chosen above them.
        column(separator(), row(*drawn, spacing=GAP_PX), on=self, spacing=2 * GAP_PX)


class FirstMovement(QWidget):
    """Shows what comes first, in one sentence and a drawing."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.figure = PositionView(appearance, close=True)
        self.figure.setFixedSize(*_FIGURE_PX)
        self.title = label("", "title")
        self.how = label("")
        self.length = label("", "quiet")
        words = column(1, self.title, self.how, self.length, 1, spacing=appearance.gap(0.5))
        row(self.figure, (words, 1), on=self, spacing=appearance.gap(3))

    def show_tasks(self, tasks: Sequence[MovementTask], minutes: int) -> None:
        """Show the first of some tasks, and how long all take."""
        task = tasks[0]
        self.figure.show_movement(task.movement, task.side)
        self.title.setText(tr("First: the {side} arm").format(side=side_name(task.side)))
        movement = movement_introduced(task.movement)
        position = start_position_sentence(task.movement, task.side)
        self.how.setText(f"{movement}. {position}")
        self.length.setText(f"{length_words(tasks, minutes)}.")
