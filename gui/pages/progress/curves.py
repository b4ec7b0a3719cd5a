"""Course of one movement over weeks: the chart of both shoulders, its table, and the verdict."""

import datetime as dt

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.drawing.chart_scales import ChartRange
from gui.drawing.curves import chart_content, conducts_of, movements_of, without_asides
from gui.pages.progress.chart_legend import ChartLegend, flag_entries, legend_entries
from gui.pages.progress.chart_sentences import chart_sentence, chart_title, range_name
from gui.pages.progress.empty_history import ROOMY_PERCENT
from gui.pages.progress.fold_room import FoldRoom
from gui.pages.progress.history_chart import HistoryChart, points_in
from gui.pages.progress.movement_choice import MovementChoice
from gui.pages.progress.readings_table import ReadingsTable
from gui.style.appearance import Appearance
from gui.text.progress_wording import (
    progress_notes,
    progress_of_sides,
    rate_line,
    verdict_line,
    warm_up_words,
)
from gui.text.wording import conduct_sentence, tr
from gui.widgets.buttons import MenuButton, button, give_role
from gui.widgets.layouts import card, column, row, widget_with
from gui.widgets.scroll_page import back_to_top
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
        self._appearance = appearance
        self._history: History | None = None
        self._progress: Progress | None = None
        self._today = dt.date.min
        self._has_asides = False
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
        #: What the numbers of the flags stand for, beneath the chart: a word is at each flag.
        self.flag_words = ChartLegend(appearance)
        self.chart = HistoryChart(appearance)
        self.table = ReadingsTable(appearance)
        self.chart.picked.connect(self.picked)
        self.table.picked.connect(self.picked)
        self.as_table = button(tr("Show table"), "link", checkable=True)
        self.as_table.toggled.connect(self._show_table)
        self.every_mark = button(tr("Show more in the chart"), "link", checkable=True)
        self.every_mark.toggled.connect(self._draw_chosen)
        self.summary = label("", "small")
        self.verdict = label("", "strong")
        #: The change a month of the affected side where the verdict stands beneath the chart, or
        #: why it is no clear one.
        self.rate = label("")
        self.warm_up = label("")
        self.details = button(tr("Details"), "link", checkable=True)
        self.details.toggled.connect(self._show_notes)
        self.notes = label("", "quiet")
        self._lay_out(appearance)
        self._show_table(False)
        self._show_notes(False)
        appearance.changed.connect(self._fit)

    def _lay_out(self, appearance: Appearance) -> None:
        gap = appearance.gap
        parts = (self.title, self.rate, self.legend, self.chart, self.flag_words, self.table)
        self._drawn = column(*parts, spacing=gap(1))
        self._card = card(widget_with(self._drawn))
        FoldRoom(self.chart, self.chart.fit_height)
        FoldRoom(self.table, self.table.fit_rows)
        self._said = column(
            self.warm_up,
            row(self.every_mark, self.details, self.conduct, 1, spacing=gap(3)),
            self.notes,
            self.summary,
            spacing=gap(1),
        )
        self._parts = column(
            row((self.movement, 1), self.as_table, self.range, spacing=gap(2)),
            self._card,
            card(widget_with(self._said)),
            on=self,
            spacing=gap(2),
        )

    @Slot()
    def _fit(self) -> None:
        """Put the verdict beneath the chart, or at the head of the table's card if it has room."""
        roomy = self._appearance.percent <= ROOMY_PERCENT
        above = roomy and self.as_table.isChecked()
        if above:
            self._drawn.insertWidget(1, self.verdict)
        else:
            self._said.insertWidget(0, self.verdict)
        give_role(self.verdict, "" if above else "strong")
        self.verdict.setContentsMargins(0, 0, 0, self._appearance.gap(1) if above else 0)
        # Marks are explained before they are seen where that leaves the chart its room.
        self._drawn.removeWidget(self.legend)
        self._drawn.insertWidget(self._drawn.indexOf(self.chart) + (not roomy), self.legend)
        self.title.setVisible(above)
        self.rate.setVisible(roomy and not above and bool(self.rate.text()))
        self._parts.setSpacing(self._appearance.gap(2 if roomy else 1.5))
        inside = self._card.layout()
        assert inside is not None
        room = inside.contentsMargins()
        room.setTop(room.bottom() if roomy else self._appearance.gap(1))
        inside.setContentsMargins(room)

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
        calm = without_asides(content)
        self._has_asides = calm != content
        self.every_mark.setVisible(self._has_asides and not self.as_table.isChecked())
        every = self.every_mark.isChecked()
        self.every_mark.say(tr("Show less in the chart") if every else tr("Show more in the chart"))
        self.title.setText(chart_title(movement))
        chosen = self.range.value or ChartRange.ALL
        drawn = content if every else calm
        self.chart.show_content(drawn, chosen)
        self.table.show_points(points_in(content, chosen), chart_title(movement))
        self.legend.show_entries(legend_entries(drawn))
        self.flag_words.show_entries(flag_entries(drawn, self.chart.first_shown))
        self._show_legends()
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
        self.rate.setText("\n".join(filter(None, map(rate_line, sides))))
        self._fit()
        notes = progress_notes(sides)
        self.notes.setText("\n".join(notes))
        self.details.setVisible(bool(notes))

    @Slot(bool)
    def _show_table(self, shown: bool) -> None:
        self.chart.setVisible(not shown)
        self._show_legends()
        self.table.setVisible(shown)
        self.every_mark.setVisible(self._has_asides and not shown)
        self.as_table.say(tr("Show chart") if shown else tr("Show table"))
        self._fit()
        back_to_top(self)

    def _show_legends(self) -> None:
        """Show the legends with the chart; one without entries takes no room."""
        for legend in (self.legend, self.flag_words):
            legend.setVisible(bool(legend.entries) and not self.as_table.isChecked())

    @Slot(bool)
    def _show_notes(self, shown: bool) -> None:
        self.notes.setVisible(shown)
        self.details.say(tr("Fewer details") if shown else tr("Details"))
