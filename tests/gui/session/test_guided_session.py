"""The real window on a real screen, led by clips: from the first start to saved readings."""

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import quantiles
from typing import Any

import pytest

from measure.clips.read import read_clip
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement
from measure.domain.records import MeasurementRecord
from measure.pose.ensemble import models_for
from measure.pose.supervisor import PoseProcess
from measure.pose_models.catalogue import ModelQuality
from measure.storage.store import Store
from tests.support import real_model
from tests.support.system_calls import CLOSED_PORT, SystemCalls, traced, written_for_good
from tests.support.virtual_screen import can_be_made, virtual_screen

pytestmark = pytest.mark.timeout(600)

#: Live and replay look at the same pictures in the same way.
SAME_DEG = 1.0
#: Longest time from the order to close to the end of the process.
LONGEST_CLOSE_S = 5.0
#: Longest work of the window's thread in one go while measuring, milliseconds, at the best pace
#: that the computer had in the run: other programs slow it down.
LONGEST_WORK_MS = 50.0


@pytest.fixture(scope="module")
def display() -> Iterator[str]:
    """The name of a screen that is not there."""
    if not can_be_made():
        pytest.skip("not on this system: the Xvfb program")
    with virtual_screen() as name:
        yield name


def lead(display: str, data: Path, *arguments: str) -> tuple[dict[str, Any], float]:
    """Return what the led window told, and when its process ended."""
    done = subprocess.run(
        [
            sys.executable,
            "-m",
            "tests.support.guided_window",
            "--model-quality",
            "full",
            *arguments,
        ],
        env={
            **os.environ,
            "DISPLAY": display,
            "QT_QPA_PLATFORM": "xcb",
            "THAWLINE_DATA": str(data),
            "PYTHONPATH": str(real_model.CLIPS.parent.parent),
        },
        capture_output=True,
        text=True,
        timeout=500,
        check=False,
    )
    ended_s = time.monotonic()
    assert done.returncode == 0, done.stderr
    assert "Traceback" not in done.stderr, done.stderr
    told = json.loads(done.stdout.splitlines()[-1])
    assert told["platform"] == "xcb"
    return told, ended_s


def lead_traced(
    display: str, folder: Path, *arguments: str
) -> tuple[dict[str, Any], float, SystemCalls]:
    """The same, with what the window and its processes asked of the system."""
    calls = traced(
        [
            sys.executable,
            "-m",
            "tests.support.guided_window",
            "--model-quality",
            "full",
            *arguments,
        ],
        folder / "calls",
        timeout_s=500,
        more={
            "DISPLAY": display,
            "QT_QPA_PLATFORM": "xcb",
            "THAWLINE_DATA": str(folder / "data"),
        },
    )
    ended_s = time.monotonic()
    assert "Traceback" not in calls.errors, calls.errors
    return json.loads(calls.output.splitlines()[-1]), ended_s, calls


def kept(data: Path) -> list[MeasurementRecord]:
    with Store.open(data / "sessions.sqlite") as store:
        (person,) = store.people()
        return list(store.measurements(person.id))


def test_a_session_at_home_ends_in_the_readings_of_replay(display: str, tmp_path: Path) -> None:
    real_model.bundle(ModelQuality.FULL)
    clips = [real_model.clip(f"flexion-{side.value}-full") for side in (Side.RIGHT, Side.LEFT)]
    told, _ = lead(display, tmp_path / "data", *map(str, clips))
    assert told["pages"] == [
        *("StartPage", "SafetyPage", "LivePage", "PainPage"),
        *("LivePage", "PainPage", "SummaryPage", "StartPage"),
    ]
    assert told["frames"] > 20
    # The window shares the processors with other tests: the pace beside it is known from the run.
    slowed = quantiles(told["paces_s"], n=10)[-1] / min(told["paces_s"])
    assert told["longest_work_ms"] / slowed < LONGEST_WORK_MS
    records = kept(tmp_path / "data")
    assert [each.measurement.side for each in records] == [Side.RIGHT, Side.LEFT]
    models = models_for(ModelQuality.FULL)
    with PoseProcess(models.bundles) as process:
        for record, clip in zip(records, clips, strict=True):
            live = record.measurement
            task = MeasurementTask(Movement.FLEXION, live.side)
            replayed = read_clip(process, models, clip, task).measurement
            assert replayed.value is not None
            assert live.value == pytest.approx(replayed.value, abs=SAME_DEG)
            assert live.low == pytest.approx(replayed.low, abs=SAME_DEG)
            assert live.high == pytest.approx(replayed.high, abs=SAME_DEG)
            assert record.pain_during == 2


def test_a_window_closed_on_a_real_screen_ends_in_time_and_keeps_what_was_captured(
    display: str, tmp_path: Path
) -> None:
    real_model.bundle(ModelQuality.FULL)
    clip = real_model.clip("flexion-right-three-repeats")
    told, ended_s, calls = lead_traced(display, tmp_path, "--close-when-captured", str(clip))
    assert told["closed_s"] > 0
    assert ended_s - told["closed_s"] < LONGEST_CLOSE_S
    (record,) = kept(tmp_path / "data")
    assert len(record.measurement.trials) == 1
    # Nobody was called, and nothing but the sessions, the settings and the log was kept.
    calls.assert_nothing_left(ports=(CLOSED_PORT,))
    data = tmp_path / "data"
    names = {
        Path(each).relative_to(data).as_posix()
        for each in written_for_good(calls, tmp_path / "nothing")
    }
    assert names == {"sessions.sqlite", "sessions-were-kept.txt", "window.ini", "logs/pose.log"}
    for path in (data, *data.rglob("*")):
        assert path.stat().st_mode & 0o077 == 0, path
    log = (data / "logs" / "pose.log").read_text(errors="replace")
    assert clip.stem not in log
    assert "flexion" not in log
