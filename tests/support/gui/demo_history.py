"""A made-up history for pictures and tests of the window."""

import datetime as dt
import random
from dataclasses import replace

from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Provenance, Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import Reason
from measure.domain.records import History, MeasurementRecord, Person, SessionRecord
from measure.system.clock import Timestamp, new_id
from measure.trials.aggregation import aggregate_trials


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
    exercises = history.exercises_done
    if chance.random() < 0.7:
        log = ExerciseLog(
            id=new_id(),
            person_id=person.id,
            exercise=Exercise(listed=ListedExercise.PENDULUM),
            done=when,
        )
        exercises = (*exercises, log)
    return replace(
        history,
        sessions=(*history.sessions, session),
        measurements=(*history.measurements, *records),
        exercises_done=exercises,
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
