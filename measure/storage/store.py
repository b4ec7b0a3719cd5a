"""The store of people, their sessions and what happened between them.

Everything is written at once: a method that returns has its record on the disk, whole.
A program that is killed loses nothing that was saved before, and a session that was going on
is still there, unfinished. Several programs may have the store open; each waits its turn.

A :class:`Store` belongs to the thread that opened it; another thread opens its own.
"""

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.record_checks import check_rating
from measure.domain.records import (
    AssessmentCondition,
    Event,
    History,
    MeasurementRecord,
    Merged,
    Pain,
    Person,
    SessionRecord,
)
from measure.domain.screening_records import ScreeningRecord
from measure.domain.session_facts import SessionState
from measure.errors import InputError
from measure.message import TranslatableMessage
from measure.storage import (
    calibration_files,
    home_programme_rows,
    measurement_rows,
    merge,
    person_rows,
    screening_rows,
)
from measure.storage.calibration_store import CalibrationStore
from measure.storage.connection import (
    open_connection,
    open_in_memory,
    snapshot,
    wipe,
)
from measure.storage.errors import in_plain_words
from measure.storage.goal_repository import GoalRepository
from measure.storage.location import store_path
from measure.system.clock import Clock, SystemClock, new_id


class Store(CalibrationStore):
    """An open store. Use it as a context manager, or call :meth:`close`."""

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

    @classmethod
    def in_memory(cls, *, clock: Clock | None = None) -> "Store":
        """Open an empty store that is gone when it is closed; one thread at a time may use it."""
        return cls(open_in_memory(), Path(":memory:"), clock or SystemClock())

    # People

    def people(self) -> list[Person]:
        """Return everybody, by pseudonym."""
        with self._reading():
            return person_rows.all_people(self._connection)

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
            person = person_rows.person_by_name(self._connection, name) or person_rows.person_by_id(
                self._connection, name
            )
        if person:
            return person
        names = ", ".join(person.pseudonym for person in self.people()[:20])
        hint = f"The people here are: {names}." if names else "No one has been added yet."
        raise InputError(
            f"There is no one called {name!r}. {hint} Add a person with: thawline people add NAME"
        )

    def save_person(self, person: Person) -> None:
        """Add a person, or change the one with the same id.

        Raises
        ------
        InputError
            When another person has that pseudonym.
        """
        with self._writing():
            person_rows.write_person(self._connection, person)

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
        with self._writing(calibration_files.BODIES, calibration_files.PLACEMENTS):
            person_rows.erase_person(self._connection, person_id)
        with in_plain_words(self.path):
            return wipe(self._connection)

    # Sessions

    def sessions(self, person_id: str) -> list[SessionRecord]:
        """Return a person's sessions, the earliest first."""
        with self._reading():
            return person_rows.sessions_of(self._connection, person_id)

    def session(self, session_id: str) -> SessionRecord:
        """Return one session.

        Raises
        ------
        InputError
            When there is no such session.
        """
        with self._reading():
            session = person_rows.session_by_id(self._connection, session_id)
        if not session:
            raise InputError(
                TranslatableMessage("This session is no longer saved here. Choose another one.")
            )
        return session

    def start_session(
        self,
        person_id: str,
        *,
        conduct: AssessmentCondition | None = None,
        pain: Pain | None = None,
        state: SessionState | None = None,
        note: str = "",
    ) -> SessionRecord:
        """Begin a session now and save it, unfinished."""
        session = SessionRecord(
            id=new_id(),
            person_id=person_id,
            started=self._clock.now(),
            conduct=conduct or AssessmentCondition(),
            pain=pain or Pain(),
            state=state or SessionState(),
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
            session = person_rows.session_by_id(self._connection, session_id)
            if not session:
                raise InputError(
                    TranslatableMessage("This session is no longer saved here. Choose another one.")
                )
            if duration_s is None:
                duration_s = session.duration_s
            finished = replace(session, finished=True, duration_s=duration_s)
            person_rows.write_session(self._connection, finished)
        return finished

    def save_session(self, session: SessionRecord) -> None:
        """Add a session, or change the one with the same id (its note, its pain)."""
        with self._writing():
            person_rows.write_session(self._connection, session)

    def save_pain(self, session: SessionRecord, during: Mapping[str, int | None]) -> None:
        """Change a session, and the pain during its movements, in one piece.

        Parameters
        ----------
        during
            Pain 0..10 or None by the identifier of the measurement; others stay as they are.
        """
        check_rating(*during.values())
        with self._writing():
            person_rows.write_session(self._connection, session)
            for measurement_id, pain in during.items():
                measurement_rows.write_pain_during(
                    self._connection, session.id, measurement_id, pain
                )

    def delete_session(self, session_id: str) -> None:
        """Delete a session and its measurements."""
        with self._writing():
            person_rows.erase_session(self._connection, session_id)

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
            return person_rows.events_of(self._connection, person_id)

    def save_event(self, event: Event) -> None:
        """Add an event, or change the one with the same id."""
        with self._writing():
            person_rows.write_event(self._connection, event)

    def delete_event(self, event_id: str) -> None:
        with self._writing():
            person_rows.erase_event(self._connection, event_id)

    # Home programme

    def plans(self, person_id: str) -> list[Plan]:
        """Return a person's plans, the earliest first; each ends the one before."""
        with self._reading():
            return home_programme_rows.plans_of(self._connection, person_id)

    def save_plan(self, plan: Plan) -> None:
        """Add a plan, or change the one with the same id."""
        with self._writing():
            home_programme_rows.write_plan(self._connection, plan)

    def exercises_done(self, person_id: str) -> list[ExerciseLog]:
        """Return the exercises that a person did, the earliest first."""
        with self._reading():
            return home_programme_rows.exercises_done_by(self._connection, person_id)

    def log_exercise(self, person_id: str, exercise: Exercise) -> ExerciseLog:
        """Save that an exercise was done just now."""
        log = ExerciseLog(
            id=new_id(), person_id=person_id, exercise=exercise, done=self._clock.now()
        )
        self.save_exercise_log(log)
        return log

    def save_exercise_log(self, log: ExerciseLog) -> None:
        """Add an exercise that was done, or change the one with the same id."""
        with self._writing():
            home_programme_rows.write_exercise_log(self._connection, log)

    def delete_exercise_log(self, log_id: str) -> None:
        """Take a tap back."""
        with self._writing():
            home_programme_rows.erase_exercise_log(self._connection, log_id)

    # Safety questions

    def screenings(self, person_id: str) -> list[ScreeningRecord]:
        """Return how a person answered the safety questions, the earliest first."""
        with self._reading():
            return screening_rows.screenings_of(self._connection, person_id)

    def save_screening(self, screening: ScreeningRecord) -> None:
        """Add a run through the safety questions, or change the one with the same id."""
        with self._writing():
            screening_rows.write_screening(self._connection, screening)

    def next_mornings(self, person_id: str) -> list[NextMorning]:
        """Return how the mornings after a person's exercises were, the earliest first."""
        with self._reading():
            return home_programme_rows.next_mornings_of(self._connection, person_id)

    def save_next_morning(self, morning: NextMorning) -> None:
        """Add an answer, or change the one with the same id."""
        with self._writing():
            home_programme_rows.write_next_morning(self._connection, morning)

    @property
    def goals(self) -> GoalRepository:
        """The goals of people, and their ratings."""
        return GoalRepository(self._connection, self._reading, self._writing)

    # All about one person

    def history(self, person_id: str) -> History:
        """Return everything that is kept about a person.

        Raises
        ------
        InputError
            When there is no such person.
        """
        with self._reading(), snapshot(self._connection):
            person = person_rows.person_by_id(self._connection, person_id)
            if person:
                return merge.history_of(self._connection, person)
        raise InputError(
            TranslatableMessage("This person is no longer saved here. Choose another one.")
        )

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
