"""SQLite's errors in plain words: what happened, what is safe, what to do next."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from measure.errors import DataError, MachineError, ThawlineError, in_short
from measure.message import TranslatableMessage

#: Primary result codes of SQLite (the low byte of the extended ones).
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}
_DAMAGED = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_FORMAT}
_WRITING = {sqlite3.SQLITE_IOERR, sqlite3.SQLITE_CANTOPEN}


UNCLEAR_TABLES = TranslatableMessage("its tables cannot be read")

#: What SQLite says most often about a store that cannot be read.
_SQLITE_REASONS = {
    message.template: message
    for message in (
        TranslatableMessage("file is not a database"),
        TranslatableMessage("database disk image is malformed"),
        TranslatableMessage("disk I/O error"),
        TranslatableMessage("unable to open database file"),
    )
}


def sqlite_reason(error: sqlite3.Error) -> TranslatableMessage | str:
    """Return what SQLite says; rare reasons stay in its own words."""
    reason = in_short(error)
    return _SQLITE_REASONS.get(reason, reason)


@contextmanager
def in_plain_words(path: Path) -> Iterator[None]:
    """Turn SQLite's errors inside the block into the project's, about the store at `path`."""
    try:
        yield
    except UnicodeDecodeError as error:
        # SQLite quotes the damaged part of a table's definition, and Python stumbles over it.
        raise damaged(path, UNCLEAR_TABLES) from error
    except sqlite3.Error as error:
        raise plain_error(error, path) from error


def plain_error(error: sqlite3.Error, path: Path) -> ThawlineError:
    """Return what `error` means to the person whose store is at `path`."""
    if isinstance(error, sqlite3.OperationalError) and not hasattr(error, "sqlite_errorcode"):
        # Python's own, and it quotes what it found: nothing that belongs into a message.
        return damaged(path, TranslatableMessage("a text in it cannot be read"))
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
    if code in _DAMAGED:
        return damaged(path, sqlite_reason(error))
    if code in _BUSY:
        return MachineError(
            TranslatableMessage(
                "Another program is using the data file {path}. Nothing was changed. Close that "
                "program and try again.",
                {"path": str(path)},
            )
        )
    if code == sqlite3.SQLITE_FULL:
        return MachineError(
            TranslatableMessage(
                "There is no space left to write to {path}. What was saved before is safe; this "
                "last step was not saved. Free some space and save again.",
                {"path": str(path)},
            )
        )
    if code == sqlite3.SQLITE_READONLY:
        return MachineError(
            TranslatableMessage(
                "The data file {path} cannot be written to. Nothing was changed. Check who owns "
                "the file and its folder, or make the disk writable.",
                {"path": str(path)},
            )
        )
    if code in _WRITING:
        return MachineError(
            TranslatableMessage(
                "The disk could not read or write {path} ({detail}). What was saved before has "
                "not changed. Check that the disk is connected, has free space and can be "
                "written to.",
                {"path": str(path), "detail": in_short(error)},
            )
        )
    return MachineError(
        TranslatableMessage(
            "The data file {path} could not be used: {detail}.",
            {"path": str(path), "detail": in_short(error)},
        )
    )


def damaged(path: Path, defect: TranslatableMessage | str) -> DataError:
    """Return the error for a store that is there but cannot be read.

    Parameters
    ----------
    defect
        What is wrong with it, in a few words.
    """
    return DataError(
        TranslatableMessage(
            "The data file {path} is damaged ({defect}). It was left as it is. Replace it with a "
            "backup: thawline restore BACKUP (copies made before updates are in {folder}). The "
            "damaged file stays beside it.",
            {"path": str(path), "defect": defect, "folder": str(path.parent / "backups")},
        )
    )


def lost(path: Path, marker: Path) -> DataError:
    """Return the error for a store that was there once and is gone."""
    return DataError(
        TranslatableMessage(
            "There were sessions in {path}, but the file is gone. Put it back where it was, or "
            "replace it with a backup: thawline restore BACKUP. Only if you want to start a new "
            "history, delete {marker} and try again.",
            {"path": str(path), "marker": str(marker)},
        )
    )


def vanished(path: Path) -> MachineError:
    """Return the error for a store that was deleted or moved while it is open."""
    return MachineError(
        TranslatableMessage(
            "The data file {path} is no longer where it was: it was deleted or moved, or its "
            "disk is not connected. This last step may be lost. Put the file or the disk back, "
            "or restore a backup with: thawline restore BACKUP. Then open Thawline again.",
            {"path": str(path)},
        )
    )
