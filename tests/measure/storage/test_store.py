"""The store: what goes in comes out, in order, and a person who is deleted is gone."""

import contextlib
import dataclasses
import math
import os
import sqlite3
import stat
from pathlib import Path

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import History, Pain
from measure.errors import InputError, MachineError
from measure.storage import merge
from measure.storage.location import MARKER_NAME
from measure.storage.migrations import check_integrity, migrate
from measure.storage.store import Store
from tests.support import record_samples as sample
from tests.support.record_strategies import histories


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "kept" / "sessions.sqlite"


def test_a_new_store_is_empty_and_closed_to_others(path: Path) -> None:
    with Store.open(path) as store:
        assert store.people() == []
        assert store.warnings == ()
        names = {each.name for each in path.parent.iterdir()}
    assert {"sessions.sqlite", MARKER_NAME} <= names
    if os.name == "posix":
        assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700
        for each in path.parent.iterdir():
            assert stat.S_IMODE(each.stat().st_mode) == 0o600


def test_files_stay_closed_while_the_store_is_open(path: Path) -> None:
    with Store.open(path) as store:
        store.save_person(sample.person())
        assert {oct(stat.S_IMODE(each.stat().st_mode)) for each in path.parent.iterdir()} == {
            "0o600"
        }


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(history=histories())
def test_every_record_comes_back_as_it_went_in(history: History) -> None:
    with contextlib.closing(sqlite3.connect(":memory:", isolation_level=None)) as connection:
        migrate(connection)
        merged = merge.merge(connection, history)
        assert (merged.same, merged.kept, merged.new_person) == (0, 0, True)
        assert merge.history_of(connection, history.person) == history
        check_integrity(connection)
        again = merge.merge(connection, history)
        assert (again.added, again.kept, again.new_person) == (0, 0, False)
        assert again.same == merged.added


def test_records_that_are_saved_one_by_one(path: Path) -> None:
    who = sample.person()
    first, second = sample.session(who, 1), sample.session(who, 2)
    found = [
        sample.record(first, 1),
        sample.record(first, 2, sample.REACH),
        sample.record(second, 1, sample.REFUSAL),
    ]
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(second)
        store.save_session(first)
        for each in reversed(found):
            store.save_measurement(each)
        store.save_event(sample.event(who))
    with Store.open(path) as store:
        assert store.sessions(who.id) == [first, second]
        assert store.session(first.id) == first
        assert store.measurements(who.id) == found
        assert store.measurements(who.id, movement=Movement.FLEXION) == found[:1]
        assert store.measurements(who.id, side=Side.RIGHT) == []
        assert store.measurements(who.id, session_id=second.id) == found[2:]
        assert store.events(who.id) == [sample.event(who)]


def test_saving_again_replaces_the_measurement_and_its_trials(path: Path) -> None:
    who = sample.person()
    session = sample.session(who)
    early = sample.record(session, 1, sample.measurement(trials=(sample.trial(),)))
    late = sample.record(session, 1)
    other = sample.record(session, 2)
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(session)
        for each in (early, other, late):
            store.save_measurement(each)
        assert store.measurements(who.id) == [late, other]
        store.delete_measurement(late.id)
        assert store.measurements(who.id) == [other]
        store.delete_session(session.id)
        assert store.sessions(who.id) == []
        assert store.measurements(who.id) == []


@pytest.mark.parametrize("number", [np.float32(90.5), np.float64(90.5), np.int64(90), 90])
def test_numbers_of_any_kind_become_plain_ones(path: Path, number: float) -> None:
    who = sample.person()
    session = sample.session(who, pain=Pain(rest=np.int64(3)), duration_s=np.float32(2.5))
    found = sample.measurement(
        value=number,
        low=number,
        high=number,
        trials=(sample.trial(number, low=number, high=number, start_s=number),),
    )
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(session)
        store.save_measurement(
            sample.record(session, 1, found, pain_during=np.int32(4))  # type: ignore[arg-type]
        )
        (back,) = store.measurements(who.id)
    assert back.measurement.value == float(number)
    assert type(back.measurement.trials[0].value) is float
    connection = sqlite3.connect(path)
    types = connection.execute(
        "SELECT typeof(measurement.value), typeof(trial.value), typeof(trial.start_s), "
        "typeof(pain_rest), typeof(duration_s), typeof(pain_during) "
        "FROM measurement JOIN trial ON trial.measurement = measurement.number "
        "JOIN session ON session.number = measurement.session"
    ).fetchall()
    connection.close()
    assert types == [("real", "real", "real", "integer", "real", "integer")]


@pytest.mark.parametrize("nothing", [math.nan, math.inf, -math.inf, np.float32("nan"), None])
def test_a_number_that_is_none_becomes_a_gap_with_a_reason(path: Path, nothing: float) -> None:
    who = sample.person()
    session = sample.session(who)
    gap = dataclasses.replace(sample.trial(), value=nothing)
    found = sample.measurement(value=nothing, trials=(gap,))
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(session)
        store.save_measurement(sample.record(session, 1, found))
        (back,) = store.measurements(who.id)
    assert back.measurement.status is Status.REFUSED
    assert (back.measurement.value, back.measurement.low, back.measurement.high) == (None,) * 3
    assert back.measurement.reasons[0] is Reason.IMPOSSIBLE_VALUE
    (trial,) = back.measurement.trials
    assert trial.value is None
    assert trial.refused_for == (Reason.IMPOSSIBLE_VALUE,)
    assert not trial.scored


def test_a_refusal_without_a_reason_is_not_kept(path: Path) -> None:
    who = sample.person()
    session = sample.session(who)
    found = dataclasses.replace(sample.REFUSAL, reasons=())
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(session)
        with pytest.raises(InputError, match="says why"):
            store.save_measurement(sample.record(session, 1, found))
        assert store.measurements(who.id) == []


def test_a_wrong_type_cannot_reach_the_file(path: Path) -> None:
    Store.open(path).close()
    connection = sqlite3.connect(path)
    with pytest.raises(sqlite3.IntegrityError, match="cannot store BLOB"):
        connection.execute(
            "INSERT INTO session (id, person, started_utc, started_offset_min, started_zone, "
            "help, posture, note, duration_s, finished) VALUES (?, 1, ?, 0, '', '', '', '', ?, 0)",
            ("a" * 32, "2026-01-01T00:00:00.000000Z", np.float32(1)),
        )
    connection.close()


def test_pseudonyms_are_told_apart_by_more_than_their_case(path: Path) -> None:
    with Store.open(path) as store:
        store.save_person(sample.person("Rosa"))
        for same in ("rosa", "ROSA", "\uff32osa"):
            with pytest.raises(InputError, match="already called Rosa"):
                store.save_person(sample.person(same))
        store.save_person(sample.person("Straße"))
        with pytest.raises(InputError, match="already"):
            store.save_person(sample.person("STRASSE"))
        assert store.find_person("strasse").pseudonym == "Straße"
        assert store.find_person(sample.some_id("Rosa")).pseudonym == "Rosa"
        renamed = dataclasses.replace(sample.person("Rosa"), pseudonym="Rose")
        store.save_person(renamed)
        assert [each.pseudonym for each in store.people()] == ["Rose", "Straße"]
        with pytest.raises(InputError, match="The people here are: Rose, Straße"):
            store.find_person("Rosa")
        with pytest.raises(InputError, match="no one called"):
            store.find_person("Ro\udcffsa")


def test_records_of_somebody_who_is_not_there(path: Path) -> None:
    who, other = sample.person("Rosa"), sample.person("Emil")
    session = sample.session(who)
    with Store.open(path) as store:
        with pytest.raises(InputError, match="no longer"):
            store.save_session(session)
        with pytest.raises(InputError, match="no longer"):
            store.save_event(sample.event(who))
        with pytest.raises(InputError, match="no longer"):
            store.history(who.id)
        with pytest.raises(InputError, match="no longer"):
            store.session(session.id)
        store.save_person(who)
        store.save_person(other)
        store.save_session(session)
        with pytest.raises(InputError, match="no longer"):
            store.save_measurement(dataclasses.replace(sample.record(session), person_id=other.id))
        with pytest.raises(InputError, match="no longer"):
            store.finish_session(sample.some_id("nothing"))
        # A session stays with its person whatever is said later.
        store.save_session(dataclasses.replace(session, person_id=other.id))
        assert store.sessions(other.id) == []
        assert store.sessions(who.id) == [session]


def test_deleting_a_person_leaves_no_trace_in_any_file(path: Path) -> None:
    rosa, emil = sample.person("Rosa Zaunkönigin"), sample.person("Emil")
    with Store.open(path) as store:
        for who in (rosa, emil):
            store.save_person(who)
            for number in range(1, 30):
                session = sample.session(who, number, note=f"Secret of {who.pseudonym}.")
                store.save_session(session)
                setup = dataclasses.replace(
                    sample.PROVENANCE, model_hashes={"own": f"model of {who.pseudonym}"}
                )
                store.save_measurement(
                    sample.record(session, 1, sample.measurement(provenance=setup))
                )
            store.save_event(sample.event(who, note=f"Event of {who.pseudonym}"))
        assert _files_with(path, "Zaunkönigin")
        assert store.delete_person(rosa.id)
        assert [each.pseudonym for each in store.people()] == ["Emil"]
        assert len(store.measurements(emil.id)) == 29
        assert _files_with(path, "Zaunkönigin") == []
        assert _files_with(path, rosa.id) == []
        assert _files_with(path, sample.some_id(f"session 3 of {rosa.id}")) == []
    assert _files_with(path, "Emil") == ["sessions.sqlite"]


def test_a_store_that_another_program_holds_is_waited_for_then_named(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("measure.storage.connection.WAIT_S", 0.05)
    with Store.open(path) as store:
        holder = sqlite3.connect(path, isolation_level=None)
        holder.execute("BEGIN IMMEDIATE")
        with pytest.raises(MachineError, match="Another program is using"):
            store.save_person(sample.person())
        holder.execute("COMMIT")
        holder.close()
        store.save_person(sample.person())
        assert len(store.people()) == 1


def _files_with(path: Path, text: str) -> list[str]:
    return sorted(each.name for each in path.parent.iterdir() if text.encode() in each.read_bytes())
