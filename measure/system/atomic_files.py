"""Atomic files: written whole or not at all, never over another, under names valid everywhere."""

import json
import os
import tempfile
import unicodedata
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from measure.errors import DataError, InputError, MachineError
from measure.message import TranslatableMessage, system_reason
from measure.system.clock import new_id

#: Bytes of UTF-8 for the part of a file name that comes from a person; leaves room within the 255
#: bytes of a name for what is put around it. [technical]
LONGEST_PART = 100

_FORBIDDEN = frozenset('<>:"/\\|?*')
_RESERVED = frozenset(
    ["con", "prn", "aux", "nul", "conin$", "conout$"]
    + [f"{device}{digit}" for device in ("com", "lpt") for digit in "0123456789¹²³"]
)


def safe_name(text: str) -> str:
    """Return `text` as a part of a file name that every system takes; never empty.

    Characters that some system forbids become "-"; names that Windows keeps for devices,
    leading dots and dashes and trailing dots get a "_" or go; long ones are cut.
    """
    name = "".join(
        letter if letter.isprintable() and letter not in _FORBIDDEN else "-"
        for letter in unicodedata.normalize("NFC", text)
    ).strip(" .")
    while len(name.encode()) > LONGEST_PART:
        name = name[:-1].rstrip(" .")
    if name.split(".")[0].rstrip(" ").lower() in _RESERVED or name.startswith("-"):
        name = "_" + name
    return name or "person"


def unused_path(path: Path) -> Path:
    """Return `path`, or the first of "name (2)", "name (3)"... that no file has."""
    candidate, count = path, 1
    while candidate.exists():
        count += 1
        candidate = path.with_name(f"{path.stem} ({count}){path.suffix}")
    return candidate


def write_new(path: Path, data: bytes) -> None:
    """Write a new file that only its owner can read: all of it, or nothing.

    Raises
    ------
    InputError
        When a file has that name already (it is left as it is), or the folder is missing.
    MachineError
        When the disk refuses.
    """
    if not path.parent.is_dir():
        raise InputError(
            TranslatableMessage(
                "There is no folder {folder}. Create it or choose another one.",
                {"folder": str(path.parent)},
            )
        )
    part = path.with_name(f".{new_id()}.part")
    try:
        with os.fdopen(os.open(part, _NEW, 0o600), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        publish(part, path)
    except FileExistsError:
        raise InputError(
            TranslatableMessage(
                "{path} exists already and was left as it is. Choose another name, such as: "
                "{unused}",
                {"path": str(path), "unused": str(unused_path(path))},
            )
        ) from None
    except OSError as error:
        raise MachineError(
            TranslatableMessage(
                "{path} could not be written ({reason}). No partial file was left. Check the "
                "name and the free space and permissions of the disk, or choose another place.",
                {"path": str(path), "reason": system_reason(error)},
            )
        ) from error
    finally:
        part.unlink(missing_ok=True)


def publish(new: Path, target: Path) -> None:
    """Give a finished file its name at once, but never the name of another file.

    Raises
    ------
    FileExistsError
        When there is a file called `target`; `new` is then left where it is.
    """
    if os.name == "nt":
        new.rename(target)
        return
    try:
        os.link(new, target)
    except FileExistsError:
        raise
    except OSError:
        # Memory sticks know no links. Holding the name first keeps others from taking it.
        os.close(os.open(target, _NEW, 0o600))
        try:
            new.replace(target)
        except OSError:
            target.unlink(missing_ok=True)
            raise
    else:
        new.unlink()


#: A file that must not be there yet; O_BINARY keeps Windows from changing line ends.
_NEW = os.O_CREAT | os.O_EXCL | os.O_WRONLY | getattr(os, "O_BINARY", 0)


def private_descriptor(path: Path, *, append: bool = False) -> int:
    """Return a descriptor that writes a file: a new one can be read by its owner alone.

    A file that is there already has the rights that it had; it is emptied unless `append` is set.
    """
    flags = os.O_CREAT | os.O_WRONLY | (os.O_APPEND if append else os.O_TRUNC)
    return os.open(path, flags | getattr(os, "O_BINARY", 0), 0o600)


@contextmanager
def write_errors(path: Path) -> Iterator[None]:
    """Turn an OSError of the block into a DataError that names `path` and says what to do."""
    try:
        yield
    except OSError as error:
        raise DataError(
            TranslatableMessage(
                "{path} cannot be written: {reason}. Choose a folder that exists and that "
                "you may write to.",
                {"path": str(path), "reason": system_reason(error)},
            )
        ) from error


def write_over(path: Path, data: bytes) -> None:
    """Write a file in place of one that may be there: all of it, or none is left.

    A new one can be read by its owner alone.

    Raises
    ------
    DataError
        When the folder does not exist, cannot be written to or has no room.
    """
    with write_errors(path):
        try:
            with os.fdopen(private_descriptor(path), "wb") as file:
                file.write(data)
        except OSError:
            if path.is_file():
                path.unlink()
            raise


def write_json(path: Path, content: Mapping[str, Any]) -> None:
    """Write a document so that a half-written file never takes its place.

    Raises
    ------
    DataError
        When the folder does not exist or cannot be written to.
    """
    text = json.dumps(content, indent=2, allow_nan=False, ensure_ascii=False) + "\n"
    with write_errors(path):
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                file.write(text)
                file.flush()
                os.fsync(file.fileno())
            os.replace(temporary, path)
        except OSError:
            os.unlink(temporary)
            raise
