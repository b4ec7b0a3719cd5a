"""Many clips at once: any executor, the bar with the time left, counts by reason."""

import io
import multiprocessing
import os
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from pathlib import Path

import pytest

from measure.batch.cluster_worker import job_spec
from measure.batch.dask_cluster import read_with_executor
from measure.batch.run import read_many
from measure.batch.summary import summary_lines, write_table
from measure.cli.main import main
from measure.clips.inputs import ClipEntry, clips_named
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.errors import ClipError, DataError, InputError, MachineError
from measure.pose.supervisor import PoseProcess
from tests.support import cluster_script, replay_of_script, scripted_arm
from tests.support.record_samples import measurement

SETTINGS = ReadingSettings(models=scripted_arm.MODELS)


def entries(folder: Path, count: int) -> list[ClipEntry]:
    """Clips of which the third is broken."""
    clips = []
    for number in range(count):
        clip = folder / f"bed-{number}.mp4"
        if number == 2:
            clip.write_bytes(b"\0 nothing that moves")
        else:
            scripted_arm.write_clip(clip, peak=60.0 + 10 * number)
        clips.append(ClipEntry(clip=clip, movement=Movement.FLEXION, side=Side.LEFT))
    return clips


def values(outcomes: list[ClipResult]) -> list[float | None]:
    in_order = sorted(outcomes, key=lambda result: result.number)
    return [None if result.measurement is None else result.measurement.value for result in in_order]


def scripted_process(bundles: object) -> PoseProcess:
    return PoseProcess(scripted_arm.MODELS.bundles, command=scripted_arm.COMMAND)


def test_the_number_of_workers_changes_no_number(tmp_path: Path) -> None:
    clips = entries(tmp_path, 7)
    results = {}
    for workers in (1, 3):
        started: list[PoseProcess] = []

        def new_process(bundles: object, started: list[PoseProcess] = started) -> PoseProcess:
            started.append(scripted_process(bundles))
            return started[-1]

        outcomes = read_many(clips, SETTINGS, workers=workers, new_process=new_process)
        results[workers] = sorted(outcomes, key=lambda result: result.number)
        assert len(started) == workers, "one process for each worker, for all of its clips"
    assert [result.measurement for result in results[1]] == [
        result.measurement for result in results[3]
    ]
    assert [str(result.error) for result in results[1]] == [
        str(result.error) for result in results[3]
    ]
    assert sum(result.measurement is not None for result in results[1]) == 6


@pytest.mark.timeout(300)
@pytest.mark.parametrize("send_clips", [False, True])
def test_any_executor_gives_the_numbers_of_this_computer(tmp_path: Path, send_clips: bool) -> None:
    clips = entries(tmp_path, 5)
    reported: list[float] = []
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(2, context, cluster_script.dask_setup, (None,)) as pool:
        through = list(
            read_with_executor(
                pool.submit,
                clips,
                job_spec(SETTINGS),
                ahead=lambda: 3,
                send_clips=send_clips,
                progress=reported.append,
            )
        )

    here = list(read_many(clips, SETTINGS, workers=2, new_process=scripted_process))
    assert values(through) == values(here)
    assert [value is None for value in values(through)] == [False, False, True, False, False]
    assert [result.entry for result in sorted(through, key=lambda result: result.number)] == clips
    assert reported == [1, 2, 3, 4, 5]


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_the_bar_says_how_much_is_done_and_how_long_it_will_take(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    clips = entries(tmp_path, 4)
    replay_of_script.put_in_place(monkeypatch)
    screen = Terminal()
    monkeypatch.setattr(sys, "stderr", screen)
    words = ["replay", *(str(entry.clip) for entry in clips), "--movement", "flexion"]
    assert main([*words, "--side", "left", "--workers", "1"]) == 2
    drawn = screen.getvalue().split("\r")
    shares = [int(line.split("%")[0].split()[-1]) for line in drawn if "%" in line]
    assert shares == sorted(shares)
    assert shares[0] == 0
    assert shares[-1] == 100
    assert any("00:" in line and line.rstrip().endswith("left") for line in drawn)
    assert "3 with a reading" in capsys.readouterr().out


def test_the_summary_counts_readings_refusals_by_reason_and_failures(tmp_path: Path) -> None:
    entry = ClipEntry(clip=tmp_path / "a.mp4", movement=Movement.FLEXION, side=Side.LEFT)
    read = measurement(movement=Movement.FLEXION, side=Side.LEFT)

    def refused(*reasons: Reason) -> ClipResult:
        nothing = replace(read, status=Status.REFUSED, value=None, low=None, high=None)
        return ClipResult(number=0, entry=entry, measurement=replace(nothing, reasons=reasons))

    outcomes = [
        ClipResult(number=0, entry=entry, measurement=read),
        ClipResult(number=0, entry=entry, measurement=read, is_earlier=True),
        ClipResult(number=0, entry=entry, measurement=read, error=DataError("disk full")),
        refused(Reason.NO_HOLD, Reason.TRUNK_LEAN),
        refused(Reason.NOBODY),
        refused(Reason.NO_HOLD),
        ClipResult(number=0, entry=entry, error=ClipError("broken")),
        ClipResult(number=0, entry=entry, error=MachineError("ours")),
    ]
    assert summary_lines(outcomes) == [
        "8 clips: 3 with a reading, 3 refused",
        f"       2  {Reason.NO_HOLD}",
        f"       1  {Reason.NOBODY}",
        "1 clip could not be read",
        "1 clip met an error inside Thawline; give the same command again to retry",
        "1 clip read, but not everything you asked for was written",
        "1 clip taken over from an earlier run",
    ]


def test_a_table_is_for_its_owner_only_and_keeps_rights_that_were_given(tmp_path: Path) -> None:
    entry = ClipEntry(clip=tmp_path / "a.mp4", movement=Movement.FLEXION, side=Side.LEFT)
    results = [ClipResult(number=0, entry=entry, error=ClipError("broken"))]
    new, shared = tmp_path / "new.csv", tmp_path / "shared.csv"
    shared.write_text("longer than what is written now\n" * 100)
    shared.chmod(0o644)
    for path in (new, shared):
        write_table(path, results)
    assert new.read_bytes() == shared.read_bytes()
    assert len(new.read_text().splitlines()) == 2
    if os.name == "posix":
        assert new.stat().st_mode & 0o777 == 0o600
        assert shared.stat().st_mode & 0o777 == 0o644


def test_folders_and_patterns_stand_for_their_clips_each_once(tmp_path: Path) -> None:
    inner = tmp_path / "spring"
    inner.mkdir()
    for name in ("b.mp4", "a.MOV", "notes.txt", ".hidden.mp4"):
        (inner / name).touch()
    (tmp_path / "c.mp4").touch()
    paths = [inner / "a.MOV", inner / "b.mp4"]
    assert clips_named([inner]) == tuple(paths)
    assert clips_named([tmp_path / "*" / "b.mp4", tmp_path]) == (
        inner / "b.mp4",
        tmp_path / "c.mp4",
        inner / "a.MOV",
    )
    odd = tmp_path / "not there.mp4"
    assert clips_named([odd]) == (odd,)
    with pytest.raises(InputError, match="contains no clips"):
        clips_named([tmp_path / "*.webm"])
