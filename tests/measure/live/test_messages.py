"""Messages of the live worker: whole, or refused."""

import io

import numpy as np
import pytest

from measure.camera.faults import SourceFault
from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.live.messages import (
    LIVE_ANSWERS,
    LIVE_ORDERS,
    Ended,
    FaultChanged,
    FrameMessage,
    SourceOpened,
    SourceOrder,
    UseModel,
)
from measure.pose.message_pipe import GarbledError, Text, read_message, write_message
from measure.pose_models.catalogue import ModelQuality
from tests.support.changed_message import changed


def frame_message(**changes):
    pose = PoseFrame(
        index=4,
        time_s=1.25,
        points_px=np.ones((2, LANDMARKS, 2)),
        visibility=np.full((2, LANDMARKS), np.nan),
        presence=np.zeros((2, LANDMARKS)),
    )
    values = {
        "session": 3,
        "pose": pose,
        "slot": 2,
        "shape": (48, 64),
        "size_px": (640, 480),
        "coarse": True,
        "fine": False,
        "fps": 29.5,
    }
    return FrameMessage(**{**values, **changes})


def through_pipe(message, decoder=LIVE_ANSWERS):
    pipe = io.BytesIO()
    write_message(pipe, message)
    pipe.seek(0)
    return read_message(pipe, decoder)


def test_a_frame_survives_its_message():
    sent = frame_message()
    got = through_pipe(sent)
    np.testing.assert_array_equal(got.pose.points_px, sent.pose.points_px)
    np.testing.assert_array_equal(got.pose.visibility, sent.pose.visibility)
    for name in ("session", "slot", "shape", "size_px", "coarse", "fine", "fps"):
        assert getattr(got, name) == getattr(sent, name)
    assert (got.pose.index, got.pose.time_s) == (4, 1.25)


@pytest.mark.parametrize("missing", ["slot", "shape", "coarse", "session", "pose"])
def test_a_malformed_frame_is_refused(missing):
    with pytest.raises(GarbledError):
        read_message(changed(frame_message(), lambda fields: fields.pop(missing)), LIVE_ANSWERS)


@pytest.mark.parametrize(
    ("name", "value"),
    [("slot", 6), ("slot", -2), ("shape", [48, 10**6]), ("shape", [48]), ("session", "1")],
)
def test_a_frame_that_does_not_fit_the_slots_is_refused(name, value):
    with pytest.raises(GarbledError):
        read_message(
            changed(frame_message(), lambda fields: fields.update({name: value})), LIVE_ANSWERS
        )


def test_a_frame_whose_arrays_do_not_fit_together_is_refused():
    pose = PoseFrame(
        index=0,
        time_s=0.0,
        points_px=np.ones((2, LANDMARKS, 2)),
        visibility=np.ones((1, LANDMARKS)),
        presence=np.ones((2, LANDMARKS)),
    )
    with pytest.raises(GarbledError):
        frame_message(pose=pose)


@pytest.mark.parametrize("camera", [None, Text("A camera \udcff")])
def test_an_order_survives_its_message(tmp_path, camera):
    order = SourceOrder(
        session=2,
        clip=tmp_path / "a clip \udcff.mp4",
        camera=camera,
        quarter_turns=1,
        already_mirrored=True,
        origin_s=12.5,
        start_s=3.0,
        loop=False,
        ring="slots",
        quality=ModelQuality.HEAVY,
    )
    assert through_pipe(order, LIVE_ORDERS) == order
    assert order.setup.quarter_turns == 1
    assert order.setup.name == camera
    use = UseModel(quality=ModelQuality.FULL)
    assert through_pipe(use, LIVE_ORDERS) == use


@pytest.mark.parametrize("trouble", [None, SourceFault.CAMERA_STUCK])
def test_faults_survive_their_message(trouble):
    for sent in (
        FaultChanged(session=1, trouble=trouble, text=Text("in words \udcff")),
        SourceOpened(session=1, backend="V4L2", sample_aspect=1.5),
        Ended(session=1),
    ):
        assert through_pipe(sent) == sent


def test_an_order_is_no_answer():
    with pytest.raises(GarbledError):
        through_pipe(UseModel(quality=ModelQuality.FULL), LIVE_ANSWERS)
