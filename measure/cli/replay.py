"""`thawline replay`: reads one clip, or many from a folder, a pattern or a manifest."""

import argparse
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from measure.batch.results_file import ResultsFile
from measure.batch.run import Earlier, nothing_earlier
from measure.cli.replay_outputs import (
    check_outputs,
    names_of,
    print_results,
    write_extras,
    write_results,
)
from measure.clips.inputs import ClipEntry, read_manifest
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.errors import DataError, InputError, ThawlineError
from measure.pose_models.catalogue import ModelQuality

if TYPE_CHECKING:
    from measure.domain.acquisition import KnownSetup

#: Each takes about a gigabyte of memory. Ours.
MOST_WORKERS = 64


def configure(parser: argparse.ArgumentParser) -> None:
    """Read shoulder motion from a recorded clip, or from many.

    Name clips, folders or patterns with the movement and side that they all show; or a
    manifest, a CSV file with the columns clip,movement,side and if wanted view,reference,person
    (paths are relative to the manifest). A reading comes with its 95 % interval; a refusal with
    its reason.

    With --results every result is written as soon as it is there, and a run that was broken off
    goes on where it stopped: give the same command again.

    exit codes:
      0  readings, or honest refusals
      2  wrong use, or input that cannot be read (other clips are still read)
      1  our own failure

    examples:
      thawline replay raise.mp4 --movement flexion --side left
      thawline replay raise.mp4 --movement abduction --side right --view front --json out.json
      thawline replay raise.mp4 --movement flexion --side left --annotate pictures --track f.csv
      thawline replay --manifest clips.csv --results results.jsonl --csv table.csv
      thawline replay "spring/**/*.mp4" --movement flexion --side left --keep-tracks tracks
      thawline replay --from-tracks tracks --csv again.csv
      thawline replay raise.mp4 --movement flexion --side left --setup bramble.json
    """
    parser.add_argument(
        "clips", type=Path, nargs="*", metavar="CLIP", help="recorded clips, folders or patterns"
    )
    parser.add_argument("--movement", choices=[each.value for each in Movement])
    parser.add_argument("--side", choices=[each.value for each in Side], help="the person's own")
    parser.add_argument(
        "--view",
        choices=[each.value for each in View],
        help="what the camera sees; recognised if not given",
    )
    parser.add_argument("--manifest", type=Path, metavar="FILE.csv", help="many clips")
    parser.add_argument(
        "--from-tracks",
        type=Path,
        metavar="PATH",
        help="read again what --keep-tracks kept (a folder or one file), without any clip",
    )
    _add_how(parser)
    _add_outputs(parser)
    parser.set_defaults(run=run)


def _add_how(parser: argparse.ArgumentParser) -> None:
    how = parser.add_argument_group("how to read")
    how.add_argument(
        "--model-quality",
        choices=[each.value for each in ModelQuality],
        help="default: heavy, or full where heavy cannot be had",
    )
    how.add_argument("--model", type=Path, metavar="FILE", help="a pose bundle of your own instead")
    how.add_argument(
        "--every-frame",
        action="store_true",
        help="look at every frame instead of a few each second: many times slower",
    )
    how.add_argument(
        "--setup",
        type=Path,
        metavar="FILE.json",
        help="what is known of camera and person, from thawline calibrate setup write",
    )
    how.add_argument("--workers", type=int, metavar="N", help="pose processes side by side")
    how.add_argument(
        "--cluster",
        metavar="ADDRESS",
        help="let the workers of a Dask cluster read (extra: cluster)",
    )
    how.add_argument(
        "--send-clips",
        action="store_true",
        help="send each clip to its worker, where the workers do not see the same paths",
    )


def _add_outputs(parser: argparse.ArgumentParser) -> None:
    out = parser.add_argument_group("what to write")
    out.add_argument("--json", type=Path, metavar="FILE", help="the results as JSON, at the end")
    out.add_argument(
        "--results",
        type=Path,
        metavar="FILE.jsonl",
        help="a line for each clip as it is read; what is in it is not read again",
    )
    out.add_argument("--csv", type=Path, metavar="FILE", help="a row for each clip, at the end")
    out.add_argument("--annotate", type=Path, metavar="DIR", help="annotated clips and curves")
    out.add_argument(
        "--track", type=Path, metavar="FILE", help="per-frame series as CSV (one clip)"
    )
    out.add_argument(
        "--c3d", type=Path, metavar="DIR", help="landmarks as C3D files (extra: motion)"
    )
    out.add_argument("--trc", type=Path, metavar="DIR", help="landmarks as TRC files")
    out.add_argument(
        "--metres-per-px",
        type=float,
        metavar="M",
        help="measured length of a pixel at the person's distance, for C3D and TRC in metres; "
        "without it they are in pixels",
    )
    out.add_argument(
        "--keep-tracks", type=Path, metavar="DIR", help="what the networks saw of each clip"
    )


def run(arguments: argparse.Namespace) -> int:
    """Read and write what was asked for; return the exit code."""
    return replay(arguments)[1]


def exit_code(outcomes: Sequence[ClipResult]) -> int:
    """Return 1 when a failure of ours is among the outcomes, 2 for unreadable input, else 0."""
    codes = {each.error.exit_code for each in outcomes if each.error is not None}
    return 1 if 1 in codes else max(codes, default=0)


def replay(arguments: argparse.Namespace) -> tuple[list[ClipResult], int]:
    """Read the clips of the command line, write and print.

    Returns
    -------
    tuple
        What became of each clip, in the order of the list and without its series; and the
        exit code.
    """
    _check_use(arguments)
    if arguments.from_tracks is not None:
        return _replay_tracks(arguments)
    entries = _entries(arguments)
    if arguments.track is not None and len(entries) != 1:
        raise InputError("--track takes the series of one clip; several were named.")
    check_outputs(arguments)
    settings = settings_of(_quality(arguments), arguments.model)
    settings = replace(settings, setup=_setup(arguments), every_frame=arguments.every_frame)
    book = ResultWriter(arguments, entries, settings)
    outcomes = book.gather(
        read_entries(
            entries,
            settings,
            workers=arguments.workers,
            cached=book.cached,
            cluster=arguments.cluster,
            send_clips=arguments.send_clips,
        )
    )
    write_results(arguments, outcomes)
    print_results(arguments, outcomes)
    return outcomes, exit_code(outcomes)


class ResultWriter:
    """Writes each outcome as it comes, and knows those of earlier runs."""

    def __init__(
        self,
        arguments: argparse.Namespace,
        entries: Sequence[ClipEntry],
        settings: ReadingSettings,
    ) -> None:
        self._arguments = arguments
        self._names = names_of(entries)
        self._results: ResultsFile | None = None
        self._key: Callable[[int], str] | None = None
        if arguments.results is not None:
            self._results = ResultsFile(arguments.results, entries, settings)
            self._key = self._results.key
            if self._results.damaged_lines:
                _say(
                    f"{arguments.results} holds {self._results.damaged_lines} broken line(s), as "
                    "a run that was killed leaves them; their clips are read again."
                )
        elif arguments.keep_tracks is not None:
            from measure.batch.cache_key import ResultKeys

            keys = ResultKeys(settings)
            self._key = lambda number: keys.of(entries[number])

    @property
    def cached(self) -> Earlier:
        """What an earlier run made of an entry, unless something else is still to be written."""
        results = self._results
        if results is None:
            return nothing_earlier

        def known(number: int) -> ClipResult | None:
            found = results.cached(number)
            tracks = self._tracks(number)
            kept = tracks is None or tracks.exists() or (found and found.error is not None)
            return found if kept else None

        return known

    def gather(self, coming: Iterator[ClipResult]) -> list[ClipResult]:
        """Write outcomes as they come; return them in their order, without their series."""
        outcomes = []
        try:
            for outcome in coming:
                # The line comes last: whoever finds it finds what belongs to it as well.
                failed = self._write_extras(outcome)
                if self._results is not None:
                    self._results.add(outcome)
                outcomes.append(replace(outcome, reading=None, error=outcome.error or failed))
        except KeyboardInterrupt:
            if self._results is not None:
                _say(
                    f"{len(outcomes)} clips are in {self._arguments.results}. Give the same "
                    "command again to go on."
                )
            raise
        return sorted(outcomes, key=lambda each: each.number)

    def _write_extras(self, outcome: ClipResult) -> ThawlineError | None:
        if outcome.reading is None:
            return None
        name = self._names[outcome.number]
        tracks = self._tracks(outcome.number)
        try:
            write_extras(self._arguments, name, outcome.entry, outcome.reading, tracks)
        except ThawlineError as error:
            return error
        return None

    def _tracks(self, number: int) -> Path | None:
        """Return where the tracks of an entry are kept; other settings are another file."""
        folder: Path | None = self._arguments.keep_tracks
        if folder is None or self._key is None:
            return None
        return folder / f"{self._names[number]}-{self._key(number)[:12]}.npz"


def settings_of(quality: ModelQuality | None, own_model: Path | None) -> ReadingSettings:
    """Return settings with the models asked for, fetched where they are not here yet."""
    from measure.cli.model import download_progress
    from measure.pose.ensemble import models_for

    with download_progress() as fetching:
        return ReadingSettings(models=models_for(quality, own_model, progress=fetching, say=_say))


def read_entries(
    entries: Sequence[ClipEntry],
    settings: ReadingSettings,
    *,
    workers: int | None = None,
    cached: Earlier = nothing_earlier,
    cluster: str | None = None,
    send_clips: bool = False,
) -> Iterator[ClipResult]:
    """Read clips here or on a cluster, yielding each as it is done; draws a progress bar on a
    terminal.
    """
    from tqdm import tqdm

    with tqdm(
        total=100 * len(entries),
        desc="reading clips",
        file=sys.stderr,
        disable=not sys.stderr.isatty(),
        bar_format="{desc} {bar:30} {percentage:3.0f} %  {remaining} left",
        leave=False,
    ) as drawn:

        def progress(done: float) -> None:
            drawn.n = round(100 * done)
            drawn.refresh()

        if cluster is None:
            from measure.batch.run import read_many, usual_workers

            coming = read_many(
                entries,
                settings,
                workers=workers or usual_workers(),
                cached=cached,
                progress=progress,
            )
        else:
            from measure.batch.dask_cluster import read_on_cluster

            coming = read_on_cluster(
                cluster,
                entries,
                settings,
                send_clips=send_clips,
                cached=cached,
                progress=progress,
            )
        for outcome in coming:
            if outcome.is_earlier:
                drawn.total -= 100
            yield outcome


def _replay_tracks(arguments: argparse.Namespace) -> tuple[list[ClipResult], int]:
    from measure.clips.kept_tracks import kept_files, read_observations

    check_outputs(arguments)
    files = kept_files(arguments.from_tracks)
    if arguments.track is not None and len(files) != 1:
        raise InputError("--track takes the series of one clip; several are kept there.")
    unusable: list[DataError] = []
    outcomes = []
    for outcome in read_observations(files, _setup(arguments), unusable.append):
        if outcome.reading is not None:
            name = files[outcome.number].stem
            write_extras(arguments, name, outcome.entry, outcome.reading, None)
        outcomes.append(replace(outcome, reading=None))
    write_results(arguments, outcomes)
    print_results(arguments, outcomes)
    for error in unusable:
        _say(str(error))
    return outcomes, DataError.exit_code if unusable else exit_code(outcomes)


def _setup(arguments: argparse.Namespace) -> "KnownSetup":
    from measure.clips.setup_file import read_setup
    from measure.domain.acquisition import KnownSetup

    return KnownSetup() if arguments.setup is None else read_setup(arguments.setup)


def _say(sentence: str) -> None:
    print(f"thawline: {sentence}", file=sys.stderr)


def _quality(arguments: argparse.Namespace) -> ModelQuality | None:
    return ModelQuality(arguments.model_quality) if arguments.model_quality else None


def _check_use(arguments: argparse.Namespace) -> None:
    sources = (bool(arguments.clips), arguments.manifest, arguments.from_tracks)
    if sum(source not in (None, False) for source in sources) > 1:
        raise InputError("Give one of these: clips, --manifest, --from-tracks.")
    if arguments.manifest is not None and arguments.track is not None:
        raise InputError("--track goes with one clip; leave it out with --manifest.")
    if arguments.workers is not None and not 1 <= arguments.workers <= MOST_WORKERS:
        raise InputError(f"--workers takes a whole number from 1 to {MOST_WORKERS}.")
    if arguments.cluster is not None and arguments.workers is not None:
        raise InputError("The cluster has its own workers; leave --workers out.")
    if arguments.send_clips and arguments.cluster is None:
        raise InputError("--send-clips goes with --cluster ADDRESS.")
    if arguments.from_tracks is not None:
        for option in ("annotate", "keep_tracks", "results", "model", "model_quality", "cluster"):
            if getattr(arguments, option) is not None:
                word = option.replace("_", "-")
                raise InputError(f"--{word} needs the clips; leave it out with --from-tracks.")


def _entries(arguments: argparse.Namespace) -> tuple[ClipEntry, ...]:
    if arguments.manifest is not None:
        return read_manifest(arguments.manifest)
    if not arguments.clips:
        raise InputError("Name a clip, or a table of clips with --manifest.")
    if arguments.movement is None or arguments.side is None:
        raise InputError("Say what the clip shows: --movement and --side.")
    from measure.clips.clip_list import clips_named

    return tuple(
        ClipEntry(
            clip=clip,
            movement=Movement(arguments.movement),
            side=Side(arguments.side),
            view=View(arguments.view) if arguments.view else None,
        )
        for clip in clips_named(arguments.clips)
    )
