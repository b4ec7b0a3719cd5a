"""Weekly look: one sentence first, then the chart, the comparisons, the person's own goals."""

import datetime as dt

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QWidget

from gui.pages.progress.clinician_card import ClinicianCard
from gui.pages.progress.comparison_card import ComparisonCard
from gui.pages.progress.curves import CurvesView
from gui.pages.progress.empty_history import ROOMY_PERCENT
from gui.pages.progress.goals_card import GoalsCard
from gui.pages.progress.limits_card import LimitsCard
from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX, DISPLAY, DISPLAY_GROWTH, TITLE, TITLE_GROWTH
from gui.style.style_sheet import grown
from gui.text.progress_wording import logged_words
from gui.text.wording import person_name, tr
from gui.widgets.buttons import button, give_role
from gui.widgets.layouts import card, column, row
from gui.widgets.text import label
from measure.domain.records import History
from measure.progress.home_programme import programme_done_sentences
from measure.progress.overview import Progress
from measure.progress.week_sentence import (
    counted_sentence,
    forecast_sentence,
    other_sentence,
    so_far_sentence,
    week_sentence,
)

#: A sentence with more letters than this is set smaller. [technical]
_LONG = 90
#: Sizes of the sentence, and how they grow.
_SIZES = {"display": (DISPLAY, DISPLAY_GROWTH), "title": (TITLE, TITLE_GROWTH)}


class ProgressOverview(QWidget):
    """Shows a history that has measurements."""

    goals_wanted = Signal()
    report_wanted = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.sentence = label("", "display")
        #: The sentence in full, and with fewer words where the full one has no room in one line.
        self._sentences = ("", "")
        #: How many sessions there are, of those that a verdict takes; out of sight afterwards.
        self.so_far = label("")
        #: When a gain would show, and what changed at the other shoulder; out of sight without.
        self.more = label("")
        self.clinician = ClinicianCard(appearance)
        self.clinician.report_wanted.connect(self.report_wanted)
        self.curves = CurvesView(appearance)
        self.comparison = ComparisonCard(appearance)
        self.limits = LimitsCard(appearance)
        self.goals = GoalsCard(appearance)
        self.goals.wanted.connect(self.goals_wanted)
        self.exercises = label("")
        self.exercises_done = label("")
        self.by_exercise = button(tr("By exercise"), "link", checkable=True)
        self.by_exercise.toggled.connect(self.exercises_done.setVisible)
        self.exercises_done.hide()
        expected = card(
            label(tr("What to expect"), "title"),
            label(
                tr(
                    "A stiff shoulder usually takes many months to loosen. Most people gain more "
                    "in the first months and less later, with times of no clear change in "
                    "between: slow progress is usual. Some stiffness may stay. No one can say "
                    "beforehand how yours will go."
                )
            ),
            spacing=appearance.gap(1),
        )
        column(
            column(self.sentence, self.so_far, spacing=appearance.gap(0.5)),
            self.clinician,
            self.curves,
            self.more,
            self.comparison,
            self.limits,
            self.goals,
            row((self.exercises, 1), self.by_exercise, spacing=appearance.gap(1)),
            self.exercises_done,
            expected,
            on=self,
            spacing=appearance.gap(2),
        )
        appearance.changed.connect(self._fit)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    @Slot()
    def _fit(self) -> None:
        """Shorten a sentence that has no room in one line, else set it smaller if it is long."""
        roomy = self._appearance.percent <= ROOMY_PERCENT
        words = self.sentence.text()
        offered = self._sentences if words in self._sentences else (words,)
        sizes = ("display",) if roomy else ("display", "title")
        usual = "display" if roomy and len(offered[0]) <= _LONG else "title", offered[0]
        whole = ((size, words) for size in sizes for words in offered)
        size, words = next(filter(self._in_one_line, whole), usual)
        self.sentence.setText(words)
        self.sentence.setAccessibleName(offered[0])
        give_role(self.sentence, size)

    def _in_one_line(self, shown: tuple[str, str]) -> bool:
        """Return whether a sentence in a size has room in one line."""
        size, words = shown
        share, growth = _SIZES[size]
        px = grown(BODY_PX * share, growth, self._appearance.percent)
        font = self._appearance.font(px, bold=True)
        return QFontMetrics(font).horizontalAdvance(words) <= self.width()

    def show_history(self, history: History, progress: Progress | None, today: dt.date) -> None:
        """Show what can be said of this history on this day."""
        who = person_name(history.person)
        self.setAccessibleName(tr("Progress: {person}").format(person=who))
        if progress:
            self._sentences = week_sentence(progress, tr), week_sentence(progress, tr, brief=True)
        else:
            self._sentences = ("", "")
        self.sentence.setText(self._sentences[0])
        sentences = (counted_sentence, forecast_sentence, other_sentence)
        more = [sentence(progress, tr) for sentence in sentences] if progress else []
        self.more.setText(" ".join(filter(None, more)))
        self.more.setVisible(bool(self.more.text()))
        self.so_far.setText(so_far_sentence(progress, tr) if progress else "")
        self.so_far.setVisible(bool(self.so_far.text()))
        self._fit()
        self.clinician.show_prompts(progress.prompts if progress else ())
        self.curves.show_history(history, progress, today)
        self.comparison.show_progress(progress)
        self.limits.show_months(progress.ends if progress else ())
        self.goals.show_goals(history)
        logged = logged_words(history, today)
        self.exercises.setText(logged)
        self.exercises.setVisible(bool(logged))
        done = programme_done_sentences(progress.programme_done, tr) if progress else ()
        self.exercises_done.setText("\n".join(done))
        self.by_exercise.setVisible(bool(done))
        self.by_exercise.setChecked(False)
