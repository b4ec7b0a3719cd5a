"""Bringing stores of earlier versions up to date: nothing lost, a copy first, all or nothing."""

import contextlib
import shutil
import sqlite3
from pathlib import Path

import pytest

from measure.errors import MachineError
from measure.storage import connection, migrations
from measure.storage.migrations import STEPS, VERSION, statements
from measure.storage.store import Store
from tests.support import record_samples as sample

GOLDEN = Path(__file__).parent / "golden"


@pytest.fixture(params=range(1, VERSION))
def version(request: pytest.FixtureRequest) -> int:
    """An earlier version of the store."""
    return int(request.param)


@pytest.fixture
def old_store(tmp_path: Path, version: int) -> Path:
    path = tmp_path / "sessions.sqlite"
    shutil.copy(GOLDEN / f"sessions-of-version-{version}.sqlite", path)
    return path


def test_there_is_a_golden_store_of_every_earlier_version() -> None:
    names = {each.name for each in GOLDEN.iterdir()}
    assert {f"sessions-of-version-{version}.sqlite" for version in range(1, VERSION)} <= names


def test_golden_store(old_store: Path, version: int) -> None:
    """What an earlier version kept is what is read now, record by record."""
    rosa = sample.person("Rosa")
    lukasz = sample.person("Łukasz", affected=(), dominant=None, since=None, onset=None, demo=True)
    with Store.open(old_store) as store:
        assert store.people() == [rosa, lukasz]
        for who in (rosa, lukasz):
            sessions = [
                sample.session(who, 1),
                sample.session(who, 2, finished=False, duration_s=None, note=""),
            ]
            assert store.sessions(who.id) == sessions
            assert store.measurements(who.id) == [
                sample.record(session, number, found)
                for session in sessions
                for number, found in enumerate(
                    (sample.measurement(), sample.REACH, sample.REFUSAL), start=1
                )
            ]
            assert store.events(who.id) == [sample.event(who)]
        has_programme = version > 1
        assert store.plans(rosa.id) == [sample.plan(rosa)] * has_programme
        assert store.exercises_done(rosa.id) == [sample.exercise_log(rosa)] * has_programme
        assert store.plans(lukasz.id) == store.exercises_done(lukasz.id) == []


def test_a_store_brought_up_to_date_has_the_tables_of_a_new_one(
    old_store: Path, tmp_path: Path
) -> None:
    new = tmp_path / "new" / "sessions.sqlite"
    Store.open(old_store).close()
    Store.open(new).close()
    assert _tables(old_store) == _tables(new)
    made = [each for step in STEPS for each in statements(step)]
    dropped = sum(each.startswith("DROP") for each in made)
    assert len(_tables(new)) == sum(each.startswith("CREATE") for each in made) - dropped


def test_the_copy_made_before_an_update_is_the_store_as_it_was(
    old_store: Path, version: int
) -> None:
    before = _contents(old_store)
    Store.open(old_store).close()
    copy = old_store.parent / "backups" / f"sessions-of-version-{version}.sqlite"
    assert _contents(copy) == before
    assert copy.stat().st_mode & 0o077 == 0
    kept = copy.read_bytes()
    Store.open(old_store).close()
    assert copy.read_bytes() == kept


def test_a_step_that_fails_changes_nothing(
    old_store: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    broken = (*STEPS, "CREATE TABLE fine (a TEXT) STRICT; INSERT INTO nowhere VALUES (1);")
    _pretend(monkeypatch, broken)
    before = _contents(old_store)
    with pytest.raises(MachineError, match="nowhere"):
        Store.open(old_store)
    assert _contents(old_store) == before
    monkeypatch.undo()
    with Store.open(old_store) as store:
        assert len(store.people()) == 2


def test_a_step_that_would_leave_rows_without_their_owner_is_not_taken(
    old_store: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _pretend(monkeypatch, (*STEPS, "DELETE FROM person;"))
    before = _contents(old_store)
    with pytest.raises(Exception, match="that no longer exists"):
        Store.open(old_store)
    assert _contents(old_store) == before


def test_a_store_that_another_program_updated_meanwhile(old_store: Path) -> None:
    """Whoever comes second finds nothing left to do."""
    with contextlib.closing(sqlite3.connect(old_store, isolation_level=None)) as first:
        migrations.migrate(first)
    with contextlib.closing(sqlite3.connect(old_store, isolation_level=None)) as second:
        migrations.migrate(second, old_store.parent / "copy.sqlite")
    assert not (old_store.parent / "copy.sqlite").exists()


def test_a_damaged_old_store_is_not_touched(old_store: Path, version: int) -> None:
    data = bytearray(old_store.read_bytes())
    page_size = int.from_bytes(data[16:18], "big")
    at = data.index(b"After planting beans.") // page_size * page_size
    data[at : at + 8] = b"\xff" * 8
    old_store.write_bytes(data)
    with pytest.raises(Exception, match="is damaged"):
        Store.open(old_store)
    assert not (old_store.parent / "backups").exists()
    with contextlib.closing(sqlite3.connect(old_store)) as connection:
        assert connection.execute("PRAGMA user_version").fetchone() == (version,)


def _pretend(monkeypatch: pytest.MonkeyPatch, pretended: tuple[str, ...]) -> None:
    """Let the program believe in further steps."""
    monkeypatch.setattr(migrations, "STEPS", pretended)
    for module in (migrations, connection):
        monkeypatch.setattr(module, "VERSION", len(pretended))


def _tables(path: Path) -> list[tuple[str, str]]:
    with contextlib.closing(sqlite3.connect(path)) as connection:
        return connection.execute(
            "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name"
        ).fetchall()


def _contents(path: Path) -> list[str]:
    with contextlib.closing(sqlite3.connect(path)) as connection:
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        return [str(version), *connection.iterdump()]
