"""Bringing a store to the present version, in one transaction, with a copy made first."""

import contextlib
import os
import sqlite3
from pathlib import Path

from measure.errors import DataError
from measure.storage.migrations import APPLICATION_ID, STEPS, VERSION, statements


def version_of(connection: sqlite3.Connection, path: Path) -> int:
    """Return the version of the store at `path`.

    Raises
    ------
    DataError
        When it is no store of ours, or one of a later version.
    """
    (application,) = connection.execute("PRAGMA application_id").fetchone()
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    if application != APPLICATION_ID or version < 1:
        raise DataError(
            f"{path} is no store of sessions. It was left as it is. "
            "Name a file made with: thawline backup FILE"
        )
    if version > VERSION:
        raise DataError(
            f"{path} was written by a later version of this program (its tables have version "
            f"{version}, this program knows {VERSION}). It was left as it is. "
            "Update the program and try again."
        )
    return int(version)


def migrate(connection: sqlite3.Connection, backup: Path | None = None) -> None:
    """Take the steps that the store lacks: all or none.

    Parameters
    ----------
    backup
        Where to copy the store before the first step, or None for a new store. A copy that is
        already there is kept.

    Raises
    ------
    sqlite3.Error
        When a step fails; the store is then as it was.
    DataError
        When the steps would leave rows that refer to nothing.
    """
    connection.execute("PRAGMA foreign_keys = OFF")
    connection.execute("BEGIN IMMEDIATE")
    try:
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        if version < VERSION:
            if backup:
                _copy_aside(connection, backup)
            for step in STEPS[version:]:
                for statement in statements(step):
                    connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {VERSION}")
            check_references(connection)
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
    finally:
        connection.execute("PRAGMA foreign_keys = ON")


def check_integrity(connection: sqlite3.Connection) -> None:
    """Read everything once.

    Raises
    ------
    sqlite3.DatabaseError
        When any part of the file is damaged.
    DataError
        When a row refers to nothing.
    """
    (found,) = connection.execute("PRAGMA integrity_check(1)").fetchone()
    if found != "ok":
        error = sqlite3.DatabaseError(found)
        error.sqlite_errorcode = sqlite3.SQLITE_CORRUPT
        raise error
    check_references(connection)


def check_references(connection: sqlite3.Connection) -> None:
    """Raise DataError when a row refers to another that is not there."""
    row = connection.execute("PRAGMA foreign_key_check").fetchone()
    if row:
        raise DataError(f"A row of the table {row[0]} refers to a row of {row[2]} that is gone.")


def _copy_aside(connection: sqlite3.Connection, backup: Path) -> None:
    """Copy the store as it is to `backup`, through a second connection.

    The first one holds the write lock meanwhile, so nothing can change between copy and step.
    """
    if backup.exists():
        return
    (place,) = (row[2] for row in connection.execute("PRAGMA database_list") if row[1] == "main")
    backup.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = backup.with_name(f".{backup.name}.part")
    part.unlink(missing_ok=True)
    try:
        with contextlib.closing(sqlite3.connect(place)) as reader:
            reader.execute("VACUUM INTO ?", (os.fspath(part),))
        os.chmod(part, 0o600)
        os.replace(part, backup)
    finally:
        part.unlink(missing_ok=True)
