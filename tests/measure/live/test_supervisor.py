"""The live process supervised: scripted processes that crash, hang and talk nonsense."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pytest

from measure.camera.faults import SourceFault
from measure.errors import ModelError
from measure.live.messages import FaultChanged, SourceOpened, SourceOrder
from measure.live.supervisor import FrameResult, LiveSupervisor
from measure.pose.ensemble import ModelSet
from measure.pose_models.catalogue import ModelQuality
from tests.support.live_figures import empty_bundle
from tests.support.scripted_live import points_of

MODELS = ModelSet(name="full", bundles={ModelQuality.FULL: empty_bundle(ModelQuality.FULL)})


def order(session=1, **changes):
    values = {
        "session": session,
        "clip": None,
        "camera": None,
        "quarter_turns": 0,
        "already_mirrored": False,
        "origin_s": time.monotonic(),
        "start_s": 0.0,
        "loop": False,
        "ring": "",
        "quality": ModelQuality.FULL,
    }
    return SourceOrder(**{**values, **changes})


class Listening:
    """A link to a scripted process, and everything that it told with the time."""

    def __init__(self, tmp_path, script, *, stall_s=1.0, load_models=lambda: MODELS):
        self.news = []
        self.link = LiveSupervisor(
            load_models,
            lambda news: self.news.append((time.monotonic(), news)),
            command=(
                sys.executable,
                "-m",
                "tests.support.scripted_live",
                script,
                str(tmp_path / "mark"),
            ),
            stall_s=stall_s,
        )

    def __enter__(self):
        return self

    def __exit__(self, *error):
        process_id = self.link.process_id
        self.link.close(5.0)
        if process_id is not None:
            with pytest.raises(ProcessLookupError):
                os.kill(process_id, 0)

    def wait(self, wanted, timeout_s=20.0):
        """Wait for news that fits; return when it came and the news."""
        until_s, start = time.monotonic() + timeout_s, 0
        while time.monotonic() < until_s:
            for when, news in self.news[start:]:
                start += 1
                if wanted(news):
                    return when, news
            time.sleep(0.01)
        raise AssertionError(f"did not come: {[type(each).__name__ for _, each in self.news][-5:]}")

    def troubles(self):
        return [news.trouble for _, news in self.news if isinstance(news, FaultChanged)]


def is_trouble(trouble):
    return lambda news: isinstance(news, FaultChanged) and news.trouble is trouble


def seen_after(number):
    return lambda news: isinstance(news, FrameResult) and news.pose.index >= number


def test_pictures_come_with_what_was_found_in_exactly_them(tmp_path):
    with Listening(tmp_path, "good") as listening:
        listening.link.open(order())
        listening.wait(seen_after(40))
    seen = [news for _, news in listening.news if isinstance(news, FrameResult)]
    for one in seen:
        np.testing.assert_allclose(one.pose.points_px[0], points_of(one.rgb), atol=1e-6)
    times = [one.pose.time_s for one in seen]
    assert times == sorted(set(times))
    assert isinstance(listening.news[0][1], SourceOpened)
    assert any(one.coarse for one in seen)
    assert any(one.fine for one in seen)


@pytest.mark.parametrize("script", ["crash", "nonsense", "hang", "memory"])
def test_a_process_that_dies_or_hangs_is_replaced_within_seconds(tmp_path, script):
    with Listening(tmp_path, script) as listening:
        listening.link.open(order())
        told_s, told = listening.wait(is_trouble(SourceFault.POSE_RESTARTING))
        back_s, _ = listening.wait(is_trouble(None))
        last_s = max(
            when for when, news in listening.news if isinstance(news, FrameResult) and when < told_s
        )
    assert told.text
    assert told_s - last_s < 2.5
    assert listening.troubles() == [SourceFault.POSE_RESTARTING, None]
    after = [
        news for when, news in listening.news if isinstance(news, FrameResult) and when > back_s
    ]
    before = [
        news for when, news in listening.news if isinstance(news, FrameResult) and when < told_s
    ]
    if after and before:
        assert after[0].pose.time_s > before[-1].pose.time_s


@pytest.mark.skipif(os.name != "posix", reason="not on this system: signals")
def test_after_a_silence_the_next_one_may_take_longer(tmp_path):
    """Whoever is late on a busy machine is not replaced again and again."""
    with Listening(tmp_path, "good", stall_s=1.0) as listening:
        listening.link.open(order())
        listening.wait(seen_after(20))
        os.kill(listening.link.process_id, signal.SIGSTOP)
        listening.wait(is_trouble(None))
        assert listening.link._stall_s >= 2.0


@pytest.mark.skipif(os.name != "posix", reason="not on this system: signals")
def test_a_camera_is_not_blamed_when_the_process_was_held_up(tmp_path):
    with Listening(tmp_path, "good", stall_s=30.0) as listening:
        listening.link.open(order())
        listening.wait(seen_after(20))
        first = listening.link.process_id
        os.kill(first, signal.SIGSTOP)
        time.sleep(4.0)
        newest = [news.pose.index for _, news in listening.news if isinstance(news, FrameResult)][
            -1
        ]
        os.kill(first, signal.SIGCONT)
        listening.wait(seen_after(newest + 40))
        assert listening.link.process_id == first
    assert listening.troubles() == []


@pytest.mark.skipif(os.name != "posix", reason="not on this system: signals")
@pytest.mark.parametrize(
    ("sent", "within_s"), [(signal.SIGKILL, 1.0), (signal.SIGSTOP, 2.5)], ids=["killed", "stopped"]
)
def test_a_process_killed_or_stopped_is_noticed_and_replaced(tmp_path, sent, within_s):
    with Listening(tmp_path, "good") as listening:
        listening.link.open(order())
        listening.wait(seen_after(20))
        first = listening.link.process_id
        struck_s = time.monotonic()
        os.kill(first, sent)
        told_s, _ = listening.wait(is_trouble(SourceFault.POSE_RESTARTING))
        listening.wait(is_trouble(None))
        assert listening.link.process_id != first
        with pytest.raises(ProcessLookupError):
            os.kill(first, 0)
    assert told_s - struck_s < within_s


def test_a_network_that_fails_once_costs_a_picture_only(tmp_path):
    with Listening(tmp_path, "fail") as listening:
        listening.link.open(order())
        listening.wait(seen_after(90))
    assert listening.troubles() == []
    lost = [
        news
        for _, news in listening.news
        if isinstance(news, FrameResult) and not news.pose.readable
    ]
    assert len(lost) == 1


def test_a_process_that_never_lives_is_left_alone(tmp_path):
    link = Listening(tmp_path, "good")
    link.link._worker._command = (sys.executable, "-c", "raise SystemExit(3)")
    with link as listening:
        listening.link.open(order())
        listening.wait(is_trouble(SourceFault.POSE_FAILED), timeout_s=60.0)
        count = len(listening.news)
        time.sleep(0.3)
        assert len(listening.news) == count


def test_a_missing_model_is_told(tmp_path):
    def missing():
        raise ModelError("The pose model is missing.")

    with Listening(tmp_path, "good", load_models=missing) as listening:
        listening.link.open(order())
        _, told = listening.wait(is_trouble(SourceFault.MODEL_MISSING))
    assert told.text == "The pose model is missing."


@pytest.mark.parametrize(
    ("script", "trouble"),
    [
        ("unplug", SourceFault.CAMERA_UNPLUGGED),
        ("stuck", SourceFault.CAMERA_STUCK),
        ("denied", SourceFault.CAMERA_DENIED),
        ("slow", SourceFault.CAMERA_SLOW),
        ("black", SourceFault.CAMERA_BLACK),
    ],
)
def test_camera_troubles_are_told(tmp_path, script, trouble):
    with Listening(tmp_path, script) as listening:
        listening.link.open(order())
        when_s, _ = listening.wait(is_trouble(trouble))
        if script in ("unplug", "stuck"):
            last_s = max(
                when
                for when, news in listening.news
                if isinstance(news, FrameResult) and when < when_s
            )
            assert when_s - last_s < 3.0
            listening.wait(is_trouble(None))


def test_a_camera_that_holds_its_reader_for_ever_is_left_with_the_process(tmp_path):
    with Listening(tmp_path, "deaf") as listening:
        listening.link.open(order())
        listening.wait(is_trouble(SourceFault.CAMERA_STUCK))
        first = listening.link.process_id
        listening.wait(is_trouble(None), timeout_s=30.0)
        assert listening.link.process_id != first
    assert listening.troubles() == [SourceFault.CAMERA_STUCK, None]


def test_another_source_takes_the_place_of_the_first_in_the_same_process(tmp_path):
    with Listening(tmp_path, "good") as listening:
        listening.link.open(order(1))
        listening.wait(seen_after(10))
        process_id = listening.link.process_id
        listening.link.open(order(2))
        listening.wait(lambda news: isinstance(news, FrameResult) and news.session == 2)
        assert listening.link.process_id == process_id
    sessions = [news.session for _, news in listening.news]
    assert sessions == sorted(sessions)


def test_closing_works_while_the_camera_opens_and_while_the_process_starts(tmp_path):
    for script in ("slow-open", "never-ready"):
        listening = Listening(tmp_path, script)
        listening.link.open(order())
        time.sleep(0.8)
        began_s = time.monotonic()
        listening.link.close(4.0)
        assert time.monotonic() - began_s < 2.0
        assert not listening.link._thread.is_alive()


PARENT = """
import sys, time
from tests.measure.live.test_supervisor import Listening, order, seen_after
from pathlib import Path
listening = Listening(Path(sys.argv[1]), "good")
listening.link.open(order())
listening.wait(seen_after(10))
print(listening.link.process_id, listening.link._ring.name, flush=True)
time.sleep(60)
"""


@pytest.mark.skipif(not Path("/dev/shm").is_dir(), reason="not on this system: /dev/shm")
def test_a_parent_that_is_killed_leaves_neither_process_nor_memory(tmp_path):
    parent = subprocess.Popen(
        (sys.executable, "-c", PARENT, str(tmp_path)), stdout=subprocess.PIPE, text=True
    )
    process_id, ring = parent.stdout.readline().split()
    parent.kill()
    parent.wait()
    parent.stdout.close()
    until_s = time.monotonic() + 10.0
    while time.monotonic() < until_s:
        gone = not Path(f"/proc/{process_id}").exists()
        if gone and not Path("/dev/shm", ring).exists():
            return
        time.sleep(0.05)
    raise AssertionError("something was left behind")
