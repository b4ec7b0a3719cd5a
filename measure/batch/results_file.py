"""Results file of many clips: JSON lines, written as clips finish and reused by the next run.

One line a clip. A program that is killed leaves at most half a line behind, which the next run
passes over. Where a key stands on several lines, the last one counts.
"""

import json
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from measure import errors
from measure.batch.cache_key import MISSING, ResultKeys
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.domain.measurements import Measurement
from measure.errors import ClipError, DataError, ThawlineError
from measure.system.atomic_files import private_descriptor
from measure.system.json_codec import from_data, to_data

#: Largest results file, bytes; a hundred thousand clips take less. [technical]
LARGEST_BYTES = 512 << 20

#: How every line begins, by which half a first line differs from another file's text.
_BEGINNING = '{"key": "'


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """Content of one line: a measurement, or an error's class and text."""

    key: str
    clip: str
    movement: str
    side: str
    view: str | None
    person: str
    reference: float | None
    measurement: Measurement | None
    error: dict[str, str] | None
    accepted: tuple[bool, ...] = ()


class ResultsFile:
    """A results file: lookup of earlier results, and writing of new ones.

    Parameters
    ----------
    path
        Made when it is not there, for its owner alone.
    entries
        What is to be read.

    Raises
    ------
    DataError
        When it cannot be read or written, or is something else than a results file.
    """

    def __init__(self, path: Path, entries: Sequence[ClipEntry], settings: ReadingSettings) -> None:
        self._path = path
        self._entries = entries
        self._keys = ResultKeys(settings)
        self._key_of: dict[int, str] = {}
        text = _text(path)
        self._kept, self._named, self.damaged_lines = _lines(path, text)
        self._ends_whole = not text or text.endswith("\n")

    def key(self, number: int) -> str:
        """Return the key of an entry."""
        if number not in self._key_of:
            self._key_of[number] = self._keys.of(self._entries[number])
        return self._key_of[number]

    def cached(self, number: int) -> ClipResult | None:
        """Return the result that the file holds for an entry; None where it has to be read (again).

        Clips that cannot be read stay so. Missing ones and internal failures are tried again.
        """
        row = self._kept.get(self.key(number))
        if row is None:
            return None
        line = _line_of(row)
        entry, error = self._entries[number], None
        if line.error is not None:
            # The same content under another name: the sentence names this clip.
            error = _error(line.error, Path(line.clip).name, entry.clip.name)
            if not isinstance(error, ClipError) or line.key.startswith(MISSING):
                return None
        return ClipResult(
            number=number,
            entry=entry,
            measurement=line.measurement,
            error=error,
            is_earlier=True,
            accepted=line.accepted,
        )

    def with_trials_left_out(self, result: ClipResult) -> ClipResult:
        """Return a result without the trials that a person left out of an earlier one."""
        row = self._kept.get(self.key(result.number))
        accepted = () if row is None else _line_of(row).accepted
        fits = result.measurement is not None and len(result.measurement.trials) == len(accepted)
        return replace(result, accepted=accepted) if fits else result

    def add(self, result: ClipResult) -> None:
        """Write the result of an entry and flush it to the disk.

        An earlier result is written again only for a clip of another path: each has its line.

        Raises
        ------
        DataError
            When the file cannot be written.
        """
        key = self.key(result.number)
        named = key, str(result.entry.clip)
        if result.is_earlier and named in self._named:
            return
        _append(self._path, _line(key, result), after="" if self._ends_whole else "\n")
        self._ends_whole = True
        self._named.add(named)


def _append(path: Path, line: _Line, *, after: str) -> None:
    """Write a line at the end of a file, after what its last one is missing, and flush it."""
    text = json.dumps(to_data(line), ensure_ascii=False, allow_nan=False)
    try:
        with os.fdopen(private_descriptor(path, append=True), "ab") as file:
            file.write(f"{after}{text}\n".encode("utf-8", "surrogateescape"))
            file.flush()
            os.fsync(file.fileno())
    except OSError as error:
        raise DataError(
            f"{path} cannot be written: {error.strerror or error}. What it contains is "
            "safe: free some space or correct the permissions, and run the same command again."
        ) from error


def _line(key: str, result: ClipResult) -> _Line:
    entry, error = result.entry, result.error
    return _Line(
        key=key,
        clip=str(entry.clip),
        movement=str(entry.movement),
        side=str(entry.side),
        view=None if entry.view is None else str(entry.view),
        person=entry.person,
        reference=entry.reference,
        measurement=result.measurement,
        error=None if error is None else {"class": type(error).__name__, "text": str(error)},
        accepted=result.accepted,
    )


def save_accepted_trials(path: Path, entry: ClipEntry, accepted: tuple[bool, ...]) -> None:
    """Add to a results file which trials of a clip count; nothing where it has no such clip.

    Raises
    ------
    DataError
        When the file cannot be read or written.
    """
    text = _text(path)
    _lines(path, text)
    for row in reversed(text.split("\n")):
        try:
            line = _line_of(row)
        except (ValueError, RecursionError, DataError):
            continue
        if (line.clip, line.movement, line.side) == (
            str(entry.clip),
            str(entry.movement),
            str(entry.side),
        ):
            break
    else:
        return
    marked = replace(line, accepted=() if all(accepted) else accepted)
    _append(path, marked, after="" if text.endswith("\n") else "\n")


def _text(path: Path) -> str:
    try:
        if path.exists() and path.stat().st_size > LARGEST_BYTES:
            raise DataError(
                f"{path} is larger than {LARGEST_BYTES >> 20} MB, more than a run writes. Choose "
                "another file."
            )
        return path.read_bytes().decode("utf-8", "replace")
    except FileNotFoundError:
        return ""
    except OSError as error:
        raise DataError(f"{path} cannot be read: {error.strerror or error}.") from error


def _lines(path: Path, text: str) -> tuple[dict[str, str], set[tuple[str, str]], int]:
    """Return the last line of each key, keys with clips, and how many lines made no sense."""
    if not _is_results_file(text):
        raise DataError(
            f"{path} is not a results file of Thawline, so nothing was added to it. Choose another "
            "file."
        )
    kept: dict[str, str] = {}
    named: set[tuple[str, str]] = set()
    damaged = 0
    for row in text.split("\n"):
        if not row:
            continue
        try:
            line = _line_of(row)
        except (ValueError, RecursionError, DataError):
            damaged += 1
            continue
        kept[line.key] = row
        named.add((line.key, line.clip))
    return kept, named, damaged


def _is_results_file(text: str) -> bool:
    """Return whether a text is a results file, also one that broke off in its first line."""
    first, _, rest = text.partition("\n")
    if first.startswith(_BEGINNING):
        return True
    return _BEGINNING.startswith(first) and (not rest or rest.startswith(_BEGINNING))


def _line_of(row: str) -> _Line:
    return from_data(_Line, json.loads(row), "a results file")


def _error(fields: Mapping[str, Any], name: str, name_here: str) -> ThawlineError:
    """Return the error that was written for a clip, in the words for the same one here."""
    kind = getattr(errors, fields.get("class", ""), None)
    if not (isinstance(kind, type) and issubclass(kind, ThawlineError)):
        kind = ThawlineError
    return kind(fields.get("text", "").replace(name, name_here))
