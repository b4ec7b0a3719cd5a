"""A keeper that forgets when the program ends, and a made-up history; for pictures and tests."""

import datetime as dt
import random
from dataclasses import replace

from gui.session.repository import PendingMeasurement
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Provenance, Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import Reason
from measure.domain.records import (
    AssessmentCondition,
    Event,
    History,
    MeasurementRecord,
    Pain,
    Person,
    Plan,
    SessionRecord,
    Stretch,
    StretchLog,
)
from measure.errors import InputError
from measure.system.clock import Timestamp, new_id
from measure.trials.aggregation import aggregate_trials


class InMemorySessionRepository:
    """Does what the store does, in memory."""

    def __init__(self) -> None:
        self._people: dict[str, Person] = {}
        self._histories: dict[str, History] = {}
        self.closed = False

    def warnings(self) -> tuple[str, ...]:
        return ()

    def people(self) -> tuple[Person, ...]:
        return tuple(sorted(self._people.values(), key=lambda each: each.pseudonym))

    def add_person(self, pseudonym: str, affected: Side | None) -> Person:
        if any(each.pseudonym == pseudonym for each in self._people.values()):
            raise InputError(f"There is a {pseudonym} already. Choose another name.")
        person = Person(id=new_id(), pseudonym=pseudonym, affected=(affected,) if affected else ())
        self.put(History(person=person))
        return person

    def begin(self, person_id: str, conduct: AssessmentCondition, pain: Pain) -> str:
        session = SessionRecord(
            id=new_id(), person_id=person_id, started=_now(), conduct=conduct, pain=pain
        )
        self._change(person_id, sessions=(*self._histories[person_id].sessions, session))
        return session.id

    def keep(self, session_id: str, person_id: str, kept: PendingMeasurement) -> None:
        record = MeasurementRecord(
            id=kept.key,
            session_id=session_id,
            person_id=person_id,
            taken=_now(),
            measurement=kept.measurement,
            conduct=kept.conduct,
            pain_during=kept.pain_during,
            stopped_by=kept.stopped_by,
        )
        self.drop(kept.key)
        others = self._histories[person_id].measurements
        self._change(person_id, measurements=(*others, record))

    def drop(self, key: str) -> None:
        for person_id, history in self._histories.items():
            left = tuple(each for each in history.measurements if each.id != key)
            self._histories[person_id] = replace(history, measurements=left)

    def finish(self, session_id: str, note: str) -> None:
        for person_id, history in self._histories.items():
            sessions = tuple(
                replace(each, finished=True, note=note) if each.id == session_id else each
                for each in history.sessions
            )
            self._histories[person_id] = replace(history, sessions=sessions)

    def drop_session(self, session_id: str) -> None:
        for person_id, history in self._histories.items():
            self._histories[person_id] = replace(
                history,
                sessions=tuple(each for each in history.sessions if each.id != session_id),
                measurements=tuple(
                    each for each in history.measurements if each.session_id != session_id
                ),
            )

    def history(self, person_id: str) -> History:
        return self._histories[person_id]

    def log_stretch(self, person_id: str, stretch: Stretch) -> StretchLog:
        log = StretchLog(id=new_id(), person_id=person_id, stretch=stretch, done=_now())
        self._change(person_id, stretches=(*self._histories[person_id].stretches, log))
        return log

    def drop_stretch(self, log_id: str) -> None:
        for person_id, history in self._histories.items():
            left = tuple(each for each in history.stretches if each.id != log_id)
            self._histories[person_id] = replace(history, stretches=left)

    def plans(self, person_id: str) -> tuple[Plan, ...]:
        return self._histories[person_id].plans

    def events(self, person_id: str) -> tuple[Event, ...]:
        return self._histories[person_id].events

    def save_plan(self, plan: Plan) -> None:
        others = [each for each in self._histories[plan.person_id].plans if each.id != plan.id]
        plans = sorted((*others, plan), key=lambda each: each.first_day)
        self._change(plan.person_id, plans=tuple(plans))

    def save_event(self, event: Event) -> None:
        events = (*self._histories[event.person_id].events, event)
        self._change(event.person_id, events=tuple(sorted(events, key=lambda each: each.day)))

    def drop_event(self, event_id: str) -> None:
        for person_id, history in self._histories.items():
            left = tuple(each for each in history.events if each.id != event_id)
            self._histories[person_id] = replace(history, events=left)

    def close(self) -> None:
        self.closed = True

    def put(self, history: History) -> None:
        """Take over a whole history."""
        self._people[history.person.id] = history.person
        self._histories[history.person.id] = history

    def clear(self) -> None:
        """Forget all sessions; people stay."""
        self._histories = {key: History(person=one) for key, one in self._people.items()}

    def _change(self, person_id: str, **parts: object) -> None:
        self._histories[person_id] = replace(self._histories[person_id], **parts)  # type: ignore[arg-type]


def _now() -> Timestamp:
    return Timestamp(utc=dt.datetime.now(dt.UTC))


def demo_history(person: Person, today: dt.date, *, weeks: int) -> History:
    """Return a made-up history up to a day: the left shoulder is stiff and slowly comes back."""
    chance = random.Random(4)
    noon = dt.datetime.combine(today, dt.time(18, 20), dt.UTC)
    history = History(person=person)
    days = [day for day in range(weeks * 7, -1, -1) if chance.random() < 0.36]
    for day in days:
        when = Timestamp(utc=noon - dt.timedelta(days=day))
        share = 1 - day / (weeks * 7)
        history = _with_session(history, when, share, chance)
    return history


def _with_session(
    history: History, when: Timestamp, share: float, chance: random.Random
) -> History:
    person = history.person
    session = SessionRecord(id=new_id(), person_id=person.id, started=when, finished=True)
    good = {Movement.FLEXION: 158.0, Movement.ABDUCTION: 152.0, Movement.EXTERNAL_ROTATION: 66.0}
    records = []
    for movement, end in {**good, Movement.HAND_BEHIND_BACK: 0.68}.items():
        for side in Side:
            stiff = 0.52 + 0.3 * share if side is Side.LEFT else 1.0
            records.append(_record(session, movement, side, end * stiff, share, chance))
    stretches = history.stretches
    if chance.random() < 0.7:
        stretch = StretchLog(id=new_id(), person_id=person.id, stretch=Stretch.PENDULUM, done=when)
        stretches = (*stretches, stretch)
    return replace(
        history,
        sessions=(*history.sessions, session),
        measurements=(*history.measurements, *records),
        stretches=stretches,
    )


def _record(
    session: SessionRecord,
    movement: Movement,
    side: Side,
    end: float,
    share: float,
    chance: random.Random,
) -> MeasurementRecord:
    unit = MOVEMENTS[movement].unit
    scatter, half = (3.5, 5.0) if unit is Unit.DEGREES else (0.03, 0.12)
    refused = (Reason.TRUNK_LEAN,) if chance.random() < 0.06 else ()
    middle = end + chance.gauss(0, scatter)
    trials = []
    for number in range(3):
        value = middle + chance.gauss(0, scatter / 3)
        trials.append(
            Trial(
                value=None if refused else value,
                low=None if refused else value - half,
                high=None if refused else value + half,
                start_s=6.0 * number,
                end_s=6.0 * number + 5,
                hold_start_s=6.0 * number + 2,
                hold_end_s=6.0 * number + 3.4,
                refused_for=refused,
            )
        )
    return MeasurementRecord(
        id=new_id(),
        session_id=session.id,
        person_id=session.person_id,
        taken=session.started,
        measurement=aggregate_trials(
            trials,
            MeasurementTask(movement, side, MOVEMENTS[movement].views[0]),
            Provenance(model="heavy", passes=("heavy", "heavy mirrored")),
        ),
        pain_during=max(0, round(chance.gauss(5 - 4 * share, 0.8))) if side is Side.LEFT else 0,
    )
