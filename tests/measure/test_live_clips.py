"""Measuring live with the real networks, on sample clips played at real speed."""

import os
import re
import shutil
import subprocess
import sys
import time

import pytest

from measure.body import Side
from measure.live import LiveEngine
from measure.live_events import EventKind, Phase, Source, Trouble
from measure.movements import Movement
from measure.passes import models_for, models_here
from measure.pose import PoseProcess
from measure.pose_model_checksums import ModelQuality
from measure.records import Conduct
from measure.replay import read_clip
from tests import live_of_clip, real_model

#: Live and replay look at the same pictures in the same way; the guide differs by its rate.
SAME_DEG = 1.0


@pytest.mark.timeout(300)
@pytest.mark.parametrize(
    ("name", "movement", "side", "models"),
    [
        ("flexion-left-full", Movement.FLEXION, Side.LEFT, models_here),
        (
            "external-rotation-left-full",
            Movement.EXTERNAL_ROTATION,
            Side.LEFT,
            lambda: models_for(ModelQuality.FULL),
        ),
    ],
)
def test_a_clip_played_live_reads_as_in_replay(name, movement, side, models, data_folder):
    clip = real_model.clip(name)
    real_model.bundle(ModelQuality.FULL)
    models = models()
    with PoseProcess(models.bundles) as process:
        replayed = read_clip(process, models, clip, movement, side).measurement
    engine = LiveEngine(lambda: models, stall_s=10.0)
    frames, events = [], []
    try:
        engine.start(Source(clip=clip))
        engine.choose(movement, side, 3, 0, Conduct())
        until_s = time.monotonic() + 240.0
        while time.monotonic() < until_s:
            frame = engine.newest_frame()
            frames += [frame] if frame is not None else []
            for event in engine.events():
                events.append(event)
                if event.trouble is Trouble.CLIP_ENDED:
                    engine.finish_movement()
            if events and events[-1].kind is EventKind.MEASUREMENT_DONE:
                break
            time.sleep(0.005)
    finally:
        engine.close(4.0)
    kinds = [event.kind for event in events]
    assert EventKind.TRIAL_SETTLED in kinds
    live = events[-1].measurement
    assert live.value == pytest.approx(replayed.value, abs=SAME_DEG)
    assert live.low == pytest.approx(replayed.low, abs=SAME_DEG)
    assert live.view is replayed.view
    assert live.provenance.passes == replayed.provenance.passes
    assert {Phase.MOVE, Phase.HOLD, Phase.RETURN} <= {frame.phase for frame in frames}
    guide = max(frame.value for frame in frames if frame.value is not None)
    assert guide == pytest.approx(live.value, abs=15.0)


def test_nothing_leaves_while_measuring_live(tmp_path, data_folder):
    if shutil.which("strace") is None:
        pytest.skip("not on this system: the strace program")
    real_model.bundle(ModelQuality.FULL)
    record = tmp_path / "calls"
    done = subprocess.run(
        [
            *("strace", "-f", "-qq", "-e", "trace=connect,sendto,sendmsg", "-o", record),
            *(sys.executable, live_of_clip.__file__, real_model.clip("abduction-left-full"), "20"),
        ],
        capture_output=True,
        text=True,
        timeout=110,
        check=False,
        env={**os.environ, "PYTHONPATH": str(real_model.CLIPS.parent.parent)},
    )
    if "ptrace" in done.stderr.lower() or "operation not permitted" in done.stderr.lower():
        pytest.skip("not on this system: tracing of system calls")
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) >= 20
    calls = [line for line in record.read_text().splitlines() if "AF_INET" in line]
    assert [line for line in calls if not re.search(r'(127\.0\.0\.1|"::1")', line)] == []
    assert {port for line in calls for port in re.findall(r"htons\((\d+)\)", line)} <= {"9"}
