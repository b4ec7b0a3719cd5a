"""Cameras without one: scripted captures in the place of OpenCV's."""

import numpy as np
import pytest

from measure.camera.capture import WANTED_SIZE_PX, Camera
from measure.camera.devices import CameraEntry, camera_called, find_cameras, list_cameras
from measure.camera.faults import SourceFault, SourceTroubleError
from measure.errors import CameraError

V4L2, MSMF = 200, 1400


def entry(name="Desk camera", *, path="/dev/none9", index=0, backend=V4L2):
    return CameraEntry(label=name, name=name, path=path, index=index, backend=backend)


class FakeCapture:
    """Answers each grab from a script: True, False, or a frame."""

    def __init__(self, script, *, opened=True):
        self.script = list(script)
        self.opened = opened
        self.asked = []
        self.released = False
        self._frame = None

    def isOpened(self):  # noqa: N802 - OpenCV's name
        return self.opened

    def grab(self):
        answer = self.script.pop(0) if self.script else False
        self._frame = answer
        return answer is not False

    def retrieve(self):
        return (self._frame is not None, self._frame)

    def get(self, prop):
        return 0.0

    def set(self, prop, value):
        self.asked.append((prop, value))
        return False  # ignores every wish

    def release(self):
        self.released = True


def camera(capture, *, still_listed=True, **more):
    times = iter(np.arange(0.0, 100.0, 0.1))
    return Camera(
        more.pop("entry", entry()),
        clock=lambda: float(next(times)),
        open_capture=lambda index, backend: capture,
        still_listed=lambda one: still_listed,
        wait=lambda seconds: None,
    )


FRAME = np.full((48, 64, 3), 9, dtype=np.uint8)


def test_frames_come_with_the_time_of_their_grab():
    shots = [camera(FakeCapture([FRAME])).next()]
    assert shots[0].time_s == 0.0
    np.testing.assert_array_equal(shots[0].pixels, FRAME)


def test_a_camera_that_ignores_every_wish_works_at_its_own_size():
    capture = FakeCapture([FRAME])
    one = camera(capture)
    assert one.next().pixels.shape == FRAME.shape
    assert {value for _, value in capture.asked} >= set(WANTED_SIZE_PX)


def test_windows_own_way_is_asked_for_the_size_only():
    capture = FakeCapture([FRAME])
    camera(capture, entry=entry(backend=MSMF))
    assert [value for _, value in capture.asked] == list(WANTED_SIZE_PX)


def test_single_failed_reads_are_passed_over():
    assert camera(FakeCapture([False, None, False, FRAME])).next() is not None


@pytest.mark.parametrize(
    ("still_listed", "trouble"),
    [(False, SourceFault.CAMERA_UNPLUGGED), (True, SourceFault.CAMERA_BUSY)],
)
def test_reads_that_keep_failing_name_the_trouble(still_listed, trouble):
    one = camera(FakeCapture([FRAME]), still_listed=still_listed)
    one.next()
    with pytest.raises(SourceTroubleError, match="Desk camera") as caught:
        one.next()
    assert caught.value.trouble is trouble


def test_a_stopped_camera_gives_no_more():
    capture = FakeCapture([FRAME, FRAME])
    one = camera(capture)
    one.stop()
    assert one.next() is None
    one.close()
    assert capture.released


def test_a_device_that_is_gone_is_missing():
    with pytest.raises(SourceTroubleError) as caught:
        camera(FakeCapture([], opened=False))
    assert caught.value.trouble is SourceFault.CAMERA_MISSING


def test_a_camera_that_does_not_open_is_busy(tmp_path):
    capture = FakeCapture([], opened=False)
    with pytest.raises(SourceTroubleError, match="other programs") as caught:
        camera(capture, entry=entry(path="usb#1234"))
    assert caught.value.trouble is SourceFault.CAMERA_BUSY
    assert capture.released


def test_a_device_that_may_not_be_used_is_denied(monkeypatch):
    monkeypatch.setattr("os.access", lambda path, mode: False)
    with pytest.raises(SourceTroubleError, match="group") as caught:
        camera(FakeCapture([], opened=False), entry=entry(path="/dev/null"))
    assert caught.value.trouble is SourceFault.CAMERA_DENIED


class Listed:
    def __init__(self, name, path, index):
        self.name, self.path, self.index = name, path, index


def listing(*cameras):
    return list_cameras(V4L2, lambda backend: [Listed(*one) for one in cameras])


def test_a_name_finds_its_camera_whatever_its_index():
    before = listing(("Lid", "/dev/video0", 0), ("Desk", "/dev/video2", 2))
    after = listing(("Desk", "/dev/video0", 0), ("Lid", "/dev/video2", 2))
    assert camera_called("Desk", before).index == 2
    assert camera_called("Desk", after).index == 0


def test_no_name_takes_the_first():
    found = listing(("Desk", "/dev/video2", 2), ("Lid", "/dev/video0", 0))
    assert camera_called(None, found).name == "Lid"


def test_two_of_one_name_are_told_apart_by_their_port():
    found = listing(("Twin", "/dev/video0", 0), ("Twin", "/dev/video2", 2))
    labels = [one.label for one in found]
    assert len(set(labels)) == 2
    assert all(label.startswith("Twin (port ") for label in labels)
    assert camera_called(labels[1], found).index == 2
    again = listing(("Twin", "/dev/video2", 0), ("Twin", "/dev/video0", 1))
    assert camera_called(labels[1], again).index == 0


@pytest.mark.parametrize(
    ("label", "cameras", "words"),
    [
        ("Gone", [("Desk", "/dev/video0", 0)], "no camera called Gone"),
        ("Twin", [("Twin", "/dev/video0", 0), ("Twin", "/dev/video2", 2)], "two cameras called"),
        (None, [], "No camera is connected"),
    ],
)
def test_the_wrong_camera_is_never_taken(label, cameras, words):
    with pytest.raises(SourceTroubleError, match=words) as caught:
        camera_called(label, listing(*cameras))
    assert caught.value.trouble is SourceFault.CAMERA_MISSING


def test_a_camera_without_a_name_gets_one():
    assert listing((None, None, 3))[0].label == "Camera 3"


def test_listing_in_a_process_of_its_own_answers_with_names():
    assert all(isinstance(name, str) for name in find_cameras())


def test_listing_that_takes_too_long_says_so():
    with pytest.raises(CameraError, match="could not be listed"):
        find_cameras(timeout_s=0.001)
