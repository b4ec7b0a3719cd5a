"""Start pages in a clinic: who is measured, then what."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import (
    QGridLayout,
    QLineEdit,
    QSizePolicy,
    QStackedWidget,
    QWidget,
)

from gui.pages.measuring.conduct_choice import ConductChoice
from gui.pages.measuring.first_movement import MovementStrip
from gui.pages.measuring.session_state import SessionStateChoice
from gui.protocol.plan import baseline_tasks, clinic_task
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import (
    affected_name,
    listed_name,
    movement_introduced,
    person_name,
    side_title,
    tr,
)
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import FlowRow, card, column, row, separator, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import ElidedLabel, label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Person

#: Minutes that the full baseline takes: ten times two raises and the walk back. [project]
BASELINE_MIN = 4
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
        self.at_home = button(tr("I measure at home"))
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
        nothing = label(tr("Nothing is saved: no name, no answers, no results."))
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
    """Asks what is measured: the full baseline, or one movement."""

    #: tuple[MovementTask, ...]
    baseline_wanted = Signal(object)
    #: MovementTask
    movement_wanted = Signal(object)
    back = Signal()
    person_edited = Signal(object)

    def __init__(
        self, appearance: Appearance, settings: WindowSettings, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._appearance, self._settings = appearance, settings
        self._person: Person | None = None
        #: Whether nobody has said yet which shoulder of the person is stiff.
        self._new = True
        #: Who is measured, or that nothing is saved.
        self.who = ElidedLabel("quiet")
        self.who.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("Stiff shoulder"),
            large=True,
            may_be_empty=True,
        )
        #: Whether the full baseline is measured; otherwise one movement.
        self.whole: ChoiceRow[bool] = ChoiceRow(
            [True, False],
            lambda whole: tr("All 5 movements") if whole else tr("One movement"),
            title=tr("What to measure"),
            large=True,
        )
        self.baseline = button(tr("Measure all 5 movements"), "main", key=tr("B"))
        self.movement = ChoiceRow(
            list(Movement),
            movement_introduced,
            columns=1,
            title=tr("the movement to measure"),
            may_be_empty=True,
        )
        self.side = ChoiceRow(
            list(Side), side_title, title=tr("the side to measure"), large=True, may_be_empty=True
        )
        self.single = button("", "main", key=tr("C"))
        self.how = ConductChoice(appearance, settings)
        self.state = SessionStateChoice(
            appearance, tr("Pain relief was taken in the last four hours"), ticked_elsewhere=True
        )
        self.other_person = button(tr("Back"), key=tr("Escape"))
        self.strip = MovementStrip(appearance)
        self._lay_out()
        self.baseline.clicked.connect(self._begin_baseline)
        self.single.clicked.connect(self._begin_single)
        self.other_person.clicked.connect(self.back)
        self.affected.picked.connect(self._affected_picked)
        self.whole.picked.connect(self._change_way)
        self.movement.picked.connect(self._show_choice)
        self.side.picked.connect(self._show_choice)
        self._appearance.changed.connect(self._show_choice)
        self._show_choice()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        words = tr("Both sides, 2 trials: about {minutes} minutes")
        lead = label(words.format(minutes=BASELINE_MIN))
        heading = label(tr("Which shoulder is stiff?"), "title")
        note = label(tr("The other arm comes first. Neither stiff? Leave it blank."))
        self._note = widget_with(column(note))
        self._asked_stiff = widget_with(
            column(heading, self.affected.row, self._note, spacing=gap(1))
        )
        self._length = widget_with(column(lead))
        side = label(tr("Which side is measured?"), "title")
        self._asked_side = widget_with(column(side, self.side.row, spacing=gap(1)))
        what = column(
            label(tr("Movements"), "title"),
            self.whole.row,
            self._length,
            self.movement.row,
            1,
            spacing=gap(1),
        )
        asked = column(self._asked_stiff, self._asked_side, 1, spacing=gap(3))
        chosen = SideBySide(self._appearance, (what, 1), (asked, 1), spacing=gap(4))
        position = label(tr("Position and help"), "title")
        conduct = card(position, self.how, self.state.pain_relief, 1, spacing=gap(1))
        below = SideBySide(self._appearance, (conduct, 1), (card(self.state), 1), spacing=gap(2))
        frame_page(
            self,
            row((label(tr("What to measure"), "display"), 1), (self.who, 1)),
            card(chosen, self.strip, spacing=gap(2)),
            below,
            1,
            buttons=[self.other_person, self.baseline, self.single],
        )

    def ask(self, person: Person) -> None:
        """Ask anew, for a person: no movement is chosen, the full baseline is offered."""
        self._new = not person.affected
        self.whole.choose(True)
        self.how.fold()
        self.movement.choose(None)
        self.side.choose(None)
        self.show_person(person)

    def show_person(self, person: Person) -> None:
        """Show who is measured."""
        self._person = person
        self.who.say(person_name(person))
        self.affected.choose(person.affected)
        if self.side.value is None and len(person.affected) == 1:
            self.side.choose(person.affected[0])
        self._show_choice()
        self.keep_focus()

    def keep_focus(self) -> None:
        """Put the keyboard on the button that begins."""
        begins = self.baseline if self.whole.value else self.single
        (begins if begins.isEnabled() else self.whole.button(False)).setFocus()

    def prefer(self, movement: Movement, side: Side) -> None:
        """Put the choice on a movement and side."""
        self.whole.choose(False)
        self.movement.choose(movement)
        self.side.choose(side)
        self._show_choice()

    @Slot()
    def _change_way(self) -> None:
        """Ask what the other way needs; its button may take the place of the one in focus."""
        self.whole.button(bool(self.whole.value)).setFocus()
        self._show_choice()

    @Slot()
    def _show_choice(self) -> None:
        """Ask for what the chosen way needs, and let its button begin it."""
        whole, movement, side = bool(self.whole.value), self.movement.value, self.side.value
        roomy = self._appearance.percent < LARGE_FROM_PERCENT
        self._asked_stiff.setVisible(whole or self._new)
        self._note.setVisible(whole)
        self.strip.setVisible(whole and roomy)
        self._length.setVisible(whole)
        self.baseline.setVisible(whole)
        self.movement.row.setVisible(not whole)
        self._asked_side.setVisible(not whole)
        self.single.setVisible(not whole)
        self.single.setEnabled(movement is not None and side is not None)
        if movement is None:
            self.single.say(tr("Choose the movement first"))
        else:
            ready = side is not None
            self.single.say(tr("Measure this movement") if ready else tr("Choose the side first"))

    @Slot()
    def _affected_picked(self) -> None:
        stiff = self.affected.value or ()
        if not self.whole.value and self.side.value is None and len(stiff) == 1:
            self.side.choose(stiff[0])
        self._show_choice()
        if self._person is not None:
            affected = self.affected.value or ()
            self._person = replace(self._person, affected=affected)
            self.person_edited.emit(self._person)

    @Slot()
    def _begin_baseline(self) -> None:
        self._settings.conduct = self.how.conduct
        self.baseline_wanted.emit(baseline_tasks(self.affected.value or ()))

    @Slot()
    def _begin_single(self) -> None:
        movement, side = self.movement.value, self.side.value
        if movement is None or side is None:
            return
        self._settings.conduct = self.how.conduct
        self.movement_wanted.emit(clinic_task(movement, side))


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
        self.what.back.connect(self.ask_who)

    @Slot()
    def ask_who(self) -> None:
        self.setCurrentWidget(self.who)
        self.who.ask()

    def ask_what(self, person: Person) -> None:
        self.what.ask(person)
        self.what.state.ask()
        self.setCurrentWidget(self.what)
