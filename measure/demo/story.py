"""The demo story: four made-up members of an allotment garden over twenty weeks.

A course of recovery becomes sessions with lifelike noise, seeded, so the same story comes out
every time. The names begin with "demo-", and people, sessions and events are marked as made up,
so that nothing here can pass for a person's measurements.
"""

import datetime as dt
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.goal_records import Goal, GoalRating
from measure.domain.home_programme_records import ExerciseLog, Plan, PlannedExercise
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
    Onset,
    Pain,
    Person,
    SessionRecord,
)
from measure.domain.vertebral_levels import level_of
from measure.errors import InputError
from measure.storage.store import Store
from measure.system.clock import Timestamp

#: Length of the story, days. [technical]
_STORY_DAYS = 140
#: Lifelike numbers of each movement, in its unit: truth of a stiff and of a healthy shoulder,
#: half-width of an interval, scatter from day to day and from trial to trial. [technical]
_LIFELIKE: dict[Movement, tuple[float, float, float, float, float]] = {
    Movement.FLEXION: (92.0, 162.0, 8.0, 3.5, 2.0),
    Movement.EXTENSION: (30.0, 56.0, 9.0, 3.5, 2.0),
    Movement.ABDUCTION: (76.0, 156.0, 8.0, 3.5, 2.0),
    Movement.EXTERNAL_ROTATION: (14.0, 68.0, 12.0, 4.5, 2.5),
    Movement.HAND_BEHIND_BACK: (0.02, 0.56, 0.08, 0.035, 0.02),
}
#: Measured at every session; the rest, and the other shoulder, once a week.
_EVERY_SESSION = (Movement.FLEXION, Movement.EXTERNAL_ROTATION)

#: Chance of a missed day, of an odd value, and of a refused measurement or trial. [technical]
_MISSED, _ODD, _REFUSED, _TRIAL_REFUSED = 0.12, 0.03, 0.04, 0.07
_REFUSAL_REASONS = (Reason.TRUNK_LEAN, Reason.NO_HOLD, Reason.HIDDEN, Reason.TWO_PEOPLE)

_PROVENANCE = Provenance(
    model="demo", software={"made": "up, for the demo"}, source={"backend": "none: demo data"}
)

#: Weeks and the values then; straight lines between.
_Course = tuple[tuple[float, ...], tuple[float, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Incident:
    """An event of the story: its week, and for how many days nothing is measured after it."""

    week: int
    kind: EventKind
    note: str
    rest_days: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Member:
    """A made-up person and what happens to them.

    Attributes
    ----------
    summary
        What the command prints about them.
    recovery
        How far the affected shoulder is from stiff (0) to healthy (1).
    pain
        Worst pain in 24 hours, 0..10.
    diligence
        Share of the planned exercises that are done.
    goals
        What the person wants to do again, and how it was rated every five weeks.
    """

    name: str
    seed: int
    summary: str
    affected: Side
    since: str
    recovery: _Course
    pain: _Course
    onset: Onset | None = None
    days: int = _STORY_DAYS
    exercises: tuple[Exercise, ...] = ()
    diligence: float = 0.0
    incidents: tuple[_Incident, ...] = ()
    goals: tuple[tuple[str, tuple[int, ...]], ...] = ()


_MEMBERS = (
    _Member(
        name="demo-Marigold",
        seed=11,
        summary="increasing: a stiff left shoulder that recovers, quickly at first.",
        affected=Side.LEFT,
        since="2026-02",
        onset=Onset.GRADUAL,
        recovery=((0, 5, 10, 20), (0.05, 0.25, 0.45, 0.75)),
        pain=((0, 6, 20), (6.0, 3.0, 1.0)),
        exercises=(
            Exercise(listed=ListedExercise.TABLE_SLIDE_FORWARD),
            Exercise(listed=ListedExercise.EXTERNAL_ROTATION),
        ),
        diligence=0.8,
        incidents=(
            _Incident(week=8, kind=EventKind.OTHER, note="First potatoes lifted with both hands."),
        ),
        goals=(("Put on a jacket", (2, 4, 6, 8)), ("Reach the top shelf", (0, 2, 4, 6))),
    ),
    _Member(
        name="demo-Bramble",
        seed=22,
        summary="levelled off: a right shoulder that improved and then stopped changing.",
        affected=Side.RIGHT,
        since="2025-11",
        onset=Onset.ARM_KEPT_STILL,
        recovery=((0, 8, 20), (0.1, 0.36, 0.38)),
        pain=((0, 10, 20), (5.0, 3.0, 3.0)),
        exercises=(
            Exercise(listed=ListedExercise.WALL_WALK),
            Exercise(listed=ListedExercise.TOWEL),
        ),
        diligence=0.55,
        goals=(("Prune the pear tree", (1, 3, 3, 3)),),
    ),
    _Member(
        name="demo-Thistle",
        seed=33,
        summary="decreasing, then increasing after an injection in week 10.",
        affected=Side.LEFT,
        since="2026-05",
        onset=Onset.GRADUAL,
        recovery=((0, 10, 14, 20), (0.45, 0.05, 0.3, 0.62)),
        pain=((0, 10, 12, 20), (5.0, 8.0, 3.0, 2.0)),
        exercises=(
            Exercise(listed=ListedExercise.PENDULUM),
            Exercise(listed=ListedExercise.CROSS_BODY),
        ),
        diligence=0.7,
        incidents=(
            _Incident(
                week=10,
                kind=EventKind.INJECTION,
                note="No measuring for a week, as advised.",
                rest_days=7,
            ),
        ),
    ),
    _Member(
        name="demo-Clover",
        seed=44,
        summary="too little data: a few sessions only.",
        affected=Side.RIGHT,
        since="2026-09",
        recovery=((0, 3), (0.3, 0.32)),
        pain=((0, 3), (4.0, 4.0)),
        days=16,
    ),
)


def load_story(store: Store) -> list[str]:
    """Put the story into a store and return the lines to print.

    The story ends on the store's present day. Members who are there already stay as they are,
    so loading it again changes nothing.

    Raises
    ------
    InputError
        When a person who is not of the story has one of the names.
    """
    lines = [
        "Demo data: these people and all their readings are made up. "
        "They are members of an allotment garden who log their shoulders between plantings."
    ]
    stored = store.people()
    ids = {person.id for person in stored}
    names = {person.pseudonym.casefold() for person in stored}
    for member, history in zip(_MEMBERS, story_histories(store.now()), strict=True):
        if history.person.id in ids:
            lines.append(f"{member.name}: here already, left as it is.")
            continue
        if member.name.casefold() in names:
            raise InputError(
                f"Another person is called {member.name} already, so the demo story cannot be "
                "loaded. Rename that person first."
            )
        store.merge(history)
        lines.append(f"{member.name}: {member.summary}")
    lines.append("To see them: thawline progress demo-Marigold")
    lines.append("or in the window: Menu, People and data, People, Open progress.")
    return lines


def story_histories(now: Timestamp) -> tuple[History, ...]:
    """Return the members' histories up to the day before `now`."""
    return tuple(_Diary(member, now).history() for member in _MEMBERS)


class _Diary:
    """Generator of one member's records."""

    def __init__(self, member: _Member, now: Timestamp) -> None:
        self._member, self._now = member, now
        self._first = now.day - dt.timedelta(days=member.days)
        self._random = np.random.default_rng(member.seed)
        self._person = Person(
            id=_made_id(member.name),
            pseudonym=member.name,
            affected=(member.affected,),
            dominant=Side.RIGHT,
            since=member.since,
            onset=member.onset,
            demo=True,
        )

    def history(self) -> History:
        sessions: list[SessionRecord] = []
        records: list[MeasurementRecord] = []
        for number in self._session_days():
            session = self._session(number)
            sessions.append(session)
            records.extend(self._records(session, number))
        return History(
            person=self._person,
            sessions=tuple(sessions),
            measurements=tuple(records),
            events=tuple(self._event(incident) for incident in self._member.incidents),
            plans=(self._plan(),) if self._member.exercises else (),
            exercises_done=tuple(self._exercise_logs()),
            goals=tuple(self._goal(words) for words, _ in self._member.goals),
            goal_ratings=tuple(self._ratings()),
        )

    def _goal(self, words: str) -> Goal:
        return Goal(
            id=_made_id(f"{words} of {self._member.name}"),
            person_id=self._person.id,
            words=words,
            first_day=self._first,
        )

    def _ratings(self) -> Iterator[GoalRating]:
        """Yield the ratings of all goals, the earliest first."""
        most = max((len(ratings) for _, ratings in self._member.goals), default=0)
        for number in range(most):
            for words, ratings in self._member.goals:
                yield GoalRating(
                    id=_made_id(f"rating {number} of {words} of {self._member.name}"),
                    person_id=self._person.id,
                    goal_id=self._goal(words).id,
                    day=self._first + dt.timedelta(weeks=5 * number),
                    rating=ratings[number],
                )

    def _session_days(self) -> Iterator[int]:
        """Yield three days a week, counted from the first; some are missed, none while resting."""
        for number in range(self._member.days):
            missed = self._random.random() < _MISSED and number > 0
            resting = any(
                0 < number - 7 * incident.week <= incident.rest_days
                for incident in self._member.incidents
            )
            if number % 7 in (0, 2, 4) and not missed and not resting:
                yield number

    def _session(self, number: int) -> SessionRecord:
        worst = float(np.interp(number / 7, *self._member.pain)) + self._random.normal(0, 0.6)
        rest, night, worst_24h = (
            int(np.clip(round(pain), 0, 10)) for pain in (worst - 3, worst - 1, worst)
        )
        day = dt.timedelta(days=number)
        return SessionRecord(
            id=_made_id(f"session of {self._member.name} in place {day}"),
            person_id=self._person.id,
            started=self._moment(number, 8 * 60 + int(self._random.integers(0, 90))),
            pain=Pain(rest=rest, night=night, worst_24h=worst_24h),
            note="Demo data.",
            duration_s=float(self._random.integers(240, 480)),
            finished=True,
        )

    def _moment(self, number: int, minute: int) -> Timestamp:
        """Return a local time of day as a moment, with the offset that the clock shows now."""
        day = dt.datetime.combine(self._first, dt.time(), dt.UTC) + dt.timedelta(days=number)
        return Timestamp(
            utc=day + dt.timedelta(minutes=minute - self._now.offset_min),
            offset_min=self._now.offset_min,
            zone=self._now.zone,
        )

    def _records(self, session: SessionRecord, number: int) -> Iterator[MeasurementRecord]:
        weekly = number % 7 == 0
        started, pain = session.started, session.pain.worst_24h or 0
        minute = 0
        for movement in _LIFELIKE if weekly else _EVERY_SESSION:
            for side in Side if weekly else self._person.affected:
                minute += 1
                affected = side is self._member.affected
                limit = LimitingFactor.PAIN if pain >= 5 else LimitingFactor.STIFFNESS
                yield MeasurementRecord(
                    id=_made_id(f"{movement} {side} in {session.id}"),
                    session_id=session.id,
                    person_id=self._person.id,
                    taken=Timestamp(
                        utc=started.utc + dt.timedelta(minutes=minute),
                        offset_min=started.offset_min,
                        zone=started.zone,
                    ),
                    measurement=self._measurement(movement, side, number / 7),
                    pain_during=pain if affected else 0,
                    stopped_by=limit if affected else None,
                )

    def _measurement(self, movement: Movement, side: Side, week: float) -> Measurement:
        stiff, healthy, half, by_day, by_trial = _LIFELIKE[movement]
        half *= self._random.uniform(0.85, 1.3)
        affected = side is self._member.affected
        share = float(np.interp(week, *self._member.recovery)) if affected else 1.0
        today = stiff + share * (healthy - stiff) + self._random.normal(0, by_day)
        if self._random.random() < _ODD:
            today -= 4.5 * by_day
        refused = self._random.random() < _REFUSED
        trials = tuple(
            self._trial(place, today + self._random.normal(0, by_trial), half, refused)
            for place in range(3)
        )
        scored = [trial.value for trial in trials if trial.value is not None]
        value = float(np.median(scored)) if len(scored) > 1 else None
        low, high = (None, None) if value is None else (value - half, value + half)
        reasons = dict.fromkeys(
            reason for trial in trials if value is None for reason in trial.refused_for
        )
        facts = MOVEMENTS[movement]
        return Measurement(
            movement=movement,
            side=side,
            view=facts.views[0],
            status=Status.REFUSED if value is None else Status.READING,
            unit=facts.unit,
            value=value,
            low=low,
            high=high,
            best=None if value is None else max(scored),
            trials=trials,
            reasons=(*reasons, Reason.FEW_TRIALS) if len(scored) < 3 else (),
            provenance=_PROVENANCE,
            level=None
            if value is None or facts.unit is not Unit.FRACTION
            else level_of(value - half, value, value + half),
        )

    def _trial(self, place: int, value: float, half: float, refused: bool) -> Trial:
        reasons: tuple[Reason, ...] = ()
        if refused or self._random.random() < _TRIAL_REFUSED:
            reasons = (_REFUSAL_REASONS[int(self._random.integers(len(_REFUSAL_REASONS)))],)
        start_s = 2.0 + 9.0 * place
        held = Reason.NO_HOLD not in reasons
        return Trial(
            value=None if reasons else value,
            low=None if reasons else value - half,
            high=None if reasons else value + half,
            start_s=start_s,
            end_s=start_s + 7.5,
            hold_start_s=start_s + 3.0 if held else None,
            hold_end_s=start_s + 5.0 if held else None,
            flags=reasons,
            refused_for=reasons,
            spread=None if reasons else half / 12,
        )

    def _event(self, incident: _Incident) -> Event:
        shoulder = incident.kind in (EventKind.INJECTION, EventKind.PROCEDURE, EventKind.FLARE)
        return Event(
            id=_made_id(f"event of {self._member.name} in week {incident.week}"),
            person_id=self._person.id,
            day=self._first + dt.timedelta(days=7 * incident.week),
            kind=incident.kind,
            side=self._member.affected if shoulder else None,
            note=f"Demo data. {incident.note}",
        )

    def _plan(self) -> Plan:
        return Plan(
            id=_made_id(f"plan of {self._member.name}"),
            person_id=self._person.id,
            first_day=self._first,
            exercises=tuple(
                PlannedExercise(
                    exercise=exercise,
                    repetitions=10,
                    hold_s=0 if exercise.swinging else 15,
                    times_a_day=2,
                    sides=(self._member.affected,),
                )
                for exercise in self._member.exercises
            ),
            pain_limit=4,
            chosen_by="made-up physiotherapist",
        )

    def _exercise_logs(self) -> Iterator[ExerciseLog]:
        for number in range(self._member.days):
            for exercise in self._member.exercises:
                for time in range(2):
                    if self._random.random() < self._member.diligence:
                        # After the day's measurement, as people are asked to do.
                        minute = 585 + 540 * time + int(self._random.integers(0, 60))
                        yield ExerciseLog(
                            id=_made_id(
                                f"{exercise.listed} {time} of {self._member.name} in place {number}"
                            ),
                            person_id=self._person.id,
                            exercise=exercise,
                            done=self._moment(number, minute),
                        )


def _made_id(name: str) -> str:
    """Return the identifier of a made-up record, the same for the same name."""
    return hashlib.sha256(f"thawline demo story: {name}".encode()).hexdigest()[:32]
