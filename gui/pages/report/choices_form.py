"""Form for what a report is to hold: the person's question, since when, how many pages."""

import datetime as dt
from enum import Enum

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QLineEdit, QWidget

from gui.style.appearance import Appearance
from gui.text.day_text import day_text
from gui.text.language import language_shown
from gui.text.wording import tr
from gui.widgets.buttons import MenuButton
from gui.widgets.date_field import DateField
from gui.widgets.layouts import card, column, row
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.report.choices import LONGEST_QUESTION, ReportChoices

#: How a day is typed.
_EXAMPLE = dt.date(2026, 3, 14)


class ChangesSince(Enum):
    """From when on a report tells changes."""

    VISIT = "visit"
    DAY = "day"


def since_name(chosen: ChangesSince) -> str:
    return {
        ChangesSince.VISIT: tr("the last visit or event"),
        ChangesSince.DAY: tr("a day I choose"),
    }[chosen]


class ReportChoicesForm(QWidget):
    """Everything in it can be left as it is."""

    #: Something was chosen; what was typed counts when its field is left.
    changed = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.question = QLineEdit()
        self.question.setMaxLength(LONGEST_QUESTION)
        self.question.setAccessibleName(tr("Question for the clinician"))
        self.period = MenuButton(tr("Show changes since"))
        self.period.offer(list(ChangesSince), since_name)
        self.period.picked.connect(self._ask_day)
        self.since = DateField(appearance, tr("Show changes since this day"))
        self.since.hide()
        self.problem = label("", "strong")
        self.problem.hide()
        self.details = WrappingCheckBox(
            appearance,
            tr("More pages: events, everyday tasks, what was not measured, how to read it"),
        )
        self.landscape = WrappingCheckBox(appearance, tr("Landscape page"))
        self.question.editingFinished.connect(self._announce)
        self.since.text.editingFinished.connect(self._announce)
        self.details.toggled.connect(self._announce)
        self.landscape.toggled.connect(self._announce)
        self._announced = self.choices
        self.since.text.setPlaceholderText(day_text(_EXAMPLE))
        gap = appearance.gap
        asked = label(tr("Question for the clinician"), "strong")
        since = label(tr("Show changes since"), "strong")
        group = card(
            column(asked, self.question, spacing=gap(1)),
            column(since, row(self.period, 1), self.since, self.problem, spacing=gap(1)),
            column(self.details, self.landscape, spacing=gap(1)),
            1,
            spacing=gap(3),
        )
        # As high as the paper beside it.
        column((group, 1), on=self)

    @property
    def choices(self) -> ReportChoices:
        """What is chosen, in the window's language; a day that is none counts as left empty."""
        return ReportChoices(
            since=self.since.day if self.period.value is ChangesSince.DAY else None,
            question=self.question.text(),
            details=self.details.isChecked(),
            landscape=self.landscape.isChecked(),
            language=language_shown(),
            tr=tr,
        )

    def ask(self, question: str) -> None:
        """Take over a question, without announcing it."""
        self.question.setText(question)
        self._announced = self.choices

    @Slot(object)
    def _ask_day(self, chosen: ChangesSince) -> None:
        self.since.setVisible(chosen is ChangesSince.DAY)
        if chosen is ChangesSince.DAY:
            self.since.text.setFocus()
        self._announce()

    @Slot()
    def _announce(self) -> None:
        asked = self.period.value is ChangesSince.DAY
        wrong = asked and bool(self.since.text.text().strip()) and self.since.day is None
        self.problem.setText(
            tr("Please enter the day as {day}, or leave it empty.").format(day=day_text(_EXAMPLE))
            if wrong
            else ""
        )
        self.problem.setVisible(wrong)
        # Fields tell also when they are left as they were.
        if self.choices != self._announced:
            self._announced = self.choices
            self.changed.emit()
