"""Files of the program on this computer: what each is, its size, and who can read it."""

import os
import stat
from dataclasses import dataclass
from pathlib import Path

from measure.errors import MachineError
from measure.message import TranslatableMessage, system_reason
from measure.storage.location import (
    ASIDE_NAMES,
    BACKUP_FOLDER_NAME,
    MARKER_NAME,
    STORE_NAME,
    store_path,
)
from measure.system.paths import data_folder, log_folder, model_folder

#: Purposes of files in the data folder, by name: the store and what belongs to it, files of earlier
#: versions, which opening the store takes in, and what the window keeps.
_PURPOSES = {
    STORE_NAME: "people, bodies, places, sessions, notes, cameras",
    STORE_NAME + "-wal": "latest changes to it",
    STORE_NAME + "-shm": "its lock, while it is open",
    MARKER_NAME: "marker, to notice when the sessions are lost",
    BACKUP_FOLDER_NAME: "copies made before updates",
    "bodies.json": "lengths and marks of people's bodies",
    "placements.json": "how far away and how turned people stood",
    "lens-profiles.json": "cameras' lenses, nothing about people",
    "levels.json": "how cameras are turned, nothing about people",
    "corrections.json": "corrections from studies, nothing about people",
    "window.ini": "settings of the window, days of the safety questions",
    "window.lock": "shows that a window is open",
}
_MODELS = "body tracking models, nothing about people"
_LOGS = "logs, without readings, names or notes"
_ASIDE = "sessions before a backup was restored"
_OTHER = "another file of this program or of yours"

#: Every purpose that a file can have, for translations.
PURPOSES = (*_PURPOSES.values(), _MODELS, _LOGS, _ASIDE, _OTHER)

#: How long a file is there as a rule.
UNTIL_DELETED = "until deleted"
#: How long files are there that do not wait for a person to delete them, by name.
_DURATIONS = {
    STORE_NAME: "until you delete these people",
    STORE_NAME + "-wal": "while Thawline is open",
    STORE_NAME + "-shm": "while Thawline is open",
    "bodies.json": "until it is imported",
    "placements.json": "until it is imported",
    "lens-profiles.json": "until it is imported",
    "levels.json": "until it is imported",
    "corrections.json": "until it is imported",
    "window.lock": "while Thawline is open",
}
_LOGS_DURATION = "the latest 2 MB"

#: Everything that can be said of how long a file is there, for translations.
DURATIONS = (*dict.fromkeys((UNTIL_DELETED, *_DURATIONS.values(), _LOGS_DURATION)),)


@dataclass(frozen=True, slots=True, kw_only=True)
class SavedFile:
    """A file, or a folder of files, that is saved.

    Attributes
    ----------
    purpose
        What it is, one of PURPOSES.
    duration
        How long it is there, one of DURATIONS.
    size_bytes
        Of a folder the sum of its files.
    open_to_others
        Whether other accounts of this computer can read it; None where that cannot be told.
    mode
        Its rights as numbers, such as 0600; empty where there are none.
    """

    path: Path
    purpose: str
    duration: str
    size_bytes: int
    open_to_others: bool | None
    mode: str

    @property
    def name(self) -> str:
        """Its path within the data folder, or the whole one elsewhere; a folder's ends so."""
        folder = data_folder()
        inside = self.path.is_relative_to(folder)
        name = str(self.path.relative_to(folder)) if inside else str(self.path)
        return name + os.sep if self.path.is_dir() else name


def saved_files() -> list[SavedFile]:
    """Return everything in the program's folders, known or not.

    Raises
    ------
    MachineError
        When a folder cannot be looked into.
    """
    folders = {model_folder(): _MODELS, log_folder(): _LOGS}
    purposes = {store_path().with_name(name): purpose for name, purpose in _PURPOSES.items()}
    paths = dict.fromkeys(_entries(data_folder()))
    if model_folder().exists():
        paths.setdefault(model_folder())
    made = []
    for path in paths:
        purpose = (purposes | folders).get(path, _OTHER)
        if path.match(ASIDE_NAMES):
            purpose = _ASIDE
        is_open, mode = _rights(path)
        made.append(
            SavedFile(
                path=path,
                purpose=purpose,
                duration=_duration(path),
                size_bytes=_bytes(path),
                open_to_others=is_open,
                mode=mode,
            )
        )
    return made


def size_text(size_bytes: int) -> str:
    """Return a size such as "12 kB"."""
    if size_bytes < 1024:
        return f"{size_bytes} bytes"
    if size_bytes < 1024**2:
        return f"{size_bytes / 1024:.0f} kB"
    return f"{size_bytes / 1024**2:.1f} MB"


def _entries(folder: Path) -> list[Path]:
    try:
        return sorted(folder.iterdir()) if folder.is_dir() else []
    except OSError as error:
        raise MachineError(
            TranslatableMessage(
                "The folder {folder} cannot be opened ({reason}). Check who owns it.",
                {"folder": str(folder), "reason": system_reason(error)},
            )
        ) from error


def _duration(path: Path) -> str:
    if path == log_folder():
        return _LOGS_DURATION
    names = _DURATIONS if path.parent == data_folder() else {}
    return names.get(path.name, UNTIL_DELETED)


def _bytes(path: Path) -> int:
    files = [path]
    if path.is_dir() and not path.is_symlink():
        files = [Path(place, name) for place, _, names in os.walk(path) for name in names]
    return sum(file.lstat().st_size for file in files)


def _rights(path: Path) -> tuple[bool | None, str]:
    if os.name != "posix":
        return None, ""
    mode = stat.S_IMODE(path.lstat().st_mode)
    folder = stat.S_IMODE(path.parent.stat().st_mode)
    return bool(mode & 0o077 and folder & 0o077), f"{mode:04o}"
