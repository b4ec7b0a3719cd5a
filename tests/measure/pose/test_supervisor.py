"""The supervisor: whatever the process does, the clip is named and the next job works."""

import os
import sys
import threading
import tracemalloc
from pathlib import Path

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError, ModelError, PoseProcessError
from measure.pose import child_process
from measure.pose.jobs import ClipJob, InferencePass
from measure.pose.messages import (
    PoseFrames,
)
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality
from tests.support import scripted_child

LITE = InferencePass(quality=ModelQuality.LITE)
CHILD = Path(scripted_child.__file__)


def bundle(size: int = 1000) -> Bundle:
    return Bundle(quality=ModelQuality.LITE, sha256="0" * 64, path=Path("x"), content=bytes(size))


def supervisor(behaviour: str, size: int = 1000, **limits: float) -> PoseProcess:
    return PoseProcess(
        {ModelQuality.LITE: bundle(size)},
        command=(sys.executable, "-P", str(CHILD), behaviour),
        **{"stall_s": 1.0, "start_s": 20.0, **limits},
    )


def job(name: str = "good.mp4") -> ClipJob:
    return ClipJob(clip=Path(name), passes=(LITE,))


def test_answers_arrive_and_the_process_serves_many_jobs(data_folder: Path) -> None:
    shares: list[float] = []
    with supervisor("behaves") as process:
        assert process.process_id is None
        first = process.run(job(), shares.append)
        number = process.process_id
        second = process.run(job())
        assert process.process_id == number
    assert process.process_id is None
    assert first.facts == second.facts == scripted_child.FACTS
    assert [frame.index for frame in first.frames[LITE]] == [0, 1, 2]
    assert shares == [0.25, 1.0]


@pytest.mark.parametrize(
    ("behaviour", "part"),
    [
        ("crashes", "crashed (Segmentation fault)"),
        ("ends", "crashed (code 7)"),
        ("hangs", "gave no sign of life for 1 s"),
        ("garbage", "answered nonsense"),
        ("nonsense", "answered nonsense"),
        ("out of turn", "answered nonsense"),
        ("fails", "failed (ZeroDivisionError: x)"),
    ],
)
def test_faults_name_the_clip_and_leave_the_next_job_alone(
    behaviour: str, part: str, data_folder: Path
) -> None:
    with supervisor(behaviour) as process:
        process.run(job())
        number = process.process_id
        with pytest.raises(PoseProcessError) as caught:
            process.run(job("bad.mp4"))
        assert "The clip bad.mp4" in str(caught.value)
        assert part in str(caught.value)
        assert process.process_id is None
        assert len(process.run(job()).frames[LITE]) == 3
        assert process.process_id != number


def test_a_message_cut_in_the_middle_is_a_fault(data_folder: Path) -> None:
    with (
        supervisor("half a message") as process,
        pytest.raises(PoseProcessError, match="inside a message"),
    ):
        process.run(job())


@pytest.mark.parametrize(
    ("behaviour", "kind", "text"),
    [
        ("refuses", ClipError, "The clip bad.mp4 is empty."),
        ("model", ModelError, "The model is old."),
    ],
)
def test_refusals_arrive_as_they_were_and_the_process_goes_on(
    behaviour: str, kind: type[Exception], text: str, data_folder: Path
) -> None:
    with supervisor(behaviour) as process:
        process.run(job())
        number = process.process_id
        with pytest.raises(kind) as caught:
            process.run(job("bad.mp4"))
        assert str(caught.value) == text
        process.run(job())
        assert process.process_id == number


def test_a_process_that_never_starts(data_folder: Path) -> None:
    with (
        supervisor("never starts", start_s=0.5) as process,
        pytest.raises(PoseProcessError, match=r"good\.mp4 .* no sign of life for 0\.5 s"),
    ):
        process.run(job())


def test_a_process_that_takes_no_orders(data_folder: Path) -> None:
    """A bundle is larger than a pipe holds, so the supervisor would wait for ever."""
    with (
        supervisor("stops listening", size=5_000_000, start_s=2.0) as process,
        pytest.raises(PoseProcessError, match="no sign of life"),
    ):
        process.run(job())


def test_a_program_that_is_not_there(data_folder: Path) -> None:
    process = PoseProcess({ModelQuality.LITE: bundle()}, command=("/no/such/program",))
    with pytest.raises(PoseProcessError, match="could not be started"):
        process.run(job())


def test_an_exception_from_the_progress_call_stops_the_work(data_folder: Path) -> None:
    class StopError(Exception):
        pass

    def stop(share: float) -> None:
        raise StopError

    with supervisor("behaves") as process:
        with pytest.raises(StopError):
            process.run(job(), stop)
        assert process.process_id is None
        assert len(process.run(job()).frames[LITE]) == 3


def test_a_model_that_was_not_given_is_a_mistake_of_the_caller(data_folder: Path) -> None:
    other = ClipJob(clip=Path("x"), passes=(InferencePass(quality=ModelQuality.HEAVY),))
    with supervisor("behaves") as process, pytest.raises(ValueError, match="heavy"):
        process.run(other)


def test_noise_goes_to_a_log_of_bounded_size_and_not_to_the_terminal(
    data_folder: Path, capfd: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(child_process, "MOST_LOG_BYTES", 100_000)
    with supervisor("chatters") as process:
        process.run(job("secret-name.mp4"))
    assert capfd.readouterr() == ("", "")
    kept = sorted(path.name for path in (data_folder / "logs").iterdir())
    assert kept == ["pose.log", "pose.old"]
    if os.name == "posix":
        for path in (data_folder, data_folder / "logs", data_folder / "logs" / "pose.log"):
            assert path.stat().st_mode & 0o077 == 0
    sizes = [path.stat().st_size for path in (data_folder / "logs").iterdir()]
    assert max(sizes) <= 100_000
    text = b"".join(path.read_bytes() for path in (data_folder / "logs").iterdir())
    assert b"native noise" in text
    assert b"secret-name" not in text


def test_without_a_log_the_work_goes_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("x")
    monkeypatch.setenv("THAWLINE_DATA", str(tmp_path / "file"))
    with supervisor("chatters") as process:
        assert len(process.run(job()).frames[LITE]) == 3


def test_a_window_program_without_error_stream(
    data_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "stderr", None)
    monkeypatch.setattr(sys, "stdout", None)
    with supervisor("chatters") as process:
        assert len(process.run(job()).frames[LITE]) == 3


@pytest.mark.skipif(not hasattr(os, "getpriority"), reason="not on this system: priorities")
def test_the_process_has_a_lower_priority_than_the_window(data_folder: Path) -> None:
    ours = os.getpriority(os.PRIO_PROCESS, 0)
    with supervisor("behaves") as process:
        process.run(job())
        assert process.process_id is not None
        theirs = os.getpriority(os.PRIO_PROCESS, process.process_id)
        assert theirs == min(19, ours + child_process.NICENESS)


def test_closing_leaves_no_process_and_no_thread(data_folder: Path) -> None:
    before = threading.active_count()
    process = supervisor("behaves")
    process.run(job())
    process.close()
    process.close()
    assert threading.active_count() == before


def test_frames_take_little_memory_each(data_folder: Path) -> None:
    """What the supervisor keeps for a frame is its numbers and little more."""
    message = PoseFrames.of(0, _long_chunk())
    tracemalloc.start()
    kept = [message.frames() for _ in range(20)]
    size = tracemalloc.get_traced_memory()[0]
    tracemalloc.stop()
    assert size / (20 * len(kept[0])) < 900


def _long_chunk() -> list[PoseFrame]:
    return [
        PoseFrame(
            index=n,
            time_s=n / 30,
            points_px=np.zeros((1, LANDMARKS, 2)),
            visibility=np.zeros((1, LANDMARKS)),
            presence=np.zeros((1, LANDMARKS)),
        )
        for n in range(32)
    ]
