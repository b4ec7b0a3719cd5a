"""Lists of clips read for the window: the same results file as the command, stop and go on."""

from pathlib import Path

import pytest

from gui.session.clip_reader import WindowBatchReader
from measure.batch.results_file import ResultsFile
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ReadingSettings
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import ClipError
from measure.pose.supervisor import PoseProcess
from tests.support import scripted_arm


def scripted_process(bundles: object) -> PoseProcess:
    return PoseProcess(scripted_arm.MODELS.bundles, command=scripted_arm.COMMAND)


@pytest.fixture
def reader() -> WindowBatchReader:
    return WindowBatchReader(lambda: scripted_arm.MODELS, scripted_process)


@pytest.fixture
def entries(tmp_path: Path) -> list[ClipEntry]:
    """Three clips of which the second is broken."""
    clips = [tmp_path / f"bed-{number}.mp4" for number in range(3)]
    for number, clip in enumerate(clips):
        scripted_arm.write_clip(clip, peak=60.0 + 10 * number)
    clips[1].write_bytes(b"\0 nothing that moves")
    return [ClipEntry(clip=clip, movement=Movement.FLEXION, side=Side.LEFT) for clip in clips]


def test_results_are_kept_as_the_command_keeps_them(
    reader: WindowBatchReader, entries: list[ClipEntry], tmp_path: Path
) -> None:
    results = tmp_path / "results.jsonl"
    read = {
        each.result.number: each
        for each in reader(entries, KnownSetup(), results, lambda done: True)
    }
    assert isinstance(read[1].result.error, ClipError)
    first = read[0]
    assert first.analysis is not None
    assert first.analysis.measurement == first.result.measurement
    assert len(first.analysis.curve.time_s) == len(first.analysis.track)
    kept = ResultsFile(results, entries, ReadingSettings(models=scripted_arm.MODELS))
    for number, each in read.items():
        earlier = kept.cached(number)
        assert earlier is not None
        assert earlier.measurement == each.result.measurement
    again = list(reader(entries, KnownSetup(), results, lambda done: True))
    assert all(each.result.is_earlier for each in again)
    (fresh,) = reader(entries[:1], KnownSetup(), results, lambda done: True, fresh=True)
    assert fresh.analysis is not None


def test_a_run_that_is_stopped_leaves_nothing_wrong_behind(
    reader: WindowBatchReader, entries: list[ClipEntry], tmp_path: Path
) -> None:
    results = tmp_path / "results.jsonl"
    assert list(reader(entries, KnownSetup(), results, lambda done: False)) == []
    assert not results.exists()
    whole = list(reader(entries, KnownSetup(), results, lambda done: True))
    assert sum(each.result.measurement is not None for each in whole) == 2
