"""Frames through shared memory."""

import subprocess
import sys

import numpy as np
import pytest

from measure.live.shared_frames import SLOTS, SharedFrameRing
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
