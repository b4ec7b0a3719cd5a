"""Small histories for the tests of progress and reports: chosen values on chosen days."""

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Provenance, Status
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import Reason
from measure.domain.records import (
    AssessmentCondition,
    Event,
    History,
    MeasurementRecord,
    Pain,
    Person,
    SessionRecord,
)
from measure.system.clock import Timestamp
from tests.support.record_samples import person, some_id

#: A Monday, the first day of every history here.
FIRST = dt.date(2026, 4, 6)
MADE = Provenance(
    model="heavy",
    model_hashes={"heavy": "59e4" * 16},
    software={"thawline": "0.1.0", "mediapipe": "1.2.3"},
)

Values = Mapping[tuple[Movement, Side], Sequence[tuple[int, float | None]]]


def day(number: int) -> dt.date:
    """Return the day so many days after the first."""
    return FIRST + dt.timedelta(days=number)


def history(
    values: Values,
    *,
    who: Person | None = None,
    events: Iterable[Event] = (),
    pain: Mapping[int, Pain] | None = None,
    conduct: AssessmentCondition | None = None,
    made: Mapping[int, Provenance] | None = None,
    half_width: float = 8.0,
) -> History:
    """Return a history with readings on days after the first; None stands for a refusal.

    Parameters
    ----------
    values
        (days after the first, value) for each movement and side.
    pain
        Ratings by day; these days have a session even where nothing is measured.
    made
        Provenance from a day on, instead of MADE.
    """
    who = who or person()
    numbers = {number for days in values.values() for number, _ in days} | set(pain or {})
    sessions = {number: _session(who, number, (pain or {}).get(number)) for number in numbers}
    records = [
        _record(sessions[number], movement, side, value, conduct, _made(made, number), half_width)
        for (movement, side), days in values.items()
        for number, value in days
    ]
    return History(
        person=who,
        sessions=tuple(sessions[number] for number in sorted(sessions)),
        measurements=tuple(sorted(records, key=lambda each: each.taken.utc)),
        events=tuple(events),
    )


def _session(who: Person, number: int, pain: Pain | None) -> SessionRecord:
    start = dt.datetime.combine(day(number), dt.time(9), dt.UTC)
    return SessionRecord(
        id=some_id(f"{who.id} {number}"),
        person_id=who.id,
        started=Timestamp(utc=start),
        pain=pain or Pain(),
        finished=True,
    )


def _record(
    session: SessionRecord,
    movement: Movement,
    side: Side,
    value: float | None,
    conduct: AssessmentCondition | None,
    made: Provenance,
    half_width: float,
) -> MeasurementRecord:
    facts = MOVEMENTS[movement]
    half = half_width / (1 if facts.unit is Unit.DEGREES else 100)
    known = value is not None
    return MeasurementRecord(
        id=some_id(f"{session.id} {movement} {side} {conduct}"),
        session_id=session.id,
        person_id=session.person_id,
        taken=session.started,
        conduct=conduct or AssessmentCondition(),
        measurement=Measurement(
            movement=movement,
            side=side,
            view=facts.views[0],
            status=Status.READING if known else Status.REFUSED,
            unit=facts.unit,
            value=value,
            low=value - half if value is not None else None,
            high=value + half if value is not None else None,
            trials=(),
            reasons=() if known else (Reason.TRUNK_LEAN,),
            provenance=made,
        ),
    )


def _made(made: Mapping[int, Provenance] | None, number: int) -> Provenance:
    begun = [start for start in made or {} if start <= number]
    return (made or {})[max(begun)] if begun else MADE
