"""Movements before they begin: the first one, today's in a row of drawings, how many there are."""

from collections.abc import Collection, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from gui.protocol.plan import MovementTask
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.session_wording import start_position_sentence
from gui.text.wording import (
    movement_introduced,
    movement_plainly,
    short_movement_name,
    side_name,
    tr,
)
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.layouts import Content, column, row, widget_with
from gui.widgets.text import label
from measure.domain.landmarks import Side

#: Width and height of the drawn person beside words, pixels. [technical]
_FIGURE_PX = (84, 76)
#: Height of a drawing in a row of today's, pixels. [technical]
_TASK_PX = 168


def length_words(tasks: Sequence[MovementTask], minutes: int) -> str:
    """Return how many movements there are, of which arms, and about how long they take."""
    length = counted_minutes(minutes)
    return tr("{tasks}, about {minutes}").format(tasks=tasks_words(tasks), minutes=length)


def tasks_words(tasks: Sequence[MovementTask]) -> str:
    """Return how many movements there are, and of which arms."""
    count = len({task.movement for task in tasks})
    counted = _counted(count, tr("1 movement"), tr("{count} movements"))
    return f"{counted}, {_arms_words({task.side for task in tasks})}"


def counted_minutes(minutes: int) -> str:
    return _counted(minutes, tr("1 minute"), tr("{count} minutes"))


def _counted(count: int, single: str, several: str) -> str:
    return single if count == 1 else several.format(count=count)


def _arms_words(sides: Collection[Side]) -> str:
    if len(sides) != 1:
        return tr("both arms")
    return tr("left arm") if Side.LEFT in sides else tr("right arm")


def drawn_tasks(appearance: Appearance, tasks: Sequence[MovementTask]) -> QWidget:
    """Return tasks side by side, each drawn with its name and everyday words beneath."""
    cells: list[Content] = []
    for task in tasks:
        name = label(short_movement_name(task.movement), "strong")
        plain = movement_plainly(task.movement)
        words = label(plain[:1].upper() + plain[1:], "quiet")
        cells.append((_drawn(appearance, task, name, words), 1))
    return widget_with(row(*cells, spacing=2 * GAP_PX))


def _drawn(appearance: Appearance, task: MovementTask, *words: QLabel) -> QWidget:
    """Return a movement drawn, with words in the middle beneath."""
    figure = PositionView(appearance, still=True, close=True)
    figure.setFixedHeight(_TASK_PX)
    figure.show_movement(task.movement, task.side)
    for line in words:
        line.setAlignment(Qt.AlignmentFlag.AlignHCenter)
    cell = widget_with(column(figure, *words, 1, spacing=GAP_PX // 2))
    # Cells of one width, whatever their names need.
    cell.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
    return cell


class FirstMovement(QWidget):
    """Shows what comes first, in one sentence and a drawing."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.figure = PositionView(appearance, still=True, close=True)
        self.figure.setFixedSize(*_FIGURE_PX)
        self.title = label("", "strong")
        self.length = label("", "quiet")
        self.how = label("")
        words = column(1, self.title, self.how, self.length, 1, spacing=0)
        row(self.figure, (words, 1), on=self, spacing=appearance.gap(2))

    def show_tasks(self, tasks: Sequence[MovementTask], minutes: int) -> None:
        """Show the first of some tasks, and how long all take."""
        task = tasks[0]
        self.figure.show_movement(task.movement, task.side)
        self.title.setText(tr("First: the {side} arm").format(side=side_name(task.side)))
        movement = movement_introduced(task.movement)
        position = start_position_sentence(task.movement, task.side)
        self.how.setText(f"{movement}. {position}")
        self.length.setText(f"{length_words(tasks, minutes)}.")
