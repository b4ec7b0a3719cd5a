"""A clip as if it were the camera: paced by a clock that only moves when it is waited for."""

from pathlib import Path

import numpy as np
import pytest

from measure.camera.faults import SourceFault, SourceTroubleError
from measure.camera.playback import ClipCamera
from measure.errors import ClipError
from measure.video.source import SourceFacts

CLIP = Path("walk.mp4")


class FakeClip:
    """Ten frames at ten a second."""

    def __init__(self, frames=10, fps=10.0):
        self.facts = SourceFacts(
            width_px=64,
            height_px=48,
            stated_fps=fps,
            stated_frames=frames,
            backend="fake",
        )
        self._frames, self._fps, self._n = frames, fps, -1
        self.closed = False

    def grab(self):
        self._n += 1
        return self._n < self._frames

    def time_s(self):
        return self._n / self._fps

    def retrieve(self):
        return np.full((48, 64, 3), 10 + self._n, dtype=np.uint8)

    def close(self):
        self.closed = True


class Timeline:
    """A clock, and the waits that move it."""

    def __init__(self):
        self.now_s = 0.0
        self.waits = []

    def wait(self, seconds):
        self.waits.append(seconds)
        self.now_s += seconds
        return False


def played(timeline, **more):
    clip = ClipCamera(
        CLIP, clock=lambda: timeline.now_s, open_source=lambda path: FakeClip(), **more
    )
    clip._stopped.wait = timeline.wait
    return clip


def test_each_frame_comes_when_its_time_has_come():
    timeline = Timeline()
    clip = played(timeline)
    seen = []
    while (shot := clip.next()) is not None:
        seen.append((shot.time_s, timeline.now_s))
    assert len(seen) == 10
    for time_s, now_s in seen:
        assert now_s == pytest.approx(time_s)


def test_who_is_late_gets_the_frames_at_once():
    timeline = Timeline()
    clip = played(timeline)
    clip.next()
    timeline.now_s = 0.55
    times = [clip.next().time_s for _ in range(5)]
    assert times == pytest.approx([0.1, 0.2, 0.3, 0.4, 0.5])
    assert timeline.now_s == 0.55
    clip.next()
    assert timeline.now_s == pytest.approx(0.6)


def test_it_can_begin_later_and_then_keeps_its_own_times():
    timeline = Timeline()
    clip = played(timeline, start_s=0.45)
    assert clip.next().time_s == pytest.approx(0.5)
    assert timeline.now_s == 0.0
    assert clip.next().time_s == pytest.approx(0.6)
    assert timeline.now_s == pytest.approx(0.1)


def test_over_and_over_its_times_go_on():
    clip = played(Timeline(), loop=True)
    times = [clip.next().time_s for _ in range(35)]
    assert times == pytest.approx(np.arange(35) / 10)


def test_stopping_ends_it():
    clip = ClipCamera(CLIP, open_source=lambda path: FakeClip())
    clip.stop()
    assert clip.next() is None
    clip.close()


def test_a_clip_that_cannot_be_opened_is_told_as_trouble():
    def refuse(path):
        raise ClipError("The clip walk.mp4 is a text file, not a video.")

    with pytest.raises(SourceTroubleError, match="text file") as caught:
        ClipCamera(CLIP, open_source=refuse)
    assert caught.value.trouble is SourceFault.CLIP_UNREADABLE


def test_a_clip_without_a_picture_is_told_as_trouble():
    clip = ClipCamera(CLIP, open_source=lambda path: FakeClip(frames=0))
    with pytest.raises(SourceTroubleError, match="Not one picture"):
        clip.next()
