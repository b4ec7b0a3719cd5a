"""What a camera's pictures tell about it, with times by hand."""

import numpy as np
import pytest

from measure.camera.faults import SourceFault
from measure.camera.health import (
    BLACK_S,
    FIRST_PICTURE_S,
    SLOWEST_FPS,
    STUCK_S,
    ExposureSettling,
    SourceWatch,
    fingerprint,
)
from tests.support.fake_sources import noisy


def watch_through(pictures, fps=30.0, start_s=10.0):
    """Show pictures at a rate; return the watch and the time of the last one."""
    watch, now_s = SourceWatch(start_s), start_s
    for pixels in pictures:
        now_s += 1 / fps
        watch.see(now_s, fingerprint(pixels))
    return watch, now_s


def test_a_good_camera_gives_no_trouble_and_its_true_rate():
    watch, now_s = watch_through([noisy(n) for n in range(90)])
    assert watch.trouble(now_s) is None
    assert watch.fps == pytest.approx(30.0, rel=0.02)


def test_a_camera_that_claims_more_than_it_gives_is_measured_and_called_slow():
    watch, now_s = watch_through([noisy(n) for n in range(30)], fps=7.0)
    assert watch.fps == pytest.approx(7.0, rel=0.02)
    assert watch.trouble(now_s) is SourceFault.CAMERA_SLOW
    watch, now_s = watch_through([noisy(n) for n in range(30)], fps=SLOWEST_FPS + 0.5)
    assert watch.trouble(now_s) is None


def test_a_rate_is_not_judged_by_the_first_pictures():
    watch, now_s = watch_through([noisy(0), noisy(1)], fps=2.0)
    assert watch.fps is None
    assert watch.trouble(now_s) is None


def test_a_repeated_picture_is_not_new_and_soon_means_stuck():
    watch, now_s = watch_through([noisy(n) for n in range(10)])
    same = fingerprint(noisy(9))
    for _ in range(int(STUCK_S * 30)):
        now_s += 1 / 30
        assert not watch.see(now_s, same)
    assert watch.trouble(now_s) is None
    assert watch.trouble(now_s + 0.1) is SourceFault.CAMERA_STUCK
    assert watch.repeats == int(STUCK_S * 30)


def test_a_read_that_never_returns_means_stuck_within_three_seconds():
    watch, now_s = watch_through([noisy(n) for n in range(10)])
    assert watch.trouble(now_s + 0.9 * STUCK_S) is None
    assert watch.trouble(now_s + 2.9) is SourceFault.CAMERA_STUCK


def test_no_first_picture_means_busy():
    watch = SourceWatch(10.0)
    assert watch.trouble(10.0 + FIRST_PICTURE_S) is None
    assert watch.trouble(10.1 + FIRST_PICTURE_S) is SourceFault.CAMERA_BUSY
    watch.see(14.0, fingerprint(noisy(0)))  # a slow start is no trouble
    assert watch.trouble(14.1) is None


@pytest.mark.parametrize("mean", [0, 4, 8])
def test_black_for_a_while_is_told_and_light_ends_it(mean):
    watch, now_s = watch_through([noisy(n, mean=mean) for n in range(round(BLACK_S * 30) + 2)])
    assert watch.trouble(now_s) is SourceFault.CAMERA_BLACK
    watch.see(now_s + 0.03, fingerprint(noisy(999)))
    assert watch.trouble(now_s + 0.03) is None


def test_a_dim_room_is_not_black():
    dim = noisy(1, mean=9)
    dim[20:40, 20:80] = 60  # a lamp
    assert not fingerprint(dim).black
    assert not fingerprint(noisy(1, mean=25)).black


def test_glances_at_grey_pictures():
    assert fingerprint(noisy(3)[:, :, 0]).mean == pytest.approx(120, abs=2)
    assert fingerprint(noisy(3)[:, :, :1]).sign != fingerprint(noisy(4)[:, :, :1]).sign


def test_exposure_settles_when_brightness_stays():
    exposure = ExposureSettling()
    means = [10.0 * min(n, 12) for n in range(60)]
    settled = [
        exposure.finished(n / 30, fingerprint(noisy(n, mean=round(m)))) for n, m in enumerate(means)
    ]
    first = settled.index(True)
    assert 12 / 30 + 0.4 <= first / 30 <= 12 / 30 + 0.7
    assert all(settled[first:])


def test_exposure_that_never_settles_is_waited_for_only_so_long():
    exposure = ExposureSettling()
    settled = [
        exposure.finished(n / 30, fingerprint(noisy(n, mean=60 + 60 * (n % 2)))) for n in range(120)
    ]
    assert settled.index(True) == pytest.approx(90, abs=2)


def test_black_first_frames_do_not_count_as_settled():
    exposure = ExposureSettling()
    dark = [
        exposure.finished(n / 30, fingerprint(np.zeros((60, 80, 3), np.uint8))) for n in range(45)
    ]
    assert not any(dark)
