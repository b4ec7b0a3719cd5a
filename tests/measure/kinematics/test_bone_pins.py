"""A real arm measured with bone pins: does the angle seen in a picture match the one in space?

The recording (abduction to about 124° and back, 100 Hz, from opensim-core, Apache-2.0) is not
part of the project: name the folder where it lies as `abdbonepin.trc` in THAWLINE_CHECK_DATA.
Nothing of the network takes part: a virtual camera sees the joint centres, so this checks the
mathematics of the angle alone.
"""

import os
from pathlib import Path

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS, FloatArray, Side, arm
from measure.domain.movements import Movement, View
from measure.domain.tracks import Track
from measure.kinematics.elevation import elevation_of
from measure.kinematics.keypoints import arm_keypoints

FILE = Path(os.environ.get("THAWLINE_CHECK_DATA", "no folder named"), "abdbonepin.trc")


def read_pins(path: Path) -> dict[str, FloatArray]:
    """Return the markers by name, each of shape (n, 3), millimetres; the header overstates n."""
    lines = path.read_text(encoding="ascii").splitlines()
    names = [name for name in lines[3].split("\t")[2:] if name.strip()]
    rows = np.array([line.split("\t")[2:] for line in lines[5:] if line.strip()], dtype=np.float64)
    return {name.strip(): rows[:, 3 * place : 3 * place + 3] for place, name in enumerate(names)}


@pytest.fixture(scope="module")
def pins() -> dict[str, FloatArray]:
    if not FILE.exists():
        pytest.skip(
            "data not here: THAWLINE_CHECK_DATA names no folder with the bone-pin recording"
        )
    return read_pins(FILE)


def unit(vectors: FloatArray) -> FloatArray:
    return np.asarray(vectors / np.linalg.norm(vectors, axis=-1, keepdims=True))


def elevation_in_space(pins: dict[str, FloatArray]) -> FloatArray:
    down = unit(pins["centpxt8"] - pins["centijc7"])
    upper_arm = unit(pins["centelbow"] - pins["gu"])
    return np.asarray(np.degrees(np.arccos(np.sum(down * upper_arm, axis=1))))


def seen_by_camera(
    pins: dict[str, FloatArray], distance_mm: float, turn_deg: float
) -> tuple[Track, FloatArray]:
    """What a camera before the person sees, and how far the arm comes out of the picture's plane.

    `turn_deg` turns the person; negative shows more of the arm that is raised.
    """
    down = unit(pins["centpxt8"] - pins["centijc7"])
    trunk = down.mean(axis=0)
    # The right arm's way out: most of what is not along the trunk while it is raised.
    arms = unit(pins["centelbow"] - pins["gu"])
    raised = elevation_in_space(pins) > 60
    outward = (arms - (arms @ trunk)[:, None] * trunk)[raised].mean(axis=0)
    # From the spine to the breastbone is forwards.
    forward = (pins["ij"] - pins["centijc7"]).mean(axis=0)
    forward = unit(forward - (forward @ trunk) * trunk)
    outward = unit(outward - (outward @ forward) * forward - (outward @ trunk) * trunk)
    axes = np.stack([outward, trunk, forward])
    turn = np.radians(turn_deg)
    spin = np.array([[np.cos(turn), 0, -np.sin(turn)], [0, 1, 0], [np.sin(turn), 0, np.cos(turn)]])
    top = pins["centijc7"].mean(axis=0)

    def place(points: FloatArray) -> FloatArray:
        x, y, z = spin @ axes @ (points - top).T
        depth = distance_mm - z
        # Facing the camera, the person's right is on the picture's left.
        return np.stack([320 - 600 * x / depth, 140 + 600 * y / depth], axis=1)

    n = len(pins["gu"])
    points = np.full((n, LANDMARKS, 2), np.nan)
    own, other = arm(Side.RIGHT), arm(Side.LEFT)
    points[:, own.shoulder] = place(pins["gu"])
    points[:, own.elbow] = place(pins["centelbow"])
    points[:, own.wrist] = place(2 * pins["centelbow"] - pins["gu"])
    # The trunk of the picture is the pins' own axis; the shoulder girdle's rise is not in it.
    points[:, other.shoulder] = 2 * place(pins["centijc7"]) - points[:, own.shoulder]
    hips = place(pins["centijc7"] + 2.5 * (pins["centpxt8"] - pins["centijc7"]))
    points[:, own.hip] = points[:, other.hip] = hips
    ones = np.ones((n, LANDMARKS))
    track = Track(
        time_s=np.arange(n) / 100,
        points_px=points,
        visibility=ones,
        presence=ones,
        state=np.zeros(n, dtype=np.int64),
        people=np.ones(n, dtype=np.int64),
        width_px=640,
        height_px=480,
    )
    toward = np.degrees(np.arcsin(unit(pins["centelbow"] - pins["gu"]) @ (spin @ axes)[2]))
    return track, toward


def seen_elevation(track: Track) -> FloatArray:
    keypoints = arm_keypoints(track, Side.RIGHT)
    return elevation_of(keypoints, Movement.ABDUCTION, View.FRONT).elbow_line_deg


def test_the_recording_is_the_one_described(pins: dict[str, FloatArray]) -> None:
    elevation = elevation_in_space(pins)
    assert len(elevation) == 1991
    assert elevation[0] == pytest.approx(12, abs=1.5)
    assert elevation.max() == pytest.approx(124, abs=1.5)
    assert elevation[-1] == pytest.approx(14, abs=1.5)


def test_facing_the_plane_of_the_arm_the_picture_shows_the_angle_of_the_bones(
    pins: dict[str, FloatArray],
) -> None:
    track, toward = seen_by_camera(pins, 2500, -18)
    truth = elevation_in_space(pins)
    error = seen_elevation(track) - truth
    raised, top = truth > 30, truth > 118
    assert np.abs(toward[top]).mean() < 12
    assert np.abs(error[raised]).mean() < 0.7
    assert np.abs(error[raised]).max() < 3.5
    assert abs(error[top].mean()) < 0.5


def test_facing_the_trunk_an_arm_in_front_of_the_plane_reads_too_high(
    pins: dict[str, FloatArray],
) -> None:
    """This arm is 24° in front of the frontal plane at its end: what a camera then cannot see."""
    track, toward = seen_by_camera(pins, 2500, 0)
    truth = elevation_in_space(pins)
    error = seen_elevation(track) - truth
    top = truth > 118
    assert toward[top].mean() == pytest.approx(24, abs=1)
    assert error[top].mean() == pytest.approx(3.9, abs=0.5)
    # By parallel projection: the part across shrinks, the part along the trunk does not.
    along = np.cos(np.radians(truth[top]))
    across = np.sqrt(1 - along**2 - np.sin(np.radians(toward[top])) ** 2)
    expected = np.degrees(np.arctan2(across, along)) - truth[top]
    assert error[top].mean() == pytest.approx(expected.mean(), abs=1)
