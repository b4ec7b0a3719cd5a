"""Home programme page: exercises with their dose, the pain at which to stop, and the review."""

import datetime as dt
from dataclasses import replace

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QBoxLayout, QLineEdit, QVBoxLayout, QWidget

from gui.pages.exercises.planned_exercise import ListedExerciseRow, OwnExerciseRow
from gui.style.appearance import Appearance
from gui.style.measures import CONTENT_PX, GAP_PX, MARGIN_PX
from gui.text.day_text import day_text
from gui.text.wording import movement_name, tr
from gui.widgets.beside_row import BesideRow
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.date_field import DateField
from gui.widgets.layouts import card, centred, clear_layout, column, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.plain_dialog import plain_dialog
from gui.widgets.scroll_page import bring_into_view, bring_to_top
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.exercises import ListedExercise
from measure.domain.home_programme_records import (
    LEAST_PAIN_LIMIT,
    MOST_PRIMARY,
    Plan,
    PlannedExercise,
)
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.record_checks import LONGEST_NOTE
from measure.domain.records import Person
from measure.errors import InputError
from measure.progress.home_programme import USUAL_PAIN_LIMIT
from measure.system.clock import new_id

#: Text size from which the two days stand one below the other, per cent. [technical]
_BELOW_FROM_PERCENT = 125
#: Width of the field of a day there, in sizes of the text. [technical]
_DAY_WIDTH = 16
#: Least height of the numbers for the pain at which to stop, pixels. [technical]
_SCALE_PX = 80


def _limit_words() -> str:
    return tr("Choose the number that the clinician set.")


def _group(heading: str, *fields: QWidget) -> QWidget:
    """Return a card of fields under their heading."""
    return card(label(heading, "title"), *fields, spacing=GAP_PX)


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
        #: What the fields held when they were shown.
        self._before: tuple[object, ...] = ()
        self.title = label(tr("Home programme"), "display")
        self.lines = {listed: ListedExerciseRow(appearance, listed) for listed in ListedExercise}
        self.own_lines: list[OwnExerciseRow] = []
        self._own_list = QWidget()
        self._own_rows = QVBoxLayout(self._own_list)
        self.add_own = button(tr("Add an exercise of the clinician's own"))
        self.pain_limit = ChoiceRow(
            list(range(LEAST_PAIN_LIMIT, 11)),
            str,
            may_be_empty=True,
            large=True,
            title=tr("pain at which to stop"),
        )
        self.usual_limit = button(
            tr("I have no number: use {limit}").format(limit=USUAL_PAIN_LIMIT),
            "line-link",
        )
        self.usual_limit.clicked.connect(self._choose_usual_limit)
        self.first_day = DateField(appearance, tr("first day"), fills=True)
        self.corrects = WrappingCheckBox(
            appearance, tr("This corrects a mistake: the programme keeps its first day")
        )
        self.review = DateField(appearance, tr("day of the review"), fills=True)
        self.review.text.setPlaceholderText(tr("No day set"))
        self.chosen_by = QLineEdit()
        self.chosen_by.setAccessibleName(tr("who chose it"))
        self.chosen_by.setPlaceholderText(tr("such as physiotherapist; no name is needed"))
        self.chosen_by.setMaxLength(LONGEST_NOTE)
        self.primary = {
            movement: WrappingCheckBox(appearance, movement_name(movement)) for movement in Movement
        }
        self.lacking = label("", "lacking")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.end = button(tr("End the programme"))
        self.keep = button(tr("Save"), "main", key=tr("Ctrl+S"))
        self.add_own.clicked.connect(self._add_own)
        self.leave.clicked.connect(self._leave)
        self.end.clicked.connect(self._end)
        self.keep.clicked.connect(self._keep)
        bind_keys(self, self.leave, "Escape")
        bind_keys(self, self.keep, "Ctrl+S")
        self._make_groups()
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self._own_rows.setContentsMargins(0, 0, 0, 0)
        self._own_rows.setSpacing(gap(2))
        explained = tr(
            "Enter the exercises that the clinician chose. Thawline adds nothing to them."
        )
        self._dates = row(column(self._from, 1), column(self._reviewed, 1))
        self._dates.setSpacing(gap(2))
        self._appearance.changed.connect(self._place_dates)
        self._place_dates()
        # The title stays where it is while the form below it scrolls.
        form = QWidget()
        above = (MARGIN_PX, MARGIN_PX, MARGIN_PX, 0)
        column(centred(self.title, margins=above), (form, 1), on=self, spacing=0)
        frame_page(
            form,
            label(explained),
            self._exercises,
            self._limit,
            self._dates,
            _group(tr("Chosen by"), self.chosen_by),
            self._movements,
            1,
            buttons=[self.leave, self.end, self.keep],
        )

    @Slot()
    def _place_dates(self) -> None:
        """Put the two days side by side where both have room, and leave air among the numbers.

        Below each other their fields are no wider than a day needs.
        """
        beside = self._appearance.percent < _BELOW_FROM_PERCENT
        directions = QBoxLayout.Direction
        self._dates.setDirection(directions.LeftToRight if beside else directions.TopToBottom)
        wide = CONTENT_PX if beside else self._appearance.px(_DAY_WIDTH)
        for day in (self.first_day, self.review):
            day.setMaximumWidth(wide)
        self.pain_limit.row.setMinimumHeight(_SCALE_PX if beside else 0)
        limit = self._limit.layout()
        if limit is not None:
            limit.setSpacing(3 * GAP_PX if beside else 3 * GAP_PX // 2)

    def _make_groups(self) -> None:
        """Put fields under their headings; what is missing is said above its own field."""
        gap = self._appearance.gap
        primary = tr(
            "Choose up to three. If you choose none: external rotation, flexion and hand behind "
            "back."
        )
        self._exercises = card(
            widget_with(column(*self.lines.values(), self._own_list, spacing=gap(2))),
            widget_with(row(self.add_own, 1)),
            spacing=3 * GAP_PX,
        )
        self._limit = self._made_limit()
        self._from = _group(
            tr("Starts on"), widget_with(row((self.first_day, 1), 0)), self.corrects
        )
        self._reviewed = _group(
            tr("Next review with the clinician"), widget_with(row((self.review, 1), 0))
        )
        self._movements = _group(
            tr("Movements that matter most for judging progress"),
            label(primary, "quiet"),
            *self.primary.values(),
        )

    def _made_limit(self) -> QWidget:
        """Return the card of the pain at which to stop: what to choose, the numbers, their ends."""
        self._limit_asked = label(_limit_words())
        worst = label(tr("10: worst imaginable"), "quiet")
        worst.setAlignment(Qt.AlignmentFlag.AlignRight)
        self._limit_meaning = label("", "quiet")
        self.pain_limit.picked.connect(self._say_limit)
        heading = label(tr("Stop when the pain reaches"), "title")
        self._limit_head = column(heading, self._limit_asked, spacing=GAP_PX // 2)
        return card(
            self._limit_head,
            column(
                self.pain_limit.row,
                row(label(tr("1: first pain"), "quiet"), worst),
                spacing=GAP_PX // 2,
            ),
            BesideRow(self._limit_meaning, self.usual_limit),
        )

    @Slot()
    def _say_limit(self) -> None:
        """Say what the chosen number means, and what the usual one is."""
        limit = self.pain_limit.value
        usual = tr("{limit} is Thawline's usual number, an unverified default.")
        said = [usual.format(limit=USUAL_PAIN_LIMIT)]
        if limit is not None:
            words = tr("At {limit} the round stops; {allowed} is still allowed.")
            said.insert(0, words.format(limit=limit, allowed=limit - 1))
        self._limit_meaning.setText("\n".join(said))

    def show_plan(self, person: Person, plan: Plan | None, today: dt.date) -> None:
        """Show the plan that is in force today, or an empty one."""
        self._person, self._today = person, today
        shown = self._shown = plan if plan is not None and plan.exercises else None
        for line in self.lines.values():
            line.show_planned(shown.planned(line.exercise) if shown else None, person.affected)
        clear_layout(self._own_rows)
        self.own_lines = []
        self._own_list.hide()
        for planned in shown.exercises if shown else ():
            if planned.exercise.listed is None:
                self._add_line(planned)
        self.pain_limit.choose(shown.pain_limit if shown else None)
        self._say_limit()
        first_day = shown.first_day if shown else today
        self.first_day.show_day(first_day)
        self.corrects.setChecked(False)
        self.corrects.setVisible(first_day < today)
        self.review.text.setText(day_text(shown.review) if shown and shown.review else "")
        for movement, tick in self.primary.items():
            tick.setChecked(shown is not None and movement in shown.primary)
        self.chosen_by.setText(shown.chosen_by if shown else "")
        self.end.setVisible(shown is not None)
        self._calm()
        first = next(iter(self.lines.values())).wanted
        self._before = self._entered()
        first.setFocus()
        bring_into_view(first)

    @Slot()
    def _choose_usual_limit(self) -> None:
        """Choose the pain at which anyone is stopped of whom no number is known."""
        self.pain_limit.choose(USUAL_PAIN_LIMIT)
        self._say_limit()

    def _entered(self) -> tuple[object, ...]:
        """Return what the fields hold, to be compared."""
        return (
            *(line.planned for line in self.lines.values()),
            *(line.entered for line in self.own_lines),
            self.pain_limit.value,
            self.first_day.text.text(),
            self.corrects.isChecked(),
            self.review.text.text(),
            self.chosen_by.text(),
            *(tick.isChecked() for tick in self.primary.values()),
        )

    @Slot()
    def _leave(self) -> None:
        """Leave the page; ask first where something would be lost."""
        if self._entered() == self._before:
            self.left.emit()
            return
        asked = plain_dialog(
            tr("Leave without saving?"),
            tr("Keep editing"),
            self,
            more=tr("What you have changed here will be lost."),
            agree=tr("Leave without saving"),
        )
        asked.accepted.connect(self.give_up)
        asked.open()

    @Slot()
    def give_up(self) -> None:
        """Leave, and keep nothing of what was entered."""
        self._before = self._entered()
        self.left.emit()

    def keeps_entries_of(self, person: Person | None) -> bool:
        """Return whether something that is not saved yet was entered for this person."""
        same = person is not None and self._person is not None and person.id == self._person.id
        return same and self._entered() != self._before

    @Slot()
    def _add_own(self) -> None:
        self._add_line(None).name.setFocus()

    def _add_line(self, planned: PlannedExercise | None) -> OwnExerciseRow:
        affected: tuple[Side, ...] = self._person.affected if self._person else ()
        line = OwnExerciseRow(self._appearance, planned, affected)
        line.removed.connect(self._remove_own)
        self.own_lines.append(line)
        self._own_rows.addWidget(line)
        self._own_list.show()
        return line

    @Slot()
    def _remove_own(self) -> None:
        line = self.sender()
        if isinstance(line, OwnExerciseRow):
            self.own_lines.remove(line)
            self._own_rows.removeWidget(line)
            line.hide()
            line.deleteLater()
            self._own_list.setVisible(bool(self.own_lines))
            self.add_own.setFocus()

    def _lack(self, words: str, group: QWidget, field: QWidget) -> None:
        """Say what is missing above its field, under the heading, and lead there."""
        self._limit_asked.setVisible(group is not self._limit)
        layout = group.layout()
        if group is self._limit:
            layout = self._limit_head
        if isinstance(layout, QVBoxLayout):
            layout.insertWidget(0 if group is self._exercises else 1, self.lacking)
        self.lacking.setText(words)
        self.lacking.show()
        give_role(group, "lacking-card")
        field.setFocus()
        bring_to_top(group)

    def _calm(self) -> None:
        """Say of nothing that it is missing."""
        self._limit_asked.show()
        self.lacking.setText("")
        self.lacking.hide()
        for group in (self._exercises, self._limit, self._from, self._reviewed, self._movements):
            give_role(group, "card")

    @Slot()
    def _keep(self) -> None:
        self._calm()
        try:
            listed = [line.planned for line in self.lines.values()]
            own = [line.planned for line in self.own_lines]
            self._keep_plan(tuple(planned for planned in (*listed, *own) if planned))
        except InputError:
            words = tr(
                "An exercise of the clinician's own needs a name that no other exercise has."
            )
            self._lack(words, self._exercises, self.add_own)

    def _keep_plan(self, exercises: tuple[PlannedExercise, ...]) -> None:
        """Tell of the plan, or say what is missing; InputError when two exercises are one."""
        shown, pain_limit, first_day = self._shown, self.pain_limit.value, self.first_day.day
        primary = tuple(movement for movement, tick in self.primary.items() if tick.isChecked())
        if not exercises:
            first = next(iter(self.lines.values())).wanted
            self._lack(tr("No exercise is ticked yet."), self._exercises, first)
        elif pain_limit is None:
            self._lack(_limit_words(), self._limit, self.pain_limit.button(LEAST_PAIN_LIMIT))
        elif first_day is None or first_day > self._today:
            words = tr("Enter the first day as {day}. It cannot be after today.").format(
                day=day_text(self._today)
            )
            self._lack(words, self._from, self.first_day.text)
        elif not self._review_possible(first_day):
            words = tr("Enter the review as {day}. It cannot be before today.").format(
                day=day_text(self._today)
            )
            self._lack(words, self._reviewed, self.review.text)
        elif len(primary) > MOST_PRIMARY:
            words = tr("Choose at most three movements.")
            self._lack(words, self._movements, next(iter(self.primary.values())))
        elif self._person is not None:
            plan = Plan(
                id=new_id(),
                person_id=self._person.id,
                first_day=first_day,
                exercises=exercises,
                pain_limit=pain_limit,
                chosen_by=self.chosen_by.text().strip(),
                review=self.review.day,
                primary=primary,
            )
            self._tell(plan if shown is None else self._following(plan, shown))

    def _review_possible(self, first_day: dt.date) -> bool:
        """Return whether the review is empty, or a day to come, or as it was."""
        review = self.review.day
        if not self.review.text.text().strip():
            return True
        if review is None or review < first_day:
            return False
        return review >= self._today or (self._shown is not None and review == self._shown.review)

    def _following(self, plan: Plan, shown: Plan) -> Plan:
        """Return the plan as the one that is shown, corrected, or as one that follows it.

        Only what changes something for the shoulder begins another programme.
        """
        corrects = self.corrects.isChecked() or shown.first_day == self._today
        if corrects or plan.prescribes_the_same_as(shown):
            return replace(plan, id=shown.id)
        chosen_anew = plan.first_day > shown.first_day
        return plan if chosen_anew else replace(plan, first_day=self._today)

    @Slot()
    def _end(self) -> None:
        if self._person is not None:
            self._tell(
                Plan(
                    id=new_id(),
                    person_id=self._person.id,
                    first_day=self._today,
                    exercises=(),
                    pain_limit=0,
                )
            )

    def _tell(self, plan: Plan) -> None:
        """Hand on a plan that says something new."""
        self._before = self._entered()
        if plan == self._shown:
            self.left.emit()
        else:
            self.chosen.emit(plan)
