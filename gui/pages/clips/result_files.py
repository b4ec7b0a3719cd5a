"""Files of the page of clips: clips and manifests that were named, and results that are saved."""

import os
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from gui.pages.clips.clip_rows import ClipRow
from measure.clips.inputs import ClipEntry, clips_named, read_manifest
from measure.clips.outcome import ClipResult
from measure.errors import InputError

#: Ending of a manifest.
MANIFEST_ENDING = ".csv"
#: File that keeps results while reading, beside the clips; `thawline replay --results` goes on
#: with the same one.
RESULTS_NAME = "thawline-results.jsonl"


def rows_of(named: Sequence[Path]) -> list[ClipRow]:
    """Return the rows of clips, folders and manifests; none for folders without clips.

    Raises
    ------
    InputError
        A manifest or a folder cannot be read.
    """
    listed: list[ClipRow] = []
    others: list[ClipRow] = []
    for path in map(_absolute, named):
        if path.suffix.lower() == MANIFEST_ENDING and not path.is_dir():
            listed += [ClipRow.of_entry(entry) for entry in read_manifest(path)]
        elif path.is_dir():
            others += [ClipRow.of_clip(clip) for clip in _clips_below(path)]
        else:
            others.append(ClipRow.of_clip(path))
    for row in listed:
        row.clip = _absolute(row.clip)
    return listed + others


def _absolute(path: Path) -> Path:
    """Return a path by which the same file is known again, however it was named."""
    return Path(os.path.abspath(path))


def _clips_below(folder: Path) -> tuple[Path, ...]:
    try:
        return clips_named([folder])
    except InputError:
        if folder.is_dir():
            return ()
        raise


def keep_accepted(path: Path, entry: ClipEntry, accepted: tuple[bool, ...]) -> None:
    """Write into a results file which trials of a clip count.

    Raises
    ------
    DataError
        The file cannot be written.
    """
    from measure.batch.results_file import save_accepted_trials

    save_accepted_trials(path, entry, accepted)


def save_results(path: Path, rows: Sequence[ClipRow], folder: Path | None) -> None:
    """Write what the list shows, as `thawline replay` does with --csv or --json.

    Trials that a person left out do not count and are named; clips without a result are left out.

    Parameters
    ----------
    folder
        Clips below it are named relative to it, as by a command that runs there.

    Raises
    ------
    DataError
        The file cannot be written.
    """
    results = [_named_from(folder, row.result) for row in rows if row.result is not None]
    if path.suffix == ".json":
        from measure.export.clip_json import write_results

        write_results(path, results)
    else:
        from measure.batch.summary import write_table

        write_table(path, results)


def _named_from(folder: Path | None, result: ClipResult) -> ClipResult:
    clip = result.entry.clip
    if folder is None or not clip.is_relative_to(folder):
        return result
    return replace(result, entry=replace(result.entry, clip=clip.relative_to(folder)))
