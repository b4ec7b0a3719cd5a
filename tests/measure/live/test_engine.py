"""The live engine with scripted processes: nothing blocks, nothing captured is lost."""

import os
import random
import signal
import sys
import threading
import time

import pytest

from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import ModelError
from measure.live.engine import LiveEngine
from measure.live.events import LiveEventKind, Phase, Source
from measure.live.session import LiveSession
from measure.pose.ensemble import ModelSet
from measure.pose_models.catalogue import ModelQuality
from tests.support.live_figures import empty_bundle
from tests.support.scripted_live import ScriptedPose

MODELS = ModelSet(
    name="heavy",
    bundles={each: empty_bundle(each) for each in (ModelQuality.FULL, ModelQuality.HEAVY)},
)


class Run:
    """An engine on a scripted camera, and what it gave."""

    def __init__(self, tmp_path, script="good", *, seconds=0.0, **more):
        self.events = []
        self.frames = []
        self.slowest_s = 0.0
        #: By how much this thread's short sleeps lasted longer than asked for, altogether.
        self.kept_waiting_s = 0.0
        self.process = ScriptedPose(seconds=seconds)
        self.engine = LiveEngine(
            more.pop("load_models", lambda: MODELS),
            command=(
                sys.executable,
                "-m",
                "tests.support.scripted_live",
                script,
                str(tmp_path / "mark"),
            ),
            make_process=lambda models: self.process,
            **more,
        )

    def __enter__(self):
        return self

    def __exit__(self, *error):
        self.engine.close(4.0)
        assert self.engine.process_id is None
        assert not self.engine._thread.is_alive()

    def call(self, what):
        began_s = time.monotonic()
        answer = what()
        self.slowest_s = max(self.slowest_s, time.monotonic() - began_s)
        return answer

    def begin(self, *, trials=2, practice=0):
        self.call(lambda: self.engine.start(Source()))
        self.call(lambda: self.engine.choose(Movement.FLEXION, Side.RIGHT, trials, practice))

    def pull(self):
        frame = self.call(self.engine.newest_frame)
        self.frames += [frame] if frame is not None else []
        self.events += self.call(self.engine.events)

    def wait(self, kind, timeout_s=40.0, *, trouble=None):
        """Pull until an event of a kind came; return it."""
        until_s = time.monotonic() + timeout_s
        while time.monotonic() < until_s:
            self.pull()
            for event in self.events:
                if event.kind is kind and (trouble is None or event.trouble is trouble):
                    return event
            began_s = time.monotonic()
            time.sleep(0.01)
            self.kept_waiting_s += time.monotonic() - began_s - 0.01
        raise AssertionError(f"{kind} did not come; {[str(each.kind) for each in self.events]}")


def test_a_movement_from_the_camera_to_its_measurement(tmp_path):
    with Run(tmp_path) as run:
        run.begin(trials=2, practice=1)
        done = run.wait(LiveEventKind.MEASUREMENT_DONE)
        run.pull()
        assert run.engine.close(4.0) is None
    assert len(done.measurement.trials) == 2
    assert done.measurement.value == pytest.approx(100, abs=8)
    kinds = [event.kind for event in run.events]
    assert LiveEventKind.TRIAL_REFUSED not in kinds
    assert kinds.count(LiveEventKind.TRIAL_CAPTURED) == 3
    assert {Phase.MOVE, Phase.HOLD, Phase.RETURN} <= {frame.phase for frame in run.frames}
    numbers = [frame.frame_id for frame in run.frames]
    assert numbers == sorted(set(numbers))
    assert done.measurement.provenance.source["backend"] == "scripted"


def test_no_call_blocks_even_while_the_camera_opens_for_half_a_minute(tmp_path):
    with Run(tmp_path, "slow-open") as run:
        run.begin()
        until_s = time.monotonic() + 1.0
        while time.monotonic() < until_s:
            run.pull()
            time.sleep(0.01)
        for what in ("pause", "resume", "discard_last", "finish_movement"):
            run.call(getattr(run.engine, what))
        began_s = time.monotonic()
        run.engine.close(4.0)
        assert time.monotonic() - began_s < 4.0
    assert run.slowest_s < 0.1


def test_the_live_process_killed_costs_no_settled_trial_and_is_back_in_seconds(tmp_path):
    # The end is noticed as such: by its silence it would be after a minute only.
    with Run(tmp_path, stall_s=60.0) as run:
        run.begin(trials=2)
        run.wait(LiveEventKind.TRIAL_REFINED)
        killed_s, waited_s = time.monotonic(), run.kept_waiting_s
        os.kill(run.engine.process_id, signal.SIGKILL)
        run.wait(LiveEventKind.TROUBLE, trouble=SourceFault.POSE_RESTARTING)
        # A computer that is busy with other things keeps the engine's threads waiting as it
        # keeps this one.
        told_s = time.monotonic() - (run.kept_waiting_s - waited_s)
        run.wait(LiveEventKind.RECOVERED)
        done = run.wait(LiveEventKind.MEASUREMENT_DONE)
    assert told_s - killed_s < 1.0
    assert len(done.measurement.trials) == 2


def test_a_settling_process_that_fails_costs_a_second_try_only(tmp_path):
    with Run(tmp_path) as run:
        run.process.failures = 1
        run.begin(trials=1)
        done = run.wait(LiveEventKind.MEASUREMENT_DONE)
    assert "trials_looked_at_once" not in done.measurement.provenance.source


def test_camera_gone_is_told_within_three_seconds_and_pictures_come_again(tmp_path):
    with Run(tmp_path, "unplug") as run:
        run.begin()
        run.wait(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
        run.wait(LiveEventKind.RECOVERED)
        run.wait(LiveEventKind.TRIAL_CAPTURED)


def test_starting_anew_keeps_the_trials(tmp_path):
    with Run(tmp_path) as run:
        run.begin(trials=2)
        run.wait(LiveEventKind.TRIAL_REFINED)
        run.engine.start(Source())
        done = run.wait(LiveEventKind.MEASUREMENT_DONE)
    assert len(done.measurement.trials) == 2


def test_a_captured_trial_is_not_lost_when_closing_before_it_is_settled(tmp_path):
    with Run(tmp_path, seconds=60.0) as run:
        run.begin(trials=2)
        run.wait(LiveEventKind.TRIAL_CAPTURED)
        began_s = time.monotonic()
        left = run.engine.close(3.0)
        assert time.monotonic() - began_s < 3.5
    assert left is not None
    assert left.value == pytest.approx(100, abs=8)
    assert left.provenance.source["trials_looked_at_once"] == "1"


def test_closing_on_a_busy_computer_takes_longer_and_loses_no_captured_trial(tmp_path, monkeypatch):
    end = LiveSession.end

    def end_slowly(session):
        time.sleep(2.0)
        return end(session)

    monkeypatch.setattr(LiveSession, "end", end_slowly)
    with Run(tmp_path, seconds=60.0) as run:
        run.begin(trials=2)
        run.wait(LiveEventKind.TRIAL_CAPTURED)
        left = run.engine.close(1.0)
    assert left is not None
    assert len(left.trials) == 1


def test_closing_waits_for_a_trial_that_is_nearly_settled(tmp_path):
    with Run(tmp_path, seconds=0.5) as run:
        run.begin(trials=2)
        run.wait(LiveEventKind.TRIAL_CAPTURED)
        left = run.engine.close(4.0)
    assert "trials_looked_at_once" not in left.provenance.source


def test_closing_at_any_moment_ends_in_time_with_everything_captured(tmp_path):
    dice = random.Random(7)
    for turn in range(6):
        run = Run(tmp_path, seconds=dice.uniform(0.0, 3.0))
        run.begin(trials=3)
        until_s = time.monotonic() + dice.uniform(0.0, 5.0)
        while time.monotonic() < until_s:
            run.pull()
            time.sleep(0.01)
        began_s = time.monotonic()
        left = run.engine.close(4.0)
        run.pull()
        assert time.monotonic() - began_s < 4.5, turn
        captured = sum(event.kind is LiveEventKind.TRIAL_CAPTURED for event in run.events)
        done = any(event.kind is LiveEventKind.MEASUREMENT_DONE for event in run.events)
        if not done:
            assert captured == (0 if left is None else len(left.trials)), turn


def test_without_a_model_nothing_starts_and_the_window_is_told(tmp_path):
    def missing():
        raise ModelError("The pose model is missing. Run: thawline model.")

    with Run(tmp_path, load_models=missing) as run:
        run.begin()
        run.wait(LiveEventKind.TROUBLE, trouble=SourceFault.MODEL_MISSING)
        assert run.engine.process_id is None
        run.engine.finish_movement()


def test_closing_an_engine_that_was_never_started():
    engine = LiveEngine(lambda: MODELS)
    assert engine.close(1.0) is None


def test_no_thread_is_left(tmp_path):
    before = set(threading.enumerate())
    with Run(tmp_path) as run:
        run.begin()
        run.wait(LiveEventKind.TRIAL_CAPTURED)
    until_s = time.monotonic() + 3.0
    while set(threading.enumerate()) - before and time.monotonic() < until_s:
        time.sleep(0.05)
    assert not set(threading.enumerate()) - before
