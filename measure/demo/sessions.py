"""Made-up sessions for the demo story: a course becomes readings with lifelike noise.

Seeded, so the same story comes out every time. Everything is marked as made up.
"""

import datetime as dt
import hashlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Provenance, Status, Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import Reason
from measure.domain.records import (
    Event,
    EventKind,
    History,
    LimitingFactor,
    MeasurementRecord,
    Pain,
    Person,
    Plan,
    SessionRecord,
    StretchLog,
)
from measure.domain.vertebral_levels import level_of
from measure.system.clock import Timestamp

#: Half-width of an interval, scatter from day to day and from trial to trial, in each
#: movement's unit: lifelike, no more.
_NOISE: dict[Movement, tuple[float, float, float]] = {
    Movement.FLEXION: (8.0, 3.5, 2.0),
    Movement.EXTENSION: (9.0, 3.5, 2.0),
    Movement.ABDUCTION: (8.0, 3.5, 2.0),
    Movement.EXTERNAL_ROTATION: (12.0, 4.5, 2.5),
    Movement.HAND_BEHIND_BACK: (0.08, 0.035, 0.02),
}
#: Measured at every session; the rest, and the other shoulder, once a week.
_EVERY_SESSION = (Movement.FLEXION, Movement.EXTERNAL_ROTATION)

_MISSED, _ODD, _REFUSED, _TRIAL_REFUSED = 0.12, 0.03, 0.04, 0.07
_WHY_REFUSED = (Reason.TRUNK_LEAN, Reason.NO_HOLD, Reason.HIDDEN, Reason.TWO_PEOPLE)

PROVENANCE = Provenance(
    model="demo", software={"made": "up, for the demo"}, source={"backend": "none: demo data"}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Happening:
    """An event of the story: in which week, and for how many days nothing is measured then."""

    week: int
    kind: EventKind
    note: str
    rest_day: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """A made-up person and what happens to them.

    Attributes
    ----------
    first
        The day of the first session.
    truth
        Value of a movement after so many weeks, on the affected side or not.
    pain
        Worst pain in 24 hours after so many weeks, 0..10.
    diligence
        Share of the planned stretches that are done.
    """

    person: Person
    seed: int
    first: dt.date
    truth: Callable[[Movement, float, bool], float]
    pain: Callable[[float], float]
    plan: Plan | None
    diligence: float
    happenings: tuple[Happening, ...] = ()


def made_id(name: str) -> str:
    """Return the identifier of a made-up record, the same for the same name."""
    return hashlib.sha256(f"thawline demo story: {name}".encode()).hexdigest()[:32]


def history_of(member: Member, now: Timestamp) -> History:
    """Return a member's history up to the day before `now`."""
    random = np.random.default_rng(member.seed)
    sessions: list[SessionRecord] = []
    records: list[MeasurementRecord] = []
    for day in _session_days(member, now.day, random):
        session = _session(member, day, now, random)
        sessions.append(session)
        records.extend(_measurements(member, session, random))
    return History(
        person=member.person,
        sessions=tuple(sessions),
        measurements=tuple(records),
        events=tuple(_event(member, each) for each in member.happenings),
        plans=(member.plan,) if member.plan else (),
        stretches=tuple(_stretches(member, now, random)),
    )


def _session_days(member: Member, today: dt.date, random: np.random.Generator) -> Iterator[dt.date]:
    """Yield three days a week, some of them missed, none while told to rest."""
    rests = [
        (7 * each.week, 7 * each.week + each.rest_day)
        for each in member.happenings
        if each.rest_day
    ]
    for number in range((today - member.first).days):
        missed = random.random() < _MISSED and number > 0
        resting = any(start < number <= end for start, end in rests)
        if number % 7 in (0, 2, 4) and not missed and not resting:
            yield member.first + dt.timedelta(days=number)


def _weeks_in(member: Member, day: dt.date) -> float:
    return (day - member.first).days / 7


def _session(
    member: Member, day: dt.date, now: Timestamp, random: np.random.Generator
) -> SessionRecord:
    worst = member.pain(_weeks_in(member, day)) + random.normal(0, 0.6)

    def rating(pain: float) -> int:
        return int(np.clip(round(pain), 0, 10))

    return SessionRecord(
        id=made_id(f"session of {member.person.pseudonym} in place {day - member.first}"),
        person_id=member.person.id,
        started=_moment(day, 8 * 60 + int(random.integers(0, 90)), now),
        pain=Pain(rest=rating(worst - 3), night=rating(worst - 1), worst_24h=rating(worst)),
        note="Demo data.",
        duration_s=float(random.integers(240, 480)),
        finished=True,
    )


def _moment(day: dt.date, minute: int, now: Timestamp) -> Timestamp:
    """Return a local time of day as a moment, with the offset that the clock shows now."""
    local = dt.datetime.combine(day, dt.time(), dt.UTC) + dt.timedelta(minutes=minute)
    utc = local - dt.timedelta(minutes=now.offset_min)
    return Timestamp(utc=utc, offset_min=now.offset_min, zone=now.zone)


def _measurements(
    member: Member, session: SessionRecord, random: np.random.Generator
) -> Iterator[MeasurementRecord]:
    weekly = (session.started.day - member.first).days % 7 == 0
    minute = 0
    for movement in Movement:
        if not weekly and movement not in _EVERY_SESSION:
            continue
        for side in Side:
            affected = side in member.person.affected
            if not (affected or weekly):
                continue
            minute += 1
            found = _measurement(member, session, movement, side, random)
            pain = session.pain.worst_24h or 0
            yield MeasurementRecord(
                id=made_id(f"{movement} {side} in {session.id}"),
                session_id=session.id,
                person_id=member.person.id,
                taken=Timestamp(
                    utc=session.started.utc + dt.timedelta(minutes=minute),
                    offset_min=session.started.offset_min,
                    zone=session.started.zone,
                ),
                measurement=found,
                pain_during=pain if affected else 0,
                stopped_by=_stopped_by(pain) if affected else None,
            )


def _stopped_by(pain: int) -> LimitingFactor:
    return LimitingFactor.PAIN if pain >= 5 else LimitingFactor.STIFFNESS


def _measurement(
    member: Member,
    session: SessionRecord,
    movement: Movement,
    side: Side,
    random: np.random.Generator,
) -> Measurement:
    half, by_day, by_trial = _NOISE[movement]
    half *= random.uniform(0.85, 1.3)
    week = _weeks_in(member, session.started.day)
    today = member.truth(movement, week, side in member.person.affected)
    today += random.normal(0, by_day)
    if random.random() < _ODD:
        today -= 4.5 * by_day
    refused = random.random() < _REFUSED
    trials = tuple(
        _trial(k, today + random.normal(0, by_trial), half, _why(refused, random)) for k in range(3)
    )
    scored = [trial.value for trial in trials if trial.scored and trial.value is not None]
    facts = MOVEMENTS[movement]
    if len(scored) < 2:
        reasons = tuple(dict.fromkeys(why for each in trials for why in each.refused_for))
        return Measurement(
            movement=movement,
            side=side,
            view=facts.views[0],
            status=Status.REFUSED,
            unit=facts.unit,
            value=None,
            low=None,
            high=None,
            trials=trials,
            reasons=(*reasons, Reason.FEW_TRIALS),
            provenance=PROVENANCE,
        )
    value = float(np.median(scored))
    reach = facts.unit is Unit.FRACTION
    return Measurement(
        movement=movement,
        side=side,
        view=facts.views[0],
        status=Status.READING,
        unit=facts.unit,
        value=value,
        low=value - half,
        high=value + half,
        best=max(scored),
        trials=trials,
        reasons=(Reason.FEW_TRIALS,) if len(scored) < 3 else (),
        provenance=PROVENANCE,
        level=level_of(value - half, value, value + half) if reach else None,
    )


def _why(refused: bool, random: np.random.Generator) -> tuple[Reason, ...]:
    if not refused and random.random() >= _TRIAL_REFUSED:
        return ()
    return (_WHY_REFUSED[int(random.integers(len(_WHY_REFUSED)))],)


def _trial(number: int, value: float, half: float, why: tuple[Reason, ...]) -> Trial:
    start_s = 2.0 + 9.0 * number
    hold = (start_s + 3.0, start_s + 5.0) if Reason.NO_HOLD not in why else (None, None)
    return Trial(
        value=None if why else value,
        low=None if why else value - half,
        high=None if why else value + half,
        start_s=start_s,
        end_s=start_s + 7.5,
        hold_start_s=hold[0],
        hold_end_s=hold[1],
        flags=why,
        refused_for=why,
        spread=None if why else half / 12,
    )


def _event(member: Member, happening: Happening) -> Event:
    shoulder = happening.kind in (EventKind.INJECTION, EventKind.PROCEDURE, EventKind.FLARE)
    return Event(
        id=made_id(f"event of {member.person.pseudonym} in week {happening.week}"),
        person_id=member.person.id,
        day=member.first + dt.timedelta(days=7 * happening.week),
        kind=happening.kind,
        side=member.person.affected[0] if shoulder else None,
        note=f"Demo data. {happening.note}",
    )


def _stretches(member: Member, now: Timestamp, random: np.random.Generator) -> Iterator[StretchLog]:
    if member.plan is None:
        return
    for number in range((now.day - member.first).days):
        day = member.first + dt.timedelta(days=number)
        for each in member.plan.stretches:
            for time in range(each.times_a_day):
                if random.random() < member.diligence:
                    minute = 9 * 60 + 540 * time + int(random.integers(0, 60))
                    yield StretchLog(
                        id=made_id(
                            f"{each.stretch} {time} of {member.person.pseudonym} in place {number}"
                        ),
                        person_id=member.person.id,
                        stretch=each.stretch,
                        done=_moment(day, minute, now),
                    )
