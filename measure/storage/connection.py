"""Connections to the store: checked, brought up to date, set for safe writing."""

import contextlib
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from measure.errors import MachineError, ThawlineError
from measure.message import TranslatableMessage, system_reason
from measure.storage.calibration_files import files_in, set_aside, take_in
from measure.storage.disk_kind import DiskKind, disk_kind
from measure.storage.errors import damaged, in_plain_words
from measure.storage.location import BACKUP_FOLDER_NAME, folder_unusable, prepare
from measure.storage.migrations import APPLICATION_ID, VERSION, check_integrity, migrate, version_of

#: Longest wait for another program that is writing, seconds. [technical]
WAIT_S = 10.0

#: Oldest SQLite that has STRICT tables. [technical]
_OLDEST_SQLITE = (3, 37, 0)

_DISK_WARNINGS = {
    DiskKind.NETWORK: "The sessions are saved on a network disk, where a broken connection can "
    "damage them. Save them on this computer and share exports instead.",
    DiskKind.SYNCED: "The sessions are saved in a folder that is copied to other computers, which "
    "can damage them. Save them in a folder on this computer only and share exports instead.",
}

_NO_ROOM_WARNING = (
    "There seems to be no space left on the disk. You can still look at what was saved. Free some "
    "space and open Thawline again before the next session."
)

#: How SQLite says that the file shared by those who have the store open cannot be made.
_NO_SHARED_FILE = {sqlite3.SQLITE_IOERR, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_FULL}


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """A connection that is ready for use.

    Attributes
    ----------
    warnings
        What to tell the user about the place, in plain words.
    unusable
        Why a calibration file of an earlier version could not be taken in, by its name.
    """

    connection: sqlite3.Connection
    warnings: tuple[str, ...] = ()
    unusable: dict[str, ThawlineError] = field(default_factory=dict)


def open_connection(path: Path) -> Opened:
    """Open the store at `path`, beginning one where none ever was.

    Raises
    ------
    DataError
        When a store was there and is gone, is damaged, or comes from a later version.
    MachineError
        When the folder or the disk cannot be used.
    """
    if sqlite3.sqlite_version_info < _OLDEST_SQLITE:
        raise MachineError(
            f"Python's SQLite is version {sqlite3.sqlite_version}; 3.37 or later is needed. "
            "Use a newer Python."
        )
    warnings = prepare(path)
    kind = disk_kind(path.parent)
    if kind in _DISK_WARNINGS:
        warnings = (*warnings, _DISK_WARNINGS[kind])
    write_ahead = kind is DiskKind.LOCAL
    with in_plain_words(path):
        try:
            connection = _connect(path, write_ahead=write_ahead, alone=False)
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode & 0xFF not in _NO_SHARED_FILE:
                raise
            connection = _connect(path, write_ahead=write_ahead, alone=True)
            warnings = (*warnings, _NO_ROOM_WARNING)
        try:
            unusable = _take_in_files(connection, path.parent)
        except BaseException:
            connection.close()
            raise
    return Opened(connection=connection, warnings=warnings, unusable=unusable)


def open_in_memory() -> Opened:
    """Open an empty store that lives as long as its connection, for tests and demonstrations.

    Threads may pass it on, but must not use it at the same time.
    """
    connection = sqlite3.connect(":memory:", isolation_level=None, check_same_thread=False)
    connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
    connection.execute("PRAGMA foreign_keys = ON")
    migrate(connection)
    return Opened(connection=connection)


@contextlib.contextmanager
def transaction(connection: sqlite3.Connection) -> Iterator[None]:
    """Run the block as one transaction that holds the write lock: all of it or nothing."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        yield
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise


@contextlib.contextmanager
def snapshot(connection: sqlite3.Connection) -> Iterator[None]:
    """Let all reads of the block see the store as it was at the first of them."""
    connection.execute("BEGIN")
    try:
        yield
    finally:
        connection.execute("ROLLBACK")


def wipe(connection: sqlite3.Connection) -> bool:
    """Write the file anew without what was deleted, and empty the log; tell if all went."""
    try:
        connection.execute("VACUUM")
        busy, *_ = connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    except sqlite3.OperationalError:
        return False
    return not busy


def _take_in_files(connection: sqlite3.Connection, folder: Path) -> dict[str, ThawlineError]:
    """Take in the calibration files of earlier versions, in one transaction, then set them aside.

    A program that is killed before they are set aside takes them in again, which changes nothing.
    """
    if not files_in(folder):
        return {}
    with transaction(connection):
        unusable = take_in(connection, folder)
    try:
        set_aside(folder, folder / BACKUP_FOLDER_NAME, unusable)
    except OSError as error:
        raise folder_unusable(folder, system_reason(error)) from error
    return unusable


def _connect(path: Path, *, write_ahead: bool, alone: bool) -> sqlite3.Connection:
    """Connect and make ready.

    Parameters
    ----------
    alone
        True to keep others out. The index of the log is then kept in memory, so that a store
        can be read where not even that small file can be made.
    """
    connection = sqlite3.connect(path, timeout=WAIT_S, isolation_level=None)
    try:
        if alone:
            connection.execute("PRAGMA locking_mode = EXCLUSIVE")
        _make_ready(connection, path, write_ahead=write_ahead)
    except BaseException:
        connection.close()
        raise
    return connection


def _make_ready(connection: sqlite3.Connection, path: Path, *, write_ahead: bool) -> None:
    version = version_of(connection, path)
    _check_size(connection, path)
    # Deleted rows are overwritten, and no copy of a row goes to a temporary file.
    connection.execute("PRAGMA secure_delete = ON")
    connection.execute("PRAGMA temp_store = MEMORY")
    # What was said to be saved survives a power cut too.
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute(f"PRAGMA journal_mode = {'WAL' if write_ahead else 'DELETE'}")
    if version < VERSION:
        check_integrity(connection)
        backup = path.parent / BACKUP_FOLDER_NAME / f"sessions-of-version-{version}.sqlite"
        migrate(connection, backup)


def _check_size(connection: sqlite3.Connection, path: Path) -> None:
    """Notice a file that was cut off, which SQLite would not until it reads the missing part.

    With a write-ahead log beside it the file may rightly be shorter than its header says.
    """
    log = path.with_name(path.name + "-wal")
    if log.exists() and log.stat().st_size:
        return
    (pages,) = connection.execute("PRAGMA page_count").fetchone()
    (page_size,) = connection.execute("PRAGMA page_size").fetchone()
    size = path.stat().st_size
    if size < pages * page_size:
        raise damaged(
            path,
            TranslatableMessage(
                "it has {size} of {whole} bytes",
                {"size": str(size), "whole": str(pages * page_size)},
            ),
        )
