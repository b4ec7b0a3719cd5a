"""Records of people, sessions and events, and one person's history of them.

Values only: a record is what the store keeps and the exports carry, and its texts and numbers are
checked when it is made. What a measurement consists of is in :mod:`measure.domain.measurements`,
the home programme in :mod:`measure.domain.home_programme_records`, the safety questions in
:mod:`measure.domain.screening_records`.
Identifiers are text made by :func:`measure.system.clock.new_id`, the same in every copy of a
record.
"""

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from measure.domain.calibration_records import (
    BodyRecord,
    Placement,
    check_body,
    check_placement,
)
from measure.domain.goal_records import Goal, GoalRating
from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.reasons import Reason
from measure.domain.record_checks import check_note, check_partial_date, check_rating, checked_name
from measure.domain.screening_records import ScreeningRecord
from measure.domain.session_facts import ClinicianValue, SessionState
from measure.errors import InputError
from measure.message import TranslatableMessage
from measure.system.clock import Timestamp, check_id


class Onset(StrEnum):
    """How the trouble began, in general clinical terms."""

    GRADUAL = "gradual"
    INJURY = "injury"
    OPERATION = "operation"
    ARM_KEPT_STILL = "arm-kept-still"
    OTHER = "other"


class AgeBand(StrEnum):
    """Age of a person, as coarsely as it matters for a stiff shoulder."""

    UNDER_40 = "under-40"
    FORTIES = "40-49"
    FIFTIES = "50-59"
    SIXTIES = "60-69"
    FROM_70 = "70-and-over"


class Assistance(StrEnum):
    """Assistance of the movement.

    All but NONE are active-assisted. Passive motion, a relaxed arm moved by another person, is
    another measurement and is not kept here.
    """

    NONE = "none"
    OTHER_HAND = "other-hand"
    STICK = "stick"
    PULLEY = "pulley"
    HELPER = "helper"


class BodyPosition(StrEnum):
    STANDING = "standing"
    SITTING = "sitting"


class LimitingFactor(StrEnum):
    """What ended the movement, as the person felt it; not visible to a camera."""

    PAIN = "pain"
    STIFFNESS = "stiffness"
    WEAKNESS = "weakness"
    OTHER = "other"


class EventKind(StrEnum):
    """Kinds of events that may bend or break a series.

    THERAPY is "begun or changed" without saying which, as earlier versions noted it; it can be
    read, and is offered no more. PROCEDURE is any that has no kind of its own.
    """

    INJECTION = "injection"
    HYDRODILATATION = "hydrodilatation"
    MANIPULATION = "manipulation-under-anaesthesia"
    CAPSULAR_RELEASE = "capsular-release"
    PROCEDURE = "procedure"
    FLARE = "flare"
    THERAPY = "therapy"
    THERAPY_BEGAN = "therapy-began"
    THERAPY_ENDED = "therapy-ended"
    PROGRAMME_CHANGED = "programme-changed"
    MEDICINE_CHANGED = "medicine-changed"
    CLINIC_VISIT = "clinic-visit"
    CAMERA_CHANGED = "camera-changed"
    MODEL_CHANGED = "model-changed"
    OTHER = "other"


#: Kinds of events that can be noted.
OFFERED_EVENTS = tuple(kind for kind in EventKind if kind is not EventKind.THERAPY)

#: Names of the events in charts and reports.
EVENT_WORDS: Mapping[EventKind, str] = {
    EventKind.INJECTION: "injection",
    EventKind.HYDRODILATATION: "hydrodilatation",
    EventKind.MANIPULATION: "manipulation under anaesthesia",
    EventKind.CAPSULAR_RELEASE: "capsular release",
    EventKind.PROCEDURE: "procedure",
    EventKind.FLARE: "flare",
    EventKind.THERAPY: "therapy begun or changed",
    EventKind.THERAPY_BEGAN: "therapy began",
    EventKind.THERAPY_ENDED: "therapy ended",
    EventKind.PROGRAMME_CHANGED: "home programme changed",
    EventKind.MEDICINE_CHANGED: "medicine changed",
    EventKind.CLINIC_VISIT: "clinic visit",
    EventKind.CAMERA_CHANGED: "camera changed",
    EventKind.MODEL_CHANGED: "model changed",
    EventKind.OTHER: "noted",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """A person who is measured, under a pseudonym only.

    Attributes
    ----------
    pseudonym
        1 to 60 printable characters, no two people alike (upper and lower case count as one).
    affected
        The affected side or sides; empty where not stated.
    dominant
        The dominant hand, or None.
    since
        Since when: "2026", "2026-03" or "2026-03-14", or None.
    onset
        What began it, or None.
    age_band
        Age, or None.
    diabetes, thyroid
        Whether the person has diabetes or a disease of the thyroid; None where not stated. Both
        are more common with a stiff shoulder.
    demo
        True for made-up people; everything shown of them is marked.
    """

    id: str
    pseudonym: str
    affected: tuple[Side, ...] = ()
    dominant: Side | None = None
    since: str | None = None
    onset: Onset | None = None
    age_band: AgeBand | None = None
    diabetes: bool | None = None
    thyroid: bool | None = None
    demo: bool = False

    def __post_init__(self) -> None:
        check_id(self.id)
        object.__setattr__(self, "pseudonym", checked_name(self.pseudonym))
        object.__setattr__(self, "affected", tuple(sorted(set(self.affected))))
        if self.since is not None:
            check_partial_date(self.since)


@dataclass(frozen=True, slots=True, kw_only=True)
class AssessmentCondition:
    """Conditions of a movement. Measurements under different ones never share a curve."""

    help: Assistance = Assistance.NONE
    posture: BodyPosition = BodyPosition.STANDING

    @property
    def active(self) -> bool:
        """True when the arm moved by its own muscles alone."""
        return self.help is Assistance.NONE


@dataclass(frozen=True, slots=True, kw_only=True)
class Pain:
    """Numeric ratings 0..10 before a session; None where not asked or not answered."""

    rest: int | None = None
    night: int | None = None
    worst_24h: int | None = None

    def __post_init__(self) -> None:
        check_rating(self.rest, self.night, self.worst_24h)


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionRecord:
    """One session in front of the camera.

    Attributes
    ----------
    conduct
        Conditions of the movements unless a measurement has its own.
    pain
        Pain before the first movement.
    duration_s
        From start to finish by a monotonic clock; None for a session that is unfinished or was
        cut short.
    finished
        False until the end, and for good where the program was killed.
    state
        State of the shoulder, such as before or after exercises.
    clinician_values
        What a clinician measured by other means, one a movement, side and method.
    """

    id: str
    person_id: str
    started: Timestamp
    conduct: AssessmentCondition = field(default_factory=AssessmentCondition)
    pain: Pain = field(default_factory=Pain)
    note: str = ""
    duration_s: float | None = None
    finished: bool = False
    state: SessionState = field(default_factory=SessionState)
    clinician_values: tuple[ClinicianValue, ...] = ()

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id)
        check_note(self.note)
        if len({value.key for value in self.clinician_values}) != len(self.clinician_values):
            raise InputError(
                TranslatableMessage(
                    "A session can hold only one value of each method for a movement and side."
                )
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasurementRecord:
    """A measurement with the facts of its session.

    Attributes
    ----------
    taken
        When it was finished.
    conduct
        Conditions of this movement.
    pain_during
        Numeric rating 0..10 during the movement, or None.
    stopped_by
        What ended the movement, or None.
    overridden
        Reasons that a clinician set aside, so that trials with them count.
    """

    id: str
    session_id: str
    person_id: str
    taken: Timestamp
    measurement: Measurement
    conduct: AssessmentCondition = field(default_factory=AssessmentCondition)
    pain_during: int | None = None
    stopped_by: LimitingFactor | None = None
    overridden: tuple[Reason, ...] = ()

    def __post_init__(self) -> None:
        check_id(self.id, self.session_id, self.person_id)
        check_rating(self.pain_during)


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """An event on a day that may bend or break a series.

    Attributes
    ----------
    day
        The local day.
    side
        The side it concerns, or None for both or neither.
    """

    id: str
    person_id: str
    day: dt.date
    kind: EventKind
    side: Side | None = None
    note: str = ""

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id)
        check_note(self.note)


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """A person and all their records, each kind with the earliest first.

    Attributes
    ----------
    body
        Lengths and marks of the person's body, or None where nothing is kept.
    places
        Where the person stood, the last kept last; one per movement, side, camera and size of
        the frame.

    Raises
    ------
    InputError
        When a record belongs to another person or to no session of the history, or two records
        of a kind share an identifier.
    """

    person: Person
    sessions: tuple[SessionRecord, ...] = ()
    measurements: tuple[MeasurementRecord, ...] = ()
    events: tuple[Event, ...] = ()
    plans: tuple[Plan, ...] = ()
    exercises_done: tuple[ExerciseLog, ...] = ()
    next_mornings: tuple[NextMorning, ...] = ()
    goals: tuple[Goal, ...] = ()
    goal_ratings: tuple[GoalRating, ...] = ()
    screenings: tuple[ScreeningRecord, ...] = ()
    body: BodyRecord | None = None
    places: tuple[Placement, ...] = ()

    def __post_init__(self) -> None:
        sessions = {session.id for session in self.sessions}
        for kind in (
            self.sessions,
            self.measurements,
            self.events,
            self.plans,
            self.exercises_done,
            self.next_mornings,
            self.goals,
            self.goal_ratings,
            self.screenings,
        ):
            if len({record.id for record in kind}) != len(kind):
                raise InputError(
                    TranslatableMessage("Two records of the same kind have the same identifier.")
                )
            for record in kind:
                if record.person_id != self.person.id:
                    raise InputError(
                        TranslatableMessage(
                            "The record {id} belongs to someone else.", {"id": record.id}
                        )
                    )
        for measurement in self.measurements:
            if measurement.session_id not in sessions:
                raise InputError(
                    TranslatableMessage(
                        "The session of the measurement {id} is missing.", {"id": measurement.id}
                    )
                )
        goals = {goal.id for goal in self.goals}
        for rating in self.goal_ratings:
            if rating.goal_id not in goals:
                raise InputError(
                    TranslatableMessage(
                        "The goal of the rating {id} is missing.", {"id": rating.id}
                    )
                )
        self._check_calibration()

    def _check_calibration(self) -> None:
        if self.body is not None:
            check_body(self.body)
        for place in self.places:
            check_placement(place)
        if len({place.key for place in self.places}) != len(self.places):
            raise InputError(
                TranslatableMessage(
                    "Two saved places are for the same movement, side, camera and picture size."
                )
            )
        owned = (*self.places, *(() if self.body is None else (self.body,)))
        if any(record.person_id != self.person.id for record in owned):
            raise InputError(
                TranslatableMessage("Body lengths or a saved place belong to someone else.")
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    """Result of merging a history into the store.

    Attributes
    ----------
    person
        The person as they are in the store now.
    new_person
        False when the person was there already.
    added, same, kept
        Numbers of records that were added; that were stored already, equal; that were stored
        already with other contents and stayed unchanged.
    """

    person: Person
    new_person: bool
    added: int
    same: int
    kept: int
