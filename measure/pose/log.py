"""The log of the pose process: whatever native code writes, capped, in a file of its own.

Nothing of ours that tells about a person is written there: no readings, names or clip paths.
"""

import os
from pathlib import Path
from typing import BinaryIO

from measure.system.paths import data_folder, log_folder, make_private

#: Size at which the log becomes the old log. Ours; with the old one twice as much is kept.
MOST_BYTES = 1 << 20

_AT_ITS_END = os.O_CREAT | os.O_WRONLY | os.O_APPEND


def log_path() -> Path:
    """Return where the log is kept; beside it lies the one before, ending in ".old"."""
    return log_folder() / "pose.log"


def keep_log(pipe: BinaryIO) -> None:
    """Move everything from a pipe to the log until the pipe ends.

    A log that cannot be written is no reason to stop: the pipe is emptied all the same.
    """
    path = log_path()
    with pipe:
        while piece := os.read(pipe.fileno(), 1 << 16):
            try:
                _append(path, piece)
            except OSError:
                continue


def _append(path: Path, piece: bytes) -> None:
    make_private(data_folder())
    make_private(path.parent)
    if path.exists() and path.stat().st_size + len(piece) > MOST_BYTES:
        path.replace(path.with_suffix(".old"))
    with os.fdopen(os.open(path, _AT_ITS_END, 0o600), "ab") as log:
        log.write(piece)
