"""Options of `thawline replay` by subject, and which of them do not go together."""

import argparse
from pathlib import Path

from measure.errors import InputError
from measure.pose_models.catalogue import ModelQuality

#: Most pose processes side by side; each takes about a gigabyte of memory. [technical]
MOST_WORKERS = 64


def add_reading_options(parser: argparse.ArgumentParser) -> None:
    reading = parser.add_argument_group("how to read")
    reading.add_argument(
        "--model-quality",
        choices=[choice.value for choice in ModelQuality],
        help="default: heavy, or full where heavy is missing",
    )
    reading.add_argument(
        "--model", type=Path, metavar="FILE", help="a pose bundle of your own instead"
    )
    reading.add_argument(
        "--every-frame",
        action="store_true",
        help="use every frame instead of a few each second: many times slower",
    )
    reading.add_argument(
        "--setup",
        type=Path,
        metavar="FILE.json",
        help="calibration of camera and person, from thawline calibrate setup write",
    )
    reading.add_argument(
        "--workers", type=int, metavar="N", help="number of clips read at the same time"
    )
    reading.add_argument(
        "--cluster",
        metavar="ADDRESS",
        help="read on the workers of a Dask cluster (extra: cluster)",
    )
    reading.add_argument(
        "--send-clips",
        action="store_true",
        help="send each clip to its worker, if the workers do not have the same paths",
    )


def add_output_options(parser: argparse.ArgumentParser) -> None:
    output = parser.add_argument_group("what to write")
    output.add_argument("--json", type=Path, metavar="FILE", help="the results as JSON, at the end")
    output.add_argument(
        "--results",
        type=Path,
        metavar="FILE.jsonl",
        help="one line per clip, written as it is read; clips already in it are not read again",
    )
    output.add_argument("--csv", type=Path, metavar="FILE", help="one row per clip, at the end")
    output.add_argument("--annotate", type=Path, metavar="DIR", help="annotated clips and curves")
    output.add_argument(
        "--track", type=Path, metavar="FILE", help="per-frame series as CSV (one clip)"
    )
    output.add_argument(
        "--c3d", type=Path, metavar="DIR", help="landmarks as C3D files (extra: motion)"
    )
    output.add_argument("--trc", type=Path, metavar="DIR", help="landmarks as TRC files")
    output.add_argument(
        "--metres-per-px",
        type=float,
        metavar="M",
        help="length of a pixel at the person's distance, for C3D and TRC in metres (default: in "
        "pixels)",
    )
    output.add_argument(
        "--keep-tracks", type=Path, metavar="DIR", help="save what the networks found in each clip"
    )


def add_comparison_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--agreement",
        type=Path,
        metavar="DIR",
        help="compare with the references in the manifest: as text, JSON and a plot",
    )
    place = parser.add_argument_group("where the person stands")
    place.add_argument(
        "--person",
        metavar="NAME",
        help="say whether this person stands differently from when their place was saved",
    )
    place.add_argument(
        "--keep-place",
        action="store_true",
        help="save where they stand here, to compare with later",
    )


def check_use(arguments: argparse.Namespace) -> None:
    """Refuse options that do not go together.

    Raises
    ------
    InputError
        With what to leave out or to add.
    """
    sources = (bool(arguments.clips), arguments.manifest, arguments.from_tracks)
    if sum(source not in (None, False) for source in sources) > 1:
        raise InputError("Give one of these: clips, --manifest or --from-tracks.")
    if arguments.manifest is not None and arguments.track is not None:
        raise InputError("--track works with one clip; leave it out with --manifest.")
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
