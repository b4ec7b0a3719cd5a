"""Everything that is kept about one person, in one value: what exports carry. No file access."""

from dataclasses import dataclass

from measure.domain.records import Event, MeasurementRecord, Person, Plan, SessionRecord, StretchLog
from measure.errors import InputError


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """A person and all their records, each kind with the earliest first.

    Raises
    ------
    InputError
        When a record belongs to somebody else or to no session of the history, or two records
        of a kind share an identifier.
    """

    person: Person
    sessions: tuple[SessionRecord, ...] = ()
    measurements: tuple[MeasurementRecord, ...] = ()
    events: tuple[Event, ...] = ()
    plans: tuple[Plan, ...] = ()
    stretches: tuple[StretchLog, ...] = ()

    def __post_init__(self) -> None:
        sessions = {session.id for session in self.sessions}
        for kind in (self.sessions, self.measurements, self.events, self.plans, self.stretches):
            if len({each.id for each in kind}) != len(kind):
                raise InputError("Two records of the same kind have the same identifier.")
            for each in kind:
                if each.person_id != self.person.id:
                    raise InputError(f"The record {each.id} belongs to somebody else.")
        for measurement in self.measurements:
            if measurement.session_id not in sessions:
                raise InputError(f"The session of the measurement {measurement.id} is missing.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    """What became of a history that was merged into the store.

    Attributes
    ----------
    person
        The person as they are in the store now.
    new_person
        False when the person was there already.
    added, same, kept
        Records that were added; that were there already, alike; that were there already with
        other contents and stayed as they were.
    """

    person: Person
    new_person: bool
    added: int
    same: int
    kept: int
