"""Start page at home: what is measured today, and one button to begin."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.pages.measuring.conditions import ConductChoice
from gui.pages.measuring.first_movement import drawn_tasks, length_words
from gui.protocol.plan import MovementTask, home_tasks, planned_tasks
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.chart_wording import weekday_name
from gui.text.wording import affected_name, movement_introduced, tr
from gui.widgets.buttons import MenuButton, button, give_role
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.figures.movement_tile import MovementTiles
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.landmarks import Side
from measure.domain.records import History, Person
from measure.progress.home_programme import Irritability, irritability_on, pain_to_rest_from
from measure.progress.measuring_plan import MeasuringPlan

#: Width and height of a movement drawn before its name, pixels. [technical]
_LINE_PX = (80, 96)
#: Space above and below a hairline, in gaps. [technical]
_AROUND_RULES = 2
#: Movements that have room side by side in larger text too. [technical]
_FEW = 3
#: Text size from which words need the whole width, per cent. [technical]
_ALONE_FROM_PERCENT = 175


class HomeStart(QWidget):
    """Shows today's movements; another choice is folded away."""

    #: tuple[MovementTask, ...]
    begin = Signal(object)
    #: The other pace is wanted.
    clinic = Signal()
    person_edited = Signal(object)
    #: The facts about the person shall be shown.
    facts_wanted = Signal()
    #: Today's pain is to be noted, and nothing measured.
    pain_wanted = Signal()
    person_added = Signal()

    def __init__(
        self, appearance: Appearance, settings: WindowSettings, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._settings = settings
        self._person: Person | None = None
        self.plan: MeasuringPlan | None = None
        self.title = label("", "display")
        self.sentence = label("", "title")
        #: What is said first on a day on which pain asked for a rest.
        self.rest_words = label("", "lead")
        self._rest = card(self.rest_words, role="notice-card")
        self._today = dt.date.min
        #: Whose shoulder was said to be sore, and on which day.
        self._sore_days: set[tuple[str, dt.date]] = set()
        self._tasks = QVBoxLayout()
        self.person = MenuButton(tr("Person"))
        self.edit_person = button(tr("Edit"))
        self.add_person = button(tr("Add a person"))
        self.choose = button("", "link", checkable=True)
        self.choose.setChecked(settings.own_choice)
        self.tiles = MovementTiles(appearance, settings.movements)
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("Stiff shoulder"),
            may_be_empty=True,
        )
        self.sore = WrappingCheckBox(
            appearance,
            tr("Sore today? Do a shorter session (two trials, no hand behind the back)"),
        )
        self.note_pain = button(tr("Note today's pain"))
        self._state = widget_with(row((self.sore, 1), self.note_pain, spacing=appearance.gap(2)))
        self.how = ConductChoice(appearance, settings)
        self.in_clinic = button(tr("I measure patients in a clinic"), "link")
        self.start = button(tr("Start measuring"), "main", key=tr("Enter"))
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self._tasks.setContentsMargins(0, 0, 0, 0)
        self._tasks.setSpacing(gap(1))
        self._headline = row((self.sentence, 1), spacing=gap(2))
        self._below_tasks, self._below_boxes, self._below_asked = (row(1) for _ in range(3))
        today = column(
            self._headline,
            self._tasks,
            1,
            self._below_tasks,
            self.tiles,
            self._below_boxes,
            spacing=gap(1.5),
        )
        stiff_title = label(tr("Which shoulder is stiff?"), "title")
        how_title = label(tr("How are the movements done?"), "title")
        stiff, how = (
            column(title, choice, 1, spacing=gap(1))
            for title, choice in ((stiff_title, self.affected.row), (how_title, self.how))
        )
        asked = SideBySide(self._appearance, (stiff, 1), (how, 1), spacing=gap(4))
        self._own = widget_with(
            column(asked, self._below_asked, separator(), spacing=gap(_AROUND_RULES))
        )
        who = (self.person, self.edit_person, self.add_person)
        self._who = widget_with(row(label_of(tr("Person")), *who, 1, spacing=gap(1)))
        self._who_rule, self._who_below = separator(), row()
        self._head = row((self.title, 1), spacing=gap(2))
        below = column(self._own, self._state, self._who_rule, self._who_below)
        below.setSpacing(gap(_AROUND_RULES))
        frame_page(
            self,
            self._head,
            self._rest,
            card(today),
            card(below),
            1,
            buttons=[self.in_clinic, self.start],
        )

    def _connect(self) -> None:
        self.start.clicked.connect(self._begin)
        self.in_clinic.clicked.connect(self.clinic)
        self.edit_person.clicked.connect(self.facts_wanted)
        self.note_pain.clicked.connect(self.pain_wanted)
        self.add_person.clicked.connect(self.person_added)
        self.affected.picked.connect(self._affected_picked)
        self._appearance.changed.connect(self.refresh)
        self.choose.toggled.connect(self._choose_toggled)
        self.tiles.picked.connect(self.refresh)
        self.sore.toggled.connect(self.refresh)
        self.sore.clicked.connect(self._note_sore)
        self._rest.hide()
        self.refresh()

    def show_person(self, person: Person | None) -> None:
        """Show who is measured."""
        self._person = person
        self.edit_person.setVisible(person is not None)
        self.note_pain.setVisible(person is not None and not person.demo)
        if person is not None:
            self.affected.choose(person.affected)
        self.sore.setChecked(self._sore_key in self._sore_days)
        self.refresh()

    def show_day(self, history: History, today: dt.date) -> None:
        """Show first whether pain of this day asks for a rest or for less."""
        self._today = today
        rest = pain_to_rest_from(history, today)
        if irritability_on(history, today) is Irritability.HIGH:
            self._sore_days.add(self._sore_key)
        self.sore.setChecked(self._sore_key in self._sore_days)
        self._rest.setVisible(rest is not None)
        words = tr("Pain reached {pain} of 10 today. Let the shoulder rest; carry on another day.")
        self.rest_words.setText(words.format(pain=rest))
        give_role(self.start, "main" if rest is None else "")
        self.start.say(tr("Start measuring") if rest is None else tr("Measure all the same"))

    @property
    def _sore_key(self) -> tuple[str, dt.date]:
        return (self._person.id if self._person is not None else "", self._today)

    @Slot(bool)
    def _note_sore(self, sore: bool) -> None:
        """Remember it for this person and this day alone."""
        (self._sore_days.add if sore else self._sore_days.discard)(self._sore_key)

    def show_plan(self, plan: MeasuringPlan | None) -> None:
        """Show what is due."""
        self.plan = plan
        self.refresh()

    @property
    def tasks(self) -> tuple[MovementTask, ...]:
        """The tasks of the session, as planned or as chosen."""
        if self.choose.isChecked() or self.plan is None:
            affected = self.affected.value or ()
            stiff = affected[0] if len(affected) == 1 else None
            return home_tasks(self.tiles.ticked, stiff, sore_day=self.sore.isChecked())
        return planned_tasks(self.plan.tasks, sore_day=self.sore.isChecked())

    @property
    def nothing_left(self) -> bool:
        """Whether a sore day leaves out all that is planned or chosen."""
        return self.sore.isChecked() and not self.tasks and not self.nothing_chosen

    @property
    def nothing_chosen(self) -> bool:
        """Whether the person's own choice is wanted, and no movement is ticked."""
        return self.choose.isChecked() and not self.tiles.ticked

    def keep_focus(self) -> None:
        """Put the keyboard on the way on, or on another choice where there is none."""
        if self.nothing_chosen:
            self.tiles.boxes[self._settings.movements[0]].setFocus()
        else:
            (self.choose if self.nothing_left else self.start).setFocus()

    @Slot()
    def refresh(self) -> None:
        """Say what is measured today."""
        plan = self.plan
        own = self.choose.isChecked()
        self.choose.say(
            tr("Back to the suggested movements") if own else tr("Choose the movements yourself")
        )
        roomy = self._appearance.percent < LARGE_FROM_PERCENT
        largest = self._appearance.percent >= _ALONE_FROM_PERCENT
        give_role(self.choose, "line-link" if roomy else "link")
        if roomy:
            self._headline.addWidget(self.choose)
        elif own:
            (self._below_asked if largest else self._below_boxes).insertWidget(0, self.choose)
        else:
            self._below_tasks.insertWidget(0, self.choose)
        self.tiles.setVisible(own)
        self._own.setVisible(own)
        # Who is measured stands in the head; it is changed on the page of the suggested movements.
        (self._head if roomy else self._who_below).addWidget(self._who)
        self._who.setHidden(own and roomy)
        self._who_rule.setHidden(roomy)
        tasks = self.tasks
        due = plan is None or plan.due or own
        suggested = tr("Today") if due else _next_words(plan)
        if self.nothing_left:
            suggested = tr("Nothing to measure today")
        self.title.setText(tr("Choose today's movements") if own else suggested)
        minutes = plan.minutes(len(tasks)) if plan is not None else len(tasks)
        said = length_words(tasks, minutes) if tasks else tr("Choose at least one movement.")
        if self.nothing_left:
            said = tr("The hand behind the back is left out on a sore day.")
        self.sentence.setText(said)
        self.start.setHidden(self.nothing_left)
        self.start.setEnabled(not self.nothing_chosen)
        clear_layout(self._tasks)
        if tasks and not own:
            self._list(tasks)

    def _list(self, tasks: Sequence[MovementTask]) -> None:
        """Show each movement once, drawn beside the others, or one below the other in large text.

        Beneath them stands when they are best done.
        """
        once = {task.movement: task for task in reversed(tasks)}
        shown = list(reversed(once.values()))
        percent, few = self._appearance.percent, len(shown) <= _FEW
        if percent < LARGE_FROM_PERCENT or (few and percent < _ALONE_FROM_PERCENT):
            self._tasks.addWidget(drawn_tasks(self._appearance, shown))
        else:
            for task in shown:
                self._tasks.addWidget(self._line(task))
        words = _when_best(self.plan)
        if self.plan is not None and self.plan.whole:
            words = tr("Once a week, all movements of both arms are measured.") + " " + words
        apart = (0, self._appearance.gap(1), 0, 0)
        self._tasks.addWidget(widget_with(column(label(words, "quiet"), margins=apart)))

    def _line(self, task: MovementTask) -> QWidget:
        """Return the line of a movement, its drawing in front."""
        figure = PositionView(self._appearance, still=True, close=True)
        figure.setFixedSize(*_LINE_PX)
        figure.show_movement(task.movement, task.side)
        words = label(movement_introduced(task.movement))
        return widget_with(row(figure, (words, 1), spacing=self._appearance.gap(2)))

    @Slot(bool)
    def _choose_toggled(self, own: bool) -> None:
        self._settings.own_choice = own
        self.how.fold()
        self.refresh()

    @Slot()
    def _affected_picked(self) -> None:
        if self._person is not None:
            self.person_edited.emit(replace(self._person, affected=self.affected.value or ()))

    @Slot()
    def _begin(self) -> None:
        if self.nothing_left or self.nothing_chosen:
            return
        if self.choose.isChecked():
            self._settings.movements = self.tiles.ticked
        self._settings.conduct = self.how.conduct
        self.how.fold()
        self.begin.emit(self.tasks)


def label_of(text: str) -> QWidget:
    """Return a label that stands before what it names, on one line."""
    made = label(text, "quiet")
    made.setWordWrap(False)
    return widget_with(row(made))


def _next_words(plan: MeasuringPlan | None) -> str:
    if plan is None:
        return tr("Today")
    return tr("Next on {day}").format(day=weekday_name(plan.next_day))


def _when_best(plan: MeasuringPlan | None) -> str:
    if plan is None or plan.usual_time is None:
        return tr("Best at the same time of day, before your exercises.")
    return tr("Best at about {time}, as most times before, and before your exercises.").format(
        time=f"{plan.usual_time:%H:%M}"
    )
