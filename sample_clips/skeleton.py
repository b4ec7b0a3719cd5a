"""Forward kinematics and skinning: from one turn per bone to joints and skin.

Every bone has a turn of its own in the world; a bone for which none is given takes its parent's.
The result agrees with the body model's own posing with world orientations (a test holds that).
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
import scipy.sparse
from numpy.typing import NDArray

from sample_clips.body import Body

FloatArray = NDArray[np.float64]


def turn_about(axis: FloatArray | tuple[float, float, float], angle_deg: float) -> FloatArray:
    """Right-handed rotation matrix about an axis through the origin, shape (3, 3)."""
    x, y, z = np.asarray(axis, dtype=np.float64) / np.linalg.norm(axis)
    angle = np.radians(angle_deg)
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.asarray(np.eye(3) + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross)


def turn_from_frames(before: FloatArray, after: FloatArray) -> FloatArray:
    """Rotation that carries one right-handed frame (columns) onto another, shape (3, 3)."""
    return np.asarray(after @ before.T)


def frame(along: FloatArray, towards: FloatArray) -> FloatArray:
    """Right-handed frame, first column ``along``, second nearest to ``towards``, shape (3, 3)."""
    first = along / np.linalg.norm(along)
    second = towards - first * (first @ towards)
    second = second / np.linalg.norm(second)
    return np.column_stack([first, second, np.cross(first, second)])


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedBones:
    """Where every bone is: turns (B, 3, 3) and heads (B, 3), in metres in the world."""

    turns: FloatArray
    heads: FloatArray


def place_bones(body: Body, turns: Mapping[str, FloatArray], root_at: FloatArray) -> PosedBones:
    """Chain the bones from the root.

    Parameters
    ----------
    turns
        World turn of some bones relative to the rest pose; others take their parent's.
    root_at
        Position of the root's head, shape (3,).
    """
    count = len(body.bones)
    all_turns = np.empty((count, 3, 3))
    heads = np.empty((count, 3))
    for index, name in enumerate(body.bones):
        parent = body.parents[index]
        if parent < 0:
            all_turns[index] = turns.get(name, np.eye(3))
            heads[index] = root_at
            continue
        all_turns[index] = turns.get(name, all_turns[parent])
        heads[index] = heads[parent] + all_turns[parent] @ (body.heads[index] - body.heads[parent])
    return PosedBones(turns=all_turns, heads=heads)


class Skin:
    """Linear blend skinning of one body."""

    def __init__(self, body: Body, vertices: FloatArray, normals: FloatArray) -> None:
        rows = np.repeat(np.arange(len(vertices)), body.bone_indices.shape[1])
        self._weights = scipy.sparse.csr_matrix(
            (body.bone_weights.ravel(), (rows, body.bone_indices.ravel())),
            shape=(len(vertices), len(body.bones)),
        )
        self._rest_heads = body.heads
        self._vertices = np.column_stack([vertices, np.ones(len(vertices))])
        self._normals = normals

    def pose(self, bones: PosedBones) -> tuple[FloatArray, FloatArray]:
        """Vertices and (unnormalised) normals of the posed skin, each of shape (V, 3)."""
        shift = bones.heads - np.einsum("bij,bj->bi", bones.turns, self._rest_heads)
        moves = np.concatenate([bones.turns, shift[:, :, None]], axis=2)
        blended = (self._weights @ moves.reshape(len(moves), 12)).reshape(-1, 3, 4)
        vertices = np.einsum("vij,vj->vi", blended, self._vertices)
        normals = np.einsum("vij,vj->vi", blended[:, :, :3], self._normals)
        return vertices, normals
