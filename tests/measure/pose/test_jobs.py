"""Frames held in memory on their way to the networks, and the results that come back."""

import sys
import threading
import time
from pathlib import Path

import numpy as np
import pytest

from measure.errors import InputError, PoseProcessError
from measure.pose.clip_worker import picture_job_of
from measure.pose.jobs import InferencePass, KeptPicture, PictureJob
from measure.pose.message_pipe import GarbledError
from measure.pose.messages import (
    Ready,
    picture_orders,
)
from measure.pose.runner import run_picture_job
from measure.pose.supervisor import PoseProcess
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import from_normalized
from tests.support import scripted_child
from tests.support.live_figures import empty_bundle
from tests.support.scripted_live import ScriptedEstimator, noisy_rgb, points_of

PASSES = (
    InferencePass(quality=ModelQuality.FULL),
    InferencePass(quality=ModelQuality.FULL, mirrored=True),
)


def kept(number, *, window=0, size=(160, 120)):
    return KeptPicture(rgb=noisy_rgb(number, size), index=number, time_s=number / 5, window=window)


def job(numbers=range(6), *, passes=PASSES, **more):
    pictures = tuple(kept(number) for number in numbers)
    return PictureJob(passes=passes, pictures=pictures, width_px=160, height_px=120, **more)


@pytest.mark.parametrize("alone", [False, True])
@pytest.mark.parametrize("count", [1, 6, 400])
def test_a_job_survives_its_messages(count, alone):
    sent = job(range(count), alone=alone)
    first, *others = picture_orders(sent)
    got = picture_job_of(first, iter(others).__next__)
    assert (got.passes, got.width_px, got.height_px, got.alone) == (PASSES, 160, 120, alone)
    assert [(one.index, one.time_s, one.window) for one in got.pictures] == [
        (one.index, one.time_s, one.window) for one in sent.pictures
    ]
    np.testing.assert_array_equal(got.pictures[-1].rgb, sent.pictures[-1].rgb)


def test_many_pictures_travel_in_several_messages_of_bounded_size():
    first, *others = picture_orders(job(range(400)))
    orders = (first.job, *others)
    sizes = [sum(picture.rgb.nbytes for picture in order.pictures) for order in orders]
    assert len(sizes) > 2
    assert max(sizes) < 10 << 20


def test_other_orders_between_pictures_are_nonsense():
    first, *_ = picture_orders(job(range(400)))
    with pytest.raises(GarbledError):
        picture_job_of(first, Ready)


@pytest.mark.parametrize(
    "pictures", [(), (kept(0), kept(1, size=(80, 60)))], ids=["none", "two sizes"]
)
def test_a_job_needs_pictures_of_one_size(pictures):
    with pytest.raises(ValueError, match="pictures"):
        PictureJob(passes=PASSES, pictures=pictures, width_px=160, height_px=120)


class Heard:
    """Keeps what the work tells."""

    def __init__(self):
        self.found = {}
        self.shares = []
        self._lock = threading.Lock()

    def frames(self, pass_number, frames):
        with self._lock:
            self.found.setdefault(pass_number, []).extend(frames)

    def progress(self, share):
        self.shares.append(share)


def test_every_pass_runs_on_every_frame_in_order():
    heard = Heard()
    run_picture_job(job(), {ModelQuality.FULL: ScriptedEstimator}, heard)
    plain = heard.found[0]
    assert [one.index for one in plain] == list(range(6))
    assert [one.time_s for one in plain] == [n / 5 for n in range(6)]
    for one, picture in zip(plain, job().pictures, strict=True):
        np.testing.assert_allclose(one.points_px[0], points_of(picture.rgb), atol=1e-6)
    assert [one.index for one in heard.found[1]] == list(range(6))
    assert heard.shares == sorted(heard.shares)


def test_each_span_of_time_starts_with_a_new_network():
    made = []

    def make():
        made.append(ScriptedEstimator())
        return made[-1]

    spans = (kept(0), kept(1), kept(2, window=1), kept(3, window=1))
    one = PictureJob(passes=PASSES[:1], pictures=spans, width_px=160, height_px=120)
    run_picture_job(one, {ModelQuality.FULL: make}, Heard())
    assert len(made) == 2


@pytest.mark.parametrize(
    "rgb", [np.zeros((40, 40), np.uint8), np.zeros((40, 40, 3)), np.zeros((4, 3000, 3), np.uint8)]
)
def test_what_was_no_picture_is_not_admitted_again(rgb):
    with pytest.raises(InputError):
        from_normalized(rgb, 40, 40)


def test_a_picture_comes_back_as_it_was():
    rgb = noisy_rgb(3, (160, 120))
    again = from_normalized(rgb, 640, 480)
    np.testing.assert_array_equal(again.rgb, rgb)
    assert (again.width_px, again.height_px) == (640, 480)


def test_work_can_be_broken_off_from_another_thread(data_folder):
    process = PoseProcess(
        {ModelQuality.FULL: empty_bundle(ModelQuality.FULL)},
        command=(sys.executable, "-P", str(Path(scripted_child.__file__)), "hangs"),
        stall_s=60.0,
        start_s=20.0,
    )
    process.prepare()
    threading.Timer(0.3, process.stop).start()
    began_s = time.monotonic()
    with pytest.raises(PoseProcessError, match="pictures could not be read"):
        process.run_pictures(job())
    assert time.monotonic() - began_s < 5.0
    process.close()
