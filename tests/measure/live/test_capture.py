"""The capture thread and its mailbox with scripted cameras."""

import threading
import time
from itertools import islice

import numpy as np
import pytest

from measure.camera.faults import SourceFault
from measure.domain.acquisition import CameraSetup
from measure.live.capture import CaptureThread, FrameForInference, Mailbox
from measure.video.sampling import COARSE_HZ, FINE_HZ
from tests.support.fake_sources import (
    FakeCamera,
    blocked,
    ended,
    failing,
    noisy,
    repeating,
    steady,
    then,
)


def taken(number, *, coarse=False, fine=False):
    return FrameForInference(
        picture=None,
        index=number,
        time_s=number / 30,
        coarse=coarse,
        fine=fine,
        opening=1,
    )


def test_the_newest_frame_wins_and_the_others_are_counted():
    mailbox = Mailbox()
    for number in range(5):
        mailbox.put(taken(number), lambda: True)
    assert mailbox.take(0.0).index == 4
    assert mailbox.take(0.0) is None
    assert mailbox.replaced == 4


def test_frames_of_the_grids_wait_their_turn_and_times_never_go_back():
    mailbox = Mailbox()
    for number in range(9):
        mailbox.put(taken(number, coarse=number % 3 == 0), lambda: True)
    order = [mailbox.take(0.0).index for _ in range(4)]
    assert order == [0, 3, 6, 8]
    assert mailbox.is_empty


def test_a_full_queue_makes_a_clip_wait():
    mailbox = Mailbox()
    done = threading.Event()

    def put_all():
        for number in range(15):
            mailbox.put(taken(number, coarse=True), lambda: True)
        done.set()

    threading.Thread(target=put_all, daemon=True).start()
    order = [mailbox.take(1.0).index for _ in range(15)]
    assert done.wait(1.0)
    assert order == list(range(15))


def test_a_clip_that_is_stopped_waits_no_longer():
    mailbox = Mailbox()
    for number in range(5):
        mailbox.put(taken(number, coarse=True), lambda: False)
    assert [mailbox.take(0.0).index for _ in range(3)] == [0, 1, 2]
    assert mailbox.take(0.0) is None


class Cameras:
    """Opens scripted cameras one after the other and keeps the capture's books."""

    def __init__(self, *scripts, **more):
        self.opened = []
        self._scripts = list(scripts)
        self.capture = CaptureThread(self._open, CameraSetup(), is_camera=True)
        self._more = more

    def _open(self):
        script = self._scripts.pop(0) if len(self._scripts) > 1 else self._scripts[0]
        self.opened.append(FakeCamera(script, **self._more))
        return self.opened[-1]

    def __enter__(self):
        self.capture.start()
        return self.capture

    def __exit__(self, *error):
        assert self.capture.stop(2.0) or self._more.get("deaf")


def wait_for(condition, timeout_s=6.0):
    until_s = time.monotonic() + timeout_s
    while not condition():
        assert time.monotonic() < until_s, "it did not happen in time"
        time.sleep(0.01)


def test_pictures_come_in_order_each_with_its_own_time():
    cameras = Cameras(steady(120.0))
    with cameras as capture:
        seen = []
        until_s = time.monotonic() + 1.6
        while time.monotonic() < until_s:
            one = capture.mailbox.take(0.05)
            seen += [one] if one is not None else []
    times = [one.time_s for one in seen]
    assert times == sorted(set(times))
    assert [one.index for one in seen] == sorted({one.index for one in seen})
    assert seen[0].picture.rgb.shape == (120, 160, 3)
    assert cameras.opened[0].closed


def test_every_frame_of_a_clips_grids_is_kept_for_inference():
    capture = CaptureThread(
        lambda: FakeCamera(then(60, steady(200.0), ended())), CameraSetup(), is_camera=False
    )
    capture.start()
    seen = []
    while (one := capture.mailbox.take(0.5)) is not None:
        seen.append(one)
        time.sleep(0.02)
    assert capture.stop(1.0)
    coarse = [one.time_s for one in seen if one.coarse]
    fine = [one.time_s for one in seen if one.fine]
    span_s = seen[-1].time_s - seen[0].time_s
    assert len(coarse) == pytest.approx(span_s * COARSE_HZ, abs=2)
    assert len(fine) == pytest.approx(span_s * FINE_HZ, abs=2)
    assert capture.ended


def test_slow_inference_still_gets_fresh_frames_each_once():
    with Cameras(steady(30.0)) as capture:
        wait_for(lambda: not capture.mailbox.is_empty)
        ages, indices = [], []
        for _ in range(25):
            one = capture.mailbox.take(1.0)
            ages.append(time.monotonic() - one.time_s)
            indices.append(one.index)
            time.sleep(0.1)
    assert np.median(ages) < 0.15
    assert np.median(ages[-5:]) < 0.15
    assert indices == sorted(set(indices))


def test_dark_first_frames_are_skipped():
    dark = (each for each in islice(steady(60.0, mean=0), 15))
    with Cameras(then(15, dark, steady(60.0, start=15))) as capture:
        first = capture.mailbox.take(6.0)
    assert first.picture.rgb.mean() > 100


def test_a_repeated_frame_is_processed_once():
    with Cameras(then(90, steady(60.0), repeating(60.0, 500))) as capture:
        wait_for(lambda: capture.trouble(time.monotonic()) is SourceFault.CAMERA_STUCK)
        indices = []
        while (one := capture.mailbox.take(0.1)) is not None:
            indices.append(one.index)
    assert len(indices) == len(set(indices))


def test_a_camera_that_fails_is_opened_again_and_trouble_ends_with_pictures():
    cameras = Cameras(
        then(30, steady(60.0), failing(SourceFault.CAMERA_UNPLUGGED)), steady(60.0, start=100)
    )
    with cameras as capture:
        wait_for(lambda: capture.trouble(time.monotonic()) is SourceFault.CAMERA_UNPLUGGED)
        wait_for(lambda: len(cameras.opened) == 2)
        wait_for(lambda: capture.trouble(time.monotonic()) is None)
        assert cameras.opened[0].closed


def test_a_read_that_blocks_is_noticed_within_three_seconds_and_can_be_left():
    cameras = Cameras(then(30, steady(60.0), blocked()), steady(60.0, start=100))
    with cameras as capture:
        wait_for(lambda: len(cameras.opened) == 1 and capture.idle_s(time.monotonic()) > 0.5)
        began_s = time.monotonic() - capture.idle_s(time.monotonic())
        wait_for(lambda: capture.trouble(time.monotonic()) is SourceFault.CAMERA_STUCK)
        assert time.monotonic() - began_s < 3.0
        capture.open_again(SourceFault.CAMERA_STUCK)
        assert capture.trouble(time.monotonic()) is SourceFault.CAMERA_STUCK
        wait_for(lambda: len(cameras.opened) == 2)
        wait_for(lambda: capture.trouble(time.monotonic()) is None)


def test_pictures_of_no_usable_form_are_trouble_in_words():
    def tiny():
        number = 0
        while True:
            number += 1
            yield 0.01, noisy(number, size=(8, 8))

    with Cameras(tiny()) as capture:
        wait_for(lambda: capture.fault is not None)
        assert "8 x 8" in str(capture.fault)


def test_a_grey_camera_is_no_problem():
    def grey():
        number = 0
        while True:
            number += 1
            yield 0.01, noisy(number)[:, :, 0]

    with Cameras(grey()) as capture:
        assert capture.mailbox.take(5.0).picture.rgb.shape == (120, 160, 3)


def test_a_deaf_camera_does_not_hold_up_who_stops():
    cameras = Cameras(then(10, steady(60.0), blocked()), deaf=True)
    with cameras as capture:
        wait_for(lambda: cameras.opened and cameras.opened[0].blocks.is_set())
        began_s = time.monotonic()
        assert not capture.stop(0.2)
        assert time.monotonic() - began_s < 1.0
