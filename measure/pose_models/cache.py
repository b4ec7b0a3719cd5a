"""Cache folder of the pose bundles: one writer at a time, whole files or none."""

import errno
import os
import shutil
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from filelock import FileLock, Timeout

from measure.errors import ModelError
from measure.message import TranslatableMessage, system_reason
from measure.system.paths import data_folder, make_private

#: Free bytes that fetching needs: a package, its networks and three bundles. [technical]
ROOM_NEEDED = 200 << 20
#: Seconds between two reports of progress while another process fetches. [technical]
_POLL_S = 0.1

_NO_SPACE = {errno.ENOSPC, getattr(errno, "EDQUOT", errno.ENOSPC)}  # no quotas on Windows


@contextmanager
def workshop(folder: Path, waiting: Callable[[], None], patience_s: float) -> Iterator[Path]:
    """Give an empty folder beside the bundles to work in; only one process has it at a time.

    Parameters
    ----------
    folder
        The folder of the bundles; made if needed.
    waiting
        Called again and again while another process works.
    patience_s
        How long to wait for the other process.

    Raises
    ------
    ModelError
        The folder cannot be made or written, is too full, or stays taken.
    """
    try:
        if folder.is_relative_to(data_folder()):
            make_private(data_folder())  # the sessions will lie there too
        folder.mkdir(parents=True, exist_ok=True)
        room = shutil.disk_usage(folder).free
        if room < ROOM_NEEDED:
            raise ModelError(_full(folder, room))
        with _lock(folder / "fetching.lock", waiting, patience_s), _scratch(folder) as scratch:
            yield scratch
    except OSError as error:
        raise unwritable(folder, error) from error


@contextmanager
def _scratch(folder: Path) -> Iterator[Path]:
    with tempfile.TemporaryDirectory(
        dir=folder, prefix="fetching-", ignore_cleanup_errors=True
    ) as scratch:
        yield Path(scratch)


@contextmanager
def _lock(file: Path, waiting: Callable[[], None], patience_s: float) -> Iterator[None]:
    """Hold a lock that the system gives back even if this process dies."""
    lock = FileLock(file, fallback_to_soft=False)
    end = time.monotonic() + patience_s
    while not lock.is_locked:
        try:
            lock.acquire(timeout=_POLL_S)
        except Timeout:
            if time.monotonic() > end:
                raise ModelError(
                    TranslatableMessage(
                        "Another Thawline has been downloading the pose model for too long. "
                        "Close it, then try again."
                    )
                ) from None
            waiting()
        except OSError:
            # Some network folders know no locks. Files are replaced whole, so two writers do no
            # harm there, they only fetch twice.
            break
    try:
        yield
    finally:
        lock.release()


def put(path: Path, content: bytes) -> None:
    """Write a file so that it is there whole or not at all, even through a power cut.

    Raises
    ------
    ModelError
        No space, no permission.
    """
    scratch = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        with scratch.open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        scratch.replace(path)
    except OSError as error:
        scratch.unlink(missing_ok=True)
        raise unwritable(path.parent, error) from error


def unwritable(folder: Path, error: OSError) -> ModelError:
    """Return in plain words why the folder could not be used."""
    if error.errno in _NO_SPACE:
        return ModelError(_full(folder, 0))
    return ModelError(
        TranslatableMessage(
            "The pose model cannot be saved in {folder} ({reason}). Make the folder "
            "writable, or set THAWLINE_MODELS to another folder.",
            {"folder": str(folder), "reason": system_reason(error)},
        )
    )


def _full(folder: Path, free: int) -> TranslatableMessage:
    return TranslatableMessage(
        "There is not enough space for the pose model in {folder}: {free} MB free, {needed} MB "
        "needed. Free some space, or set THAWLINE_MODELS to a folder on another disk.",
        {"folder": str(folder), "free": str(free >> 20), "needed": str(ROOM_NEEDED >> 20)},
    )
