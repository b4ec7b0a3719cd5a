"""The repository of the window: people and sessions in the store.

Every call belongs to one thread, not the window's, because the store waits for the disk.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.records import (
    AssessmentCondition,
    Event,
    EventKind,
    History,
    LimitingFactor,
    MeasurementRecord,
    Pain,
    Person,
    SessionRecord,
)
from measure.domain.screening_records import (
    ScreeningOccasion,
    ScreeningOutcome,
    ScreeningRecord,
)
from measure.domain.session_facts import ClinicianValue, SessionState
from measure.progress.wording import Translate, english
from measure.report.pain_correction import (
    PainCorrection,
    PainRatings,
    correct_pain,
    undo_correction,
    with_lines,
)
from measure.storage.backup import Contents, restore
from measure.storage.store import Store
from measure.system.clock import SystemClock, Timestamp, new_id


@dataclass(frozen=True, slots=True, kw_only=True)
class PendingMeasurement:
    """A measurement to be saved; the same `key` again takes the place of the earlier one."""

    key: str
    measurement: Measurement
    conduct: AssessmentCondition
    pain_during: int | None = None
    stopped_by: LimitingFactor | None = None


class SessionRepository:
    """People and sessions in a store that is opened by the thread that uses it first.

    Parameters
    ----------
    open_store
        Opens the store; the user's own one unless tests pass another.
    """

    def __init__(self, open_store: Callable[[], Store] = Store.open) -> None:
        self._open_store = open_store
        self._store: Store | None = None
        #: What was added to notes since the program started, by session.
        self._added: dict[str, list[str]] = {}

    @property
    def store(self) -> Store:
        """The store, opened now if it is not open."""
        if self._store is None:
            self._store = self._open_store()
        return self._store

    def add_person(self, pseudonym: str, affected: tuple[Side, ...] = ()) -> Person:
        return self.save_person(Person(id=new_id(), pseudonym=pseudonym, affected=affected))

    def save_person(self, person: Person) -> Person:
        self.store.save_person(person)
        return person

    def delete_person(self, person_id: str) -> History:
        """Delete a person for good; return all that was kept, for :meth:`put_back`."""
        history = self.store.history(person_id)
        self.store.delete_person(person_id)
        return history

    def delete_session(self, session: SessionRecord) -> History:
        """Delete a session for good; return it as a history, for :meth:`put_back`."""
        history = self.store.history(session.person_id)
        self.store.delete_session(session.id)
        return History(
            person=history.person,
            sessions=tuple(kept for kept in history.sessions if kept.id == session.id),
            measurements=tuple(
                record for record in history.measurements if record.session_id == session.id
            ),
        )

    def save_screening(
        self, person_id: str, occasion: ScreeningOccasion, outcome: ScreeningOutcome
    ) -> None:
        """Save how a person answered the safety questions today."""
        record = ScreeningRecord(
            id=new_id(),
            person_id=person_id,
            day=self.store.now().day,
            occasion=occasion,
            outcome=outcome,
        )
        self.store.save_screening(record)

    def correct_pain(
        self, session_id: str, ratings: PainRatings, tr: Translate = english
    ) -> PainCorrection:
        """Save other ratings of pain; return what :meth:`undo_correction` takes.

        Raises
        ------
        InputError
            As :func:`measure.report.pain_correction.correct_pain`.
        """
        correction = correct_pain(self.store, session_id, ratings, tr)
        if correction.line:
            self._added.setdefault(session_id, []).append(correction.line)
        return correction

    def undo_correction(self, correction: PainCorrection) -> None:
        """Save the ratings again as they were before a correction."""
        undo_correction(self.store, correction)
        lines = self._added.get(correction.session_id, [])
        if correction.line in lines:
            lines.remove(correction.line)

    def put_back(self, history: History) -> None:
        """Add to the store what it lacks of a history."""
        self.store.merge(history)

    def replace_with(self, copy: Path) -> tuple[Contents, Path | None]:
        """Put a backup in the store's place; return what it holds and where the former one is.

        Raises
        ------
        DataError, InputError, MachineError
            As :func:`measure.storage.backup.restore`; the store is then as it was.
        """
        path = self.store.path
        self.close()
        return restore(copy, path, SystemClock())

    def begin(
        self,
        person_id: str,
        conduct: AssessmentCondition,
        pain: Pain,
        state: SessionState | None = None,
    ) -> str:
        return self.store.start_session(person_id, conduct=conduct, pain=pain, state=state).id

    def keep(
        self,
        session_id: str,
        person_id: str,
        kept: PendingMeasurement,
        *,
        taken: Timestamp | None = None,
    ) -> None:
        """Save a measurement, taken now unless another time is given."""
        self.store.save_measurement(
            MeasurementRecord(
                id=kept.key,
                session_id=session_id,
                person_id=person_id,
                taken=taken or self.store.now(),
                measurement=kept.measurement,
                conduct=kept.conduct,
                pain_during=kept.pain_during,
                stopped_by=kept.stopped_by,
            )
        )

    def keep_recorded(
        self,
        person_id: str,
        kept: PendingMeasurement,
        recorded: Timestamp,
        *,
        note: str,
        session_id: str | None = None,
    ) -> None:
        """Save a reading of what was recorded before, in its own session or in an earlier one."""
        with_id = session_id or new_id()
        self.store.save_session(
            SessionRecord(
                id=with_id,
                person_id=person_id,
                started=recorded,
                conduct=kept.conduct,
                note=note,
                finished=True,
            )
        )
        self.keep(with_id, person_id, kept, taken=recorded)

    def finish(self, session_id: str, note: str, typed_in: tuple[ClinicianValue, ...] = ()) -> None:
        """Mark a session as finished, with a note; what was added to it is kept."""
        finished = self.store.finish_session(session_id)
        note = with_lines(note, self._added.get(session_id, []))
        if (note, typed_in) != (finished.note, finished.clinician_values):
            self.store.save_session(replace(finished, note=note, clinician_values=typed_in))

    def add_to_note(self, session_id: str, line: str) -> None:
        """Add a line to a session's note, which stays there whatever else is noted."""
        session = self.store.session(session_id)
        self.store.save_session(replace(session, note=with_lines(session.note, [line])))
        self._added.setdefault(session_id, []).append(line)

    def note_clinic_visit(self, person_id: str) -> None:
        """Save today as a clinic visit, once."""
        today = self.store.now().day
        visits = {
            event.day
            for event in self.store.events(person_id)
            if event.kind is EventKind.CLINIC_VISIT
        }
        if today not in visits:
            self.store.save_event(
                Event(id=new_id(), person_id=person_id, day=today, kind=EventKind.CLINIC_VISIT)
            )

    def close(self) -> None:
        if self._store is not None:
            self._store.close()
            self._store = None
