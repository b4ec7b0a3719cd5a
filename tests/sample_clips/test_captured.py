"""A motion file's joints and arm directions, on a skeleton whose answers a reader can see."""

from pathlib import Path

import numpy as np
import pytest

from sample_clips.bvh import read_bvh
from sample_clips.captured import arm_goals, captured_frames
from sample_clips.person import VirtualPerson
from sample_clips.scenario import Camera, Movement, Scenario, Side, View
from tests.support.stick_body import stick_body


def limb(name: str, offsets: list[tuple[float, float, float]], names: list[str]) -> str:
    """Nested joints with three turns each, the last one with an end."""
    text = ""
    for joint, (x, y, z) in zip(names, offsets, strict=True):
        text += f"JOINT {name}{joint} {{ OFFSET {x} {y} {z} "
        text += "CHANNELS 3 Zrotation Yrotation Xrotation "
    return text + "End Site { OFFSET 0 -1 0 } " + "} " * len(names)


def skeleton(frames: list[list[float]]) -> str:
    """y up, facing z: hips at height 0, shoulders 5 above, hanging arms with bent elbows."""
    text = "HIERARCHY ROOT Hips { OFFSET 0 0 0 CHANNELS 6 Xposition Yposition Zposition "
    text += "Zrotation Yrotation Xrotation "
    for name, sign in (("Left", 1), ("Right", -1)):
        text += limb(name, [(sign, 0, 0)], ["Hip"])
        arm: list[tuple[float, float, float]] = [(2 * sign, 5, 0), (0, -3, 0), (0, 0, 2)]
        text += limb(name, arm, ["Shoulder", "Elbow", "Wrist"])
    text += f"}} MOTION Frames: {len(frames)} Frame Time: 0.05 "
    return text + "\n".join(" ".join(map(str, frame)) for frame in frames)


#: Channels: 6 of the root, then per side 3 of the hip and 9 of the arm.
REST = [0.0] * 30
#: The left shoulder turns by 90 degrees about z: that arm points outwards.
OUT = [*[0.0] * 9, 90.0, *[0.0] * 20]
#: The whole body turns about the vertical and stands elsewhere.
MOVED = [3.0, 1.0, -2.0, 0.0, 70.0, 0.0, *[0.0] * 3, 90.0, *[0.0] * 20]


@pytest.fixture
def motion_file(tmp_path: Path) -> Path:
    path = tmp_path / "motion.bvh"
    path.write_text(skeleton([REST, OUT, MOVED]), encoding="utf-8")
    return path


def test_positions(motion_file: Path) -> None:
    motion = read_bvh(motion_file)
    assert motion.frame_s == 0.05
    assert motion.positions["LeftWrist"][0] == pytest.approx((2, 2, 2))
    assert motion.positions["LeftElbow"][1] == pytest.approx((5, 5, 0))
    assert motion.positions["RightElbow"][1] == pytest.approx((-2, 2, 0))


def test_arm_directions_do_not_depend_on_where_the_body_stands(motion_file: Path) -> None:
    goals = arm_goals(read_bvh(motion_file))
    assert goals[0][Side.LEFT].humerus == pytest.approx((0, 0, -1))
    assert goals[0][Side.RIGHT].bend_towards == pytest.approx((0, -1, 0))
    assert goals[0][Side.LEFT].elbow_deg == pytest.approx(90)
    for frame in (1, 2):
        assert goals[frame][Side.LEFT].humerus == pytest.approx((1, 0, 0), abs=1e-12)
        assert goals[frame][Side.LEFT].bend_towards == pytest.approx((0, -1, 0), abs=1e-12)
        assert goals[frame][Side.RIGHT].humerus == pytest.approx((0, 0, -1), abs=1e-12)


def test_the_person_follows(motion_file: Path) -> None:
    scenario = Scenario(
        name="captured",
        movement=Movement.ABDUCTION,
        side=Side.LEFT,
        view=View.FRONT,
        body=0,
        seed=3,
        peak=0,
        heading_deg=0,
        camera=Camera(fps=20),
    )
    shots = captured_frames(VirtualPerson(stick_body(), scenario), read_bvh(motion_file))
    values = [shot.truth.value for shot in shots]
    assert values == pytest.approx([0, 90, 90], abs=6)
    bends = [shot.truth.elbow_flexion_deg for shot in shots]
    assert bends == pytest.approx([90, 90, 90], abs=1)
    assert np.diff([shot.moment.time_s for shot in shots]) == pytest.approx([0.05, 0.05])


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("", "not a BVH file"),
        ("time,angle\n0,1\n", "not a BVH file"),
        (skeleton([REST, OUT[:-1]]), "promises 2 frames"),
        ("HIERARCHY ROOT Hips { TWIST 1 } MOTION Frames: 0 Frame Time: 1", "TWIST"),
    ],
)
def test_bad_files(tmp_path: Path, text: str, part: str) -> None:
    path = tmp_path / "bad.bvh"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ValueError, match=part):
        read_bvh(path)


def test_missing_joints_are_named(motion_file: Path) -> None:
    motion = read_bvh(motion_file)
    del motion.positions["RightWrist"]
    with pytest.raises(ValueError, match="lacks the joints RightWrist"):
        arm_goals(motion)
