"""Start page: a welcome at first, then today's movements at home, or who and what in a clinic."""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QInputDialog, QStackedWidget, QWidget

from gui.pages.measuring.clinic_start import ClinicStart
from gui.pages.measuring.home_start import HomeStart
from gui.pages.measuring.person_form import PersonForm
from gui.pages.measuring.welcome import WelcomePage
from gui.protocol.plan import SessionMode
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.wording import listed_name, tr
from gui.widgets.buttons import bind_keys
from gui.widgets.choice_row import ChoiceRow
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, Person
from measure.progress.measuring_plan import MeasuringPlan


class StartPage(QStackedWidget):
    """Remembers whether this computer is used at home or in a clinic."""

    #: tuple[MovementTask, ...]
    home = Signal(object)
    #: tuple[MovementTask, ...]
    clinic = Signal(object)
    #: The identifier of a person.
    person_chosen = Signal(str)
    #: The identifier of a person whose progress is to be shown.
    progress_wanted = Signal(str)
    #: A person with changed facts.
    person_edited = Signal(object)
    #: A new pseudonym.
    person_wanted = Signal(str)
    #: The first session at home is to begin.
    first_wanted = Signal()
    #: Someone of whom nothing is to be saved.
    guest_wanted = Signal()

    def __init__(
        self, appearance: Appearance, settings: WindowSettings, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._appearance, self._settings = appearance, settings
        self._person: Person | None = None
        self._waits_for_person = False
        #: Whether the people are known, and nobody is chosen of them.
        self._nobody = False
        self.welcome = WelcomePage(appearance)
        self.at_home = HomeStart(appearance, settings)
        self.in_clinic = ClinicStart(appearance, settings)
        for page in (self.welcome, self.at_home, self.in_clinic):
            self.addWidget(page)
        self._connect()
        self._show_mode()

    def _connect(self) -> None:
        home, who, what = self.at_home, self.in_clinic.who, self.in_clinic.what
        self.welcome.home.connect(self._begin_first)
        self.welcome.clinic.connect(self.use_in_clinic)
        home.begin.connect(self.home)
        home.clinic.connect(self.use_in_clinic)
        home.person_edited.connect(self.person_edited)
        home.facts_wanted.connect(self.ask_for_facts)
        home.person_added.connect(self.ask_for_person)
        home.person.picked.connect(self._choose_at_home)
        who.person_wanted.connect(self._want_person)
        who.person_chosen.connect(self._choose_person)
        who.guest_wanted.connect(self.guest_wanted)
        who.progress_wanted.connect(self.progress_wanted)
        who.home.connect(self.use_at_home)
        what.begin.connect(self.clinic)
        what.person_edited.connect(self.person_edited)
        bind_keys(home, home.start, "Return", "Enter")
        bind_keys(what, what.start, "B")
        bind_keys(what, what.other_person, "Escape")

    @property
    def mode(self) -> SessionMode | None:
        return self._settings.mode

    @property
    def shows_today(self) -> bool:
        """Whether today's movements at home are shown; without a person there are none yet."""
        return self.currentWidget() is self.at_home

    @property
    def affected(self) -> ChoiceRow[tuple[Side, ...]]:
        """The choice of the stiff shoulder on the page that is shown."""
        if self.currentWidget() is self.welcome:
            return self.welcome.affected
        clinic = self.currentWidget() is self.in_clinic
        return self.in_clinic.what.affected if clinic else self.at_home.affected

    @property
    def conduct(self) -> AssessmentCondition:
        """How the movements are done, as chosen last."""
        return self._settings.conduct

    def show_people(self, people: Sequence[Person], chosen: str | None) -> None:
        """Offer these people; where only made-up ones are known, also the first real one."""
        names = {} if any(not person.demo for person in people) else {"": tr("Me")}
        for person in people:
            names[person.id] = listed_name(person)
        menu = self.at_home.person
        menu.offer(list(names), lambda person_id: names[person_id])
        menu.choose(chosen or menu.value)
        was_nobody = self._nobody
        self._person = next((person for person in people if person.id == chosen), None)
        self._nobody = self._person is None
        self.welcome.show_person(self._person)
        self.at_home.show_person(self._person)
        self.in_clinic.who.show_people(people, chosen)
        if self._person is not None:
            if self._waits_for_person:
                self._waits_for_person = False
                self.in_clinic.ask_what(self._person)
            elif self.in_clinic.currentWidget() is self.in_clinic.what:
                self.in_clinic.what.show_person(self._person)
        if self._nobody is not was_nobody:
            self._show_mode()

    def show_guest(self, person: Person) -> None:
        """Ask what is measured of someone who is not saved."""
        self.in_clinic.ask_what(person)
        self.in_clinic.what.who.say(tr("Nothing is saved"))

    def show_plan(self, plan: MeasuringPlan | None) -> None:
        """Show what is due at home."""
        self.at_home.show_plan(plan)

    def ask_again(self, *, same_person: bool) -> None:
        """Begin anew: in a clinic with who, or with what for the same person."""
        self._waits_for_person = False
        if not same_person:
            self.in_clinic.ask_who()
        self._show_mode()

    def prefer(self, movement: Movement, side: Side) -> None:
        """Put the clinic's choice on a movement and side."""
        self.in_clinic.what.prefer((movement,), (side,))

    def keep_focus(self) -> None:
        """Put the keyboard where the eye goes."""
        if self.mode is SessionMode.CLINIC:
            if self.in_clinic.currentWidget() is self.in_clinic.what:
                self.in_clinic.what.keep_focus()
            else:
                self.in_clinic.who.name.setFocus()
        elif self.shows_today:
            self.at_home.keep_focus()
        else:
            asks = not self.welcome.affected.row.isHidden()
            first = self.welcome.affected.row.buttons[0]
            (first if asks else self.welcome.at_home).setFocus()

    @Slot()
    def use_in_clinic(self) -> None:
        """Ask who is measured, now and at the next start."""
        self._settings.mode = SessionMode.CLINIC
        self.in_clinic.ask_who()
        self._show_mode()

    @Slot()
    def use_at_home(self) -> None:
        """Show today's movements, now and at the next start."""
        self._settings.mode = SessionMode.HOME
        self._show_mode()

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
            tr("Choose a name. It need not be a real one:"),
        )
        if given and text.strip():
            self.person_wanted.emit(text)

    @Slot()
    def _begin_first(self) -> None:
        """Begin at home with the stiff shoulder as it was chosen."""
        affected = self.welcome.affected.value or ()
        self._settings.mode = SessionMode.HOME
        self.at_home.affected.choose(affected)
        if self._person is not None and affected:
            self.person_edited.emit(replace(self._person, affected=affected))
        self._show_mode()
        self.first_wanted.emit()

    @Slot(str)
    def _want_person(self, pseudonym: str) -> None:
        self._waits_for_person = True
        self.in_clinic.what.affected.choose(None)
        self.person_wanted.emit(pseudonym)

    @Slot(str)
    def _choose_person(self, person_id: str) -> None:
        self._waits_for_person = True
        self.person_chosen.emit(person_id)

    @Slot(object)
    def _choose_at_home(self, person_id: str) -> None:
        self.person_chosen.emit(person_id)

    def _show_mode(self) -> None:
        pages: dict[SessionMode | None, QWidget] = {
            SessionMode.HOME: self.at_home,
            SessionMode.CLINIC: self.in_clinic,
        }
        asked = self._nobody and self.mode is SessionMode.HOME
        self.setCurrentWidget(self.welcome if asked else pages.get(self.mode, self.welcome))
        if self.isVisible():
            self.keep_focus()
