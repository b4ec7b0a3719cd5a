"""From what was named on a command line (clips, folders, patterns) to a list of clips."""

import glob
from collections.abc import Sequence
from pathlib import Path

from measure.errors import InputError

#: Endings of the files that are taken out of a folder. A file named by itself may have any.
CLIP_ENDINGS = frozenset(
    {".mp4", ".mov", ".m4v", ".avi", ".mkv", ".webm", ".mts", ".m2ts", ".ts", ".mpg", ".mpeg"}
    | {".wmv", ".3gp", ".ogv"}
)


def clips_named(named: Sequence[Path]) -> tuple[Path, ...]:
    """Return the clips that files, folders (with all below them) and patterns stand for.

    Each once, those of a folder or pattern sorted by name. A file named by itself is taken as
    it is, also when it is not there: reading it then says so.

    Raises
    ------
    InputError
        When a folder or a pattern holds no clips, or a folder cannot be looked into.
    """
    found: dict[Path, None] = {}
    for each in named:
        found.update(dict.fromkeys(_clips_of(each)))
    return tuple(found)


def _clips_of(named: Path) -> list[Path]:
    try:
        if named.is_dir():
            clips = sorted(path for path in named.rglob("*") if _is_clip(path))
        elif glob.has_magic(str(named)) and not named.exists():
            matches = sorted(map(Path, glob.glob(str(named), recursive=True)))
            clips = [path for path in matches if not path.is_dir()]
        else:
            return [named]
    except OSError as error:
        raise InputError(f"{named} cannot be looked into: {error.strerror or error}.") from error
    if not clips:
        raise InputError(
            f"{named} holds no clips. Files ending in {', '.join(sorted(CLIP_ENDINGS))} are "
            "taken; other clips can be named one by one."
        )
    return clips


def _is_clip(path: Path) -> bool:
    hidden = path.name.startswith(".")
    return path.suffix.lower() in CLIP_ENDINGS and not hidden and path.is_file()
