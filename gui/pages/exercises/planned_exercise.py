"""Rows of the home programme page: an exercise of the list, and a clinician's own."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QLineEdit, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import exercise_name, side_title, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.layouts import FlowRow, column, row
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.exercises import EXERCISE_FACTS, Exercise, ListedExercise
from measure.domain.home_programme_records import MOST_TIMES_A_DAY, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.record_checks import LONGEST_NAME, LONGEST_NOTE
from measure.progress.home_programme import HELD, REPETITIONS, TIMES_A_DAY

#: Repetitions that are offered; None where the clinician set none. [project]
_REPETITIONS = (None, *range(1, 13), 15, 20, 25, 30, 40, 50)
#: Holds that are offered, seconds; 0 is no hold. [project]
_HOLDS_S = (0, 5, 10, 15, 20, 30, 45, 60, 90, 120)
_SIDES = ((), (Side.LEFT,), (Side.RIGHT,), (Side.LEFT, Side.RIGHT))
_GAP_PX = 8


class _Dose(FlowRow):
    """Repetitions, hold (unless it is a swinging one), times a day and side of one exercise."""

    def __init__(self, *, swinging: bool = False) -> None:
        super().__init__(_GAP_PX, filling=False)
        self.repetitions, self.hold, self.times, self.side = (
            MenuButton("", self) for _ in range(4)
        )
        self.hold.setHidden(swinging)
        held = () if swinging else (self.hold,)
        self.offer([self.repetitions, *held, self.times, self.side])

    def name_exercise(self, name: str) -> None:
        """Say which exercise the menus belong to, for who hears them."""
        self.repetitions.name(tr("{exercise}, repetitions").format(exercise=name))
        self.hold.name(tr("{exercise}, how long it is held").format(exercise=name))
        self.times.name(tr("{exercise}, times a day").format(exercise=name))
        self.side.name(tr("{exercise}, side").format(exercise=name))

    def show_planned(self, planned: PlannedExercise | None, affected: tuple[Side, ...]) -> None:
        """Show a dose, or that none has been chosen; what was set elsewhere is offered too."""
        repetitions = planned.repetitions if planned else None
        hold_s = planned.hold_s if planned else 0
        more = sorted({count for count in (*_REPETITIONS, repetitions) if count is not None})
        self.repetitions.offer((None, *more), _repetitions_words)
        self.hold.offer(tuple(sorted({*_HOLDS_S, hold_s})), _hold_words)
        self.times.offer(tuple(range(1, MOST_TIMES_A_DAY + 1)), _times_words)
        self.side.offer(_SIDES, _side_words)
        self.repetitions.choose(repetitions)
        self.hold.choose(hold_s)
        self.times.choose(planned.times_a_day if planned else 1)
        self.side.choose(planned.sides if planned else affected)

    @property
    def entered(self) -> tuple[object, ...]:
        """What is chosen, to be compared."""
        return (self.repetitions.value, self.hold.value, self.times.value, self.side.value)

    def planned(self, exercise: Exercise, note: str) -> PlannedExercise:
        return PlannedExercise(
            exercise=exercise,
            repetitions=self.repetitions.value,
            hold_s=self.hold.value,
            times_a_day=self.times.value,
            sides=self.side.value,
            note=note,
        )


class ListedExerciseRow(QWidget):
    """An exercise of the list: ticked where it is planned, then with its dose and a note."""

    def __init__(self, appearance: Appearance, listed: ListedExercise) -> None:
        super().__init__()
        self.exercise = Exercise(listed=listed)
        facts = EXERCISE_FACTS[listed]
        name = exercise_name(self.exercise)
        self.wanted = WrappingCheckBox(appearance, name)
        self.dose = _Dose(swinging=facts.swinging)
        self.dose.name_exercise(name)
        self.note = _line(
            tr("{exercise}, note").format(exercise=name), tr("A note, if you like"), LONGEST_NOTE
        )
        self.wanted.toggled.connect(self._follow)
        self._below = column(
            label(tr(facts.how), "quiet"), self.dose, self.note, spacing=appearance.gap(0.5)
        )
        column(self.wanted, self._below, on=self, spacing=appearance.gap(0.5))
        appearance.changed.connect(self._indent)
        self._indent()
        self.show_planned(None, ())

    @property
    def planned(self) -> PlannedExercise | None:
        """What is planned of this exercise, or None."""
        if not self.wanted.isChecked():
            return None
        return self.dose.planned(self.exercise, self.note.text().strip())

    def show_planned(self, planned: PlannedExercise | None, affected: tuple[Side, ...]) -> None:
        self.wanted.setChecked(planned is not None)
        self.dose.show_planned(planned, affected)
        self.note.setText(planned.note if planned else "")
        self._follow(planned is not None)

    @Slot()
    def _indent(self) -> None:
        """Let what belongs to the exercise begin where its name does."""
        self._below.setContentsMargins(self.wanted.text_left(), 0, 0, 0)

    @Slot(bool)
    def _follow(self, wanted: bool) -> None:
        self.dose.setVisible(wanted)
        self.note.setVisible(wanted)


class OwnExerciseRow(QWidget):
    """An exercise of the clinician's own: its name, how it is done, and its dose."""

    removed = Signal()

    def __init__(
        self,
        appearance: Appearance,
        planned: PlannedExercise | None,
        affected: tuple[Side, ...],
    ) -> None:
        super().__init__()
        self.name = _line(tr("name of the exercise"), tr("Name of the exercise"), LONGEST_NAME)
        self.sentence = _line(
            tr("how it is done"), tr("How it is done, in one sentence"), LONGEST_NOTE
        )
        self.dose = _Dose()
        self.remove = button(tr("Remove"))
        self.remove.clicked.connect(self.removed)
        self.name.textChanged.connect(self._follow)
        column(
            row((self.name, 1), self.remove, spacing=appearance.gap(1)),
            self.sentence,
            self.dose,
            on=self,
            spacing=appearance.gap(0.5),
        )
        self.dose.show_planned(planned, affected)
        self.name.setText(planned.exercise.own_name if planned else "")
        self.sentence.setText(planned.note if planned else "")
        self._follow(self.name.text())

    @property
    def entered(self) -> tuple[object, ...]:
        """What the fields hold, to be compared."""
        return (self.name.text(), self.sentence.text(), *self.dose.entered)

    @property
    def planned(self) -> PlannedExercise | None:
        """What is planned of this exercise, or None while it has no name.

        Raises
        ------
        InputError
            When the name cannot be one.
        """
        if not self.name.text().strip():
            return None
        return self.dose.planned(Exercise(own_name=self.name.text()), self.sentence.text().strip())

    @Slot(str)
    def _follow(self, name: str) -> None:
        name = name.strip() or tr("own exercise")
        self.dose.name_exercise(name)
        self.remove.setAccessibleName(tr("Remove: {exercise}").format(exercise=name))


def _line(name: str, hint: str, most: int) -> QLineEdit:
    field = QLineEdit()
    field.setAccessibleName(name)
    field.setPlaceholderText(hint)
    field.setMaxLength(most)
    return field


def _counted(count: int, words: tuple[str, str]) -> str:
    return tr(words[count != 1]).format(count=count)


def _repetitions_words(repetitions: int | None) -> str:
    return tr("repetitions not set") if repetitions is None else _counted(repetitions, REPETITIONS)


def _hold_words(hold_s: int) -> str:
    return tr(HELD).format(count=hold_s) if hold_s else tr("not held")


def _times_words(times: int) -> str:
    return _counted(times, TIMES_A_DAY)


def _side_words(sides: tuple[Side, ...]) -> str:
    if len(sides) == 1:
        return side_title(sides[0])
    return tr("Both sides") if sides else tr("side not set")
