"""The store when things go wrong: killed programs, full disks, damaged and missing files."""

import os
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from measure.domain.records import SessionRecord
from measure.errors import DataError, MachineError
from measure.storage.location import MARKER_NAME
from measure.storage.migrations import VERSION
from measure.storage.store import Store
from tests.support import record_samples as sample

ROOT = Path(__file__).parents[3]
KILLER = ROOT / "tests" / "support" / "store_killer.py"

needs_fork = pytest.mark.skipif(not hasattr(os, "fork"), reason="not on this system: fork")


@pytest.fixture
def fast_folder() -> Iterator[Path]:
    """A folder in memory where there is one: a killed program is no power cut, and waiting for
    a disk tells nothing here.
    """
    memory = Path("/dev/shm")
    with tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as folder:
        yield Path(folder)


def _kill(what: str, path: Path, seed: int, times: int) -> "subprocess.Popen[str]":
    return subprocess.Popen(
        [sys.executable, str(KILLER), what, str(path), str(seed), str(times)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
    )


@needs_fork
@pytest.mark.parametrize(("what", "times"), [("save", 50), ("update", 20), ("delete", 20)])
def test_killed_programs_lose_nothing_that_was_saved(
    what: str, times: int, fast_folder: Path
) -> None:
    killer = _kill(what, fast_folder / "sessions.sqlite", seed=20261125, times=times)
    told, wrong = killer.communicate(timeout=110)
    assert wrong == ""
    lines = told.splitlines()
    assert len(lines) == times
    assert [line for line in lines if not line.startswith("ok ")] == []
    if what == "save":
        assert int(lines[-1].split()[1]) > 20


@needs_fork
def test_two_programs_at_once_lose_no_session(fast_folder: Path) -> None:
    path = fast_folder / "sessions.sqlite"
    who = sample.person("Rosa")
    with Store.open(path) as store:
        store.save_person(who)
    programs = [_kill("write", path, 1, 1), _kill("write", path, 2, 1)]
    for program in programs:
        told, wrong = program.communicate(timeout=110)
        assert (told, wrong) == ("ok 100\n", "")
    with Store.open(path) as store:
        sessions = store.sessions(who.id)
        measured = store.measurements(who.id)
    assert len(sessions) == 200
    assert all(each.finished and each.duration_s is not None for each in sessions)
    assert {each.session_id for each in measured} == {each.id for each in sessions}
    assert len({each.note for each in sessions}) == 2
    times = [each.started.utc for each in sessions]
    assert times == sorted(times)


def test_a_full_disk_leaves_what_was_saved(tmp_path: Path) -> None:
    path = tmp_path / "sessions.sqlite"
    who = sample.person()
    first, second = sample.session(who, 1), sample.session(who, 2)
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(first)
        store.save_measurement(sample.record(first))
        (pages,) = store._connection.execute("PRAGMA page_count").fetchone()
        store._connection.execute(f"PRAGMA max_page_count = {pages}")
        store.save_session(second)
        saved = _save_until_full(store, second)
        store._connection.execute("PRAGMA max_page_count = 100000")
        assert len(store.measurements(who.id, session_id=second.id)) == saved
        store.save_measurement(sample.record(second, saved + 1))
    with Store.open(path) as store:
        assert store.sessions(who.id) == [first, second]
        assert store.measurements(who.id, session_id=first.id) == [sample.record(first)]
        assert len(store.measurements(who.id)) == saved + 2


def _save_until_full(store: Store, session: SessionRecord) -> int:
    """Save measurements until there is no room; return how many were saved."""
    saved = 0

    def go_on() -> None:
        nonlocal saved
        for count in range(1, 1000):
            store.save_measurement(sample.record(session, count))
            saved = count

    with pytest.raises(MachineError, match="no space left"):
        go_on()
    return saved


_FILL = """
import resource, signal, sys
from pathlib import Path
from measure.errors import MachineError
from measure.storage.store import Store
from tests.support import record_samples as sample

signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
who = sample.person()
with Store.open(Path(sys.argv[1])) as store:
    store.save_person(who)
    session = sample.session(who)
    store.save_session(session)
    resource.setrlimit(resource.RLIMIT_FSIZE, (300_000, resource.RLIM_INFINITY))
    for count in range(10_000):
        try:
            store.save_measurement(sample.record(session, count))
        except MachineError as error:
            print(count, error)
            break
    resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY,) * 2)
    print(len(store.measurements(who.id)))
"""


@pytest.mark.skipif(os.name != "posix", reason="not on this system: file size limits")
def test_a_disk_that_refuses_to_write_leaves_what_was_saved(tmp_path: Path) -> None:
    path = tmp_path / "sessions.sqlite"
    ran = subprocess.run(
        [sys.executable, "-c", _FILL, str(path)],
        capture_output=True,
        text=True,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        timeout=100,
    )
    assert ran.stderr == ""
    failed, kept = ran.stdout.splitlines()
    count, _, words = failed.partition(" ")
    assert "The disk could not" in words or "no space left" in words
    assert int(count) == int(kept) > 10
    with Store.open(path) as store:
        assert len(store.measurements(sample.person().id)) == int(kept)


_OPEN_FULL = """
import resource, signal, sys
from pathlib import Path
from measure.errors import MachineError
from measure.storage.store import Store
from tests.support import record_samples as sample

signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (16, resource.RLIM_INFINITY))
with Store.open(Path(sys.argv[1])) as store:
    print(len(store.measurements(sample.person().id)), "no space left" in store.warnings[0])
    try:
        store.save_event(sample.event(sample.person()))
    except MachineError:
        print("told")
"""


@pytest.mark.skipif(os.name != "posix", reason="not on this system: file size limits")
def test_a_store_on_a_disk_without_any_room_can_still_be_read(filled: Path) -> None:
    ran = subprocess.run(
        [sys.executable, "-c", _OPEN_FULL, str(filled)],
        capture_output=True,
        text=True,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        timeout=100,
    )
    assert (ran.stdout, ran.stderr) == ("39 True\ntold\n", "")
    with Store.open(filled) as store:
        assert store.events(sample.person().id) == []


@pytest.fixture
def filled(tmp_path: Path) -> Path:
    """The file of a store that holds somebody."""
    path = tmp_path / "kept" / "sessions.sqlite"
    who = sample.person()
    with Store.open(path) as store:
        store.save_person(who)
        for number in range(1, 40):
            session = sample.session(who, number)
            store.save_session(session)
            store.save_measurement(sample.record(session))
    return path


@pytest.mark.parametrize("left", [0, 1, 100, 511, 512, 4096, 10_000, 40_000])
def test_a_file_that_was_cut_off_never_opens_as_an_empty_history(left: int, filled: Path) -> None:
    data = filled.read_bytes()
    assert len(data) > left
    filled.write_bytes(data[:left])
    with pytest.raises(DataError, match="thawline restore BACKUP"):
        Store.open(filled)
    assert filled.read_bytes() == data[:left]


def test_a_missing_file_is_never_begun_anew(filled: Path) -> None:
    filled.unlink()
    with pytest.raises(DataError, match="the file is gone"):
        Store.open(filled)
    assert not filled.exists()
    (filled.parent / MARKER_NAME).unlink()
    with Store.open(filled) as store:
        assert store.people() == []


@pytest.mark.parametrize("data", [b"x" * 5000, b"SQLite format 3\0" + b"\xff" * 5000, bytes(8192)])
def test_another_file_of_that_name(data: bytes, filled: Path) -> None:
    filled.write_bytes(data)
    with pytest.raises(DataError, match="left as it is"):
        Store.open(filled)
    assert filled.read_bytes() == data


def test_another_programs_database(filled: Path) -> None:
    filled.unlink()
    connection = sqlite3.connect(filled)
    connection.execute("CREATE TABLE mine (text TEXT)")
    connection.commit()
    connection.close()
    before = filled.read_bytes()
    with pytest.raises(DataError, match="not a data file of Thawline"):
        Store.open(filled)
    assert filled.read_bytes() == before


def test_a_store_of_a_later_version(filled: Path) -> None:
    connection = sqlite3.connect(filled)
    connection.execute(f"PRAGMA user_version = {VERSION + 1}")
    connection.commit()
    connection.close()
    with pytest.raises(DataError, match="later version"):
        Store.open(filled)


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE measurement SET movement = 'somersault'",
        "UPDATE session SET started_utc = '2026-13-41T00:00:00.000000Z'",
        "UPDATE session SET started_offset_min = 99999",
        "UPDATE measurement SET reasons = '[\"bored\"]'",
        'UPDATE conditions SET setup = \'{"camera": {"zoom": 2}}\'',
        "UPDATE person SET affected = '{}'",
        "UPDATE trial SET flags = '7'",
    ],
)
def test_rows_that_this_program_never_wrote(change: str, filled: Path) -> None:
    connection = sqlite3.connect(filled)
    connection.execute(change)
    connection.commit()
    connection.close()
    with Store.open(filled) as store, pytest.raises(DataError, match="is damaged"):
        store.history(sample.person().id)


def test_a_damaged_page_is_reported_where_it_is_read(filled: Path) -> None:
    data = bytearray(filled.read_bytes())
    at = data.index(b"After planting beans.")
    page = at // 4096 * 4096
    data[page : page + 4096] = os.urandom(4096)
    filled.write_bytes(data)
    with pytest.raises(DataError, match="is damaged"):
        _read_all(filled)


def _read_all(path: Path) -> None:
    with Store.open(path) as store:
        for who in store.people():
            store.history(who.id)


def test_a_folder_that_is_a_file(tmp_path: Path) -> None:
    (tmp_path / "kept").write_text("no folder")
    with pytest.raises(MachineError, match="cannot be used"):
        Store.open(tmp_path / "kept" / "sessions.sqlite")


def test_a_killed_program_that_was_beginning_a_store_leaves_no_store(tmp_path: Path) -> None:
    """What it leaves has another name, and does not stand in the way."""
    path = tmp_path / "kept" / "sessions.sqlite"
    path.parent.mkdir()
    (path.parent / ".sessions.sqlite.0123").write_bytes(b"")
    with Store.open(path) as store:
        assert store.people() == []


def test_an_own_folder_stays_as_it_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "mine"
    folder.mkdir(mode=0o755)
    folder.chmod(0o755)
    monkeypatch.setenv("THAWLINE_DATA", str(folder))
    with Store.open() as store:
        assert any("chmod 700" in each for each in store.warnings)
    assert folder.stat().st_mode & 0o777 == 0o755
    monkeypatch.delenv("THAWLINE_DATA")
    shutil.rmtree(folder)
    folder.mkdir(mode=0o755)
    with Store.open(folder / "sessions.sqlite") as store:
        assert store.warnings == ()
    assert folder.stat().st_mode & 0o777 == 0o700
