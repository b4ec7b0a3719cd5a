"""Per-frame series of a clip as CSV: time, values, reasons for gaps, and landmarks."""

import csv
import io
import math
from pathlib import Path

import numpy as np

from measure.clips.read import ClipReading
from measure.domain.landmarks import FloatArray, Landmark
from measure.domain.measurements import Measurement
from measure.domain.tracks import FrameState
from measure.system.atomic_files import write_over
from measure.video.sampling import FINE_HZ


def write_track(path: Path, reading: ClipReading) -> None:
    """Write one row for each frame of the coarse pass.

    Columns: time in seconds; the guide value of the coarse pass; the refined value where fine
    passes analysed that frame; the part of a trial; the frame's state; people seen; then x and
    y of each landmark in pixels (y down) with its visibility. Empty is missing.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    unit = str(reading.measurement.unit)
    header = ["time_s", f"guide_{unit}", f"settled_{unit}", "part", "state", "people"]
    for mark in Landmark:
        name = mark.name.lower()
        header += [f"{name}_x_px", f"{name}_y_px", f"{name}_visibility"]
    track = reading.track
    refined = refined_series(reading)
    text = io.StringIO(newline="")
    rows = csv.writer(text)
    rows.writerow(header)
    for frame, time_s in enumerate(track.time_s):
        row = [
            f"{time_s:.4f}",
            _cell(reading.guide[frame], 3),
            _cell(refined[frame], 3),
            part_of(reading.measurement, float(time_s)),
            FrameState(int(track.state[frame])).name.lower().replace("_", "-"),
            str(int(track.people[frame])),
        ]
        for mark in Landmark:
            x, y = track.points_px[frame, mark]
            row += [_cell(x, 2), _cell(y, 2), _cell(track.visibility[frame, mark], 3)]
        rows.writerow(row)
    write_over(path, text.getvalue().encode())


def refined_series(reading: ClipReading) -> FloatArray:
    """Return the refined value nearest to each frame of the coarse track, shape (n,).

    The fine passes analyse fewer frames; a value counts for frames up to half their usual step
    away. NaN where there is none.
    """
    times = reading.track.time_s
    series = np.full(len(times), np.nan)
    for trial in reading.refined:
        fine = trial.fused.time_s
        if not len(fine) or not len(times):
            continue
        nearest = np.argmin(np.abs(times[:, None] - fine[None, :]), axis=1)
        near = np.abs(times - fine[nearest]) <= 0.5 / FINE_HZ + 1e-6
        series[near] = trial.fused.value[nearest[near]]
    return series


def part_of(measurement: Measurement, time_s: float) -> str:
    """Return "hold", "trial" or "" for a time of the clip."""
    for trial in measurement.trials:
        if (
            trial.hold_start_s is not None
            and trial.hold_end_s is not None
            and trial.hold_start_s <= time_s <= trial.hold_end_s
        ):
            return "hold"
        if trial.start_s <= time_s <= trial.end_s:
            return "trial"
    return ""


def _cell(value: float, digits: int) -> str:
    return f"{value:.{digits}f}" if math.isfinite(value) else ""
