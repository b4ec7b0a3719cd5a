"""What is kept about people, sessions and what happened between them. Values only.

A record is what the store keeps and the exports carry. How it is written to a file is none of its
business; what a measurement consists of is in :mod:`measure.domain.measurements`. Identifiers are
text made by :func:`measure.system.clock.new_id`, the same in every copy of a record.
"""

import datetime as dt
from dataclasses import dataclass, field
from enum import StrEnum

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.reasons import Reason
from measure.domain.record_checks import (
    check_id,
    check_note,
    check_partial_date,
    check_rating,
    checked_name,
)
from measure.errors import InputError
from measure.system.clock import Timestamp


class Onset(StrEnum):
    """How the trouble began, in the trade's general terms."""

    GRADUAL = "gradual"
    INJURY = "injury"
    OPERATION = "operation"
    ARM_KEPT_STILL = "arm-kept-still"
    OTHER = "other"


class Assistance(StrEnum):
    """Whether the arm moved by itself, or by what it was helped.

    All but NONE are active-assisted. Passive motion, somebody moving a relaxed arm, is
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
    """What ended the movement, as the person felt it; a camera cannot see that."""

    PAIN = "pain"
    STIFFNESS = "stiffness"
    WEAKNESS = "weakness"
    OTHER = "other"


class EventKind(StrEnum):
    """What may bend or break a series."""

    INJECTION = "injection"
    PROCEDURE = "procedure"
    FLARE = "flare"
    CAMERA_CHANGED = "camera-changed"
    MODEL_CHANGED = "model-changed"
    OTHER = "other"


class Stretch(StrEnum):
    """Stretches of the usual home programme, by their trade names."""

    TABLE_SLIDE_FORWARD = "table-slide-forward"
    TABLE_SLIDE_SIDEWAYS = "table-slide-sideways"
    PENDULUM = "pendulum"
    WALL_WALK = "wall-walk"
    EXTERNAL_ROTATION = "external-rotation-at-handle"
    INTERNAL_ROTATION = "internal-rotation-at-handle"
    CROSS_BODY = "cross-body"
    TOWEL = "towel"


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """Somebody who is measured, known by a pseudonym only.

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
    demo
        True for made-up people; everything shown of them says so.
    """

    id: str
    pseudonym: str
    affected: tuple[Side, ...] = ()
    dominant: Side | None = None
    since: str | None = None
    onset: Onset | None = None
    demo: bool = False

    def __post_init__(self) -> None:
        check_id(self.id)
        object.__setattr__(self, "pseudonym", checked_name(self.pseudonym))
        object.__setattr__(self, "affected", tuple(sorted(set(self.affected))))
        if self.since is not None:
            check_partial_date(self.since)


@dataclass(frozen=True, slots=True, kw_only=True)
class AssessmentCondition:
    """How the movement was done. Readings of different conduct never share a curve."""

    help: Assistance = Assistance.NONE
    posture: BodyPosition = BodyPosition.STANDING

    @property
    def active(self) -> bool:
        """True when the arm moved by its own muscles alone."""
        return self.help is Assistance.NONE


@dataclass(frozen=True, slots=True, kw_only=True)
class Pain:
    """Numeric rating 0..10 before a session; None where not asked or not answered."""

    rest: int | None = None
    night: int | None = None
    worst_24h: int | None = None

    def __post_init__(self) -> None:
        for rating in (self.rest, self.night, self.worst_24h):
            check_rating(rating)


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionRecord:
    """One sitting in front of the camera.

    Attributes
    ----------
    conduct
        How the movements are done unless a measurement says otherwise.
    pain
        Pain before the first movement.
    duration_s
        From start to finish by a clock that nobody can set; None for a session that is still
        going on or was cut short.
    finished
        False while going on, and for ever where the program was killed.
    """

    id: str
    person_id: str
    started: Timestamp
    conduct: AssessmentCondition = field(default_factory=AssessmentCondition)
    pain: Pain = field(default_factory=Pain)
    note: str = ""
    duration_s: float | None = None
    finished: bool = False

    def __post_init__(self) -> None:
        check_id(self.id)
        check_id(self.person_id)
        check_note(self.note)


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasurementRecord:
    """A measurement with what only its session knows.

    Attributes
    ----------
    taken
        When it was finished.
    conduct
        How this movement was done.
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
        for each in (self.id, self.session_id, self.person_id):
            check_id(each)
        check_rating(self.pain_during)


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """Something that happened on a day and may bend or break a series.

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
        check_id(self.id)
        check_id(self.person_id)
        check_note(self.note)


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchLog:
    """One tap: this stretch was done now."""

    id: str
    person_id: str
    stretch: Stretch
    done: Timestamp

    def __post_init__(self) -> None:
        check_id(self.id)
        check_id(self.person_id)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedStretch:
    """One stretch of a plan.

    Attributes
    ----------
    times_a_day
        1..12.
    hold_s
        How long to hold, 0..120 seconds; 0 for a swinging one such as the pendulum.
    """

    stretch: Stretch
    times_a_day: int
    hold_s: int

    def __post_init__(self) -> None:
        if not 1 <= self.times_a_day <= 12:
            raise InputError("A stretch can be planned 1 to 12 times a day.")
        if not 0 <= self.hold_s <= 120:
            raise InputError("A hold can last 0 to 120 seconds.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A home programme chosen by a clinician, valid until the person's next plan begins.

    Attributes
    ----------
    first_day
        The local day it begins.
    stretches
        Each stretch at most once; empty to end a programme.
    pain_limit
        Numeric rating 0..10 at which to stop.
    chosen_by
        Who chose it, in words such as "physiotherapist"; no name is needed.
    """

    id: str
    person_id: str
    first_day: dt.date
    stretches: tuple[PlannedStretch, ...]
    pain_limit: int
    chosen_by: str = ""

    def __post_init__(self) -> None:
        check_id(self.id)
        check_id(self.person_id)
        check_rating(self.pain_limit)
        check_note(self.chosen_by)
        if len({each.stretch for each in self.stretches}) != len(self.stretches):
            raise InputError("A plan names each stretch once; change its times a day instead.")
