"""`thawline privacy`: what is kept where, who can read it, and how to be rid of it."""

import argparse
import os
import stat
from dataclasses import dataclass
from pathlib import Path

from measure.cli.terminal_table import table
from measure.errors import MachineError
from measure.storage.location import (
    ASIDE_NAMES,
    BACKUP_FOLDER_NAME,
    MARKER_NAME,
    STORE_NAME,
    store_path,
)
from measure.system.paths import data_folder, log_folder, model_folder

_PROMISES = """\
Nothing is sent anywhere. The only connection this program opens by itself is made when you
ask for the pose model; a cluster is used only when you name its address.
No picture, video or body point is written to disk unless you ask for a file of them.
Logs hold no readings, names or notes."""

_HOW_TO_DELETE = """\
To delete one person for good:     thawline people delete PERSON
To delete everything:              close the program and delete the folder above
Copies made before updates, files set aside when restoring, and the exports, reports and
backups that you made elsewhere still hold what they held: delete them one by one.

The sessions are not encrypted by this program: whoever can read your files can read them. Turn
on the disk encryption of your system (BitLocker or device encryption, FileVault, LUKS), which
covers backups, memory files and deleted parts of the disk as well."""


#: What lies beside the store, by file name: files of earlier versions, which opening the store
#: takes in, and what the window keeps.
_BESIDE = {
    "bodies.json": "lengths and marks of people's bodies",
    "placements.json": "how far and how turned people stood",
    "lens-profiles.json": "cameras' lenses, nothing about people",
    "levels.json": "how cameras are turned, nothing about people",
    "corrections.json": "corrections from studies, nothing about people",
    "window.ini": "settings of the window, days of the safety questions",
    "window.lock": "says that a window is open",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """A file or a folder of files that is kept, and what it is."""

    path: Path
    what: str
    size_bytes: int
    readers: str


def configure(parser: argparse.ArgumentParser) -> None:
    """Show what this program saves on this computer, where, and how to delete it.

    Nothing is changed, opened or sent.

    exit codes:
      0  always

    examples:
      thawline privacy
    """
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    print(_PROMISES)
    kept = what_is_kept()
    print(f"\nFolder: {data_folder()}\n")
    if kept:
        rows = [[_shown(item.path), item.what, _size(item), item.readers] for item in kept]
        print(table(rows, ["file", "what it is", "size", "can be read by"]))
    else:
        print("Nothing is saved yet.")
    print(f"\n{_HOW_TO_DELETE}")
    return 0


def what_is_kept() -> list[Kept]:
    """Return everything in the program's folders, known or not; sizes of folders are sums."""
    store = store_path()
    purposes: dict[Path, str] = {
        store: "people, bodies, places, sessions, notes, cameras",
        store.with_name(STORE_NAME + "-wal"): "latest changes to it",
        store.with_name(STORE_NAME + "-shm"): "its lock, while it is open",
        store.with_name(MARKER_NAME): "says that sessions were kept here",
        store.with_name(BACKUP_FOLDER_NAME): "copies made before updates",
        model_folder(): "pose models, nothing about people",
        log_folder(): "logs, without readings, names or notes",
        **{data_folder() / name: what for name, what in _BESIDE.items()},
    }
    paths = dict.fromkeys(_entries(data_folder()))
    if model_folder().exists():
        paths.setdefault(model_folder())
    made = []
    for path in paths:
        what = purposes.get(path, "another file of this program or of yours")
        if path.match(ASIDE_NAMES):
            what = "sessions before a backup was restored"
        made.append(Kept(path=path, what=what, size_bytes=_bytes(path), readers=_readers(path)))
    return made


def _entries(folder: Path) -> list[Path]:
    try:
        return sorted(folder.iterdir()) if folder.is_dir() else []
    except OSError as error:
        raise MachineError(
            f"The folder {folder} cannot be opened ({error.strerror or error}). Check who owns it."
        ) from error


def _bytes(path: Path) -> int:
    files = [path]
    if path.is_dir() and not path.is_symlink():
        files = [Path(place, name) for place, _, names in os.walk(path) for name in names]
    return sum(file.lstat().st_size for file in files)


def _readers(path: Path) -> str:
    if os.name != "posix":
        return "your account and administrators"
    mode = stat.S_IMODE(path.lstat().st_mode)
    folder = stat.S_IMODE(path.parent.stat().st_mode)
    closed = not mode & 0o077 or not folder & 0o077
    return f"you only ({mode:04o})" if closed else f"others too ({mode:04o})"


def _shown(path: Path) -> str:
    folder = data_folder()
    name = str(path.relative_to(folder)) if path.is_relative_to(folder) else str(path)
    return name + os.sep if path.is_dir() else name


def _size(kept: Kept) -> str:
    if kept.size_bytes < 1024:
        return f"{kept.size_bytes} bytes"
    if kept.size_bytes < 1024**2:
        return f"{kept.size_bytes / 1024:.0f} kB"
    return f"{kept.size_bytes / 1024**2:.1f} MB"
