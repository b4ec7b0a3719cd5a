"""Course of one movement over weeks: the chart of both shoulders, its table, and the verdict."""

import datetime as dt

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.drawing.chart_scales import ChartRange
from gui.drawing.curves import chart_content, conducts_of, movements_of
from gui.pages.progress.chart_legend import ChartLegend
from gui.pages.progress.chart_sentences import chart_sentence, chart_title, range_name
from gui.pages.progress.history_chart import HistoryChart
from gui.pages.progress.movement_choice import MovementChoice
from gui.pages.progress.readings_table import ReadingsTable
from gui.style.appearance import Appearance
from gui.text.progress_wording import (
    progress_notes,
    progress_of_sides,
    verdict_line,
    warm_up_words,
)
from gui.text.wording import conduct_sentence, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.layouts import card, column, row
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import label
from measure.domain.records import History
from measure.progress.overview import Progress
from measure.progress.shoulder import SideProgress
from measure.progress.warm_up import WarmUpEffect, warm_up_effects


class CurvesView(QWidget):
    """Shows the chosen movement, done in one way; other ways are offered where there are some."""

    #: A MeasurementRecord whose session is to be seen.
    picked = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._history: History | None = None
        self._progress: Progress | None = None
        self._today = dt.date.min
        self._effects: tuple[WarmUpEffect, ...] = ()
        self.movement = MovementChoice()
        self.movement.picked.connect(self._draw)
        self.range = MenuButton(tr("time shown"))
        self.range.offer(list(reversed(ChartRange)), range_name)
        self.range.picked.connect(self._draw_chosen)
        self.conduct = MenuButton(tr("how it was done"))
        self.conduct.picked.connect(self._draw_chosen)
        self.title = label("", "title")
        self.legend = ChartLegend(appearance)
        self.chart = HistoryChart(appearance)
        self.table = ReadingsTable(appearance)
        self.chart.picked.connect(self.picked)
        self.table.picked.connect(self.picked)
        self.as_table = button(tr("Show as a table"), "link", checkable=True)
        self.as_table.toggled.connect(self._show_table)
        self.summary = label("", "small")
        self.verdict = label("")
        self.warm_up = label("")
        self.details = button(tr("Details"), "link", checkable=True)
        self.details.toggled.connect(self._show_notes)
        self.notes = label("", "quiet")
        self._lay_out(appearance)
        self._show_table(False)
        self._show_notes(False)

    def _lay_out(self, appearance: Appearance) -> None:
        gap = appearance.gap
        drawn = card(
            self.title,
            self.chart,
            self.table,
            self.legend,
            spacing=gap(1),
        )
        said = card(
            self.verdict,
            self.warm_up,
            row(self.as_table, self.details, self.conduct, 1, spacing=gap(2)),
            self.notes,
            self.summary,
            spacing=gap(1),
        )
        column(
            row((self.movement, 1), self.range, spacing=gap(1)),
            drawn,
            said,
            on=self,
            spacing=gap(1.5),
        )

    def show_history(self, history: History, progress: Progress | None, today: dt.date) -> None:
        """Draw a history that has measurements, and say what can be said about it."""
        self._history, self._progress, self._today = history, progress, today
        self._effects = warm_up_effects(history)
        measured = movements_of(history)
        if measured != self.movement.offered:
            self.movement.offer(measured)
        self._draw()

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
        sides: tuple[SideProgress, ...] = ()
        if self._progress is not None:
            sides = progress_of_sides(self._progress, movement, conduct)
            self._show_verdict(sides)
        content = chart_content(history, movement, conduct, sides, self._today)
        self.title.setText(chart_title(movement))
        self.chart.show_content(content, self.range.value or ChartRange.ALL)
        self.table.show_points(self.chart.points, chart_title(movement))
        self.legend.explain(content)
        self.summary.setText(chart_sentence(content))
        warm_up = warm_up_words(
            [
                effect
                for effect in self._effects
                if (effect.movement, effect.conduct) == (movement, conduct)
            ]
        )
        self.warm_up.setText(warm_up)
        self.warm_up.setVisible(bool(warm_up))

    def _show_verdict(self, sides: tuple[SideProgress, ...]) -> None:
        self.verdict.setText("\n".join(verdict_line(side) for side in sides))
        notes = progress_notes(sides)
        self.notes.setText("\n".join(notes))
        self.details.setVisible(bool(notes))

    @Slot(bool)
    def _show_table(self, shown: bool) -> None:
        self.table.setVisible(shown)
        self.chart.setVisible(not shown)
        self.legend.setVisible(not shown)
        self.as_table.say(tr("Show as a chart") if shown else tr("Show as a table"))
        if shown:
            bring_into_view(self.as_table)
            bring_into_view(self.table if self.title.isHidden() else self.title)

    @Slot(bool)
    def _show_notes(self, shown: bool) -> None:
        self.notes.setVisible(shown)
        self.details.say(tr("Fewer details") if shown else tr("Details"))
