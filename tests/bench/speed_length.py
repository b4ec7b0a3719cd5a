"""Time and memory as a clip grows from a minute to an hour."""

import time
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement
from measure.domain.tracks import PoseFrame
from measure.pose.jobs import ClipJob, InferencePass
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import obtain
from measure.pose_models.catalogue import ModelQuality
from measure.tracking.offline import track_subject
from measure.trials.scan import scan_for_trials
from measure.video.sampling import COARSE_HZ
from tests.bench.speed_clips import long_clip
from tests.bench.speed_effort import THOROUGH, Effort
from tests.bench.speed_process import elsewhere, memory_mb, spent
from tests.bench.speed_table import Row

_LITE = InferencePass(quality=ModelQuality.LITE)


def longer_clips(folder: Path, effort: Effort) -> Iterator[Row]:
    """Decoding and looking now and then."""
    lengths = " / ".join(map(str, effort.minutes))
    cpu_s, peak_mb = {}, {}
    for minutes in effort.minutes:
        clip = long_clip(folder, minutes)
        cpu_s[minutes], peak_mb[minutes] = elsewhere(sparse_inference_cost, clip, effort.thin_hz)
    yield Row(
        mark="e1",
        what=f"a clip of {lengths} minutes: processor seconds a minute of clip",
        goal="linear",
        measured=" / ".join(f"{cpu_s[minutes] / minutes:.2f}" for minutes in effort.minutes)
        + f" (small clip, lite model, {effort.thin_hz:g} pictures a second)",
    )
    yield Row(
        mark="e2",
        what=f"a clip of {lengths} minutes: most memory of both processes",
        goal="flat",
        measured=" / ".join(f"{peak_mb[minutes]:.0f}" for minutes in effort.minutes) + " MB",
    )


def longer_tracks(folder: Path, _: Effort) -> Iterator[Row]:
    """Following a person and finding trials, at the usual rate, in a minute again and again."""
    lengths = " / ".join(map(str, THOROUGH.minutes))
    took = elsewhere(find_in, long_clip(folder, 1), THOROUGH.minutes)
    yield Row(
        mark="e3",
        what=f"finding trials in {lengths} minutes of landmarks: milliseconds a minute",
        goal="linear",
        measured=" / ".join(f"{1000 * each / minutes:.0f}" for minutes, each in took.items()),
    )


def sparse_inference_cost(clip: Path, rate_hz: float) -> tuple[float, float]:
    """Return processor seconds and the most memory of looking at a clip now and then."""
    with PoseProcess({ModelQuality.LITE: obtain(ModelQuality.LITE)}) as process:
        process.prepare()
        job = ClipJob(clip=clip, passes=(_LITE,), rate_hz=rate_hz, alone=True)
        took = spent(process, lambda: process.run(job))
        assert process.process_id is not None
        return took.cpu_s, memory_mb("self", "VmHWM") + memory_mb(process.process_id, "VmHWM")


def find_in(clip: Path, lengths: tuple[int, ...]) -> dict[int, float]:
    """Return by minutes the processor seconds of everything after the networks' quick look."""
    with PoseProcess({ModelQuality.LITE: obtain(ModelQuality.LITE)}) as process:
        poses = process.run(ClipJob(clip=clip, passes=(_LITE,), rate_hz=COARSE_HZ, alone=True))
    minute = poses.frames[_LITE]
    took = {}
    for minutes in lengths:
        frames = _repeated(minute, minutes)
        began = time.process_time()
        track = track_subject(
            frames, width_px=poses.facts.width_px, height_px=poses.facts.height_px
        )
        found = scan_for_trials(track, MeasurementTask(Movement.FLEXION, Side.LEFT))
        took[minutes] = time.process_time() - began
        if len(found.trials) < minutes:
            raise ValueError(f"only {len(found.trials)} trials were found in {minutes} minutes")
    return took


def _repeated(minute: Sequence[PoseFrame], minutes: int) -> list[PoseFrame]:
    return [
        replace(frame, index=frame.index + number * 10_000, time_s=frame.time_s + 60.0 * number)
        for number in range(minutes)
        for frame in minute
    ]
