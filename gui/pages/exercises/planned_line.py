"""A planned exercise on the page of today: its drawing, how much and how, and what was done."""

from collections.abc import Sequence

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.drawing.shown_movements import shown_exercise
from gui.pages.exercises.still_figure import StillFigure
from gui.style.appearance import Appearance
from gui.text.exercise_wording import done_whole, done_words, how_sentence, planned_title
from gui.text.wording import tr
from gui.widgets.layouts import column, row
from gui.widgets.text import SignedLine, label
from measure.domain.home_programme_records import ExerciseLog, PlannedExercise
from measure.domain.landmarks import Side
from measure.progress.home_programme import dose_words

#: Text sizes from which the drawing has less room beside all words, and from which it alone says
#: how, per cent; the round says it too. [technical]
_LARGE_FROM_PERCENT, _SHORT_FROM_PERCENT = 150, 200
#: Side of the drawing below and from these text sizes, and of what was logged where words are few,
#: pixels: two exercises are seen at once. [technical]
_DRAWING_PX, _LARGE_PX, _SHORT_PX, _SHORT_LOGGED_PX = 174, 150, 184, 164


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
        self._figure = StillFigure(appearance, shown, side)
        self._drawn = shown is not None
        sign = "\u2713" if done_whole(planned, logged) else "\u2013"
        self._dose = label(dose_words(planned, tr, with_side=False))
        self._how = label(how_sentence(planned), "quiet")
        self.done = SignedLine(sign, done_words(planned, logged) or tr("Not done today."))
        words = column(
            1,
            label(planned_title(planned), "title"),
            self._dose,
            self._how,
            self.done,
            1,
            spacing=appearance.gap(0.75),
        )
        row(column(1, self._figure, 1), (words, 1), on=self, spacing=appearance.gap(3))
        self._said = bool(logged)
        self.done.setVisible(self._said)
        appearance.changed.connect(self._leave_room)
        self._leave_room()

    @Slot()
    def _leave_room(self) -> None:
        """Say how it is done where nothing was done yet; where text is large, only what matters."""
        percent = self._appearance.percent
        roomy = percent < _SHORT_FROM_PERCENT
        px = _SHORT_LOGGED_PX if self._said else _SHORT_PX
        if roomy:
            px = _DRAWING_PX if percent < _LARGE_FROM_PERCENT else _LARGE_PX
        self._figure.setFixedSize(px, px if self._drawn else 0)
        self._dose.setVisible(roomy or not self._said)
        self._how.setVisible(roomy and not self._said and bool(self._how.text()))
        self.done.keep_sign_width(self._appearance.px())
