"""Output of `thawline replay`: files of each clip, files of all results, and printed results."""

import importlib.util
import math
import sys
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from measure.cli.clip_reading import print_note
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.clips.read import ClipReading
from measure.errors import InputError, printable
from measure.system.atomic_files import safe_name

#: Rows printed at most when a file holds the results. [technical]
MOST_ROWS = 50
#: Errors printed of a longer list. [technical]
MOST_ERRORS = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class OutputPaths:
    """Files and folders to write, named as the options; None where not asked for.

    Attributes
    ----------
    metres_per_px
        Length of a pixel at the person's distance for motion files, metres, or None for pixels.
    """

    json: Path | None
    results: Path | None
    csv: Path | None
    track: Path | None
    annotate: Path | None
    keep_tracks: Path | None
    c3d: Path | None
    trc: Path | None
    metres_per_px: float | None


def check_outputs(paths: OutputPaths, inputs: Iterable[Path]) -> None:
    """Refuse outputs that cannot be written before any work is done; make their folders.

    Parameters
    ----------
    inputs
        The files that are read, none of which may be replaced.

    Raises
    ------
    InputError
        With what to name instead.
    """
    read, written = {file.resolve() for file in inputs}, set()
    for file in (paths.json, paths.track, paths.csv, paths.results):
        if file is None:
            continue
        if file.resolve() in read:
            raise InputError(f"{file} is read by this command. Name another file for the output.")
        if file.resolve() in written:
            raise InputError(f"{file} is named for two outputs. Name a file for each.")
        written.add(file.resolve())
        if file.is_dir():
            raise InputError(f"{file} is a folder. Name a file.")
        if _is_device(file):
            raise InputError(f"{file} is a device or a pipe. Name a file.")
        if not file.absolute().parent.is_dir():
            raise InputError(f"There is no folder {file.absolute().parent}. Create it first.")
    if paths.c3d is not None and importlib.util.find_spec("ezc3d") is None:
        raise InputError(
            "C3D files need the package ezc3d. Install it with: pip install 'thawline[motion]'"
        )
    scale = paths.metres_per_px
    if scale is not None and not (math.isfinite(scale) and scale > 0):
        raise InputError(f"--metres-per-px must be a length above 0, not {scale:g}.")
    for option in ("annotate", "keep_tracks", "c3d", "trc"):
        folder: Path | None = getattr(paths, option)
        if folder is None:
            continue
        word = f"--{option.replace('_', '-')}"
        if folder.is_file():
            raise InputError(f"{folder} is a file. Name a folder for {word}.")
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise InputError(
                f"{folder} cannot be created: {error.strerror or error}. Name another folder for "
                f"{word}."
            ) from error


def _is_device(path: Path) -> bool:
    """Return whether replacing this path would destroy a device node."""
    return path.exists() and (not path.is_file() or path.absolute().is_relative_to("/dev"))


def names_of(entries: Sequence[ClipEntry]) -> tuple[str, ...]:
    """Return a file name without ending for each entry, no two the same."""
    taken: dict[str, int] = {}
    names = []
    for entry in entries:
        name = f"{safe_name(entry.clip.stem)}-{entry.movement}-{entry.side}"
        count = taken[name.lower()] = taken.get(name.lower(), 0) + 1
        names.append(name if count == 1 else f"{name}-{count}")
    return tuple(names)


def write_extras(
    paths: OutputPaths,
    name: str,
    entry: ClipEntry,
    reading: ClipReading,
    tracks: Path | None,
) -> None:
    """Write what was asked for beside one reading.

    Parameters
    ----------
    name
        File name without ending, different for each clip.
    tracks
        Where to keep the landmark tracks, or None.
    """
    if tracks is not None:
        from measure.clips.observation_file import save_observation

        save_observation(tracks, entry, reading.observation)
    if paths.c3d or paths.trc:
        _write_motion(paths, name, reading)
    if paths.track:
        from measure.export.clip_series_csv import write_track

        write_track(paths.track, reading)
    if paths.annotate:
        from measure.export.annotated_clip import write_annotated
        from measure.export.clip_figure import draw_curve

        draw_curve(paths.annotate / f"{name}.png", reading, None)
        write_annotated(entry.clip, paths.annotate / f"{name}.mp4", reading)


def _write_motion(paths: OutputPaths, name: str, reading: ClipReading) -> None:
    from measure.export.motion_files import motion_points, write_c3d, write_trc

    points = motion_points(reading.observation, paths.metres_per_px)
    if paths.c3d:
        write_c3d(paths.c3d / f"{name}.c3d", points)
    if paths.trc:
        write_trc(paths.trc / f"{name}.trc", points)


def write_results(paths: OutputPaths, results: Sequence[ClipResult]) -> None:
    """Write the files that hold all results, in the order of the list.

    A file of that name is replaced, as a run that is carried on needs, and that is said; it stays
    where no clip could be read.
    """
    if paths.json:
        from measure.export import clip_json

        _write_or_keep(paths.json, results, clip_json.write_results)
    if paths.csv:
        from measure.batch.summary import write_table

        _write_or_keep(paths.csv, results, write_table)


def _write_or_keep(
    file: Path,
    results: Sequence[ClipResult],
    write: Callable[[Path, Sequence[ClipResult]], None],
) -> None:
    """Write all results to a file; keep one that is there where no clip could be read."""
    there = file.exists()
    if there and all(result.measurement is None for result in results):
        print_note(f"{file} stays as it was, because no clip could be read.")
        return
    write(file, results)
    if there:
        print_note(f"{file} was there and has been replaced.")


def print_results(paths: OutputPaths, results: Sequence[ClipResult]) -> None:
    """Print a table of the results, or of a long list that is in a file the counts alone."""
    from measure.batch.summary import summary_lines
    from measure.cli.main import NOTICE
    from measure.report.measurement_wording import basis_sentences

    in_a_file = paths.json or paths.csv or paths.results
    in_full = len(results) <= MOST_ROWS or not in_a_file
    if in_full:
        print(_table(results))
    errors = [result.error for result in results if result.error is not None]
    shown = errors if in_full else errors[:MOST_ERRORS]
    for error in shown:
        print(f"thawline: {printable(str(error))}", file=sys.stderr)
    if len(errors) > len(shown):
        print(f"thawline: and {len(errors) - len(shown)} more.", file=sys.stderr)
    if in_full:
        _print_legend(results)
    for sentence in basis_sentences(
        result.measurement for result in results if result.measurement is not None
    ):
        print(sentence)
    if len(results) > 1:
        print("\n".join(summary_lines(results)))
    print(NOTICE)


def _table(results: Sequence[ClipResult]) -> str:
    from measure.cli.terminal_table import table
    from measure.domain.measurements import Measurement
    from measure.report.measurement_wording import interval_text, reason_codes, value_text

    said: tuple[Callable[[Measurement], str], ...] = (value_text, interval_text, reason_codes)
    rows = []
    for result in results:
        entry, measurement = result.entry, result.counted
        row = [printable(entry.clip.name), str(entry.movement), str(entry.side)]
        if measurement is None:
            rows.append([*row, "not read", "", ""])
        else:
            rows.append([*row, *(words(measurement) for words in said)])
    return table(rows, ("clip", "movement", "side", "reading", "95 % interval", "remarks"))


def _print_legend(results: Sequence[ClipResult]) -> None:
    """Print what each remark in the table means, and what to do."""
    from measure.report.measurement_wording import reason_legend

    read = [result.measurement for result in results if result.measurement is not None]
    for line in reason_legend(read):
        print(line)
