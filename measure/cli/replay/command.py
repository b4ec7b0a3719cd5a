"""The command `thawline replay`: readings of one clip, or of many from a folder or manifest."""

import argparse
from collections.abc import Callable, Iterator, Sequence
from dataclasses import fields, replace
from importlib.metadata import entry_points
from pathlib import Path
from typing import TYPE_CHECKING

from measure.cli.clip_reading import exit_code, print_note, read_entries, settings_of
from measure.cli.open_store import person_id_of
from measure.cli.replay.options import (
    add_comparison_options,
    add_output_options,
    add_reading_options,
    check_use,
)
from measure.cli.replay.outputs import (
    OutputPaths,
    check_outputs,
    names_of,
    print_results,
    write_extras,
    write_results,
)
from measure.cli.replay.resume import EarlierRuns, TrackFiles
from measure.clips.inputs import ClipEntry, read_manifest
from measure.clips.outcome import ClipResult
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.errors import DataError, InputError, ThawlineError
from measure.pose_models.catalogue import ModelQuality

if TYPE_CHECKING:
    from measure.domain.acquisition import KnownSetup


def configure(parser: argparse.ArgumentParser) -> None:
    """Measure shoulder motion in one recorded clip, or in many.

    Name clips, folders or patterns, and the movement and side that they all show; or name a
    manifest, a CSV file with the columns clip,movement,side and optionally view,reference,person
    (paths are relative to the manifest). Each clip gives a reading with its 95 % interval, or the
    reason why there is none.

    With --results each result is written as soon as it is ready, and an interrupted run carries on
    where it stopped: give the same command again.

    exit codes:
      0  done: readings, or the reasons why there are none
      2  wrong use, or input that cannot be read (other clips are still read)
      1  an error inside Thawline

    examples:
      thawline replay raise.mp4 --movement flexion --side left
      thawline replay raise.mp4 --movement abduction --side right --view front --json out.json
      thawline replay raise.mp4 --movement flexion --side left --annotate pictures --track f.csv
      thawline replay --manifest clips.csv --results results.jsonl --csv table.csv
      thawline replay "spring/**/*.mp4" --movement flexion --side left --keep-tracks tracks
      thawline replay --from-tracks tracks --csv again.csv
      thawline replay raise.mp4 --movement flexion --side left --setup bramble.json
      thawline replay --manifest study.csv --results study.jsonl --agreement study
      thawline replay raise.mp4 --movement flexion --side left --person Bramble
    """
    parser.add_argument(
        "clips", type=Path, nargs="*", metavar="CLIP", help="recorded clips, folders or patterns"
    )
    parser.add_argument("--movement", choices=[choice.value for choice in Movement])
    parser.add_argument(
        "--side",
        choices=[choice.value for choice in Side],
        help="the person's own left or right left or right",
    )
    parser.add_argument(
        "--view",
        choices=[choice.value for choice in View],
        help="what the camera sees; recognised if not given",
    )
    parser.add_argument("--manifest", type=Path, metavar="FILE.csv", help="a table of clips")
    parser.add_argument(
        "--from-tracks",
        type=Path,
        metavar="PATH",
        help="measure again from what --keep-tracks saved (a folder or one file), without the "
        "clips",
    )
    add_reading_options(parser)
    add_output_options(parser)
    add_comparison_options(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Read the clips and, if asked, compare places and references; return the exit code."""
    if arguments.keep_place and arguments.person is None:
        raise InputError("--keep-place needs --person NAME.")
    if arguments.agreement is not None:
        _make_agreement_folder(arguments.agreement)
    person_id = None if arguments.person is None else person_id_of(arguments.person)
    results, code = replay(arguments)
    if person_id is not None:
        _comparison("place")(results, person_id, keep=arguments.keep_place)
    if arguments.agreement is None:
        return code
    try:
        _comparison("agreement")(results, arguments.agreement)
    except InputError as error:
        print_note(str(error))
        return code or error.exit_code
    return code


def _comparison(name: str) -> Callable[..., None]:
    """Return a comparison from the layer above, which registers it as an entry point."""
    entry = next(iter(entry_points(group="thawline.replay", name=name)))
    compare: Callable[..., None] = entry.load()
    return compare


def _make_agreement_folder(folder: Path) -> None:
    """Make the folder before any clip is read."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise DataError(
            f"{folder} cannot be used: {error.strerror or error}. Name another folder for "
            "--agreement."
        ) from error


def replay(arguments: argparse.Namespace) -> tuple[list[ClipResult], int]:
    """Read the clips of the command line, write and print.

    Returns
    -------
    tuple
        The result of each clip, in the order of the list and without its series; and the exit
        code.
    """
    check_use(arguments)
    paths = OutputPaths(
        **{field.name: getattr(arguments, field.name) for field in fields(OutputPaths)}
    )
    if arguments.from_tracks is not None:
        return _replay_tracks(arguments, paths)
    entries = _entries(arguments)
    if paths.track is not None and len(entries) != 1:
        raise InputError("--track works with one clip; several were named.")
    listed = () if arguments.manifest is None else (arguments.manifest,)
    check_outputs(paths, (*(entry.clip for entry in entries), *listed))
    settings = settings_of(_quality(arguments), arguments.model)
    settings = replace(settings, setup=_setup(arguments), every_frame=arguments.every_frame)
    names = names_of(entries)
    earlier = EarlierRuns.open(paths.results, paths.keep_tracks, entries, names, settings)
    if earlier.results is not None and earlier.results.damaged_lines:
        print_note(
            f"{paths.results} contains {earlier.results.damaged_lines} incomplete line(s), as an "
            "interrupted run leaves them; their clips are read again."
        )
    coming = read_entries(
        entries,
        settings,
        workers=arguments.workers,
        cached=earlier.cached,
        cluster=arguments.cluster,
        send_clips=arguments.send_clips,
    )
    results = _write_each(paths, coming, names, earlier)
    write_results(paths, results)
    print_results(paths, results)
    return results, exit_code(results)


def _write_each(
    paths: OutputPaths,
    coming: Iterator[ClipResult],
    names: Sequence[str],
    earlier: EarlierRuns,
) -> list[ClipResult]:
    """Write results as they come; return them in the order of the list, without their series."""
    results = []
    try:
        for result in coming:
            # The line comes last: where it stands, the clip's other files are there as well.
            error = _write_files(paths, result, names[result.number], earlier.tracks)
            if earlier.results is not None:
                earlier.results.add(result)
            results.append(replace(result, reading=None, error=result.error or error))
    except KeyboardInterrupt:
        if earlier.results is not None:
            print_note(
                f"{len(results)} clips are in {paths.results}. To carry on, give the same command "
                "again."
            )
        raise
    return sorted(results, key=lambda result: result.number)


def _write_files(
    paths: OutputPaths, result: ClipResult, name: str, tracks: TrackFiles | None
) -> ThawlineError | None:
    """Write the files of one clip; return what kept one from being written."""
    if result.reading is None:
        return None
    kept = None if tracks is None else tracks.path(result.number)
    try:
        write_extras(paths, name, result.entry, result.reading, kept)
    except ThawlineError as error:
        return error
    return None


def _replay_tracks(
    arguments: argparse.Namespace, paths: OutputPaths
) -> tuple[list[ClipResult], int]:
    from measure.clips.observation_file import kept_files, read_observations

    files = kept_files(arguments.from_tracks)
    check_outputs(paths, files)
    if paths.track is not None and len(files) != 1:
        raise InputError("--track works with one clip; several are saved there.")
    unusable: list[DataError] = []
    results = []
    for result in read_observations(files, _setup(arguments), unusable.append):
        if result.reading is not None:
            name = files[result.number].stem
            write_extras(paths, name, result.entry, result.reading, None)
        results.append(replace(result, reading=None))
    write_results(paths, results)
    print_results(paths, results)
    for error in unusable:
        print_note(str(error))
    return results, DataError.exit_code if unusable else exit_code(results)


def _setup(arguments: argparse.Namespace) -> "KnownSetup":
    from measure.clips.setup_file import read_setup
    from measure.domain.acquisition import KnownSetup

    return KnownSetup() if arguments.setup is None else read_setup(arguments.setup)


def _quality(arguments: argparse.Namespace) -> ModelQuality | None:
    return ModelQuality(arguments.model_quality) if arguments.model_quality else None


def _entries(arguments: argparse.Namespace) -> tuple[ClipEntry, ...]:
    if arguments.manifest is not None:
        return read_manifest(arguments.manifest)
    if not arguments.clips:
        raise InputError("Name a clip, or a table of clips with --manifest.")
    if arguments.movement is None or arguments.side is None:
        raise InputError("Say what the clip shows: --movement and --side.")
    from measure.clips.inputs import clips_named

    return tuple(
        ClipEntry(
            clip=clip,
            movement=Movement(arguments.movement),
            side=Side(arguments.side),
            view=View(arguments.view) if arguments.view else None,
        )
        for clip in clips_named(arguments.clips)
    )
