"""Button that logs what was done without the window: one planned exercise, or all that are due."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QPoint, Signal, Slot
from PySide6.QtWidgets import QMenu

from gui.text.wording import exercise_name, tr
from gui.widgets.buttons import ShortcutButton
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import PlannedExercise


class ElsewhereButton(ShortcutButton):
    """Opens a short list of the exercises; what is chosen there is logged as done."""

    #: Exercises that were done, a tuple of Exercise.
    picked = Signal(object)

    def __init__(self) -> None:
        super().__init__(tr("I have already done some"), "")
        self.setProperty("role", "line-link")
        self.menu_of_exercises = QMenu(self)
        self.clicked.connect(self._open)

    def offer(self, due: Sequence[PlannedExercise], planned: Sequence[PlannedExercise]) -> None:
        """Offer all that are due at once, where there are several, and each that is planned."""
        menu = self.menu_of_exercises
        menu.clear()
        if len(due) > 1:
            words = tr("All {count} exercises").format(count=len(due))
            self._add(words, tuple(item.exercise for item in due))
            menu.addSeparator()
        for item in planned:
            self._add(exercise_name(item.exercise), (item.exercise,))

    def _add(self, words: str, exercises: tuple[Exercise, ...]) -> None:
        chosen = self.menu_of_exercises.addAction(words)
        chosen.triggered.connect(partial(self._pick, exercises))

    def _pick(self, exercises: tuple[Exercise, ...], _checked: bool = False) -> None:
        self.picked.emit(exercises)

    @Slot()
    def _open(self) -> None:
        self.menu_of_exercises.popup(self.mapToGlobal(QPoint(0, self.height())))
