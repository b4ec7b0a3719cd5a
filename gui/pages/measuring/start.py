"""Start page: what to measure, for whom and how, at home or in a clinic."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QGridLayout,
    QInputDialog,
    QLabel,
    QWidget,
)

from gui.pages.measuring.person_form import PersonForm
from gui.protocol.plan import MovementTask, home_tasks
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.wording import (
    affected_name,
    help_name,
    movement_name,
    movement_plainly,
    posture_name,
    side_title,
    tr,
)
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card, column, row
from gui.widgets.position_figure import PositionView
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition, Person

CLINIC_TRIALS = 2


class StartPage(QWidget):
    """Two ways to begin; conduct and person beneath."""

    #: tuple[MovementTask, ...]
    home = Signal(object)
    #: MovementTask
    clinic = Signal(object)
    #: The identifier of a person, or empty for the first one to be added.
    person_chosen = Signal(str)
    #: A person with changed facts.
    person_edited = Signal(object)
    #: A new pseudonym.
    person_wanted = Signal(str)

    def __init__(
        self, appearance: Appearance, settings: WindowSettings, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._settings = settings
        self._person: Person | None = None
        self.movements = {
            movement: WrappingCheckBox(
                appearance,
                tr("{name}: {plainly}").format(
                    name=movement_name(movement), plainly=movement_plainly(movement)
                ),
            )
            for movement in Movement
        }
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("the stiff shoulder"),
            large=True,
            may_be_empty=True,
        )
        self.sore = WrappingCheckBox(
            appearance, tr("A sore day: two trials, no reach behind the back")
        )
        self.home_button = button(tr("Begin, step by step"), "main", key=tr("H"))
        self.movement = ChoiceRow(
            list(Movement),
            movement_name,
            columns=1,
            title=tr("the movement to read"),
        )
        self.side = ChoiceRow(list(Side), side_title, title=tr("the side to read"), large=True)
        self.clinic_button = button(tr("Read"), "main", key=tr("C"))
        self.posture = ChoiceRow(
            list(BodyPosition), lambda position: posture_name(position).capitalize()
        )
        self.help = MenuButton(tr("how the arm moves"))
        self.help.offer(
            list(Assistance), lambda kind: tr("The arm moves {help}").format(help=help_name(kind))
        )
        self.person = MenuButton(tr("who is measured"))
        self.add_person = button(tr("Add a person"), "link")
        self.edit_person = button(tr("Edit"), "link")
        self.figure = PositionView(appearance)
        self._lay_out()
        self._show_settings()
        self._connect()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self._home = card(
            label(tr("At home"), "title"),
            *self.movements.values(),
            label(tr("Which shoulder is stiff?"), "quiet"),
            self.affected.row,
            self.sore,
            1,
            self.home_button,
        )
        self._clinic = card(
            label(tr("In a clinic"), "title"),
            (row((self.movement.row, 6), (self.figure, 4)), 1),
            self.side.row,
            1,
            self.clinic_button,
        )
        self._how = row(
            *(QLabel(tr("Measured:")), self.person, self.edit_person, self.add_person, 1),
            *(self.posture.row, self.help),
            spacing=gap(2),
        )
        apart = tr("Readings done differently, sitting or with help, never share a curve.")
        page = QWidget()
        grid = QGridLayout(page)
        grid.setContentsMargins(24, 16, 10, 16)  # the bar has its room beside it
        grid.setHorizontalSpacing(gap(3))
        grid.setVerticalSpacing(gap(2))
        grid.addWidget(self._home, 0, 0)
        grid.addWidget(self._clinic, 0, 1)
        grid.addLayout(self._how, 2, 0, 1, 2)
        grid.addWidget(label(apart, "small"), 3, 0, 1, 2)
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 1)
        grid.setRowStretch(0, 1)
        self._grid, self._beside = grid, True
        self._appearance.changed.connect(self._arrange)
        column(scrollable(page, wide=True), on=self)

    def _show_settings(self) -> None:
        chosen = self._settings.movements
        for movement, box in self.movements.items():
            box.setChecked(movement in chosen)
        self.movement.choose(chosen[0])
        self.side.choose(Side.RIGHT)
        conduct = self._settings.conduct
        self.posture.choose(conduct.posture)
        self.help.choose(conduct.help)

    def _connect(self) -> None:
        self.home_button.clicked.connect(self._begin_home)
        self.clinic_button.clicked.connect(self._begin_clinic)
        self.add_person.clicked.connect(self.ask_for_person)
        self.person.picked.connect(self._person_picked)
        self.edit_person.clicked.connect(self.ask_for_facts)
        self.affected.picked.connect(self._affected_picked)
        self.movement.picked.connect(self._draw_position)
        self.side.picked.connect(self._draw_position)
        self._draw_position()

    @property
    def conduct(self) -> AssessmentCondition:
        """How the movements are done, as chosen."""
        return AssessmentCondition(
            posture=self.posture.value or BodyPosition.STANDING,
            help=self.help.value or Assistance.NONE,
        )

    def show_people(self, people: Sequence[Person], chosen: str | None) -> None:
        """Offer these people; where only made-up ones are known, also the first real one."""
        names = {} if any(not person.demo for person in people) else {"": tr("Me")}
        for person in people:
            names[person.id] = person.pseudonym + (tr(" (demo data)") if person.demo else "")
        self.person.offer(list(names), lambda person_id: names[person_id])
        self.person.choose(chosen or self.person.value)
        self._person = next((person for person in people if person.id == chosen), None)
        self.edit_person.setVisible(self._person is not None)
        if self._person is not None:
            affected = self._person.affected
            self.affected.choose(affected)
            if len(affected) == 1:
                self.side.choose(affected[0])
                self._draw_position()

    def prefer(self, movement: Movement, side: Side) -> None:
        """Put the clinic's choice on a movement and side."""
        self.movement.choose(movement)
        self.side.choose(side)
        self._draw_position()

    @Slot()
    def _draw_position(self) -> None:
        """Show the position for the clinic's choice."""
        self.figure.show_movement(
            self.movement.value or Movement.FLEXION,
            self.side.value or Side.RIGHT,
            mirrored=self._settings.mirror_preview,
        )

    @Slot(object)
    def _person_picked(self, person_id: str) -> None:
        self.person_chosen.emit(person_id)

    @Slot()
    def _affected_picked(self) -> None:
        """Change the person's affected side; before anybody is known it waits for the first."""
        if self._person is not None:
            self.person_edited.emit(replace(self._person, affected=self.affected.value or ()))

    @Slot()
    def ask_for_facts(self) -> None:
        """Show what is known about the person, to be changed."""
        if self._person is not None:
            form = PersonForm(self._appearance, self._person, self)
            form.edited.connect(self.person_edited)
            form.open()

    @Slot()
    def ask_for_person(self) -> None:
        """Ask for a pseudonym."""
        text, given = QInputDialog.getText(
            self,
            tr("Add a person"),
            tr("A name of your choice; it need not be a real one:"),
        )
        if given and text.strip():
            self.person_wanted.emit(text)

    @Slot()
    def _begin_home(self) -> None:
        chosen = tuple(move for move, box in self.movements.items() if box.isChecked())
        if not chosen:
            chosen = self._settings.movements
            self.movements[chosen[0]].setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self._settings.movements = chosen
        self._settings.conduct = self.conduct
        affected = self.affected.value or ()
        stiff = affected[0] if len(affected) == 1 else None
        tasks = home_tasks(chosen, stiff, sore_day=self.sore.isChecked())
        if tasks:
            self.home.emit(tasks)

    @Slot()
    def _begin_clinic(self) -> None:
        self._settings.conduct = self.conduct
        self.clinic.emit(
            MovementTask(
                movement=self.movement.value or Movement.FLEXION,
                side=self.side.value or Side.RIGHT,
                trials=CLINIC_TRIALS,
                practice=0,
            )
        )

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    @Slot()
    def _arrange(self) -> None:
        """Put the two ways side by side where both fit, else one below the other."""
        needed = self._home.minimumSizeHint().width() + self._clinic.minimumSizeHint().width()
        beside = needed + 100 <= self.width()
        if beside != self._beside:
            self._beside = beside
            self._grid.addWidget(self._clinic, 0 if beside else 1, 1 if beside else 0)
            self._grid.setColumnStretch(1, 1 if beside else 0)
            self._how.setDirection(
                QBoxLayout.Direction.LeftToRight if beside else QBoxLayout.Direction.TopToBottom
            )
