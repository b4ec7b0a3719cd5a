"""The store where its place goes wrong: a folder that vanished or cannot be written to."""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from measure.errors import MachineError
from measure.storage.store import Store
from tests.support import record_samples as sample

ROOT = Path(__file__).parents[3]


@pytest.fixture
def path() -> Iterator[Path]:
    """The file of a store that holds one measurement, in a folder that others may pass."""
    with TemporaryDirectory() as folder:
        Path(folder).chmod(0o755)
        made = Path(folder) / "kept" / "sessions.sqlite"
        who = sample.person()
        with Store.open(made) as store:
            store.save_person(who)
            store.save_session(sample.session(who))
            store.save_measurement(sample.record(sample.session(who)))
        yield made


def _delete_folder(path: Path) -> None:
    shutil.rmtree(path.parent)


def _move_folder(path: Path) -> None:
    path.parent.rename(path.parent.with_name("elsewhere"))


def _put_another_in_its_place(path: Path) -> None:
    copy = path.with_name("copy")
    shutil.copy(path, copy)
    copy.replace(path)


@pytest.mark.skipif(os.name != "posix", reason="not on this system: open files are held")
@pytest.mark.parametrize(
    "vanish", [_delete_folder, Path.unlink, _move_folder, _put_another_in_its_place]
)
def test_a_store_that_vanished_while_open_saves_nothing_without_saying_so(
    vanish: Callable[[Path], object], path: Path
) -> None:
    session = sample.session(sample.person())
    with Store.open(path) as store:
        store.save_measurement(sample.record(session, 2))
        vanish(path)
        for save in (
            lambda: store.save_measurement(sample.record(session, 3)),
            lambda: store.save_session(sample.session(sample.person(), 2)),
            lambda: store.delete_session(session.id),
        ):
            with pytest.raises(MachineError, match="no longer where it was"):
                save()


#: What a program does in a folder that cannot be written to.
_READ_STORE_SCRIPT = """
import os, sys
from pathlib import Path
from measure.errors import MachineError
from measure.storage.store import Store
from tests.support import record_samples as sample
with Store.open(Path(sys.argv[3])) as store:
    store.people()  # so that nothing has to be imported with fewer rights
if os.getuid() == 0 and sys.argv[2] == "as somebody":
    os.setgroups([])
    os.setgid(65534)
    os.setuid(65534)
try:
    with Store.open(Path(sys.argv[1])) as store:
        store.save_event(sample.event(sample.person()))
        print("saved")
except MachineError as error:
    print(error)
"""


def _say(path: Path, *before: str, who: str) -> str:
    done = subprocess.run(
        [
            *before,
            sys.executable,
            "-c",
            _READ_STORE_SCRIPT,
            str(path),
            who,
            str(path.parents[1] / "first" / "s"),
        ],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        cwd="/",
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.stderr == ""
    return done.stdout


@pytest.mark.skipif(os.name != "posix", reason="not on this system: rights of files")
def test_a_folder_without_the_right_to_write_is_told_and_left_as_it_is(path: Path) -> None:
    """Looked at by somebody else than root, whom rights do not stop."""
    before = path.read_bytes()
    path.chmod(0o444)
    path.parent.chmod(0o555)
    try:
        told = _say(path, who="as somebody")
    finally:
        path.parent.chmod(0o755)
    assert "cannot be" in told
    assert "Check who owns" in told
    assert path.read_bytes() == before


def _read_only_mount(folder: Path) -> tuple[str, ...] | None:
    """Return what to put before a command so that it sees the folder on a read-only disk."""
    order = 'mount --bind "$0" "$0" && mount -o remount,ro,bind "$0" && exec "$@"'
    way = ("unshare", "--map-root-user", "--mount", "sh", "-c", order, str(folder))
    if shutil.which("unshare") is None:
        return None
    tried = subprocess.run([*way, "true"], capture_output=True, check=False)
    return None if tried.returncode else way


def test_a_read_only_disk_is_told_to_root_too(path: Path) -> None:
    way = _read_only_mount(path.parent)
    if way is None:
        pytest.skip("not on this system: mounts in a namespace for everybody")
    before = path.read_bytes()
    told = _say(path, *way, who="as root")
    assert "cannot be used (Read-only file system)" in told
    assert path.read_bytes() == before
