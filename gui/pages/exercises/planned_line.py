"""A planned exercise on the page of today: its drawing, how much and how, and a way to log it."""

from PySide6.QtWidgets import QWidget

from gui.drawing.shown_movements import shown_exercise
from gui.pages.exercises.still_figure import StillFigure
from gui.style.appearance import Appearance
from gui.text.exercise_wording import how_sentence
from gui.text.wording import exercise_name, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import column, row
from gui.widgets.text import label
from measure.domain.home_programme_records import PlannedExercise
from measure.domain.landmarks import Side
from measure.progress.home_programme import dose_words

#: Side of the drawing at a text size of 100 %, pixels. [technical]
_DRAWING_PX = 96


class PlannedLine(QWidget):
    """One exercise of the programme; one of the clinician's own has no drawing."""

    def __init__(self, appearance: Appearance, planned: PlannedExercise) -> None:
        super().__init__()
        name = exercise_name(planned.exercise)
        self.log = button(tr("Log this one"), "link")
        self.log.setAccessibleName(tr("Log as done: {exercise}").format(exercise=name))
        listed = planned.exercise.listed
        shown = shown_exercise(listed) if listed is not None else None
        side = planned.sides[0] if planned.sides else Side.LEFT
        figure = StillFigure(appearance, shown, side, _DRAWING_PX)
        head = row((label(name, "strong"), 1), self.log, spacing=appearance.gap(2))
        words = column(
            1,
            head,
            label(dose_words(planned, tr)),
            label(how_sentence(planned), "quiet"),
            1,
            spacing=2,
        )
        row(column(1, figure, 1), (words, 1), on=self, spacing=appearance.gap(2))
