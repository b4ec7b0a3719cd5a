"""Pictures through shared memory, and what is said about them."""

import subprocess
import sys

import numpy as np
import pytest

from measure.camera.faults import SourceFault
from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.live.messages import FaultChanged, FrameMessage, SourceOpened, SourceOrder
from measure.live.shared_frames import SLOTS, SharedFrameRing
from measure.pose.messages import GarbledError, Message, MessageKind
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import LONGEST_SIDE_PX


@pytest.fixture
def ring():
    made = SharedFrameRing.make()
    yield made
    made.close()


def picture(value, height=48, width=64):
    return np.full((height, width, 3), value, dtype=np.uint8)


def test_a_picture_arrives_as_it_was_and_is_a_copy(ring):
    other = SharedFrameRing.join(ring.name)
    sent = picture(7)
    sent[3, 4] = 1, 2, 3
    slot = other.put(sent)
    got = ring.take(slot, (48, 64))
    np.testing.assert_array_equal(got, sent)
    assert got.flags.c_contiguous
    other.put(picture(9))
    np.testing.assert_array_equal(got, sent)
    other.close()


def test_full_slots_are_never_overwritten(ring):
    slots = [ring.put(picture(n)) for n in range(SLOTS)]
    assert None not in slots
    assert ring.put(picture(99)) is None
    assert ring.take(slots[2], (48, 64))[0, 0, 0] == 2
    assert ring.put(picture(50)) == slots[2]
    ring.free_all()
    assert ring.put(picture(1)) is not None


@pytest.mark.parametrize(
    ("height", "width"), [(LONGEST_SIDE_PX, LONGEST_SIDE_PX), (32, 32), (721, 405)]
)
def test_every_admitted_size_fits(ring, height, width):
    assert ring.take(ring.put(picture(5, height, width)), (height, width)).all()


def test_who_joined_and_ended_leaves_the_slots_alone(ring):
    code = (
        "import sys; from measure.live.shared_frames import SharedFrameRing;"
        "import numpy as np; ring = SharedFrameRing.join(sys.argv[1]);"
        "print(ring.put(np.full((40, 40, 3), 8, np.uint8)))"
    )
    done = subprocess.run(
        (sys.executable, "-W", "error", "-c", code, ring.name), capture_output=True, check=True
    )
    assert done.stderr == b""
    assert ring.take(int(done.stdout), (40, 40)).all()
    SharedFrameRing.join(ring.name).close()


def frame_result(**changes):
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


def test_a_frame_result_survives_its_message():
    sent = frame_result()
    got = FrameMessage.of(sent.message())
    np.testing.assert_array_equal(got.pose.points_px, sent.pose.points_px)
    np.testing.assert_array_equal(got.pose.visibility, sent.pose.visibility)
    for name in ("session", "slot", "shape", "size_px", "coarse", "fine", "fps"):
        assert getattr(got, name) == getattr(sent, name)
    assert (got.pose.index, got.pose.time_s) == (4, 1.25)


@pytest.mark.parametrize("missing", ["slot", "shape", "coarse", "session"])
def test_a_malformed_frame_result_is_refused(missing):
    message = frame_result().message()
    values = {name: value for name, value in message.values.items() if name != missing}
    with pytest.raises(GarbledError):
        FrameMessage.of(Message(kind=MessageKind.SEEN, values=values, arrays=message.arrays))


def test_an_order_survives_its_message(tmp_path):
    order = SourceOrder(
        session=2,
        clip=tmp_path / "a clip.mp4",
        camera=None,
        quarter_turns=1,
        already_mirrored=True,
        origin_s=12.5,
        start_s=3.0,
        loop=False,
        ring="slots",
        quality=ModelQuality.HEAVY,
    )
    assert SourceOrder.of(order.message()) == order
    assert order.setup.quarter_turns == 1


@pytest.mark.parametrize("trouble", [None, SourceFault.CAMERA_STUCK])
def test_troubles_survive_their_message(trouble):
    told = FaultChanged(session=1, trouble=trouble, text="in words")
    assert FaultChanged.of(told.message()) == told
    opened = SourceOpened(session=1, backend="V4L2", sample_aspect=1.5)
    assert SourceOpened(**opened.message().values) == opened
