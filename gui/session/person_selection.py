"""Selection of the measured person: those in the store, the chosen one, a new one, or nobody."""

from PySide6.QtCore import QObject, Signal, Slot

from gui.session.services import Services
from gui.text.wording import person_name, tr
from measure.domain.landmarks import Side
from measure.domain.records import History, Person
from measure.domain.screening_records import (
    ScreeningOccasion,
    ScreeningOutcome,
    ScreeningRecord,
)
from measure.domain.session_timing import follows_exercises
from measure.progress.home_programme import pain_limit
from measure.system.clock import new_id


class PersonSelection(QObject):
    """Knows who is measured; people are looked up and added in the store's thread."""

    #: The people of the store; the chosen one is in `person` by then.
    listed = Signal(object)
    #: The new person.
    added = Signal(object)
    #: Why somebody could not be added, in words.
    refused = Signal(str)
    message_raised = Signal(str)
    #: The pain rating, 0..10, at which the chosen person is to stop.
    pain_limit_read = Signal(int)
    #: How the chosen person answered the safety questions, the earliest first; and whether they
    #: did exercises in the last hour.
    screenings_read = Signal(object, bool)
    #: What is kept about the chosen person.
    history_read = Signal(object)

    def __init__(self, services: Services, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._adding = False
        #: Who is measured; None as long as there is nobody.
        self.person: Person | None = None
        #: Whether the measured person is not to be saved.
        self.guest = False

    @property
    def name(self) -> str:
        """What the measured person is called."""
        return "" if self.person is None else person_name(self.person)

    @Slot()
    def load(self) -> None:
        """Look up who is in the store."""
        services = self._services
        services.records.run(
            lambda: services.keeper.store.people(), self._list, self.message_raised.emit
        )

    @Slot(str)
    def choose(self, person_id: str) -> None:
        self.guest = False
        self._services.settings.person_id = person_id
        self.load()

    def add(self, pseudonym: str, affected: tuple[Side, ...]) -> None:
        """Add a person and choose them; a second call before the answer changes nothing."""
        if self._adding:
            return
        self._adding = True
        keeper = self._services.keeper
        self._services.records.run(
            lambda: keeper.add_person(pseudonym, affected), self._add, self._refuse
        )

    def save(self, person: Person) -> None:
        """Save a person with changed facts; a guest's are kept until they go."""
        if self.guest:
            self.person = person
            return
        keeper = self._services.keeper
        self._services.records.run(
            lambda: keeper.save_person(person), self._saved, self.message_raised.emit
        )

    @Slot()
    def choose_guest(self) -> None:
        """Measure somebody of whom nothing is written."""
        self.guest = True
        self.person = Person(id=new_id(), pseudonym=tr("Not saved"))

    def leave_guest(self) -> None:
        """Measure the person chosen before again, if it was somebody who is not saved."""
        self.guest = False
        self.load()

    def _saved(self, _person: Person) -> None:
        self.load()

    def _list(self, people: list[Person]) -> None:
        """Take the person chosen last; made-up people are never chosen by themselves.

        Somebody who is not saved stays until another one is chosen.
        """
        if self.guest:
            return
        present = None if self.person is None else self.person.id
        wanted = self._services.settings.person_id or present
        chosen = [person for person in people if person.id == wanted] or [
            person for person in people if not person.demo
        ]
        self.person = chosen[0] if chosen else None
        self.listed.emit(people)

    def read_pain_limit(self) -> None:
        """Look up at which pain the chosen person is to stop."""
        person, services = self.person, self._services
        if person is not None and not self.guest:
            services.records.run(
                lambda: pain_limit(services.keeper.store.plans(person.id), services.today()),
                self.pain_limit_read.emit,
                self.message_raised.emit,
            )

    def read_screenings(self) -> None:
        """Look up how the chosen person answered the safety questions; a guest never did."""
        person, services = self.person, self._services
        if person is None:
            return
        if self.guest:
            self.screenings_read.emit((), False)
            return

        def read() -> tuple[tuple[ScreeningRecord, ...], bool]:
            store = services.keeper.store
            logged = follows_exercises(store.now(), store.exercises_done(person.id))
            return tuple(store.screenings(person.id)), logged

        services.records.run(
            read, lambda answer: self.screenings_read.emit(*answer), self.message_raised.emit
        )

    def save_screening(self, occasion: ScreeningOccasion, outcome: ScreeningOutcome) -> None:
        """Save how the chosen person answered the safety questions; a guest's go with them."""
        person, services = self.person, self._services
        if person is None or self.guest:
            return
        services.records.run(
            lambda: services.keeper.save_screening(person.id, occasion, outcome),
            failed=self.message_raised.emit,
        )

    def read_history(self) -> None:
        """Look up what is saved of the chosen person; of a guest there is nothing."""
        person, services = self.person, self._services
        if person is None or self.guest:
            self.history_read.emit(History(person=person) if person is not None else None)
            return
        services.records.run(
            lambda: services.keeper.store.history(person.id),
            self.history_read.emit,
            self.message_raised.emit,
        )

    def _add(self, person: Person) -> None:
        self._adding = False
        self.guest = False
        self.person = person
        self.choose(person.id)
        self.added.emit(person)

    def _refuse(self, why: str) -> None:
        self._adding = False
        self.refused.emit(why)
        self.message_raised.emit(why)
