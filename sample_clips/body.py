"""Bodies: shapes made by the Anny body model, kept on disk as plain arrays.

Anny (and torch under it) is needed only the first time that a body is wanted; posing, dressing
and filming work on the arrays alone. What a body does is not here: see ``skeleton``.
"""

import hashlib
import json
from collections.abc import Iterable
from dataclasses import asdict, dataclass, replace
from pathlib import Path

import numpy as np
import platformdirs
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]

#: Raise when the arrays or their meaning change: old files are then made anew.
_LAYOUT = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """Anny's phenotype of one body, each 0 to 1.

    ``gender`` 0 is male and 1 female; ``age`` 2/3 is young and 1 is old.
    """

    gender: float
    age: float
    muscle: float
    weight: float
    height: float
    proportions: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """One body in its rest pose: metres, z up, facing -y, the person's left along +x.

    Attributes
    ----------
    vertices
        Skin, shape (V, 3).
    normals
        Unit outward normals of the skin, shape (V, 3).
    triangles
        Indices of vertices, shape (T, 3).
    bone_indices, bone_weights
        Bones that carry each vertex and their weights (rows sum to 1), shape (V, K).
    heads
        Bone heads, the joint centres, shape (B, 3).
    bones
        Bone names, parents before children.
    parents
        Index of each bone's parent; -1 at the root.
    """

    vertices: FloatArray
    normals: FloatArray
    triangles: NDArray[np.int64]
    bone_indices: NDArray[np.int64]
    bone_weights: FloatArray
    heads: FloatArray
    bones: tuple[str, ...]
    parents: tuple[int, ...]

    def head(self, bone: str) -> FloatArray:
        """Rest position of a bone's head, shape (3,)."""
        return np.asarray(self.heads[self.bones.index(bone)], dtype=np.float64)

    @property
    def stature_m(self) -> float:
        return float(np.ptp(self.vertices[:, 2]))


#: Numbers of bodies that are made as heavy as the body model goes.
LARGE_BODIES = range(84, 90)


def shape_of(body_id: int) -> Shape:
    """The shape that belongs to a body's number, always the same one.

    Adults of both builds, young to old, thin to heavy, about 1.5 to 1.9 m tall.
    """
    rng = np.random.default_rng([body_id, 4711])
    gender = float(rng.uniform(0, 0.3) if body_id % 2 else rng.uniform(0.7, 1))
    shape = Shape(
        gender=round(gender, 3),
        age=round(float(rng.uniform(0.6, 1.0)), 3),
        muscle=round(float(rng.uniform(0.3, 0.75)), 3),
        weight=round(float(rng.uniform(0.3, 0.75)), 3),
        height=round(float(rng.uniform(0.27, 0.6)), 3),
        proportions=round(float(rng.uniform(0.3, 0.8)), 3),
    )
    return replace(shape, weight=1.0) if body_id in LARGE_BODIES else shape


def stature_guess_m(shape: Shape) -> float:
    """About how tall a shape is, in metres, without making it (within 5 cm, seen on 40 bodies)."""
    return 1.217 + 1.1 * shape.height + 0.11 * (1 - shape.gender)


def bodies_folder() -> Path:
    """Where bodies are kept between runs."""
    return Path(platformdirs.user_cache_dir("thawline")) / "bodies"


def body_file(shape: Shape, folder: Path) -> Path:
    """Where the arrays of a shape are kept."""
    key = json.dumps([_LAYOUT, asdict(shape)], sort_keys=True)
    return folder / f"body-{hashlib.sha256(key.encode()).hexdigest()[:16]}.npz"


def make_bodies(shapes: Iterable[Shape], folder: Path) -> None:
    """Make the missing ones of some bodies, with one load of the body model."""
    missing = [shape for shape in dict.fromkeys(shapes) if not body_file(shape, folder).exists()]
    if not missing:
        return
    import anny
    import torch

    torch.set_num_threads(1)
    model = anny.Anny(pose_parameterization="world-orient")
    folder.mkdir(parents=True, exist_ok=True)
    common = {
        "triangles": model.get_triangular_faces().numpy().astype(np.int32),
        "bone_indices": model.vertex_bone_indices.numpy().astype(np.int16),
        "bone_weights": model.vertex_bone_weights.numpy().astype(np.float32),
        "bones": np.array(list(model.bone_labels)),
        "parents": np.array([int(parent) for parent in model.bone_parents], dtype=np.int16),
    }
    for shape in missing:
        out = model(phenotype_kwargs=asdict(shape))
        target = body_file(shape, folder)
        partial = target.with_suffix(".part.npz")
        np.savez_compressed(
            partial,
            vertices=out["rest_vertices"][0].numpy().astype(np.float32),
            heads=out["rest_bone_heads"][0].numpy(),
            **common,
        )
        partial.replace(target)


def load_body(shape: Shape, folder: Path) -> Body:
    """One body, made first if the folder does not hold it yet."""
    make_bodies([shape], folder)
    with np.load(body_file(shape, folder), allow_pickle=False) as data:
        vertices = data["vertices"].astype(np.float64)
        triangles = data["triangles"].astype(np.int64)
        weights = data["bone_weights"].astype(np.float64)
        bones = tuple(str(name) for name in data["bones"])
        return Body(
            vertices=vertices,
            normals=vertex_normals(vertices, triangles),
            triangles=triangles,
            bone_indices=data["bone_indices"].astype(np.int64),
            bone_weights=weights / weights.sum(axis=1, keepdims=True),
            heads=_straightened(data["heads"].astype(np.float64), bones),
            bones=bones,
            parents=tuple(int(parent) for parent in data["parents"]),
        )


def _straightened(heads: FloatArray, bones: tuple[str, ...]) -> FloatArray:
    """Put the middle joints of upper arm and forearm on the line between their ends.

    They only twist, so they may sit anywhere on that line; a few millimetres beside it (where
    the model has them) a twist would bend the limb and move the elbow and the wrist.
    """
    heads = heads.copy()
    for limb in (("upperarm01", "upperarm02", "lowerarm01"), ("lowerarm01", "lowerarm02", "wrist")):
        for ending in (".L", ".R"):
            start, middle, end = (bones.index(bone + ending) for bone in limb)
            along = (heads[end] - heads[start]) / np.linalg.norm(heads[end] - heads[start])
            heads[middle] = heads[start] + along * ((heads[middle] - heads[start]) @ along)
    return heads


def vertex_normals(vertices: FloatArray, triangles: NDArray[np.int64]) -> FloatArray:
    """Unit normals at the vertices, weighted by triangle area, shape (V, 3)."""
    corners = vertices[triangles]
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    normals = np.zeros_like(vertices)
    for corner in range(3):
        np.add.at(normals, triangles[:, corner], across)
    lengths = np.linalg.norm(normals, axis=1, keepdims=True)
    return np.asarray(normals / np.maximum(lengths, 1e-12), dtype=np.float64)
