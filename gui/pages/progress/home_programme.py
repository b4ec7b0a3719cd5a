"""Home programme page: exercises with their dose, the pain at which to stop, and the review."""

import datetime as dt

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from gui.pages.progress.planned_exercise import ListedExerciseRow, OwnExerciseRow
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, bind_keys, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.date_field import DateField
from gui.widgets.layouts import card, clear_layout, column, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from measure.domain.exercises import ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.record_checks import LONGEST_NOTE
from measure.domain.records import Person
from measure.errors import InputError
from measure.system.clock import new_id


class HomeProgrammePage(QWidget):
    """Shows the plan in force and takes another. It suggests nothing and counts nothing."""

    #: Plan
    chosen = Signal(object)
    left = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._person: Person | None = None
        self._today = dt.date.min
        self._shown: Plan | None = None
        self.title = label("", "title")
        self.lines = {listed: ListedExerciseRow(appearance, listed) for listed in ListedExercise}
        self.own_lines: list[OwnExerciseRow] = []
        self._own_list = QWidget()
        self._own_rows = QVBoxLayout(self._own_list)
        self.add_own = button(tr("Add an exercise of the clinician's own"))
        self.pain_limit = ChoiceRow(
            list(range(11)), str, may_be_empty=True, title=tr("pain at which to stop")
        )
        self.review = DateField(appearance, tr("day of the review, such as 2026-11-25"))
        self.review.text.setPlaceholderText(tr("such as 2026-11-25; may be left empty"))
        self.chosen_by = QLineEdit()
        self.chosen_by.setAccessibleName(tr("who chose it"))
        self.chosen_by.setPlaceholderText(tr("such as physiotherapist; no name is needed"))
        self.chosen_by.setMaxLength(LONGEST_NOTE)
        self.lacking = label("", "lead")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.end = button(tr("End the programme"))
        self.keep = button(tr("Save"), "main")
        self.add_own.clicked.connect(self._add_own)
        self.leave.clicked.connect(self.left)
        self.end.clicked.connect(self._end)
        self.keep.clicked.connect(self._keep)
        bind_keys(self, self.leave, "Escape")
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self._own_rows.setContentsMargins(0, 0, 0, 0)
        self._own_rows.setSpacing(gap(1.5))
        explained = tr(
            "Enter the exercises that your clinician gave you. Thawline adds nothing to them."
        )
        scale = tr("0 is no pain, 10 the worst imaginable: the number that your clinician set.")
        page = column(
            self.title,
            label(explained, "lead"),
            card(*self.lines.values(), spacing=gap(1.5)),
            card(self._own_list, self.add_own, spacing=gap(1.5)),
            label(tr("Stop when the pain reaches"), "lead"),
            self.pain_limit.row,
            label(scale, "quiet"),
            label(tr("Next review with the clinician"), "lead"),
            self.review,
            label(tr("Chosen by"), "lead"),
            self.chosen_by,
            1,
            margins=(0, 0, 12, 0),
            spacing=gap(1.5),
        )
        column(
            (scrollable(widget_with(page)), 1),
            self.lacking,
            ButtonRow([self.leave, self.end, self.keep]),
            on=self,
            margins=(24, 8, 24, 16),
            spacing=gap(1),
        )

    def show_plan(self, person: Person, plan: Plan | None, today: dt.date) -> None:
        """Show the plan that is in force today, or an empty one."""
        self._person, self._today = person, today
        shown = self._shown = plan if plan is not None and plan.exercises else None
        self.title.setText(tr("Home programme: {person}").format(person=person.pseudonym))
        for line in self.lines.values():
            line.show_planned(shown.planned(line.exercise) if shown else None, person.affected)
        clear_layout(self._own_rows)
        self.own_lines = []
        for planned in shown.exercises if shown else ():
            if planned.exercise.listed is None:
                self._add_line(planned)
        self.pain_limit.choose(shown.pain_limit if shown else None)
        self.review.text.setText(shown.review.isoformat() if shown and shown.review else "")
        self.chosen_by.setText(shown.chosen_by if shown else "")
        self.end.setVisible(shown is not None)
        self._lack("")
        next(iter(self.lines.values())).wanted.setFocus()

    @Slot()
    def _add_own(self) -> None:
        self._add_line(None).name.setFocus()

    def _add_line(self, planned: PlannedExercise | None) -> OwnExerciseRow:
        affected: tuple[Side, ...] = self._person.affected if self._person else ()
        line = OwnExerciseRow(self._appearance, planned, affected)
        line.removed.connect(self._remove_own)
        self.own_lines.append(line)
        self._own_rows.addWidget(line)
        return line

    @Slot()
    def _remove_own(self) -> None:
        line = self.sender()
        if isinstance(line, OwnExerciseRow):
            self.own_lines.remove(line)
            self._own_rows.removeWidget(line)
            line.hide()
            line.deleteLater()
            self.add_own.setFocus()

    def _lack(self, words: str) -> None:
        self.lacking.setText(words)
        self.lacking.setVisible(bool(words))

    @Slot()
    def _keep(self) -> None:
        try:
            listed = [line.planned for line in self.lines.values()]
            own = [line.planned for line in self.own_lines]
            self._keep_plan(tuple(planned for planned in (*listed, *own) if planned))
        except InputError:
            self._lack(
                tr("An exercise of the clinician's own needs a name that no other exercise has.")
            )

    def _keep_plan(self, exercises: tuple[PlannedExercise, ...]) -> None:
        """Tell of the plan, or say what is missing; InputError when two exercises are one."""
        pain_limit, review = self.pain_limit.value, self.review.day
        if not exercises:
            self._lack(tr("No exercise is ticked yet."))
            next(iter(self.lines.values())).wanted.setFocus()
        elif pain_limit is None:
            self._lack(tr("Please choose the pain level at which to stop."))
            self.pain_limit.button(0).setFocus()
        elif self.review.text.text().strip() and (review is None or review < self._today):
            self._lack(tr("A review is written like 2026-11-25 and does not lie before today."))
            self.review.text.setFocus()
        else:
            self._tell(exercises, pain_limit, review)

    @Slot()
    def _end(self) -> None:
        self._tell((), 0, None)

    def _tell(
        self, exercises: tuple[PlannedExercise, ...], pain_limit: int, review: dt.date | None
    ) -> None:
        """Tell of the plan; one that began today is corrected, not followed by another."""
        person, shown = self._person, self._shown
        if person is None:
            return
        corrects = shown is not None and shown.first_day == self._today and bool(exercises)
        self.chosen.emit(
            Plan(
                id=shown.id if shown is not None and corrects else new_id(),
                person_id=person.id,
                first_day=self._today,
                exercises=exercises,
                pain_limit=pain_limit,
                chosen_by=self.chosen_by.text().strip() if exercises else "",
                review=review,
                # Chosen at the terminal alone; a plan that follows here keeps them.
                primary=shown.primary if shown is not None and exercises else (),
            )
        )
