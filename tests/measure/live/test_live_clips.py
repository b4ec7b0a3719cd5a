"""Measuring live with the real networks, on sample clips played at real speed."""

import sys
import time

import pytest

from measure.camera.faults import SourceFault
from measure.clips.read import measurement_from_observation, read_clip
from measure.domain.acquisition import (
    BodySetup,
    CameraSetup,
    KnownSetup,
    MovementCorrection,
    Setup,
)
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement
from measure.live.engine import LiveEngine
from measure.live.events import LiveEventKind, Phase, Source
from measure.pose.ensemble import installed_models, models_for
from measure.pose.supervisor import PoseProcess
from measure.pose_models.catalogue import ModelQuality
from tests.support import live_of_clip, real_model
from tests.support.setup_samples import sample_correction, sample_lens
from tests.support.system_calls import CLOSED_PORT, traced, written_for_good

#: Live and replay look at the same pictures in the same way; the guide differs by its rate.
SAME_DEG = 1.0

NOTHING = KnownSetup()
#: Everything that changes an external rotation, each by some degrees.
ALL = KnownSetup(
    camera=CameraSetup(
        name="garden camera",
        lens=sample_lens(
            focal_px=(400.0, 400.0),
            centre_px=(322.0, 238.0),
            distortion=(-0.1, 0.02, 0.0, 0.0, 0.0),
        ),
        roll_deg=1.5,
    ),
    body=BodySetup(forearm=0.55),
    corrections=(
        MovementCorrection(
            movement=Movement.EXTERNAL_ROTATION,
            correction=sample_correction(centre_deg=45.0, lowest_deg=0.0, highest_deg=90.0),
        ),
    ),
)


@pytest.mark.timeout(300)
@pytest.mark.parametrize(
    ("name", "movement", "side", "models", "known"),
    [
        ("flexion-left-full", Movement.FLEXION, Side.LEFT, installed_models, NOTHING),
        (
            "external-rotation-left-full",
            Movement.EXTERNAL_ROTATION,
            Side.LEFT,
            lambda: models_for(ModelQuality.FULL),
            ALL,
        ),
    ],
)
def test_a_clip_played_live_reads_as_in_replay(name, movement, side, models, known, data_folder):
    clip = real_model.clip(name)
    real_model.bundle(ModelQuality.FULL)
    models = models()
    with PoseProcess(models.bundles) as process:
        task = MeasurementTask(movement, side, setup=known.of(movement))
        read = read_clip(process, models, clip, task)
        plain = measurement_from_observation(read.observation, Setup()).measurement
    replayed = read.measurement
    engine = LiveEngine(lambda: models, stall_s=10.0)
    frames, events = [], []
    try:
        engine.start(
            Source(
                clip=clip,
                setup=Setup(camera=known.camera, body=known.body),
                by_movement=known,
            )
        )
        engine.choose(movement, side, 3, 0)
        until_s = time.monotonic() + 240.0
        while time.monotonic() < until_s:
            frame = engine.newest_frame()
            frames += [frame] if frame is not None else []
            for event in engine.events():
                events.append(event)
                if event.trouble is SourceFault.CLIP_ENDED:
                    engine.finish_movement()
            if events and events[-1].kind is LiveEventKind.MEASUREMENT_DONE:
                break
            time.sleep(0.005)
    finally:
        engine.close(4.0)
    kinds = [event.kind for event in events]
    assert LiveEventKind.TRIAL_REFINED in kinds
    live = events[-1].measurement
    assert live.value == pytest.approx(replayed.value, abs=SAME_DEG)
    assert live.low == pytest.approx(replayed.low, abs=SAME_DEG)
    assert live.view is replayed.view
    assert live.provenance.passes == replayed.provenance.passes
    assert live.provenance.setup == replayed.provenance.setup == known.of(movement)
    # What is known changes the reading; the test would else not see whether live uses it.
    assert (known == NOTHING) == (abs(plain.value - replayed.value) < 2 * SAME_DEG)
    assert {Phase.MOVE, Phase.HOLD, Phase.RETURN} <= {frame.phase for frame in frames}
    guide = max(frame.value for frame in frames if frame.value is not None)
    assert guide == pytest.approx(live.value, abs=15.0)


def test_nothing_leaves_while_measuring_live(tmp_path, data_folder):
    real_model.bundle(ModelQuality.FULL)
    calls = traced(
        (sys.executable, live_of_clip.__file__, real_model.clip("abduction-left-full"), "20"),
        tmp_path / "calls",
        timeout_s=110,
    )
    assert int(calls.output) >= 20
    calls.assert_nothing_left(ports=(CLOSED_PORT,))
    assert written_for_good(calls, tmp_path / "nothing") == {str(data_folder / "logs" / "pose.log")}
