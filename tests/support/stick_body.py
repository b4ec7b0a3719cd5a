"""A coarse body of a few hundred points with the bones of the body model, for tests without it."""

import numpy as np

from sample_clips.body import Body

#: Bone heads of the left side and the middle, (parent, position) in metres.
_BONES: dict[str, tuple[str | None, tuple[float, float, float]]] = {
    "root": (None, (0, 0, 0.2)),
    "pelvis.L": ("root", (0, 0, 0.2)),
    "upperleg01.L": ("pelvis.L", (0.11, 0, 0.2)),
    "lowerleg01.L": ("upperleg01.L", (0.13, 0, -0.25)),
    "foot.L": ("lowerleg01.L", (0.15, 0, -0.7)),
    "spine05": ("root", (0, 0, 0.2)),
    "spine04": ("spine05", (0, 0, 0.3)),
    "spine03": ("spine04", (0, 0, 0.4)),
    "spine02": ("spine03", (0, 0, 0.5)),
    "spine01": ("spine02", (0, 0, 0.6)),
    "clavicle.L": ("spine01", (0.02, 0, 0.74)),
    "shoulder01.L": ("clavicle.L", (0.12, 0, 0.75)),
    "upperarm01.L": ("shoulder01.L", (0.2, 0, 0.7)),
    "upperarm02.L": ("upperarm01.L", (0.26, 0, 0.64)),
    "lowerarm01.L": ("upperarm02.L", (0.4, 0, 0.5)),
    "lowerarm02.L": ("lowerarm01.L", (0.46, -0.09, 0.44)),
    "wrist.L": ("lowerarm02.L", (0.55, -0.2, 0.36)),
    "finger1-1.L": ("wrist.L", (0.555, -0.25, 0.36)),
    "finger1-2.L": ("finger1-1.L", (0.53, -0.28, 0.35)),
    "finger1-3.L": ("finger1-2.L", (0.51, -0.31, 0.34)),
    "finger2-1.L": ("wrist.L", (0.58, -0.30, 0.32)),
    "finger3-1.L": ("wrist.L", (0.6, -0.30, 0.3)),
    "finger4-1.L": ("wrist.L", (0.62, -0.29, 0.29)),
    "finger5-1.L": ("wrist.L", (0.63, -0.27, 0.28)),
    "neck01": ("spine01", (0, 0, 0.8)),
    "head": ("neck01", (0, 0, 0.9)),
    "eye.L": ("head", (0.03, -0.1, 0.95)),
}


def stick_body() -> Body:
    """A body about 1.75 m tall: a barrel for a trunk, and thumbs."""
    bones: dict[str, tuple[str | None, tuple[float, float, float]]] = {}
    for name, (parent, place) in _BONES.items():
        bones[name] = (parent, place)
        if name.endswith(".L"):
            other = parent.replace(".L", ".R") if parent else None
            bones[name.replace(".L", ".R")] = (other, (-place[0], place[1], place[2]))
    names = tuple(bones)
    points, carriers = [], []
    for z in np.arange(-0.1, 0.76, 0.02):
        for angle in np.arange(0, 2 * np.pi, 0.1):
            points.append((0.17 * np.cos(angle), 0.1 * np.sin(angle), z))
            carriers.append("spine03" if z > 0.2 else "root")
    points += [(0.48, -0.34, 0.32), (-0.48, -0.34, 0.32), (0.1, 0, -0.8), (0, 0, 1.0)]
    carriers += ["finger1-3.L", "finger1-3.R", "foot.L", "head"]
    vertices = np.array(points, dtype=np.float64)
    normals = np.tile([0.0, 0.0, 1.0], (len(points), 1))
    return Body(
        vertices=vertices,
        normals=normals,
        triangles=np.array([[0, 1, 2]]),
        bone_indices=np.array([[names.index(carrier)] for carrier in carriers]),
        bone_weights=np.ones((len(points), 1)),
        heads=np.array([bones[name][1] for name in names], dtype=np.float64),
        bones=names,
        parents=tuple(-1 if bones[n][0] is None else names.index(str(bones[n][0])) for n in names),
    )
