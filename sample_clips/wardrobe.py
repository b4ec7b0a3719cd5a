"""Wardrobe: skin, hair and clothes as colours and outward offsets of the skin."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sample_clips.body import Body

FloatArray = NDArray[np.float64]

_SKINS = (
    (0.96, 0.80, 0.69),
    (0.91, 0.72, 0.58),
    (0.80, 0.60, 0.45),
    (0.66, 0.46, 0.33),
    (0.48, 0.32, 0.22),
    (0.33, 0.21, 0.15),
)
_HAIRS = (
    (0.10, 0.08, 0.07),
    (0.22, 0.14, 0.09),
    (0.40, 0.27, 0.15),
    (0.62, 0.48, 0.28),
    (0.62, 0.60, 0.58),
    (0.82, 0.81, 0.79),
)
_CLOTHS = (
    (0.15, 0.20, 0.38),
    (0.72, 0.15, 0.16),
    (0.20, 0.45, 0.28),
    (0.88, 0.87, 0.84),
    (0.16, 0.16, 0.17),
    (0.85, 0.68, 0.25),
    (0.50, 0.53, 0.57),
    (0.55, 0.30, 0.52),
    (0.35, 0.60, 0.75),
    (0.60, 0.42, 0.28),
)
#: Ends of sleeves along the arm: 0 shoulder, 1 elbow, 2 wrist.
_SLEEVES = (0.18, 0.45, 0.6, 1.0, 1.5, 1.95)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outfit:
    """Colours 0 to 1; lengths of sleeves (0 shoulder, 1 elbow, 2 wrist) and legs (1 knee, 2 ankle).

    ``stripe`` None is plain cloth; ``hair_length_m`` counts down from the eyes, None is bald.
    """

    skin: tuple[float, float, float]
    hair: tuple[float, float, float]
    shirt: tuple[float, float, float]
    stripe: tuple[float, float, float] | None
    trousers: tuple[float, float, float]
    shoes: tuple[float, float, float]
    sleeve: float
    leg: float
    hair_length_m: float | None
    stripe_m: float


def outfit_of(seed: int) -> Outfit:
    """The outfit that belongs to a seed."""
    rng = np.random.default_rng([seed, 23])

    def one_of(choices: tuple[tuple[float, float, float], ...]) -> tuple[float, float, float]:
        shade = rng.uniform(0.85, 1.1)
        picked = choices[int(rng.integers(len(choices)))]
        return tuple(float(min(1.0, part * shade)) for part in picked)  # type: ignore[return-value]

    striped = rng.random() < 0.3
    bald = rng.random() < 0.12
    return Outfit(
        skin=one_of(_SKINS),
        hair=one_of(_HAIRS),
        shirt=one_of(_CLOTHS),
        stripe=one_of(_CLOTHS) if striped else None,
        trousers=one_of(_CLOTHS),
        shoes=one_of(_CLOTHS),
        sleeve=float(rng.choice(_SLEEVES)),
        leg=float(rng.choice([0.8, 1.6, 1.95])),
        hair_length_m=None if bald else float(rng.choice([-0.01, 0.03, 0.08, 0.16])),
        stripe_m=float(rng.uniform(0.05, 0.09)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class ClothedSkin:
    """Colours (V, 3) 0 to 1 and outward offsets (V,) in metres of a body's vertices."""

    colours: FloatArray
    offsets_m: FloatArray


def dress(body: Body, outfit: Outfit, loose_m: float, seed: int) -> ClothedSkin:
    """Dress a body in its rest pose.

    ``loose_m`` lets the cloth stand off, with folds, beyond a close fit; it moves with the skin
    (no dynamics).
    """
    rng = np.random.default_rng([seed, 37])
    vertices = body.vertices
    strongest = body.bone_indices[np.arange(len(vertices)), np.argmax(body.bone_weights, axis=1)]
    names = np.array([bone.split(".")[0] for bone in body.bones])[strongest]
    colours = np.tile(np.array(outfit.skin), (len(vertices), 1))
    offsets = np.zeros(len(vertices))

    arm = _along_limb(body, ("upperarm01", "lowerarm01", "wrist"))
    leg = _along_limb(body, ("upperleg01", "lowerleg01", "foot"))
    on_arm = np.isin(names, ("upperarm01", "upperarm02", "lowerarm01", "lowerarm02"))
    on_leg = np.char.startswith(names, "upperleg") | np.char.startswith(names, "lowerleg")
    on_foot = np.char.startswith(names, "foot") | np.char.startswith(names, "toe")
    on_trunk = np.isin(names, ("root", "pelvis", "clavicle", "shoulder01"))
    on_trunk |= np.char.startswith(names, "spine")
    hip_z, neck_z = body.head("upperleg01.L")[2], body.head("neck01")[2]
    waist_z = hip_z + 0.1 * (neck_z - hip_z)
    collar = vertices[:, 2] < neck_z + 0.01

    shirt = (on_trunk & collar & (vertices[:, 2] > waist_z - 0.06)) | (
        on_arm & (arm < outfit.sleeve)
    )
    trousers = (on_trunk & (vertices[:, 2] <= waist_z - 0.06)) | (on_leg & (leg < outfit.leg))
    trousers |= on_leg & (leg < 0.3)
    colours[trousers] = outfit.trousers
    colours[on_foot] = outfit.shoes
    colours[shirt] = outfit.shirt
    if outfit.stripe is not None:
        along = np.where(on_arm, arm * 0.28, vertices[:, 2])
        band = np.floor(along / outfit.stripe_m) % 2 == 0
        colours[shirt & band] = outfit.stripe
    folds = _folds(vertices, rng)
    cloth = shirt | trousers
    colours[cloth] *= (1 + 0.06 * folds[cloth])[:, None]
    offsets[shirt] = 0.006 + loose_m * (1 + 0.45 * folds[shirt])
    offsets[trousers] = 0.006 + 0.5 * loose_m * (1 + 0.45 * folds[trousers])
    offsets[on_foot] = 0.008
    _paint_head(body, names, outfit, colours, offsets)
    return ClothedSkin(colours=np.clip(colours, 0, 1), offsets_m=offsets)


def _along_limb(body: Body, joints: tuple[str, str, str]) -> FloatArray:
    """Place along a limb: 0 at its root, 1 at the middle joint, 2 at the end, shape (V,)."""
    place = np.empty(len(body.vertices))
    for ending, mask in ((".L", body.vertices[:, 0] >= 0), (".R", body.vertices[:, 0] < 0)):
        start, middle, end = (body.head(joint + ending) for joint in joints)
        points = body.vertices[mask]
        first = (points - start) @ (middle - start) / ((middle - start) @ (middle - start))
        second = (points - middle) @ (end - middle) / ((end - middle) @ (end - middle))
        place[mask] = np.where(second > 0, 1 + np.maximum(second, 0), np.minimum(first, 1))
    return place


def _folds(vertices: FloatArray, rng: np.random.Generator) -> FloatArray:
    """Smooth bumps over the body, about -1 to 1, shape (V,)."""
    bumps = np.zeros(len(vertices))
    for _ in range(6):
        wave = rng.normal(size=3)
        wave *= 2 * np.pi / rng.uniform(0.08, 0.25) / np.linalg.norm(wave)
        bumps += np.sin(vertices @ wave + rng.uniform(0, 2 * np.pi))
    return np.asarray(bumps / 3.0)


def _paint_head(
    body: Body, names: NDArray[np.str_], outfit: Outfit, colours: FloatArray, offsets: FloatArray
) -> None:
    eye = (body.head("eye.L") + body.head("eye.R")) / 2
    half = float(body.head("eye.L")[0])
    at = (body.vertices - eye) / (half / 0.032)
    on_head = np.isin(names, ("head", "neck03", "neck02"))
    front = at[:, 1] < 0.03
    brow = on_head & front & (np.abs(at[:, 2] - 0.022) < 0.006)
    brow &= (np.abs(at[:, 0]) > 0.012) & (np.abs(at[:, 0]) < 0.05)
    colours[brow] = np.array(outfit.hair) * 0.7
    lips = on_head & (np.abs(at[:, 2] + 0.068) < 0.009) & (np.abs(at[:, 0]) < 0.024) & front
    colours[lips] = np.array(outfit.skin) * np.array([0.82, 0.55, 0.55])
    on_eye = names == "eye"
    colours[on_eye] = (0.93, 0.92, 0.9)
    for bone in ("eye.L", "eye.R"):
        centre = body.head(bone)
        near = on_eye & (np.hypot(*(body.vertices - centre)[:, [0, 2]].T) < 0.0065)
        colours[near & (body.vertices[:, 1] < centre[1])] = (0.12, 0.08, 0.06)
    if outfit.hair_length_m is None:
        return
    # The hairline runs from above the forehead down behind the ears.
    hairline = np.where(at[:, 1] < 0.05, 0.055, np.where(at[:, 1] < 0.085, 0.02, -9.0))
    hair = on_head & (at[:, 2] > hairline) & (at[:, 2] > -outfit.hair_length_m)
    colours[hair] = outfit.hair
    offsets[hair] = 0.012
