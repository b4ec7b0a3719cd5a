"""Backups are whole and separate; restoring checks first and throws nothing away."""

import contextlib
import os
import shutil
import sqlite3
from pathlib import Path

import pytest

from measure.errors import DataError, InputError, MachineError, ThawlineError
from measure.storage import backup as backup_module
from measure.storage.backup import Contents, backup, inspect, restore
from measure.storage.store import Store
from tests.support import record_samples as sample
from tests.support.record_samples import FixedClock

GOLDEN = Path(__file__).parent / "golden" / "sessions-of-version-1.sqlite"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """The file of a store that holds Rosa with one session."""
    path = tmp_path / "kept" / "sessions.sqlite"
    _add(path, "Rosa")
    return path


def _add(path: Path, name: str) -> None:
    who = sample.person(name)
    session = sample.session(who)
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(session)
        store.save_measurement(sample.record(session))


def _names(path: Path) -> list[str]:
    with Store.open(path) as store:
        return [who.pseudonym for who in store.people()]


def test_there_and_back(path: Path, tmp_path: Path) -> None:
    copy = tmp_path / "copy.sqlite"
    with Store.open(path):
        assert backup(path, copy) == Contents(people=1, sessions=1, measurements=1)
    assert copy.stat().st_mode & 0o077 == 0
    before = copy.read_bytes()
    _add(path, "Emil")
    contents, aside = restore(copy, path, FixedClock())
    assert contents == Contents(people=1, sessions=1, measurements=1)
    assert _names(path) == ["Rosa"]
    assert aside is not None
    assert inspect(aside) == Contents(people=2, sessions=2, measurements=2)
    assert copy.read_bytes() == before
    assert sorted(each.name for each in tmp_path.iterdir()) == ["copy.sqlite", "kept"]
    restore(aside, path, FixedClock())
    assert _names(path) == ["Emil", "Rosa"]


def test_a_backup_holds_no_trace_of_the_deleted(path: Path, tmp_path: Path) -> None:
    _add(path, "Zaunkönigin")
    with Store.open(path) as store:
        store.delete_person(sample.person("Zaunkönigin").id)
    backup(path, tmp_path / "copy.sqlite")
    assert "Zaunkönigin".encode() not in (tmp_path / "copy.sqlite").read_bytes()


def test_a_backup_never_takes_the_place_of_a_file(path: Path, tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("Dear Rosa")
    with pytest.raises(InputError, match="exists already"):
        backup(path, tmp_path / "letter.txt")
    assert (tmp_path / "letter.txt").read_text() == "Dear Rosa"
    with pytest.raises(InputError, match="no folder"):
        backup(path, tmp_path / "nowhere" / "copy.sqlite")


def test_restoring_where_nothing_is_yet(path: Path, tmp_path: Path) -> None:
    backup(path, tmp_path / "copy.sqlite")
    elsewhere = tmp_path / "other" / "sessions.sqlite"
    assert restore(tmp_path / "copy.sqlite", elsewhere, FixedClock())[1] is None
    assert _names(elsewhere) == ["Rosa"]
    assert elsewhere.stat().st_mode & 0o077 == 0


@pytest.mark.parametrize("left", [0, 1000, 20_000])
def test_restoring_over_a_damaged_store_keeps_it_aside(
    left: int, path: Path, tmp_path: Path
) -> None:
    backup(path, tmp_path / "copy.sqlite")
    damaged = path.read_bytes()[:left]
    path.write_bytes(damaged)
    _, aside = restore(tmp_path / "copy.sqlite", path, FixedClock())
    assert aside is not None
    assert aside.read_bytes() == damaged
    assert _names(path) == ["Rosa"]


def test_restoring_a_lost_store(path: Path, tmp_path: Path) -> None:
    backup(path, tmp_path / "copy.sqlite")
    path.unlink()
    restore(tmp_path / "copy.sqlite", path, FixedClock())
    assert _names(path) == ["Rosa"]


def test_a_log_left_by_a_killed_program_does_not_reach_the_restored_store(
    path: Path, tmp_path: Path
) -> None:
    backup(path, tmp_path / "copy.sqlite")
    with Store.open(path) as store:
        store.save_person(sample.person("Emil"))
        log = path.with_name("sessions.sqlite-wal")
        saved = log.read_bytes()
    path.write_bytes(b"no database" * 1000)
    log.write_bytes(saved)
    _, aside = restore(tmp_path / "copy.sqlite", path, FixedClock())
    assert aside is not None
    assert _names(path) == ["Rosa"]


def test_an_older_backup_is_brought_up_to_date_and_stays_as_it_is(
    path: Path, tmp_path: Path
) -> None:
    copy = tmp_path / "old.sqlite"
    shutil.copy(GOLDEN, copy)
    restore(copy, path, FixedClock())
    assert _names(path) == ["Rosa", "Łukasz"]
    assert copy.read_bytes() == GOLDEN.read_bytes()


def _text(path: Path) -> None:
    path.write_text("Dear Rosa, " * 500)


def _empty(path: Path) -> None:
    path.write_bytes(b"")


def _half(path: Path) -> None:
    path.write_bytes(GOLDEN.read_bytes()[:14_000])


def _later(path: Path) -> None:
    shutil.copy(GOLDEN, path)
    _run(path, "PRAGMA user_version = 99")


def _foreign(path: Path) -> None:
    _run(path, "CREATE TABLE mine (text TEXT)")


def _orphans(path: Path) -> None:
    shutil.copy(GOLDEN, path)
    _run(path, "DELETE FROM conditions")


def _run(path: Path, statement: str) -> None:
    with contextlib.closing(sqlite3.connect(path)) as connection:
        connection.execute(statement)
        connection.commit()


@pytest.mark.parametrize(
    ("make", "part"),
    [
        (_text, "not a complete backup"),
        (_empty, "not a data file of Thawline"),
        (_half, "not a complete backup"),
        (_later, "later version"),
        (_foreign, "not a data file of Thawline"),
        (_orphans, "that no longer exists"),
    ],
)
def test_what_is_no_backup_changes_nothing(make, part: str, path: Path, tmp_path: Path) -> None:  # type: ignore[no-untyped-def]
    copy = tmp_path / "copy.sqlite"
    make(copy)
    before = {each.name: each.read_bytes() for each in path.parent.iterdir()}
    with pytest.raises(DataError, match=part):
        restore(copy, path, FixedClock())
    assert {each.name: each.read_bytes() for each in path.parent.iterdir()} == before


def test_wrong_names(path: Path, tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no file"):
        restore(tmp_path / "nothing.sqlite", path, FixedClock())
    with pytest.raises(InputError, match="no file"):
        restore(tmp_path, path, FixedClock())
    with pytest.raises(InputError, match="the data file itself"):
        restore(path, path, FixedClock())


def test_a_store_that_is_open_is_not_replaced(path: Path, tmp_path: Path) -> None:
    backup(path, tmp_path / "copy.sqlite")
    with Store.open(path) as store:
        with pytest.raises(MachineError, match="Close that program and try again"):
            restore(tmp_path / "copy.sqlite", path, FixedClock())
        store.save_person(sample.person("Emil"))
    assert _names(path) == ["Emil", "Rosa"]


@pytest.mark.parametrize("step", ["link", "replace"])
def test_a_disk_that_refuses_half_way(
    step: str, path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    backup(path, tmp_path / "copy.sqlite")
    _add(path, "Emil")

    def refuse(*arguments: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(backup_module.os, step, refuse)
    if step == "link":
        restore(tmp_path / "copy.sqlite", path, FixedClock())
        monkeypatch.undo()
        assert _names(path) == ["Rosa"]
        return
    with pytest.raises(ThawlineError, match="could not be restored"):
        restore(tmp_path / "copy.sqlite", path, FixedClock())
    monkeypatch.undo()
    assert _names(path) == ["Emil", "Rosa"]
    assert [each for each in path.parent.iterdir() if each.name.startswith(".")] == []


def test_a_disk_without_links_still_takes_a_backup(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*arguments: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", refuse)
    backup(path, tmp_path / "copy.sqlite")
    assert inspect(tmp_path / "copy.sqlite").people == 1
    with pytest.raises(InputError, match="exists already"):
        backup(path, tmp_path / "copy.sqlite")
