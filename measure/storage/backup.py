"""A copy of the whole store in one file, and putting such a copy in the store's place."""

import contextlib
import os
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from measure.errors import DataError, InputError, MachineError
from measure.message import TranslatableMessage, system_reason
from measure.storage.connection import open_connection
from measure.storage.errors import UNCLEAR_TABLES, in_plain_words, sqlite_reason
from measure.storage.location import ASIDE_NAMES, prepare
from measure.storage.migrations import VERSION, check_integrity, migrate, version_of
from measure.system.atomic_files import publish
from measure.system.clock import Clock, new_id
from measure.system.paths import make_private


@dataclass(frozen=True, slots=True, kw_only=True)
class Contents:
    """How much a store holds."""

    people: int
    sessions: int
    measurements: int

    def __str__(self) -> str:
        people = "1 person" if self.people == 1 else f"{self.people} people"
        sessions = "1 session" if self.sessions == 1 else f"{self.sessions} sessions"
        ending = "" if self.measurements == 1 else "s"
        return f"{people}, {sessions} and {self.measurements} measurement{ending}"


def backup(path: Path, target: Path) -> Contents:
    """Copy the store at `path` to the new file `target`, checked, readable by nobody else.

    Deleted people leave no trace in it. Other programs may go on writing meanwhile.

    Raises
    ------
    InputError
        When there is a file called `target`, or its folder is missing.
    DataError
        When the store, or the copy of it, is damaged.
    """
    if target.exists():
        raise InputError(
            TranslatableMessage(
                "{path} exists already and was left as it is. Choose another name.",
                {"path": str(target)},
            )
        )
    if not target.parent.is_dir():
        raise InputError(
            TranslatableMessage(
                "There is no folder {folder}. Create it or choose another one.",
                {"folder": str(target.parent)},
            )
        )
    part = target.with_name(f".{target.name}.{new_id()[:8]}.part")
    opened = open_connection(path)
    try:
        with contextlib.closing(opened.connection), in_plain_words(target):
            opened.connection.execute("VACUUM INTO ?", (os.fspath(part),))
        os.chmod(part, 0o600)
        contents = inspect(part)
        _flush(part)
        publish(part, target)
    except OSError as error:
        raise MachineError(
            TranslatableMessage(
                "The backup {path} could not be written ({reason}). Check the free space and "
                "permissions of the disk, or choose another place.",
                {"path": str(target), "reason": system_reason(error)},
            )
        ) from error
    finally:
        part.unlink(missing_ok=True)
    return contents


def inspect(path: Path) -> Contents:
    """Read a store through without changing it and return what it holds.

    Raises
    ------
    InputError
        When there is no such file.
    DataError
        When it is no store, is damaged, or comes from a later version.
    """
    with _as_a_copy(path), contextlib.closing(_open_untouched(path)) as connection:
        version_of(connection, path)
        check_integrity(connection)
        counts = [
            int(connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0])
            for table in ("person", "session", "measurement")
        ]
    return Contents(people=counts[0], sessions=counts[1], measurements=counts[2])


def restore(copy: Path, path: Path, clock: Clock) -> tuple[Contents, Path | None]:
    """Put a backup in the store's place, after checking it whole.

    The store that was there, whole or damaged, stays beside it under another name.

    Parameters
    ----------
    copy
        A file made by :func:`backup`, or any other such store. It is not changed.

    Returns
    -------
    contents : Contents
        What the store holds now.
    aside : Path or None
        Where the former store is, or None when there was none.

    Raises
    ------
    DataError
        When the backup is no store, is damaged, or comes from a later version; the store is
        then as it was.
    MachineError
        When another program has the store open, or the disk refuses.
    """
    if path.exists() and copy.exists() and path.samefile(copy):
        raise InputError(
            TranslatableMessage("This file is the data file itself. Choose a backup instead.")
        )
    inspect(copy)
    try:
        make_private(path.parent)
        new = path.with_name(f".{path.name}.{new_id()}")
        try:
            contents = _copy_up_to_date(copy, new)
            aside = _archive_current(path, clock) if path.exists() else None
            if aside:
                os.replace(new, path)
            else:
                _drop_logs(path)
                publish(new, path)
        finally:
            new.unlink(missing_ok=True)
        prepare(path)
    except OSError as error:
        raise MachineError(
            TranslatableMessage(
                "The backup could not be restored ({reason}). The data file {path} has not "
                "changed. Check the free space and permissions of the disk, and that no other "
                "program is using the file.",
                {"reason": system_reason(error), "path": str(path)},
            )
        ) from error
    return contents, aside


@contextlib.contextmanager
def _as_a_copy(path: Path) -> Iterator[None]:
    """Say of SQLite's errors inside the block what they mean for a copy that was named."""
    try:
        with in_plain_words(path):
            yield
    except DataError as error:
        cause = error.__cause__
        if cause is None:
            raise
        defect = sqlite_reason(cause) if isinstance(cause, sqlite3.Error) else UNCLEAR_TABLES
        raise DataError(
            TranslatableMessage(
                "{path} is not a complete backup ({defect}). Nothing was changed. Choose another "
                "backup.",
                {"path": str(path), "defect": defect},
            )
        ) from cause


def _open_untouched(path: Path) -> sqlite3.Connection:
    """Open a store for reading only, without making a log beside it where there is none."""
    if not path.is_file():
        raise InputError(TranslatableMessage("There is no file {path}.", {"path": str(path)}))
    log = path.with_name(path.name + "-wal")
    alone = "" if log.exists() and log.stat().st_size else "&immutable=1"
    address = f"{path.resolve().as_uri()}?mode=ro{alone}"
    return sqlite3.connect(address, uri=True, isolation_level=None)


def _copy_up_to_date(copy: Path, new: Path) -> Contents:
    os.close(os.open(new, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
    with in_plain_words(new), contextlib.closing(sqlite3.connect(new)) as target:
        with contextlib.closing(_open_untouched(copy)) as source:
            source.backup(target)
        target.isolation_level = None
        target.execute("PRAGMA journal_mode = DELETE")
        if version_of(target, copy) < VERSION:
            migrate(target)
    _flush(new)
    return inspect(new)


def _archive_current(path: Path, clock: Clock) -> Path:
    """Keep the present store under another name, with its log where that cannot be emptied.

    The store's own name stays taken until the new file replaces it in one step.
    """
    _take_alone(path)
    stamp = clock.now().utc.strftime("%Y%m%d-%H%M%S")
    aside = path.with_name(ASIDE_NAMES.replace("*", f"{stamp}-{new_id()[:6]}.sqlite"))
    log = path.with_name(path.name + "-wal")
    try:
        os.link(path, aside)
    except OSError:
        os.replace(path, aside)
    if log.exists():
        os.replace(log, aside.with_name(aside.name + "-wal"))
    _drop_logs(path)
    return aside


def _take_alone(path: Path) -> None:
    """Fold the log into the store; raise MachineError while another program has it open.

    Leaving write-ahead mode needs the file for oneself. A damaged store cannot do that, and
    need not.
    """
    with (
        contextlib.suppress(sqlite3.DatabaseError),
        contextlib.closing(sqlite3.connect(path, timeout=1.0, isolation_level=None)) as alone,
    ):
        try:
            alone.execute("PRAGMA journal_mode = DELETE").fetchone()
            alone.execute("BEGIN EXCLUSIVE")
            alone.execute("ROLLBACK")
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY:
                raise
            raise MachineError(
                TranslatableMessage(
                    "Another program has the data file {path} open. Nothing was changed. Close "
                    "that program and try again.",
                    {"path": str(path)},
                )
            ) from error


def _drop_logs(path: Path) -> None:
    for ending in ("-wal", "-shm", "-journal"):
        path.with_name(path.name + ending).unlink(missing_ok=True)


def _flush(path: Path) -> None:
    """Wait until the disk holds the file."""
    with path.open("rb+") as file:
        os.fsync(file.fileno())
