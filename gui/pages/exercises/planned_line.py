"""A planned exercise on the page of today: its drawing, how much and how, and what was done."""

from collections.abc import Sequence

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.drawing.shown_movements import shown_exercise
from gui.pages.exercises.still_figure import StillFigure
from gui.style.appearance import Appearance
from gui.text.exercise_wording import done_whole, done_words, how_sentence
from gui.text.wording import exercise_name, tr
from gui.widgets.layouts import column, row
from gui.widgets.text import SignedLine, label
from measure.domain.home_programme_records import ExerciseLog, PlannedExercise
from measure.domain.landmarks import Side
from measure.progress.home_programme import dose_words

#: Side of the drawing at a text size of 100 %, pixels. [technical]
_DRAWING_PX = 124
#: Text size from which the drawing alone says how, per cent; the round says it too. [technical]
_SHORT_FROM_PERCENT = 200
#: Least height of a short line, pixels. [technical]
_SHORT_LINE_PX = 140


class PlannedLine(QWidget):
    """One exercise of the programme; one of the clinician's own has no drawing.

    Parameters
    ----------
    logged
        What was logged today; where anything was, the line says what was done of the exercise
        instead of how it is done.
    """

    def __init__(
        self, appearance: Appearance, planned: PlannedExercise, logged: Sequence[ExerciseLog]
    ) -> None:
        super().__init__()
        self._appearance = appearance
        listed = planned.exercise.listed
        shown = shown_exercise(listed) if listed is not None else None
        side = planned.sides[0] if planned.sides else Side.LEFT
        figure = StillFigure(appearance, shown, side, _DRAWING_PX, growing=not logged)
        sign = "\u2713" if done_whole(planned, logged) else "\u2013"
        self._dose = label(dose_words(planned, tr))
        self._how = label(how_sentence(planned), "quiet")
        self.done = SignedLine(sign, done_words(planned, logged) or tr("Not done today."))
        words = column(
            1,
            label(exercise_name(planned.exercise), "title"),
            self._dose,
            self._how,
            self.done,
            1,
            spacing=appearance.gap(0.75),
        )
        row(column(1, figure, 1), (words, 1), on=self, spacing=appearance.gap(3))
        self._said = bool(logged)
        self.done.setVisible(self._said)
        appearance.changed.connect(self._leave_room)
        self._leave_room()

    @Slot()
    def _leave_room(self) -> None:
        """Say how it is done where nothing was done yet; where text is large, only what matters."""
        roomy = self._appearance.percent < _SHORT_FROM_PERCENT
        self._dose.setVisible(roomy or not self._said)
        self.setMinimumHeight(_SHORT_LINE_PX if self._said and not roomy else 0)
        self._how.setVisible(roomy and not self._said and bool(self._how.text()))
