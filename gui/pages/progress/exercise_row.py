"""Buttons that log an exercise of the plan as done just now."""

from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import exercise_name, tr
from gui.widgets.buttons import FlowRow, button
from gui.widgets.text import label
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ExerciseLog, Plan
from measure.progress.home_programme import dose_words

_GAP_PX = 8


class ExerciseRow(QWidget):
    """A button for each exercise of the plan; out of sight without one."""

    #: The exercise that was done.
    done = Signal(object)
    #: The identifier of a tap that was a mistake.
    taken_back = Signal(str)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._log: ExerciseLog | None = None
        self.limit = label("", "quiet")
        self._taps = FlowRow(_GAP_PX)
        self.undo = button(tr("Undo"), "link")
        self.undo.clicked.connect(self._take_back)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(appearance.gap(1))
        for widget in (self.limit, self._taps, self.undo):
            layout.addWidget(widget)
        self.undo.hide()

    @property
    def buttons(self) -> tuple[QPushButton, ...]:
        """The buttons of the plan's exercises, in its order."""
        return tuple(self._taps.buttons)

    def show_plan(self, plan: Plan | None) -> None:
        """Offer the exercises of the plan that is in force."""
        exercises = plan.exercises if plan else ()
        self.setVisible(bool(exercises))
        if plan is None or not exercises:
            self.show_noted(None)
            return
        self.limit.setText(
            tr("I have just done (stopping at pain {limit} of 10 or below):").format(
                limit=plan.pain_limit
            )
        )
        taps = []
        for planned in exercises:
            widget = button(exercise_name(planned.exercise))
            widget.setToolTip(dose_words(planned, tr))
            widget.clicked.connect(partial(self._tapped, planned.exercise))
            taps.append(widget)
        self._taps.offer(taps)

    def show_noted(self, log: ExerciseLog | None) -> None:
        """Say what was noted last and offer to take it back; None says nothing."""
        self._log = log
        self.undo.setVisible(log is not None)
        if log is not None:
            self.undo.say(
                tr("Saved: {exercise}, {time}. Undo").format(
                    exercise=exercise_name(log.exercise), time=log.done.local.strftime("%H:%M")
                )
            )

    def _tapped(self, exercise: Exercise, _checked: bool = False) -> None:
        self.done.emit(exercise)

    @Slot()
    def _take_back(self) -> None:
        log = self._log
        if log is not None:
            self.taken_back.emit(log.id)
