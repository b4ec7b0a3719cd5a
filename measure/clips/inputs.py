"""Clip inputs: from names on a command line, or a table of clips, to the clips to read.

The table (manifest) is CSV with the columns clip, movement, side, and a few optional ones.
"""

import csv
import glob
import io
import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.errors import InputError, ManifestError, in_short
from measure.message import TranslatableMessage, system_reason

#: Endings of the files that are taken out of a folder. A file named by itself may have any.
CLIP_ENDINGS = frozenset(
    {".mp4", ".mov", ".m4v", ".avi", ".mkv", ".webm", ".mts", ".m2ts", ".ts", ".mpg", ".mpeg"}
    | {".wmv", ".3gp", ".ogv"}
)
#: Largest manifest, bytes: 5 million hold about 50,000 clips. [technical]
LARGEST_BYTES = 5_000_000
_REQUIRED = ("clip", "movement", "side")
_OPTIONAL = ("view", "reference", "person")
#: Most letters of a pseudonym, as in a table of paired readings. [technical]
_LONGEST_PERSON = 80


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipEntry:
    """One clip to read.

    Attributes
    ----------
    clip
        Its path; in a manifest relative to the manifest's folder.
    view
        None lets the program recognise it among the movement's views.
    reference
        A value to compare with, such as a goniometer's, in the movement's unit; or None.
    person
        A pseudonym, the same in every clip of one person; empty where unknown.
    """

    clip: Path
    movement: Movement
    side: Side
    view: View | None = None
    reference: float | None = None
    person: str = ""

    def task(self, setup: Setup) -> MeasurementTask:
        """Return what is to be measured, with what is known beforehand."""
        return MeasurementTask(self.movement, self.side, self.view, setup)


def read_manifest(path: Path) -> tuple[ClipEntry, ...]:
    """Return the clips of a manifest, in its order.

    Raises
    ------
    ManifestError
        Missing, too large, not text, without the columns, or with a value that cannot be:
        the message names the line.
    """
    rows = csv.DictReader(io.StringIO(_text_of(path), newline=""), skipinitialspace=True)
    try:
        return _entries(path, rows)
    except csv.Error as error:
        raise ManifestError(
            TranslatableMessage(
                "{path}, line {line}: {detail}.",
                {"path": str(path), "line": str(max(1, rows.line_num)), "detail": in_short(error)},
            )
        ) from error


def _entries(path: Path, rows: "csv.DictReader[str]") -> tuple[ClipEntry, ...]:
    names = [name.strip().lower() for name in rows.fieldnames or []]
    missing = [name for name in _REQUIRED if name not in names]
    if missing:
        raise ManifestError(
            TranslatableMessage(
                "{path} has no column {missing}. Its first line must name the columns "
                "{columns}, separated by commas.",
                {
                    "path": str(path),
                    "missing": ", ".join(missing),
                    "columns": ", ".join(_REQUIRED + _OPTIONAL),
                },
            )
        )
    rows.fieldnames = names
    entries = tuple(
        _entry(
            row,
            TranslatableMessage(
                "{path}, line {line}", {"path": str(path), "line": str(rows.line_num)}
            ),
            path.parent,
        )
        for row in rows
        if any(value and value.strip() for value in row.values() if isinstance(value, str))
    )
    if not entries:
        raise ManifestError(
            TranslatableMessage(
                "{path} names no clips. Add one line for each clip.", {"path": str(path)}
            )
        )
    return entries


def _text_of(path: Path) -> str:
    if path.is_dir():
        raise ManifestError(
            TranslatableMessage("{path} is a folder. Give a CSV file.", {"path": str(path)})
        )
    if not path.exists():
        raise ManifestError(
            TranslatableMessage("There is no file {path}. Check the name.", {"path": str(path)})
        )
    if not path.is_file():
        raise ManifestError(
            TranslatableMessage("{path} is not a file. Give a CSV file.", {"path": str(path)})
        )
    try:
        if path.stat().st_size > LARGEST_BYTES:
            raise ManifestError(
                TranslatableMessage(
                    "{path} is larger than {megabytes} MB. Split it into several.",
                    {"path": str(path), "megabytes": str(LARGEST_BYTES // 1_000_000)},
                )
            )
        text = path.read_bytes().decode("utf-8-sig")
    except OSError as error:
        raise ManifestError(
            TranslatableMessage(
                "{path} cannot be read: {reason}.",
                {"path": str(path), "reason": system_reason(error)},
            )
        ) from error
    except UnicodeDecodeError as error:
        raise ManifestError(
            TranslatableMessage(
                "{path} is not UTF-8 text. Save it as CSV in UTF-8.", {"path": str(path)}
            )
        ) from error
    if "\0" in text:
        raise ManifestError(
            TranslatableMessage(
                "{path} is not a text file. Save it as CSV in UTF-8.", {"path": str(path)}
            )
        )
    return text


def _entry(row: dict[str, str | None], where: TranslatableMessage, folder: Path) -> ClipEntry:
    def cell(name: str) -> str:
        return (row.get(name) or "").strip()

    clip, movement, side = cell("clip"), cell("movement").lower(), cell("side").lower()
    view, reference = cell("view").lower(), cell("reference")
    if not clip:
        raise ManifestError(TranslatableMessage("{where}: no clip is named.", {"where": where}))
    if "://" in clip:
        raise ManifestError(
            TranslatableMessage(
                "{where}: {clip} is an address. Only files on this computer are read.",
                {"where": where, "clip": repr(clip[:60])},
            )
        )
    if movement not in list(Movement):
        raise ManifestError(
            TranslatableMessage(
                "{where}: {movement} is not a movement. Use one of {choices}.",
                {"where": where, "movement": repr(movement[:40]), "choices": ", ".join(Movement)},
            )
        )
    if side not in list(Side):
        raise ManifestError(
            TranslatableMessage(
                "{where}: {side} is not a side. Use left or right.",
                {"where": where, "side": repr(side[:40])},
            )
        )
    if view and view not in list(View):
        raise ManifestError(
            TranslatableMessage(
                "{where}: {view} is not a view. Use one of {choices}.",
                {"where": where, "view": repr(view[:40]), "choices": ", ".join(View)},
            )
        )
    return ClipEntry(
        clip=folder / clip,
        movement=Movement(movement),
        side=Side(side),
        view=View(view) if view else None,
        reference=_number(reference, where) if reference else None,
        person=_name(cell("person"), where),
    )


def _number(text: str, where: TranslatableMessage) -> float:
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise ManifestError(
            TranslatableMessage(
                "{where}: the reference {text} is not a number. Write it with a decimal point.",
                {"where": where, "text": repr(text[:40])},
            )
        )
    return value


def _name(text: str, where: TranslatableMessage) -> str:
    if len(text) > _LONGEST_PERSON or not text.isprintable():
        raise ManifestError(
            TranslatableMessage(
                "{where}: the person must be plain text of at most {most} characters.",
                {"where": where, "most": str(_LONGEST_PERSON)},
            )
        )
    return text


def clips_named(named: Sequence[Path]) -> tuple[Path, ...]:
    """Return the clips that files, folders (with all below them) and patterns stand for.

    Each once, those of a folder or pattern sorted by name. A file named by itself is taken as
    it is, also when it does not exist: reading it then fails.

    Raises
    ------
    InputError
        When a folder or a pattern holds no clips, or a folder cannot be read.
    """
    clips: dict[Path, None] = {}
    for path in named:
        clips.update(dict.fromkeys(_clips_of(path)))
    return tuple(clips)


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
        raise InputError(
            TranslatableMessage(
                "{place} cannot be opened: {reason}.",
                {"place": str(named), "reason": system_reason(error)},
            )
        ) from error
    if not clips:
        raise InputError(
            TranslatableMessage(
                "{place} contains no clips. Files ending in {endings} are read; name other clips "
                "one by one.",
                {"place": str(named), "endings": ", ".join(sorted(CLIP_ENDINGS))},
            )
        )
    return clips


def _is_clip(path: Path) -> bool:
    hidden = path.name.startswith(".")
    return path.suffix.lower() in CLIP_ENDINGS and not hidden and path.is_file()
