"""Selection of the measured person: those in the store, the chosen one, a new one."""

from PySide6.QtCore import QObject, Signal, Slot

from gui.session.services import Services
from measure.domain.landmarks import Side
from measure.domain.records import Person
from measure.progress.home_programme import pain_limit


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

    def __init__(self, services: Services, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._adding = False
        #: Who is measured; None as long as there is nobody.
        self.person: Person | None = None

    @Slot()
    def load(self) -> None:
        """Look up who is in the store."""
        services = self._services
        services.records.run(
            lambda: services.keeper.store.people(), self._list, self.message_raised.emit
        )

    @Slot(str)
    def choose(self, person_id: str) -> None:
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
        """Save a person with changed facts."""
        keeper = self._services.keeper
        self._services.records.run(
            lambda: keeper.save_person(person), self._saved, self.message_raised.emit
        )

    def _saved(self, _person: Person) -> None:
        self.load()

    def _list(self, people: list[Person]) -> None:
        """Take the person chosen last; made-up people are never chosen by themselves."""
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
        if person is not None:
            services.records.run(
                lambda: pain_limit(services.keeper.store.plans(person.id), services.today()),
                self.pain_limit_read.emit,
                self.message_raised.emit,
            )

    def _add(self, person: Person) -> None:
        self._adding = False
        self.person = person
        self.choose(person.id)
        self.added.emit(person)

    def _refuse(self, why: str) -> None:
        self._adding = False
        self.refused.emit(why)
        self.message_raised.emit(why)
