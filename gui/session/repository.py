"""Saving and looking up, as the window needs it. Every call belongs to one thread, not the
window's: the store waits for the disk.
"""

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Protocol

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.records import (
    AssessmentCondition,
    Event,
    History,
    LimitingFactor,
    MeasurementRecord,
    Pain,
    Person,
    Plan,
    Stretch,
    StretchLog,
)
from measure.storage.store import Store
from measure.system.clock import new_id


@dataclass(frozen=True, slots=True, kw_only=True)
class PendingMeasurement:
    """One measurement to be kept; the same `key` again takes the place of the earlier one."""

    key: str
    measurement: Measurement
    conduct: AssessmentCondition
    pain_during: int | None = None
    stopped_by: LimitingFactor | None = None


class SessionStorage(Protocol):
    """Keeps people and sessions."""

    def warnings(self) -> tuple[str, ...]:
        """Return what to tell the person about the place where it is all kept."""

    def people(self) -> tuple[Person, ...]:
        """Return everybody, by pseudonym."""

    def add_person(self, pseudonym: str, affected: Side | None) -> Person:
        """Add somebody; InputError when the pseudonym is taken or empty."""

    def begin(self, person_id: str, conduct: AssessmentCondition, pain: Pain) -> str:
        """Begin a session and return its identifier."""

    def keep(self, session_id: str, person_id: str, kept: PendingMeasurement) -> None:
        """Save a measurement, whole or not at all."""

    def drop(self, key: str) -> None:
        """Take back a measurement that was kept."""

    def finish(self, session_id: str, note: str) -> None:
        """Mark a session as finished."""

    def drop_session(self, session_id: str) -> None:
        """Delete a session and its measurements for good."""

    def history(self, person_id: str) -> History:
        """Return what was kept of a person, the earliest first."""

    def log_stretch(self, person_id: str, stretch: Stretch) -> StretchLog:
        """Note that a stretch was done just now."""

    def drop_stretch(self, log_id: str) -> None:
        """Take back a stretch that was noted."""

    def plans(self, person_id: str) -> tuple[Plan, ...]:
        """Return a person's home programmes, the earliest first."""

    def events(self, person_id: str) -> tuple[Event, ...]:
        """Return what happened to a person, the earliest first."""

    def save_plan(self, plan: Plan) -> None:
        """Keep a home programme; the same identifier again takes the earlier one's place."""

    def save_event(self, event: Event) -> None:
        """Note what happened on a day."""

    def drop_event(self, event_id: str) -> None:
        """Delete what was noted of a day."""

    def close(self) -> None:
        """Close the store."""


class SessionRepository:
    """Keeps sessions in the store; opened by the thread that uses it first."""

    def __init__(self, path: Path | None = None) -> None:
        self._path = path
        self._store: Store | None = None

    def warnings(self) -> tuple[str, ...]:
        return self._opened().warnings

    def people(self) -> tuple[Person, ...]:
        return tuple(self._opened().people())

    def add_person(self, pseudonym: str, affected: Side | None) -> Person:
        person = Person(id=new_id(), pseudonym=pseudonym, affected=(affected,) if affected else ())
        self._opened().save_person(person)
        return person

    def begin(self, person_id: str, conduct: AssessmentCondition, pain: Pain) -> str:
        return self._opened().start_session(person_id, conduct=conduct, pain=pain).id

    def keep(self, session_id: str, person_id: str, kept: PendingMeasurement) -> None:
        store = self._opened()
        store.save_measurement(
            MeasurementRecord(
                id=kept.key,
                session_id=session_id,
                person_id=person_id,
                taken=store.now(),
                measurement=kept.measurement,
                conduct=kept.conduct,
                pain_during=kept.pain_during,
                stopped_by=kept.stopped_by,
            )
        )

    def drop(self, key: str) -> None:
        self._opened().delete_measurement(key)

    def finish(self, session_id: str, note: str) -> None:
        store = self._opened()
        finished = store.finish_session(session_id)
        if note:
            store.save_session(replace(finished, note=note))

    def drop_session(self, session_id: str) -> None:
        self._opened().delete_session(session_id)

    def history(self, person_id: str) -> History:
        return self._opened().history(person_id)

    def log_stretch(self, person_id: str, stretch: Stretch) -> StretchLog:
        return self._opened().log_stretch(person_id, stretch)

    def drop_stretch(self, log_id: str) -> None:
        self._opened().delete_stretch(log_id)

    def plans(self, person_id: str) -> tuple[Plan, ...]:
        return tuple(self._opened().plans(person_id))

    def events(self, person_id: str) -> tuple[Event, ...]:
        return tuple(self._opened().events(person_id))

    def save_plan(self, plan: Plan) -> None:
        self._opened().save_plan(plan)

    def save_event(self, event: Event) -> None:
        self._opened().save_event(event)

    def drop_event(self, event_id: str) -> None:
        self._opened().delete_event(event_id)

    def close(self) -> None:
        if self._store is not None:
            self._store.close()
            self._store = None

    def _opened(self) -> Store:
        if self._store is None:
            self._store = Store.open(self._path)
        return self._store
