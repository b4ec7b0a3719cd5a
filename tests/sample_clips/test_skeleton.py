"""Turning bones carries the joints and the skin along."""

import numpy as np
import pytest

from sample_clips.skeleton import Skin, frame, place_bones, turn_about, turn_from_frames
from tests.support.stick_body import stick_body

BODY = stick_body()


@pytest.mark.parametrize(
    ("axis", "start", "end"),
    [
        ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
        ((0, 1, 0), (0, 0, 1), (1, 0, 0)),
        ((0, 0, 2), (1, 0, 0), (0, 1, 0)),
    ],
)
def test_quarter_turns_are_right_handed(
    axis: tuple[float, float, float],
    start: tuple[float, float, float],
    end: tuple[float, float, float],
) -> None:
    assert turn_about(axis, 90) @ np.array(start) == pytest.approx(end)


def test_frame_is_right_handed_and_keeps_its_first_direction() -> None:
    made = frame(np.array([0, 0, -2.0]), np.array([1.0, 0, 5.0]))
    np.testing.assert_allclose(made, np.array([[0, 1, 0], [0, 0, -1], [-1, 0, 0]]), atol=1e-12)
    assert np.linalg.det(made) == pytest.approx(1)


def test_turn_from_frames_carries_one_onto_the_other() -> None:
    before, after = np.eye(3), turn_about((1, 2, 3), 50)
    assert turn_from_frames(before, after) @ before == pytest.approx(after)


def test_rest_pose_is_the_rest_pose() -> None:
    bones = place_bones(BODY, {}, BODY.heads[0])
    np.testing.assert_allclose(bones.heads, BODY.heads)
    vertices, _ = Skin(BODY, BODY.vertices, BODY.normals).pose(bones)
    np.testing.assert_allclose(vertices, BODY.vertices)


def test_a_bone_without_a_turn_follows_its_parent() -> None:
    turn = turn_about((0, 1, 0), 90)
    bones = place_bones(BODY, {"upperarm01.L": turn}, BODY.heads[0])
    shoulder, wrist = (BODY.bones.index(name) for name in ("upperarm01.L", "wrist.L"))
    moved = bones.heads[wrist] - bones.heads[shoulder]
    assert moved == pytest.approx(turn @ (BODY.heads[wrist] - BODY.heads[shoulder]))
    np.testing.assert_allclose(bones.turns[wrist], turn)
    other = BODY.bones.index("wrist.R")
    np.testing.assert_allclose(bones.heads[other], BODY.heads[other])


def test_turning_the_root_turns_the_whole_skin() -> None:
    turn = turn_about((0, 0, 1), 90)
    bones = place_bones(BODY, {"root": turn}, np.zeros(3))
    vertices, normals = Skin(BODY, BODY.vertices, BODY.normals).pose(bones)
    np.testing.assert_allclose(vertices, (BODY.vertices - BODY.heads[0]) @ turn.T, atol=1e-12)
    np.testing.assert_allclose(normals, BODY.normals, atol=1e-12)
