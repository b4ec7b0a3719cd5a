"""Reading clips for a command: models fetched, clips read here or on a cluster, progress bar."""

import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

from measure.batch.run import Earlier, nothing_earlier
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.pose_models.catalogue import ModelQuality


def print_note(sentence: str) -> None:
    """Print a sentence where it does not mix with results."""
    print(f"thawline: {sentence}", file=sys.stderr)


def settings_of(quality: ModelQuality | None, own_model: Path | None) -> ReadingSettings:
    """Return settings with the models asked for, fetched where they are not here yet."""
    from measure.cli.model import download_progress
    from measure.pose.ensemble import models_for

    with download_progress() as fetching:
        return ReadingSettings(
            models=models_for(quality, own_model, progress=fetching, say=print_note)
        )


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
    ) as bar:

        def progress(done: float) -> None:
            bar.n = round(100 * done)
            bar.refresh()

        if cluster is None:
            from measure.batch.run import read_many, usual_workers

            coming: Iterator[ClipResult] = read_many(
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
        for result in coming:
            if result.is_earlier:
                bar.total -= 100
            yield result


def exit_code(results: Sequence[ClipResult]) -> int:
    """Return 1 when a failure of ours is among the results, 2 for unreadable input, else 0."""
    codes = {result.error.exit_code for result in results if result.error is not None}
    return 1 if 1 in codes else max(codes, default=0)
