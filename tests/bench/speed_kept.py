"""Kept tracks: how much faster than the clips they are read, and what is kept of each clip."""

import time
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from measure.batch.results_file import ResultsFile
from measure.batch.summary import write_table
from measure.clips.observation_file import load_observation, save_observation
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.clips.read import measurement_from_observation, read_clip
from measure.domain.acquisition import Setup
from measure.pose.ensemble import models_for
from measure.pose.supervisor import PoseProcess
from tests.bench.keep_clips import CLIPS, TRACKS
from tests.bench.speed_clips import USUAL_FPS, usual_entries, usual_frames
from tests.bench.speed_effort import Effort
from tests.bench.speed_process import spent
from tests.bench.speed_table import Row

_AGAIN = 20


def kept_tracks(folder: Path, effort: Effort) -> Iterator[Row]:
    """Read clips from their pictures, and from what was kept of them."""
    models = models_for()
    entries = usual_entries(folder)[: effort.clips]
    files = [folder / f"{number}.npz" for number in range(len(entries))]
    with PoseProcess(models.bundles) as process:
        process.prepare()

        def from_clips() -> None:
            for entry, file in zip(entries, files, strict=True):
                reading = read_clip(process, models, entry.clip, entry.task(Setup()))
                save_observation(file, entry, reading.observation)

        clips_s = spent(process, from_clips).cpu_s
    began = time.process_time()
    for _ in range(_AGAIN):
        for file in files:
            measurement_from_observation(load_observation(file)[1], Setup())
    tracks_s = (time.process_time() - began) / _AGAIN
    length_s = sum(usual_frames(entry.clip) for entry in entries) / USUAL_FPS
    yield Row(
        mark="f",
        what="kept tracks, usual reading: seconds of clip per processor second",
        goal="at least 500",
        measured=f"{length_s / tracks_s:.0f}; {1000 * tracks_s / len(entries):.1f} ms a clip of "
        f"{length_s / len(entries):.1f} s; {clips_s / tracks_s:.0f} times the clips themselves",
    )


def sizes(folder: Path, _: Effort) -> Iterator[Row]:
    """What is written for each of the sample clips."""
    files = sorted(TRACKS.glob("*.npz"))
    outcomes = []
    for number, file in enumerate(files):
        entry, observation = load_observation(file)
        entry = replace(entry, clip=CLIPS / entry.clip)
        measurement = measurement_from_observation(observation, Setup()).measurement
        outcomes.append(ClipResult(number=number, entry=entry, measurement=measurement))
    settings = ReadingSettings(models=models_for())
    results = ResultsFile(folder / "results.jsonl", [each.entry for each in outcomes], settings)
    for outcome in outcomes:
        results.add(outcome)
    write_table(folder / "table.csv", outcomes)
    tracks = sum(file.stat().st_size for file in files)
    each_kb = [
        size / len(files) / 1000
        for size in (
            (folder / "results.jsonl").stat().st_size,
            (folder / "table.csv").stat().st_size,
            tracks,
        )
    ]
    yield Row(
        mark="g",
        what="written for each clip: results, table, kept tracks",
        goal="",
        measured=f"{each_kb[0]:.1f}, {each_kb[1]:.2f} and {each_kb[2]:.0f} kB",
    )
