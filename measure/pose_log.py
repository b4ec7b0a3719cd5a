"""The log of the pose process: whatever native code writes, capped, in a file of its own.

Nothing of ours that tells about a person is written there: no readings, names or clip paths.
"""

import os
from pathlib import Path
from typing import BinaryIO

from measure.folders import log_folder

#: Size at which the log becomes the old log. Ours; with the old one twice as much is kept.
MOST_BYTES = 1 << 20


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
    path.parent.mkdir(parents=True, exist_ok=True)
    if path.exists() and path.stat().st_size + len(piece) > MOST_BYTES:
        path.replace(path.with_suffix(".old"))
    with path.open("ab") as log:
        log.write(piece)
