"""Between two movements: what comes next and how to stand for it."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.drawing.posture_figure import turn_deg
from gui.protocol.plan import Task, back_is_turned
from gui.session.session import Measuring
from gui.style.look import Look
from gui.text.sentences import next_sentence
from gui.text.words import movement_plainly, task_title, tr
from gui.widgets.buttons import ButtonRow
from gui.widgets.notice_line import NoticeLine
from gui.widgets.position_figure import PositionFigure, ViewPlan, turned_words
from gui.widgets.sentence import Sentence
from gui.widgets.text import button, label, scrolled


class NextPage(QWidget):
    """Shows the next task; begins it, measures the last again, or ends the session."""

    begin = Signal()
    again = Signal()
    end = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.title = label("", "title")
        self.hint = label("", "lead")
        self.sentence = Sentence(look)
        self.figure = PositionFigure(look)
        self.plan = ViewPlan(look)
        self.plan_words = label("", "lead")
        self.go = button(tr("Begin"), "main", key=tr("Enter"))
        self.repeat = button(tr("The last one again"), key=tr("A"))
        self.finish = button(tr("Stop and keep"), key=tr("Escape"))
        self.go.clicked.connect(self.begin)
        self.repeat.clicked.connect(self.again)
        self.finish.clicked.connect(self.end)
        self._lay_out()

    def _lay_out(self) -> None:
        plan = QVBoxLayout()
        plan.addStretch(1)
        plan.addWidget(self.plan, 3)
        plan.addWidget(self.plan_words)
        plan.addWidget(self.hint)
        plan.addStretch(1)
        middle = QHBoxLayout()
        middle.addWidget(self.figure, 55)
        middle.addLayout(plan, 45)
        buttons = ButtonRow([self.finish, self.repeat, self.go])
        told = QWidget()
        column = QVBoxLayout(told)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(self._look.gap(2))
        column.addWidget(self.title)
        column.addWidget(self.sentence)
        column.addLayout(middle, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 16, 24, 8)
        layout.setSpacing(self._look.gap(2))
        layout.addWidget(scrolled(told), 1)
        layout.addWidget(buttons)
        layout.addWidget(NoticeLine())

    def show_next(self, measuring: Measuring, *, mirrored: bool) -> None:
        """Show the task that comes next."""
        guide = measuring.guide
        task = guide.upcoming or guide.task
        here, of = guide.place
        self.title.setText(
            tr("Next, {here} of {of}: {task}").format(
                here=min(here + 1, of), of=of, task=task_title(task.movement, task.side)
            )
        )
        self.sentence.say(next_sentence(guide))
        turn = turn_deg(task.movement, task.side)
        self.figure.show_movement(task.movement, task.side, mirrored=mirrored)
        self.plan.show_turn(turn, task.side, mirrored=mirrored)
        self.plan_words.setText(
            tr("{movement}. {turned}.").format(
                movement=movement_plainly(task.movement).capitalize(),
                turned=turned_words(turn).capitalize(),
            )
        )
        self.hint.setText(_hint(task))
        self.go.setFocus()


def _hint(task: Task) -> str:
    """Return what is good to know before a movement."""
    if back_is_turned(task.movement):
        return tr("You will not see the screen: listen for the voice and the tones.")
    if task.practice:
        return tr("One practice first, then it counts. Raise the other hand to pause.")
    return tr("Raise the other hand to pause.")
