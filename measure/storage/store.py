"""The store of people, their sessions and what happened between them.

Everything is written at once: a method that returns has its record on the disk, whole.
A program that is killed loses nothing that was saved before, and a session that was going on
is still there, unfinished. Several programs may have the store open; each waits its turn.

A :class:`Store` belongs to the thread that opened it; another thread opens its own.
"""

import contextlib
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from types import TracebackType

from measure.domain.acquisition import LensProfile
from measure.domain.calibration_records import (
    BodyRecord,
    CameraLevel,
    Placement,
    StoredCorrection,
    StoredStudy,
)
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan
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
    SessionRecord,
)
from measure.errors import InputError, in_short
from measure.storage import (
    calibration_files,
    calibration_rows,
    home_programme_rows,
    measurement_rows,
    merge,
    person_rows,
)
from measure.storage.connection import (
    Opened,
    open_connection,
    open_in_memory,
    snapshot,
    transaction,
    wipe,
)
from measure.storage.errors import damaged, in_plain_words, vanished
from measure.storage.goal_repository import GoalRepository
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
        self._unusable = opened.unusable
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

    @classmethod
    def in_memory(cls, *, clock: Clock | None = None) -> "Store":
        """Open an empty store that is gone when it is closed; one thread at a time may use it."""
        return cls(open_in_memory(), Path(":memory:"), clock or SystemClock())

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
        hint = f"There are: {names}." if names else "Nobody has been added yet."
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
            raise InputError("This session is no longer in the store. Choose another one.")
        return session

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
            session = person_rows.session_by_id(self._connection, session_id)
            if not session:
                raise InputError("This session is no longer in the store. Choose another one.")
            if duration_s is None:
                duration_s = session.duration_s
            finished = replace(session, finished=True, duration_s=duration_s)
            person_rows.write_session(self._connection, finished)
        return finished

    def save_session(self, session: SessionRecord) -> None:
        """Add a session, or change the one with the same id (its note, its pain)."""
        with self._writing():
            person_rows.write_session(self._connection, session)

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

    # Calibration of cameras

    def lenses(self) -> list[LensProfile]:
        """Return the lens profiles of all cameras and frame sizes, the newest last.

        Raises
        ------
        DataError, MachineError
            When a file of an earlier version with such records cannot be read; so do the other
            methods about calibration, each for its own kind.
        """
        with self._reading(calibration_files.LENSES):
            return calibration_rows.lenses(self._connection)

    def save_lens(self, profile: LensProfile) -> None:
        """Save a profile in place of that of its camera and size; InputError if impossible."""
        with self._writing(calibration_files.LENSES):
            calibration_rows.write_lens(self._connection, profile)

    def delete_lenses(self, camera_name: str) -> int:
        """Delete a camera's profiles; return how many there were."""
        with self._writing(calibration_files.LENSES):
            return calibration_rows.erase_lenses(self._connection, camera_name)

    def level(self, camera_name: str | None) -> CameraLevel | None:
        """Return the level of a camera as last measured, or None."""
        with self._reading(calibration_files.LEVELS):
            levels = calibration_rows.levels(self._connection)
        return next((level for level in levels if level.camera_name == camera_name), None)

    def save_level(self, level: CameraLevel) -> None:
        """Save a level in place of the camera's former one; InputError when it is impossible."""
        with self._writing(calibration_files.LEVELS):
            calibration_rows.write_level(self._connection, level)

    def corrections(self) -> list[StoredCorrection]:
        """Return the corrections of all cameras, switched on or off, the newest last."""
        with self._reading(calibration_files.CORRECTIONS):
            return calibration_rows.corrections(self._connection)

    def save_correction(self, stored: StoredCorrection) -> None:
        """Save a correction in place of the former one; InputError when it is too large."""
        with self._writing(calibration_files.CORRECTIONS):
            calibration_rows.write_correction(self._connection, stored)

    def studies(self) -> list[StoredStudy]:
        """Return the agreement studies of all cameras, the newest last."""
        with self._reading():
            return calibration_rows.studies(self._connection)

    def save_study(self, stored: StoredStudy) -> None:
        """Save a study in place of the one of the same camera and movement; InputError if bad."""
        with self._writing():
            calibration_rows.write_study(self._connection, stored)

    # Body and places of a person

    def body(self, person_id: str) -> BodyRecord | None:
        """Return the lengths and marks of a person's body, or None."""
        with self._reading(calibration_files.BODIES):
            return calibration_rows.body_of(self._connection, person_id)

    def save_body(self, record: BodyRecord) -> None:
        """Save a person's body in place of the former record.

        Raises
        ------
        InputError
            When a length is impossible, or the person is not in the store.
        """
        with self._writing(calibration_files.BODIES):
            calibration_rows.write_body(self._connection, record)

    def placements(self, person_id: str) -> list[Placement]:
        """Return where a person stood, the newest last."""
        with self._reading(calibration_files.PLACEMENTS):
            return calibration_rows.placements_of(self._connection, person_id)

    def save_placement(self, placement: Placement) -> None:
        """Save a place in place of that of the same movement, side, camera and frame size.

        Raises
        ------
        InputError
            When it is impossible, or the person is not in the store.
        """
        with self._writing(calibration_files.PLACEMENTS):
            calibration_rows.write_placement(self._connection, placement)

    def delete_placements(self, person_id: str) -> int:
        """Delete a person's places; return how many there were."""
        with self._writing(calibration_files.PLACEMENTS):
            return calibration_rows.erase_placements(self._connection, person_id)

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
    def _reading(self, *files: str) -> Iterator[None]:
        """Read; raise the error of a calibration file among `files` that cannot be used."""
        self._require_taken_in(files)
        try:
            with in_plain_words(self.path):
                yield
        except (ValueError, TypeError, InputError) as error:
            # An unknown word of an enumeration or an impossible number: this program writes none.
            raise damaged(self.path, in_short(error)) from error

    @contextlib.contextmanager
    def _writing(self, *files: str) -> Iterator[None]:
        """Write in one transaction; `files` as for reading."""
        self._require_taken_in(files)
        with in_plain_words(self.path), transaction(self._connection):
            yield
        # A file that was deleted or moved while it is open takes everything and keeps nothing.
        if file_identity(self.path) != self._file:
            raise vanished(self.path)

    def _require_taken_in(self, files: tuple[str, ...]) -> None:
        for name in files:
            if name in self._unusable:
                raise self._unusable[name]
