"""Files of the page of clips: clips and manifests that were named, and results that are saved."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from gui.pages.clips.clip_rows import ClipRow
from measure.clips.inputs import clips_named, read_manifest
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
    rows: list[ClipRow] = []
    for path in named:
        if path.suffix.lower() == MANIFEST_ENDING and not path.is_dir():
            rows += [ClipRow.of_entry(entry) for entry in read_manifest(path)]
        elif path.is_dir():
            rows += [ClipRow.of_clip(clip) for clip in _clips_below(path)]
        else:
            rows.append(ClipRow.of_clip(path))
    return rows


def _clips_below(folder: Path) -> tuple[Path, ...]:
    try:
        return clips_named([folder])
    except InputError:
        if folder.is_dir():
            return ()
        raise


def save_results(path: Path, rows: Sequence[ClipRow]) -> None:
    """Write what the list shows, as `thawline replay` does with --csv or --json.

    Trials that a person left out do not count; clips without a result are left out.

    Raises
    ------
    DataError
        The file cannot be written.
    """
    results = [
        replace(row.result, measurement=row.counted or row.measurement)
        for row in rows
        if isinstance(row.result, ClipResult)
    ]
    if path.suffix == ".json":
        from measure.export.clip_json import write_document

        write_document(
            path,
            [
                (str(result.entry.clip), result.measurement)
                for result in results
                if result.measurement is not None
            ],
        )
    else:
        from measure.batch.summary import write_table

        write_table(path, results)
