"""The store's file and its folder: names, rights, beginning a new one, noticing a lost one.

A small marker file beside the store says that one was begun. A store that is missing or empty
although the marker is there was lost, and is never quietly begun anew.
"""

import contextlib
import os
import sqlite3
import stat
from pathlib import Path

from measure.errors import MachineError
from measure.message import TranslatableMessage, system_reason
from measure.storage.errors import damaged, in_plain_words, lost
from measure.storage.migrations import APPLICATION_ID, migrate
from measure.system.atomic_files import publish
from measure.system.clock import new_id
from measure.system.paths import data_folder, make_private

STORE_NAME = "sessions.sqlite"
MARKER_NAME = "sessions-were-kept.txt"
BACKUP_FOLDER_NAME = "backups"
#: Stores that a backup took the place of.
ASIDE_NAMES = "sessions-set-aside-*"

_MARKER_TEXT = """\
This file shows that sessions were saved in this folder, in sessions.sqlite.
If that file is ever missing or empty, Thawline then says so instead of starting a new history.
Delete this file only together with the history.
"""

#: Size of the smallest SQLite file, bytes: one page of the smallest page size. [technical]
_SMALLEST_FILE = 512


def store_path() -> Path:
    """Return where the person's own store is kept."""
    return data_folder() / STORE_NAME


def prepare(path: Path) -> tuple[str, ...]:
    """See to it that a store is at `path`, beginning one where none ever was.

    Returns
    -------
    tuple of str
        Warnings in plain words, such as a folder that others can read.

    Raises
    ------
    DataError
        When a store was here and is gone, or the file is no whole store.
    MachineError
        When the folder cannot be made or written to.
    """
    marker = path.parent / MARKER_NAME
    try:
        warnings = private_folder(path.parent)
        if not path.exists():
            if marker.exists():
                raise lost(path, marker)
            _begin(path)
        elif path.stat().st_size < _SMALLEST_FILE:
            raise damaged(
                path,
                TranslatableMessage("it has only {size} bytes", {"size": str(path.stat().st_size)}),
            )
        os.chmod(path, stat.S_IRUSR | stat.S_IWUSR)
        if not marker.exists():
            marker.write_text(_MARKER_TEXT, encoding="utf-8")
            os.chmod(marker, stat.S_IRUSR | stat.S_IWUSR)
    except OSError as error:
        raise folder_unusable(path.parent, system_reason(error)) from error
    return warnings


def file_identity(path: Path) -> tuple[int, int] | None:
    """Return what tells a file from another of that name, or None where there is none."""
    try:
        status = path.stat()
    except OSError:
        return None
    return status.st_dev, status.st_ino


def folder_unusable(folder: Path, why: TranslatableMessage | str) -> MachineError:
    """Return the error for a data folder that cannot be made, read or written."""
    return MachineError(
        TranslatableMessage(
            "The folder {folder} cannot be used ({reason}). Check who owns it and that its disk "
            "is connected and has free space, or choose another folder with the environment "
            "variable THAWLINE_DATA.",
            {"folder": str(folder), "reason": why},
        )
    )


def backup_files(path: Path) -> list[Path]:
    """Return the copies of the store that the program itself made: before updates, when
    restoring.
    """
    copies = [*(path.parent / BACKUP_FOLDER_NAME).glob("*"), *path.parent.glob(ASIDE_NAMES)]
    return sorted(copy for copy in copies if copy.is_file())


def private_folder(folder: Path) -> tuple[str, ...]:
    """Make the folder, or close it to others; one that somebody chose is left as it is."""
    if not folder.exists():
        make_private(folder)
        return ()
    mode = stat.S_IMODE(folder.stat().st_mode)
    if os.name != "posix" or not mode & 0o077:
        return ()
    if os.environ.get("THAWLINE_DATA"):
        return (
            f"Other users of this computer can look into {folder}. They cannot read the sessions; "
            f"to close the folder too: chmod 700 '{folder}'",
        )
    os.chmod(folder, 0o700)
    return ()


def _begin(path: Path) -> None:
    """Begin a store whole: built under another name, then put in its place at once.

    So no killed program leaves an empty file behind, and of two programs that begin at the
    same time one gives way.
    """
    new = path.with_name(f".{path.name}.{new_id()}")
    try:
        os.close(os.open(new, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600))
        with in_plain_words(path), contextlib.closing(sqlite3.connect(new)) as connection:
            connection.isolation_level = None
            connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            migrate(connection)
        publish(new, path)
    except FileExistsError:
        return
    finally:
        new.unlink(missing_ok=True)
