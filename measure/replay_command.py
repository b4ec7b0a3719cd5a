"""`thawline replay`: reads one clip, or many from a manifest."""

import argparse
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

from measure.batch import Outcome
from measure.body import Side
from measure.errors import InputError
from measure.manifest import ClipEntry, read_manifest
from measure.movements import Movement, View
from measure.pose_model_checksums import ModelQuality
from measure.replay import ClipReading

#: Each takes about a gigabyte of memory. Ours.
MOST_WORKERS = 64


def configure(parser: argparse.ArgumentParser) -> None:
    """Read shoulder motion from a recorded clip, or from many.

    Give one clip with its movement and side, or a manifest: a CSV file with the columns
    clip,movement,side,view,reference (the last two may be empty; paths are relative to the
    manifest). A reading comes with its 95 % interval; a refusal with its reason.

    exit codes:
      0  readings, or honest refusals
      2  wrong use, or input that cannot be read (other clips of a manifest are still read)
      1  our own failure

    examples:
      thawline replay raise.mp4 --movement flexion --side left
      thawline replay raise.mp4 --movement abduction --side right --view front --json out.json
      thawline replay raise.mp4 --movement flexion --side left --annotate pictures --track f.csv
      thawline replay --manifest clips.csv --json results.json
    """
    parser.add_argument("clip", type=Path, nargs="?", metavar="CLIP", help="a recorded clip")
    parser.add_argument("--movement", choices=[each.value for each in Movement])
    parser.add_argument("--side", choices=[each.value for each in Side], help="the person's own")
    parser.add_argument(
        "--view",
        choices=[each.value for each in View],
        help="what the camera sees; recognised if not given",
    )
    parser.add_argument("--manifest", type=Path, metavar="FILE.csv", help="many clips")
    parser.add_argument(
        "--model-quality",
        choices=[each.value for each in ModelQuality],
        help="default: heavy, or full where heavy cannot be had",
    )
    parser.add_argument(
        "--model", type=Path, metavar="FILE", help="a pose bundle of your own instead"
    )
    parser.add_argument("--json", type=Path, metavar="FILE", help="write the results as JSON")
    parser.add_argument(
        "--annotate", type=Path, metavar="DIR", help="write annotated clips and curves there"
    )
    parser.add_argument(
        "--track", type=Path, metavar="FILE", help="write the per-frame series as CSV (one clip)"
    )
    parser.add_argument("--workers", type=int, metavar="N", help="pose processes side by side")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    entries = _entries(arguments)
    _check_outputs(arguments)
    outcomes: list[Outcome] = []
    for outcome in read_entries(entries, _quality(arguments), arguments.model, arguments.workers):
        outcomes.append(outcome)
        if outcome.reading is not None:
            _write_extras(arguments, outcome.entry, outcome.reading)
    outcomes.sort(key=lambda outcome: outcome.number)
    _print_table(outcomes)
    if arguments.json:
        from measure.result_json import document, write_json
        from measure.software import software

        results = [
            (str(each.entry.clip), each.reading.measurement) for each in outcomes if each.reading
        ]
        write_json(arguments.json, document(software(), results))
    return exit_code(outcomes)


def exit_code(outcomes: Sequence[Outcome]) -> int:
    """Return 1 when a failure of ours is among the outcomes, 2 for unreadable input, else 0."""
    codes = {each.error.exit_code for each in outcomes if each.error is not None}
    return 1 if 1 in codes else max(codes, default=0)


def read_entries(
    entries: Sequence[ClipEntry],
    quality: ModelQuality | None,
    own_model: Path | None,
    workers: int | None = None,
) -> Iterator[Outcome]:
    """Read clips, yielding each as it is done; draws a progress bar on a terminal."""
    from tqdm import tqdm

    from measure.batch import read_many, usual_workers
    from measure.passes import models_for
    from measure.pose_model_progress import bar

    def say(sentence: str) -> None:
        print(f"thawline: {sentence}", file=sys.stderr)

    with bar() as fetching:
        models = models_for(quality, own_model, progress=fetching, say=say)
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

        yield from read_many(entries, models, workers=workers or usual_workers(), progress=progress)


def _quality(arguments: argparse.Namespace) -> ModelQuality | None:
    return ModelQuality(arguments.model_quality) if arguments.model_quality else None


def _entries(arguments: argparse.Namespace) -> tuple[ClipEntry, ...]:
    if arguments.manifest is not None:
        if arguments.clip is not None or arguments.track is not None:
            raise InputError("Give either one clip or --manifest; --track goes with one clip.")
        return read_manifest(arguments.manifest)
    if arguments.clip is None:
        raise InputError("Name a clip, or a table of clips with --manifest.")
    if arguments.movement is None or arguments.side is None:
        raise InputError("Say what the clip shows: --movement and --side.")
    return (
        ClipEntry(
            clip=arguments.clip,
            movement=Movement(arguments.movement),
            side=Side(arguments.side),
            view=View(arguments.view) if arguments.view else None,
        ),
    )


def _check_outputs(arguments: argparse.Namespace) -> None:
    """Refuse outputs that cannot be written before any work is done."""
    if arguments.workers is not None and not 1 <= arguments.workers <= MOST_WORKERS:
        raise InputError(f"--workers takes a whole number from 1 to {MOST_WORKERS}.")
    for path in (arguments.json, arguments.track):
        if path is None:
            continue
        if path.is_dir():
            raise InputError(f"{path} is a folder. Name a file.")
        if not path.absolute().parent.is_dir():
            raise InputError(f"There is no folder {path.absolute().parent}. Make it first.")
    if arguments.annotate is not None and arguments.annotate.is_file():
        raise InputError(f"{arguments.annotate} is a file. Name a folder for --annotate.")


def _write_extras(arguments: argparse.Namespace, entry: ClipEntry, reading: ClipReading) -> None:
    if arguments.track:
        from measure.track_csv import write_track

        write_track(arguments.track, reading)
    if arguments.annotate:
        from measure.drawing import write_annotated
        from measure.pictures import draw_curve

        arguments.annotate.mkdir(parents=True, exist_ok=True)
        name = f"{entry.clip.stem}-{entry.movement}-{entry.side}"
        draw_curve(arguments.annotate / f"{name}.png", reading, None)
        write_annotated(entry.clip, arguments.annotate / f"{name}.mp4", reading)


def _print_table(outcomes: Sequence[Outcome]) -> None:
    from measure.command_line import NOTICE
    from measure.result_words import (
        interval_words,
        reason_words,
        refusal_sentence,
        table,
        value_words,
    )

    rows = []
    for outcome in outcomes:
        entry = outcome.entry
        row = [entry.clip.name, str(entry.movement), str(entry.side)]
        if outcome.reading is None:
            rows.append([*row, "not read", "", ""])
        else:
            measurement = outcome.reading.measurement
            said = [f(measurement) for f in (value_words, interval_words, reason_words)]
            rows.append([*row, *said])
    print(table(rows, ("clip", "movement", "side", "reading", "95 % interval", "remarks")))
    for outcome in outcomes:
        if outcome.error is not None:
            print(f"thawline: {outcome.error}", file=sys.stderr)
        elif outcome.reading is not None:
            sentence = refusal_sentence(outcome.reading.measurement)
            if sentence:
                print(f"{outcome.entry.clip.name}: {sentence}")
    print(NOTICE)
