"""Measuring live with the real networks, on sample clips played at real speed."""

import time
from pathlib import Path

import pytest

import sample_clips
from measure.body import Side
from measure.live import LiveEngine
from measure.live_events import EventKind, Phase, Source, Trouble
from measure.movements import Movement
from measure.passes import models_here
from measure.pose import PoseProcess
from measure.records import Conduct
from measure.replay import read_clip

CLIPS = Path(sample_clips.__file__).parent / "clips"

#: Live and replay look at the same pictures in the same way; the guide differs by its rate.
SAME_DEG = 1.0


@pytest.mark.timeout(300)
@pytest.mark.parametrize(
    ("name", "movement", "side"),
    [
        ("flexion-left-full", Movement.FLEXION, Side.LEFT),
        ("external-rotation-left-full", Movement.EXTERNAL_ROTATION, Side.LEFT),
    ],
)
def test_a_clip_played_live_reads_as_in_replay(name, movement, side, data_folder):
    clip = CLIPS / f"{name}.mp4"
    models = models_here()
    with PoseProcess(models.bundles) as process:
        replayed = read_clip(process, models, clip, movement, side).measurement
    engine = LiveEngine(stall_s=10.0)
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
