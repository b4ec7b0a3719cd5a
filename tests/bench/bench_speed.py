"""`make bench`: speed and memory of reading clips, as ratios within one run. Linux, and ffmpeg.

    python -m tests.bench.bench_speed [--only PART ...] [--short] [--write]

a: frames a second of the pose process over a bare loop that decodes and detects. b: clips per
processor second. c: two processes over one. d: memory of a worker over hundreds of clips. e: time
and memory as a clip grows. f: kept tracks over clips. g: what is written. h: hundreds of clips,
killed twice and gone on with. i: start of the command line. j: start of the window.
`--write` copies the rows into measure/docs/analyst.md and leaves other rows there as they are.

Other programs on the computer spoil a, c, i and j, which go by the clock; the rest goes by
processor seconds.
"""

import argparse
import tempfile
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from statistics import median

from measure.clips.inputs import ClipEntry
from measure.clips.read import read_clip
from measure.domain.acquisition import Setup
from measure.pose.ensemble import ModelSet, models_for
from measure.pose.jobs import ClipJob, InferencePass
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import Bundle, obtain
from measure.pose_models.catalogue import ModelQuality
from measure.video.sampling import COARSE_HZ
from tests.bench import (
    speed_crowd,
    speed_kept,
    speed_length,
    speed_resumed,
    speed_start,
    speed_window,
)
from tests.bench.speed_clips import USUAL_FPS, usual_clip, usual_entries, usual_frames
from tests.bench.speed_effort import SHORT, THOROUGH, Effort
from tests.bench.speed_process import bare_loop, elsewhere, spent
from tests.bench.speed_table import DOCUMENT, Row, table, with_rows

_FULL = InferencePass(quality=ModelQuality.FULL)
#: People that the coarse pass and the bare loop of part a look for.
_PEOPLE = 2


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--only", nargs="+", choices=sorted(_PARTS), default=sorted(_PARTS))
    parser.add_argument("--short", action="store_true", help="less of everything")
    parser.add_argument("--write", action="store_true", help="copy the rows into the document")
    arguments = parser.parse_args()
    effort = SHORT if arguments.short else THOROUGH
    rows: list[Row] = []
    with tempfile.TemporaryDirectory() as folder:
        for part in arguments.only:
            for row in _PARTS[part](Path(folder), effort):
                rows.append(row)
                print(row.text, flush=True)
    print(table(row.text for row in rows))
    if arguments.write:
        document = DOCUMENT.read_text(encoding="utf-8")
        DOCUMENT.write_text(with_rows(document, rows), encoding="utf-8")


def frame_rate(folder: Path, effort: Effort) -> Iterator[Row]:
    """Every frame, one pass: the pose process and the bare loop take turns."""
    clip = usual_clip(folder, effort.seconds)
    bundle = obtain(ModelQuality.FULL)
    by_clock, by_cpu = [], []
    with PoseProcess({ModelQuality.FULL: bundle}) as process:
        process.run(ClipJob(clip=clip, passes=(_FULL,), windows=((0.0, 1.0),)))  # warm-up
        for _ in range(effort.rounds):
            bare, frames = elsewhere(bare_loop, clip, bundle, _PEOPLE)
            ours = spent(process, lambda: process.run(ClipJob(clip=clip, passes=(_FULL,))))
            by_clock.append(bare.clock_s / ours.clock_s)
            by_cpu.append(bare.cpu_s / ours.cpu_s)
    yield Row(
        mark="a",
        what="frames a second at full rate, one process, over the bare loop",
        goal="at least 0.95",
        measured=f"{median(by_clock):.2f} by the clock, {median(by_cpu):.2f} per processor second "
        f"({effort.rounds} rounds of {frames} frames, the middle one)",
    )


def usual_reading(folder: Path, effort: Effort) -> Iterator[Row]:
    """The usual reading against a bare loop over every frame with the heavy network."""
    models = models_for()

    def read(process: PoseProcess, entry: ClipEntry) -> None:
        read_clip(process, models, entry.clip, entry.task(Setup()))

    bundle = models.bundles[ModelQuality.HEAVY]
    yield Row(
        mark="b1",
        what="usual reading: clips per processor second, over heavy on every frame",
        goal="at least 3 over a loop that finds one",
        measured=_against_bare(folder, effort, models, read, bundle),
    )


def coarse_pass_alone(folder: Path, effort: Effort) -> Iterator[Row]:
    """The coarse pass alone against a bare loop over every frame with its network."""
    models = models_for(ModelQuality.FULL)

    def coarse_pass(process: PoseProcess, entry: ClipEntry) -> None:
        process.run(ClipJob(clip=entry.clip, passes=(_FULL,), rate_hz=COARSE_HZ))

    bundle = models.bundles[ModelQuality.FULL]
    yield Row(
        mark="b2",
        what="coarse pass alone: clips per processor second, over full on every frame",
        goal="at least 2.5",
        measured=_against_bare(folder, effort, models, coarse_pass, bundle),
    )


def _against_bare(
    folder: Path,
    effort: Effort,
    models: ModelSet,
    work: Callable[[PoseProcess, ClipEntry], None],
    bundle: Bundle,
) -> str:
    """Return in words how many times cheaper some work is than a bare loop."""
    entries = usual_entries(folder)[: effort.clips]
    ours_s, processed_frames, length_s = 0.0, 0, 0.0
    bare_s = {1: 0.0, _PEOPLE: 0.0}
    with PoseProcess(models.bundles) as process:
        process.prepare()
        for entry in entries:
            ours_s += spent(process, partial(work, process, entry)).cpu_s
            length_s += usual_frames(entry.clip) / USUAL_FPS / len(entries)
            for people in bare_s:
                bare, frames = elsewhere(bare_loop, entry.clip, bundle, people, effort.bare_frames)
                bare_s[people] += bare.cpu_s * usual_frames(entry.clip) / frames
                processed_frames += frames
    return (
        f"{bare_s[_PEOPLE] / ours_s:.2f} over a loop that finds two people, as the coarse pass "
        f"does, {bare_s[1] / ours_s:.2f} over one that finds one; {ours_s / len(entries):.1f} "
        f"s a clip of {length_s:.1f} s ({len(entries)} clips, "
        f"loops timed over {processed_frames} frames)"
    )


_PARTS: dict[str, Callable[[Path, Effort], Iterator[Row]]] = {
    "a": frame_rate,
    "b1": usual_reading,
    "b2": coarse_pass_alone,
    "c": speed_crowd.two_processes,
    "d": speed_crowd.memory_of_a_worker,
    "e1": speed_length.longer_clips,
    "e3": speed_length.longer_tracks,
    "f": speed_kept.kept_tracks,
    "g": speed_kept.sizes,
    "h": speed_resumed.killed_twice,
    "i": speed_start.help_start,
    "j": speed_window.window_start,
}

if __name__ == "__main__":
    main()
