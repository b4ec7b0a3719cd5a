"""Start pages in a clinic: who is measured, then what."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QLineEdit, QStackedWidget, QWidget

from gui.pages.measuring.conduct_choice import ConductChoice
from gui.protocol.plan import MovementTask, baseline_tasks, clinic_task
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.wording import affected_name, movement_name, side_title, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card, column, row
from gui.widgets.page_frame import frame_page
from gui.widgets.position_figure import PositionView
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Person

#: Minutes that the full baseline takes: ten times two raises and the walk back. [project]
BASELINE_MIN = 4
#: Least height of the drawn person, pixels. [technical]
_FIGURE_PX = 150


class WhoPage(QWidget):
    """Asks who is measured: a new person, the last one, another one, or nobody to be saved."""

    #: A new pseudonym.
    person_wanted = Signal(str)
    person_chosen = Signal(str)
    guest_wanted = Signal()
    home = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        gap = appearance.gap
        self.name = QLineEdit()
        self.name.setMaxLength(60)
        self.name.setPlaceholderText(tr("Pseudonym"))
        self.name.setAccessibleName(tr("Pseudonym of the new person"))
        self.new = button(tr("New person"), "main", key=tr("Enter"))
        self.last = button("")
        self.others = MenuButton(tr("Another person"))
        self.not_saved = button(tr("Do not save"))
        self.at_home = button(tr("I measure at home"), "link")
        self._last_id = ""
        self.name.returnPressed.connect(self._add)
        self.new.clicked.connect(self._add)
        self.last.clicked.connect(self._choose_last)
        self.others.picked.connect(self._choose_other)
        self.not_saved.clicked.connect(self.guest_wanted)
        self.at_home.clicked.connect(self.home)
        self._here = card(
            label(tr("Someone measured before"), "title"),
            row(self.last, self.others, 1, spacing=gap(2)),
        )
        frame_page(
            self,
            label(tr("Who is measured?"), "display"),
            card(
                label(tr("New"), "title"),
                row((self.name, 1), self.new, spacing=gap(2)),
                label(tr("A pseudonym or a number; no real name is needed"), "small"),
                spacing=gap(1),
            ),
            self._here,
            card(
                label(tr("Without saving"), "title"),
                row(
                    self.not_saved,
                    (label(tr("Nothing is saved: no name, no answers, no results.")), 1),
                    spacing=gap(2),
                ),
            ),
            1,
            buttons=[self.at_home],
        )

    def show_people(self, people: Sequence[Person], chosen: str | None) -> None:
        """Offer these people; made-up ones are not measured."""
        real = [person for person in people if not person.demo]
        last = next((person for person in real if person.id == chosen), None)
        self._last_id = last.id if last else ""
        self.last.setVisible(last is not None)
        if last is not None:
            self.last.say(tr("Last: {name}").format(name=last.pseudonym))
        others = {person.id: person.pseudonym for person in real if person is not last}
        self.others.offer(["", *others], lambda key: others[key] if key else tr("Another person"))
        self.others.setVisible(bool(others))
        self._here.setVisible(bool(real))

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
    def _choose_other(self, person_id: str) -> None:
        if person_id:
            self.person_chosen.emit(person_id)

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
        self.title = label("", "display")
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("Stiff shoulder"),
            may_be_empty=True,
        )
        self.baseline = button(tr("Full baseline"), "main", key=tr("B"))
        self.movement = ChoiceRow(
            list(Movement), movement_name, columns=2, title=tr("the movement to measure")
        )
        self.side = ChoiceRow(list(Side), side_title, title=tr("the side to measure"))
        self.single = button(tr("Measure this movement"), key=tr("C"))
        self.how = ConductChoice(appearance, settings)
        self.figure = PositionView(appearance)
        self.figure.setMinimumHeight(_FIGURE_PX)
        self.other_person = button(tr("Back"), key=tr("Escape"))
        self.movement.choose(settings.movements[0])
        self.side.choose(Side.RIGHT)
        self._lay_out()
        self.baseline.clicked.connect(self._begin_baseline)
        self.single.clicked.connect(self._begin_single)
        self.other_person.clicked.connect(self.back)
        self.affected.picked.connect(self._affected_picked)
        self.movement.picked.connect(self._draw)
        self.side.picked.connect(self._draw)
        self._draw()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        words = tr("Five movements, both sides, two trials each: about {minutes} minutes.")
        chosen = column(self.movement.row, self.side.row, row(self.single, 1), 1, spacing=gap(1))
        frame_page(
            self,
            self.title,
            card(
                label(tr("Which shoulder is stiff?"), "title"),
                self.affected.row,
                label(words.format(minutes=BASELINE_MIN)),
                spacing=gap(1),
            ),
            card(
                label(tr("Or one movement"), "title"),
                row((chosen, 6), (self.figure, 4), spacing=gap(3)),
                spacing=gap(1),
            ),
            self.how,
            1,
            buttons=[self.other_person, self.baseline],
        )

    def show_person(self, person: Person) -> None:
        """Show who is measured."""
        self._person = person
        self.title.setText(person.pseudonym)
        self.affected.choose(person.affected)
        if len(person.affected) == 1:
            self.side.choose(person.affected[0])
            self._draw()
        self.baseline.setFocus()

    def prefer(self, movement: Movement, side: Side) -> None:
        """Put the choice on a movement and side."""
        self.movement.choose(movement)
        self.side.choose(side)
        self._draw()

    @Slot()
    def _draw(self) -> None:
        self.figure.show_movement(
            self.movement.value or Movement.FLEXION,
            self.side.value or Side.RIGHT,
            mirrored=self._settings.mirror_preview,
        )

    @Slot()
    def _affected_picked(self) -> None:
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
        self._settings.conduct = self.how.conduct
        task: MovementTask = clinic_task(
            self.movement.value or Movement.FLEXION, self.side.value or Side.RIGHT
        )
        self.movement_wanted.emit(task)


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
        self.what.show_person(person)
        self.setCurrentWidget(self.what)
