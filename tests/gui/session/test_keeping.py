"""A session on its way to the real store: begun once, replaced by key, in order, never lost."""

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.session.log import SessionRecorder
from gui.session.repository import PendingMeasurement, SessionRepository
from gui.workers.worker_thread import BackgroundWorker
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.records import (
    AssessmentCondition,
    Assistance,
    Event,
    EventKind,
    LimitingFactor,
    Pain,
    Person,
)
from measure.errors import InputError
from measure.storage import connection
from measure.storage.disk_kind import DiskKind
from measure.storage.store import Store
from measure.system.clock import new_id
from tests.support.gui.scripted_engine import ScriptedEngine


def made(*values: float) -> Measurement:
    engine = ScriptedEngine()
    engine.choose(Movement.FLEXION, Side.LEFT, len(values), 0)
    for value in values:
        engine.capture(value)
        engine.settle()
    measurement = engine.measurement()
    assert measurement is not None
    return measurement


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "data" / "sessions.sqlite"


@pytest.fixture
def worker(qapp: QApplication) -> Iterator[BackgroundWorker]:
    worker = BackgroundWorker("records")
    yield worker
    worker.close(3.0)


def test_a_session_is_begun_with_its_first_measurement_and_saved_by_key(
    path: Path, worker: BackgroundWorker
) -> None:
    keeper = SessionRepository(lambda: Store.open(path))
    people: list[str] = []
    worker.run(lambda: keeper.add_person("Rowan", (Side.LEFT,)).id, people.append)
    assert worker.close(5.0)
    again = BackgroundWorker("records")
    conduct = AssessmentCondition(help=Assistance.STICK)
    log = SessionRecorder(keeper_of(path), again, people[0], conduct, Pain(rest=2))
    assert not log.begun
    key = new_id()
    log.keep(PendingMeasurement(key=key, measurement=made(110.0), conduct=conduct))
    log.keep(PendingMeasurement(key=key, measurement=made(110.0, 114.0), conduct=conduct))
    log.keep(
        PendingMeasurement(
            key=key,
            measurement=made(110.0, 114.0),
            conduct=conduct,
            pain_during=3,
            stopped_by=LimitingFactor.STIFFNESS,
        )
    )
    log.finish("after pruning")
    assert again.close(5.0)
    with Store.open(path) as store:
        (session,) = store.sessions(people[0])
        (record,) = store.measurements(people[0])
    assert (session.finished, session.note, session.pain.rest) == (True, "after pruning", 2)
    assert session.conduct == conduct
    assert record.id == key
    assert len(record.measurement.trials) == 2
    assert record.measurement.value == 112.0
    assert (record.pain_during, record.stopped_by) == (3, LimitingFactor.STIFFNESS)


def test_the_store_says_what_is_wrong_with_its_place(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connection, "disk_kind", lambda folder: DiskKind.SYNCED)
    keeper = SessionRepository(lambda: Store.open(path))
    (warning,) = keeper.store.warnings
    keeper.close()
    assert "copied to other computers" in warning


def keeper_of(path: Path) -> SessionRepository:
    """Return another keeper: the store belongs to the thread that opened it."""
    return SessionRepository(lambda: Store.open(path))


def test_a_session_without_readings_leaves_nothing(worker: BackgroundWorker) -> None:
    keeper = SessionRepository(Store.in_memory)
    person = keeper.add_person("Linden")
    log = SessionRecorder(keeper, worker, person.id, AssessmentCondition(), Pain())
    log.drop(new_id())
    log.finish("nothing to see")
    assert worker.close(3.0)
    assert keeper.store.history(person.id).sessions == ()


def test_a_measurement_can_be_taken_back(worker: BackgroundWorker) -> None:
    keeper = SessionRepository(Store.in_memory)
    person = keeper.add_person("Linden")
    log = SessionRecorder(keeper, worker, person.id, AssessmentCondition(), Pain())
    key = new_id()
    log.keep(PendingMeasurement(key=key, measurement=made(100.0), conduct=AssessmentCondition()))
    log.drop(key)
    assert worker.close(3.0)
    assert keeper.store.history(person.id).measurements == ()


def test_what_cannot_be_saved_is_told(worker: BackgroundWorker, qtbot: QtBot) -> None:
    keeper = SessionRepository(lambda: Store.open(Path("/dev/null/nowhere/sessions.sqlite")))
    log = SessionRecorder(keeper, worker, new_id(), AssessmentCondition(), Pain())
    with qtbot.waitSignal(log.failed, timeout=5000) as told:
        log.keep(
            PendingMeasurement(key=new_id(), measurement=made(100.0), conduct=AssessmentCondition())
        )
    assert told.args
    assert len(told.args[0]) > 20


def plan_and_event(person: Person) -> tuple[Plan, Event]:
    return (
        Plan(
            id=new_id(),
            person_id=person.id,
            first_day=dt.date(2026, 11, 2),
            exercises=(
                PlannedExercise(
                    exercise=Exercise(listed=ListedExercise.PENDULUM), times_a_day=3, hold_s=0
                ),
            ),
            pain_limit=4,
        ),
        Event(id=new_id(), person_id=person.id, day=dt.date(2026, 11, 3), kind=EventKind.FLARE),
    )


@pytest.mark.parametrize("kind", ["memory", "store"])
def test_both_keepers_do_the_same(kind: str, path: Path) -> None:
    keeper = SessionRepository(Store.in_memory if kind == "memory" else lambda: Store.open(path))
    person = keeper.add_person("Rowan", (Side.RIGHT,))
    assert keeper.store.people() == [person]
    with pytest.raises(InputError):
        keeper.add_person("Rowan")
    session_id = keeper.begin(person.id, AssessmentCondition(), Pain(rest=1))
    kept = PendingMeasurement(key=new_id(), measurement=made(90.0), conduct=AssessmentCondition())
    keeper.keep(session_id, person.id, kept)
    keeper.keep(session_id, person.id, replace(kept, measurement=made(90.0, 92.0)))
    keeper.store.log_exercise(person.id, Exercise(listed=ListedExercise.PENDULUM))
    mistaken = keeper.store.log_exercise(person.id, Exercise(listed=ListedExercise.TOWEL))
    keeper.store.delete_exercise_log(mistaken.id)
    plan, event = plan_and_event(person)
    keeper.store.save_plan(plan)
    keeper.store.save_plan(replace(plan, pain_limit=3))
    keeper.store.save_event(event)
    keeper.store.save_event(replace(event, id=new_id(), note="once more"))
    keeper.store.delete_event(event.id)
    assert keeper.store.plans(person.id) == [replace(plan, pain_limit=3)]
    assert [each.note for each in keeper.store.events(person.id)] == ["once more"]
    keeper.finish(session_id, "done")
    history = keeper.store.history(person.id)
    assert [each.measurement.value for each in history.measurements] == [91.0]
    assert history.sessions[0].finished
    assert history.sessions[0].note == "done"
    assert [each.exercise.listed for each in history.exercises_done] == [ListedExercise.PENDULUM]
    keeper.store.delete_measurement(kept.key)
    assert keeper.store.history(person.id).measurements == ()
    keeper.keep(session_id, person.id, kept)
    keeper.store.delete_session(session_id)
    history = keeper.store.history(person.id)
    assert (history.sessions, history.measurements) == ((), ())
    assert len(history.exercises_done) == 1
    keeper.close()
