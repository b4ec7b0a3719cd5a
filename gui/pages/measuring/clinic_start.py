"""Start pages in a clinic: who is measured, then what."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import partial
from math import ceil

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import (
    QGridLayout,
    QLineEdit,
    QSizePolicy,
    QStackedWidget,
    QWidget,
)

from gui.pages.measuring.conditions import ConductChoice, SessionStateChoice
from gui.pages.measuring.first_movement import counted_minutes, tasks_words
from gui.protocol.plan import MovementTask, baseline_tasks
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import affected_name, listed_name, person_name, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.figures.movement_tile import MovementTiles
from gui.widgets.layouts import FlowRow, card, column, row, separator
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import SideBySide
from gui.widgets.text import ElidedLabel, label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Person

#: Minutes that a movement of an arm takes: two raises and the walk back. [project]
_TASK_MIN = 0.4
#: People beside the last one who stand on buttons of their own. [technical]
_RECENT = 3
#: Most letters of a name on a button; a longer one is shortened. [technical]
_MOST_LETTERS = 18


def _shortened(name: str) -> str:
    return name if len(name) <= _MOST_LETTERS else f"{name[: _MOST_LETTERS - 1]}\u2026"


class WhoPage(QWidget):
    """Asks who is measured: a new person, the last one, another one, or nobody to be saved."""

    #: A new pseudonym.
    person_wanted = Signal(str)
    person_chosen = Signal(str)
    guest_wanted = Signal()
    #: The identifier of a person whose progress is to be shown.
    progress_wanted = Signal(str)
    home = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        gap = appearance.gap
        self.name = QLineEdit()
        self.name.setMaxLength(60)
        self.name.setPlaceholderText(tr("Name or number"))
        self.name.setTextMargins(GAP_PX // 2, 0, 0, 0)
        self.name.setAccessibleName(tr("Pseudonym of the new person"))
        self.new = button(tr("New person"), "main", key=tr("Enter"))
        self.last = button("", "large")
        self._recent = FlowRow(gap(1), most_columns=3)
        self.others = MenuButton(tr("Another person"))
        self.progress = MenuButton(tr("Open progress"))
        self.not_saved = button(tr("Do not save"))
        self.at_home = button(tr("I measure at home"), "link")
        self._last_id = ""
        self.name.returnPressed.connect(self._add)
        self.new.clicked.connect(self._add)
        self.last.clicked.connect(self._choose_last)
        self.others.picked.connect(self._choose_other)
        self.progress.picked.connect(self._open_progress)
        self.not_saved.clicked.connect(self.guest_wanted)
        self.at_home.clicked.connect(self.home)
        self._here = card(
            label(tr("Someone measured before"), "title"),
            self.last,
            self._recent,
            row(self.others, 1),
            spacing=gap(1),
        )
        self._lay_out()

    def _lay_out(self) -> None:
        """Put what is typed or said at the left, and the buttons in one column at the right."""
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(GAP_PX * 2)
        grid.setVerticalSpacing(GAP_PX)
        grid.setColumnStretch(0, 1)
        nothing = label(tr("Nothing is saved: no name, no answers, no results."), "quiet")
        for line, (title, words, press) in enumerate(
            (
                (tr("Someone new"), self.name, self.new),
                (tr("Without saving"), nothing, self.not_saved),
            )
        ):
            grid.addWidget(label(title, "title"), 4 * line, 0, 1, 2)
            grid.addWidget(words, 4 * line + 1, 0)
            grid.addWidget(press, 4 * line + 1, 1)
        no_real = label(tr("No real name is needed; a pseudonym will do."), "quiet")
        grid.addWidget(no_real, 2, 0, 1, 2)
        apart = column(separator(), margins=(0, GAP_PX, 0, GAP_PX))
        grid.addLayout(apart, 3, 0, 1, 2)
        frame_page(
            self,
            label(tr("Who is being measured?"), "display"),
            self._here,
            card(grid),
            buttons=[self.at_home, self.progress],
            short=True,
            from_top=True,
        )

    def show_people(self, people: Sequence[Person], chosen: str | None) -> None:
        """Offer these people; of made-up ones, who are not measured, only the progress."""
        everyone = {person.id: listed_name(person) for person in people}
        opens = tr("Open progress")
        self.progress.offer(["", *everyone], lambda key: everyone[key] if key else opens)
        self.progress.setVisible(bool(everyone))
        real = [person for person in people if not person.demo]
        last = next((person for person in real if person.id == chosen), None)
        self._last_id = last.id if last else ""
        self.last.setVisible(last is not None)
        if last is not None:
            self.last.say(tr("Last: {name}").format(name=_shortened(person_name(last))))
        rest = [person for person in reversed(real) if person is not last]
        self._offer_recent(rest[:_RECENT])
        others = {person.id: person_name(person) for person in rest[_RECENT:]}
        self.others.offer(["", *others], lambda key: others[key] if key else tr("Another person"))
        self.others.setVisible(bool(others))
        self._here.setVisible(bool(real))

    def _offer_recent(self, people: Sequence[Person]) -> None:
        buttons = []
        for person in people:
            choice = button(_shortened(person_name(person)))
            choice.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            choice.setAccessibleName(person_name(person))
            choice.setToolTip(person_name(person))
            choice.clicked.connect(partial(self._choose_other, person.id))
            buttons.append(choice)
        self._recent.offer(buttons)
        self._recent.setVisible(bool(buttons))

    def ask(self) -> None:
        """Ask anew, the keyboard in the field of the new name."""
        self.name.clear()
        self.name.setFocus()

    @Slot()
    def _add(self) -> None:
        if self.name.text().strip():
            self.person_wanted.emit(self.name.text())
        else:
            self.name.setFocus()

    @Slot(object)
    def _choose_other(self, person_id: str, _checked: bool = False) -> None:
        if person_id:
            self.person_chosen.emit(person_id)

    @Slot(object)
    def _open_progress(self, person_id: str) -> None:
        self.progress.choose("")
        if person_id:
            self.progress_wanted.emit(person_id)

    @Slot()
    def _choose_last(self) -> None:
        self.person_chosen.emit(self._last_id)


class WhatPage(QWidget):
    """Asks what is measured: all movements on both sides, as at first, or some of them."""

    #: tuple[MovementTask, ...]
    begin = Signal(object)
    back = Signal()
    person_edited = Signal(object)

    def __init__(
        self, appearance: Appearance, settings: WindowSettings, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._appearance, self._settings = appearance, settings
        self._person: Person | None = None
        #: Who is measured, or that nothing is saved.
        self.who = ElidedLabel("quiet")
        self.who.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.length = label("", "title")
        #: Ticks all movements, or none.
        self.every = button("", "line-link")
        self.tiles = MovementTiles(appearance, tuple(Movement))
        self.arms = _sides_row(tr("Arm to measure"))
        self.affected = _sides_row(tr("Stiff shoulder"), may_be_empty=True)
        self.how = ConductChoice(appearance, settings)
        self.state = SessionStateChoice(
            appearance, tr("Pain relief was taken in the last four hours"), ticked_elsewhere=True
        )
        self.other_person = button(tr("Back"), key=tr("Escape"))
        self.start = button("", "main", key=tr("B"))
        self._lay_out()
        self.every.clicked.connect(self._tick_all_or_none)
        self.tiles.picked.connect(self._show_choice)
        self.arms.picked.connect(self._show_choice)
        self.affected.picked.connect(self._affected_picked)
        self.other_person.clicked.connect(self.back)
        self.start.clicked.connect(self._begin)
        self.prefer(Movement, Side)

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        arms, stiff = (
            (column(label(title, "title"), choice.row, spacing=gap(1)), 1)
            for title, choice in (
                (tr("Which arm is measured?"), self.arms),
                (tr("Which shoulder is stiff?"), self.affected),
            )
        )
        conduct = column(self.how, (self.state.pain_relief, 1), spacing=gap(1))
        frame_page(
            self,
            row((label(tr("What to measure"), "display"), 1), (self.who, 1)),
            card(row((self.length, 1), self.every, spacing=gap(2)), self.tiles, spacing=gap(1.5)),
            card(
                SideBySide(self._appearance, arms, stiff, spacing=gap(4)),
                SideBySide(self._appearance, (conduct, 1), (self.state, 1), spacing=gap(4)),
                spacing=gap(2),
            ),
            1,
            buttons=[self.other_person, self.start],
        )

    def ask(self, person: Person) -> None:
        """Ask anew, for a person: all movements of both arms are offered."""
        self.prefer(Movement, Side)
        self.how.fold()
        self.show_person(person)

    def show_person(self, person: Person) -> None:
        """Show who is measured."""
        self._person = person
        self.who.say(person_name(person))
        self.affected.choose(person.affected)
        self.keep_focus()

    def keep_focus(self) -> None:
        """Put the keyboard on the button that begins, or on the first movement."""
        first = self.tiles.boxes[Movement.FLEXION]
        (self.start if self.start.isEnabled() else first).setFocus()

    def prefer(self, movements: Iterable[Movement], sides: Iterable[Side]) -> None:
        """Put the choice on movements and sides."""
        self.tiles.tick(tuple(movements))
        self.arms.choose(tuple(sides))
        self._show_choice()

    @property
    def tasks(self) -> tuple[MovementTask, ...]:
        """What is measured, in its order."""
        return baseline_tasks(
            self.affected.value or (), self.tiles.ticked, self.arms.value or tuple(Side)
        )

    @Slot()
    def _show_choice(self) -> None:
        """Say what is measured and how long that takes."""
        tasks, all_ticked = self.tasks, len(self.tiles.ticked) == len(Movement)
        minutes = ceil(_TASK_MIN * len(tasks))
        words = tr("2 trials each, about {minutes}").format(minutes=counted_minutes(minutes))
        self.length.setText(words if tasks else "")
        self.every.say(tr("Clear all") if all_ticked else tr("Choose all"))
        measured = tr("Measure {tasks}").format(tasks=tasks_words(tasks))
        self.start.say(measured if tasks else tr("Choose a movement first"))
        if not tasks and self.start.hasFocus():
            self.every.setFocus()
        self.start.setEnabled(bool(tasks))

    @Slot()
    def _tick_all_or_none(self) -> None:
        all_ticked = len(self.tiles.ticked) == len(Movement)
        self.tiles.tick(() if all_ticked else tuple(Movement))

    @Slot()
    def _affected_picked(self) -> None:
        if self._person is not None:
            self._person = replace(self._person, affected=self.affected.value or ())
            self.person_edited.emit(self._person)

    @Slot()
    def _begin(self) -> None:
        self._settings.conduct = self.how.conduct
        self.begin.emit(self.tasks)


def _sides_row(title: str, *, may_be_empty: bool = False) -> ChoiceRow[tuple[Side, ...]]:
    """Return the choice of the left side, the right one or both."""
    return ChoiceRow(
        [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
        affected_name,
        title=title,
        may_be_empty=may_be_empty,
    )


class ClinicStart(QStackedWidget):
    """Who, then what."""

    def __init__(
        self, appearance: Appearance, settings: WindowSettings, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.who = WhoPage(appearance)
        self.what = WhatPage(appearance, settings)
        self.addWidget(self.who)
        self.addWidget(self.what)

    @Slot()
    def ask_who(self) -> None:
        self.setCurrentWidget(self.who)
        self.who.ask()

    def ask_what(self, person: Person) -> None:
        self.what.ask(person)
        self.what.state.ask()
        self.setCurrentWidget(self.what)
