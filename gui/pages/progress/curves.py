"""Curves of one movement over weeks: both shoulders with pain and exercises, and the verdict."""

from collections.abc import Sequence

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.drawing.curves import HistoryCurve, conducts_of, curves, movements_of, unix_time_s
from gui.pages.progress.exercise_row import ExerciseRow
from gui.style.appearance import Appearance
from gui.text.progress_wording import (
    progress_notes,
    progress_of_sides,
    verdict_line,
    weeks_words,
)
from gui.text.wording import conduct_sentence, movement_name, tr
from gui.widgets.buttons import MenuButton
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.history_chart import ChartMarks, HistoryChart, legend_text
from gui.widgets.layouts import column, row
from gui.widgets.text import label
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.progress.home_programme import WeekDone, events_with_plans
from measure.progress.overview import Progress
from measure.progress.shoulder import SideProgress


class CurvesView(QWidget):
    """Shows the chosen movement, done in one way; other ways are offered where there are some."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._history: History | None = None
        self._progress: Progress | None = None
        self.exercises = ExerciseRow(appearance)
        self.movement = ChoiceRow(list(Movement), movement_name, columns=5, title=tr("movement"))
        self.movement.picked.connect(self._draw)
        self.conduct = MenuButton(tr("how it was done"))
        self.conduct.picked.connect(self._draw_chosen)
        self.legend = label("", "quiet")
        self.chart = HistoryChart(appearance)
        self.verdict = label("", "lead")
        self.notes = label("", "quiet")
        self.adherence = label("", "quiet")
        column(
            self.exercises,
            self.movement.row,
            self.verdict,
            self.notes,
            row((self.legend, 1), self.conduct),
            (self.chart, 1),
            self.adherence,
            on=self,
            margins=(24, 8, 24, 8),
            spacing=appearance.gap(1.5),
        )

    def show_history(self, history: History, progress: Progress | None) -> None:
        """Draw a history that has measurements, and say what can be said about it."""
        self._history, self._progress = history, progress
        measured = movements_of(history)
        for movement in Movement:
            self.movement.button(movement).setEnabled(movement in measured)
        if self.movement.value not in measured:
            self.movement.choose(measured[0])
        self._draw()

    def show_adherence(self, weeks: Sequence[WeekDone]) -> None:
        """Say how much of the home programme was done in these weeks."""
        self.adherence.setText(weeks_words(weeks))
        self.adherence.setVisible(any(week.planned for week in weeks))

    @Slot()
    def _draw(self) -> None:
        """Draw the chosen movement; the ways it was done are offered anew."""
        history, movement = self._history, self.movement.value
        if history is None or movement is None:
            return
        before = self.conduct.value
        conducts = conducts_of(history, movement)
        self.conduct.offer(conducts, conduct_sentence)
        if before in conducts:
            self.conduct.choose(before)
        self.conduct.setVisible(len(conducts) > 1)
        self._draw_chosen()

    @Slot()
    def _draw_chosen(self) -> None:
        history, movement, conduct = self._history, self.movement.value, self.conduct.value
        if history is None or movement is None or conduct is None:
            return
        drawn = curves(history, movement, conduct)
        sides: tuple[SideProgress, ...] = ()
        if self._progress is not None:
            sides = progress_of_sides(self._progress, movement, conduct)
            self._show_verdict(self._progress, sides)
        marks = ChartMarks(
            exercises_s=[unix_time_s(log.done) for log in history.exercises_done],
            events=events_with_plans(history),
            practice=frozenset(
                (side.side, side.series.date(k))
                for side in sides
                for k in range(len(side.series))
                if side.series.practice[k]
            ),
            turns=[(side.side, side.current.turn.day) for side in sides if side.current.turn],
        )
        self.chart.show_curves(movement, drawn, marks)
        self.legend.setText(_legend(drawn, marks))

    def _show_verdict(self, progress: Progress, sides: tuple[SideProgress, ...]) -> None:
        self.verdict.setText("\n".join(verdict_line(side) for side in sides))
        notes = progress_notes(progress, sides)
        self.notes.setText("\n".join(notes))
        self.notes.setVisible(bool(notes))


def _legend(drawn: tuple[HistoryCurve, ...], marks: ChartMarks) -> str:
    """Return what the signs in the chart mean."""
    refused = any(point.value is None for curve in drawn for point in curve.points)
    parts = [
        *dict.fromkeys(legend_text(curve) for curve in drawn),
        tr("hollow: practice") if marks.practice else "",
        tr("dashed: no reading") if refused else "",
        tr("beneath: pain 0 to 10"),
        tr("\u25b2 exercises done") if marks.exercises_s else "",
    ]
    return "    ".join(part for part in parts if part)
