"""A person whom the network loses while it searches for a second one is followed alone."""

from pathlib import Path

import pytest

from measure.clips.read import ClipReading, read_clip
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState
from measure.pose.supervisor import PoseProcess
from tests.support import scripted_arm


def reading(folder: Path, **more: object) -> ClipReading:
    clip = scripted_arm.write_clip(folder / "clip.mp4", Movement.FLEXION, Side.LEFT, 100.0, **more)
    models = scripted_arm.MODELS
    with PoseProcess(models.bundles, command=scripted_arm.COMMAND) as process:
        return read_clip(process, models, clip, MeasurementTask(Movement.FLEXION, Side.LEFT))


def test_who_is_seen_by_fits_and_starts_is_followed_and_read(tmp_path: Path) -> None:
    steady, flickering = reading(tmp_path), reading(tmp_path, flickers_until_s=3.0)
    assert (flickering.track.state == FrameState.SEEN).all()
    assert flickering.measurement.value == steady.measurement.value is not None


def test_a_clip_without_anybody_is_not_processed_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    jobs = []
    run = PoseProcess.run
    monkeypatch.setattr(
        PoseProcess, "run", lambda self, job, *more: (jobs.append(job), run(self, job, *more))[1]
    )
    empty = reading(tmp_path, nobody=True)
    assert empty.measurement.reasons == (Reason.NOBODY,)
    assert len(jobs) == 1
