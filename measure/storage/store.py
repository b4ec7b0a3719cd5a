"""The store of people, their sessions and what happened between them.

Everything is written when it is told: a method that returns has its record on the disk, whole.
A program that is killed loses nothing that was saved before, and a session that was going on
is still there, unfinished. Several programs may have the store open; each waits its turn.

A :class:`Store` belongs to the thread that opened it; another thread opens its own.
"""

import contextlib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from types import TracebackType

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import (
    AssessmentCondition,
    Event,
    History,
    MeasurementRecord,
    Merged,
    Pain,
    Person,
    Plan,
    SessionRecord,
    Stretch,
    StretchLog,
)
from measure.errors import InputError, in_short
from measure.storage import measurement_rows, merge, people_rows, programme_rows, session_rows
from measure.storage.connection import Opened, open_connection, snapshot, transaction, wipe
from measure.storage.errors import damaged, in_plain_words, vanished
from measure.storage.location import file_identity, store_path
from measure.system.clock import Clock, SystemClock, Timestamp, new_id


class Store:
    """An open store. Use it as a context manager, or call :meth:`close`.

    Attributes
    ----------
    path
        Its file.
    warnings
        What to tell the person about the place where it is kept, in plain words.
    """

    def __init__(self, opened: Opened, path: Path, clock: Clock) -> None:
        self.path = path
        self.warnings = opened.warnings
        self._connection = opened.connection
        self._file = file_identity(path)
        self._clock = clock
        self._began_s: dict[str, float] = {}

    @classmethod
    def open(cls, path: Path | None = None, *, clock: Clock | None = None) -> "Store":
        """Open the store, the person's own unless another `path` is given.

        Raises
        ------
        DataError
            When a store was there and is gone, is damaged, or comes from a later version.
            It never opens as an empty history instead.
        MachineError
            When the folder or the disk cannot be used.
        """
        path = path or store_path()
        return cls(open_connection(path), path, clock or SystemClock())

    def close(self) -> None:
        """Close the store; closing twice does no harm."""
        with in_plain_words(self.path):
            self._connection.close()

    def __enter__(self) -> "Store":
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def now(self) -> Timestamp:
        """Return the present moment by the store's clock."""
        return self._clock.now()

    # People

    def people(self) -> list[Person]:
        """Return everybody, by pseudonym."""
        with self._reading():
            return people_rows.all_people(self._connection)

    def find_person(self, name: str) -> Person:
        """Return the person with that pseudonym (in any case of letters) or identifier.

        Raises
        ------
        InputError
            When there is none; its text names those there are.
        """
        # Half characters, as a terminal with another encoding gives them, are nobody's name.
        name = name.encode("utf-8", "replace").decode()
        with self._reading():
            found = people_rows.person_by_name(self._connection, name) or people_rows.person_by_id(
                self._connection, name
            )
        if found:
            return found
        names = ", ".join(person.pseudonym for person in self.people()[:20])
        known = f"There are: {names}." if names else "Nobody has been added yet."
        raise InputError(
            f"Nobody here is called {name!r}. {known} Add somebody with: thawline people add NAME"
        )

    def save_person(self, person: Person) -> None:
        """Add a person, or change the one with the same id.

        Raises
        ------
        InputError
            When another person has that pseudonym.
        """
        with self._writing():
            people_rows.write_person(self._connection, person)

    def delete_person(self, person_id: str) -> bool:
        """Delete a person and all that was kept about them, for good.

        The freed parts of the file are overwritten and given back. Backups, exports and
        reports made before still hold what they held.

        Returns
        -------
        bool
            False when traces may stay in the store's files for now, because another program
            has the store open or the disk is full. The next deletion clears them too.
        """
        with self._writing():
            people_rows.erase_person(self._connection, person_id)
        with in_plain_words(self.path):
            return wipe(self._connection)

    # Sessions

    def sessions(self, person_id: str) -> list[SessionRecord]:
        """Return a person's sessions, the earliest first."""
        with self._reading():
            return session_rows.sessions_of(self._connection, person_id)

    def session(self, session_id: str) -> SessionRecord:
        """Return one session.

        Raises
        ------
        InputError
            When there is no such session.
        """
        with self._reading():
            found = session_rows.session_by_id(self._connection, session_id)
        if not found:
            raise InputError("This session is no longer in the store. Choose another one.")
        return found

    def start_session(
        self,
        person_id: str,
        *,
        conduct: AssessmentCondition | None = None,
        pain: Pain | None = None,
        note: str = "",
    ) -> SessionRecord:
        """Begin a session now and save it, unfinished."""
        session = SessionRecord(
            id=new_id(),
            person_id=person_id,
            started=self._clock.now(),
            conduct=conduct or AssessmentCondition(),
            pain=pain or Pain(),
            note=note,
        )
        began_s = self._clock.monotonic_s()
        self.save_session(session)
        self._began_s[session.id] = began_s
        return session

    def finish_session(self, session_id: str) -> SessionRecord:
        """Mark a session as finished and return it.

        It gets a duration only when this same object started it: otherwise the program was
        closed in between, and how long the sitting lasted is not known.
        """
        began_s = self._began_s.pop(session_id, None)
        duration_s = None if began_s is None else max(self._clock.monotonic_s() - began_s, 0.0)
        with self._writing():
            found = session_rows.session_by_id(self._connection, session_id)
            if not found:
                raise InputError("This session is no longer in the store. Choose another one.")
            if duration_s is None:
                duration_s = found.duration_s
            finished = replace(found, finished=True, duration_s=duration_s)
            session_rows.write_session(self._connection, finished)
        return finished

    def save_session(self, session: SessionRecord) -> None:
        """Add a session, or change the one with the same id (its note, its pain)."""
        with self._writing():
            session_rows.write_session(self._connection, session)

    def delete_session(self, session_id: str) -> None:
        """Delete a session and its measurements."""
        with self._writing():
            session_rows.erase_session(self._connection, session_id)

    # Measurements

    def measurements(
        self,
        person_id: str,
        *,
        movement: Movement | None = None,
        side: Side | None = None,
        session_id: str | None = None,
    ) -> list[MeasurementRecord]:
        """Return a person's measurements, refused ones included, the earliest first."""
        with self._reading():
            return measurement_rows.measurements_of(
                self._connection, person_id, movement, side, session_id
            )

    def save_measurement(self, record: MeasurementRecord) -> None:
        """Save a measurement with all its trials, in one piece.

        Saving again under the same id puts it in the place of the earlier one: so it can be
        saved after each trial, and a killed program loses no trial.

        Raises
        ------
        InputError
            When its session is not in the store, or it is a refusal without a reason.
        """
        with self._writing():
            measurement_rows.write_measurement(self._connection, record)

    def delete_measurement(self, measurement_id: str) -> None:
        """Delete a measurement and its trials."""
        with self._writing():
            measurement_rows.erase_measurement(self._connection, measurement_id)

    # Events

    def events(self, person_id: str) -> list[Event]:
        """Return what happened to a person, the earliest first."""
        with self._reading():
            return session_rows.events_of(self._connection, person_id)

    def save_event(self, event: Event) -> None:
        """Add an event, or change the one with the same id."""
        with self._writing():
            session_rows.write_event(self._connection, event)

    def delete_event(self, event_id: str) -> None:
        with self._writing():
            session_rows.erase_event(self._connection, event_id)

    # Home programme

    def plans(self, person_id: str) -> list[Plan]:
        """Return a person's plans, the earliest first; each ends the one before."""
        with self._reading():
            return programme_rows.plans_of(self._connection, person_id)

    def save_plan(self, plan: Plan) -> None:
        """Add a plan, or change the one with the same id."""
        with self._writing():
            programme_rows.write_plan(self._connection, plan)

    def stretches(self, person_id: str) -> list[StretchLog]:
        """Return the stretches that a person did, the earliest first."""
        with self._reading():
            return programme_rows.stretches_of(self._connection, person_id)

    def log_stretch(self, person_id: str, stretch: Stretch) -> StretchLog:
        """Save that a stretch was done just now."""
        log = StretchLog(id=new_id(), person_id=person_id, stretch=stretch, done=self._clock.now())
        with self._writing():
            programme_rows.write_stretch(self._connection, log)
        return log

    def delete_stretch(self, log_id: str) -> None:
        """Take a tap back."""
        with self._writing():
            programme_rows.erase_stretch(self._connection, log_id)

    # All about one person

    def history(self, person_id: str) -> History:
        """Return everything that is kept about a person.

        Raises
        ------
        InputError
            When there is no such person.
        """
        with self._reading(), snapshot(self._connection):
            person = people_rows.person_by_id(self._connection, person_id)
            if person:
                return merge.history_of(self._connection, person)
        raise InputError("This person is no longer in the store. Choose another one.")

    def merge(self, history: History) -> Merged:
        """Add what a history has and the store has not; all of it or nothing.

        What is there already stays as it is, also where the history says otherwise.

        Raises
        ------
        DataError
            When the history holds a record of somebody else under the same identifier.
        """
        with self._writing():
            return merge.merge(self._connection, history)

    @contextlib.contextmanager
    def _reading(self) -> Iterator[None]:
        try:
            with in_plain_words(self.path):
                yield
        except (ValueError, TypeError, InputError) as error:
            # A word that no enum of ours knows, or a number that is none: not written by us.
            raise damaged(self.path, in_short(error)) from error

    @contextlib.contextmanager
    def _writing(self) -> Iterator[None]:
        with in_plain_words(self.path), transaction(self._connection):
            yield
        # A file that was deleted or moved while it is open takes everything and keeps nothing.
        if file_identity(self.path) != self._file:
            raise vanished(self.path)
