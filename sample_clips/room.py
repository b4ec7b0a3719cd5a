"""Room behind the person: floor, walls, objects on them, and the light."""

from dataclasses import dataclass

import numpy as np

Colour = tuple[float, float, float]

_WALLS: tuple[Colour, ...] = (
    (0.86, 0.84, 0.79),
    (0.74, 0.79, 0.82),
    (0.80, 0.74, 0.66),
    (0.70, 0.76, 0.68),
    (0.90, 0.89, 0.88),
    (0.45, 0.48, 0.52),
)
_FLOORS: tuple[Colour, ...] = (
    (0.55, 0.40, 0.27),
    (0.42, 0.42, 0.43),
    (0.68, 0.60, 0.48),
    (0.35, 0.27, 0.22),
)
_THINGS: tuple[Colour, ...] = (
    (0.50, 0.32, 0.20),
    (0.25, 0.35, 0.45),
    (0.75, 0.70, 0.60),
    (0.30, 0.45, 0.28),
    (0.70, 0.25, 0.20),
    (0.20, 0.20, 0.22),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """An upright box: (x low, x high, y low, y high, z low, z high) in metres, and its colour."""

    bounds: tuple[float, float, float, float, float, float]
    colour: Colour


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Boxes, and the light.

    Attributes
    ----------
    lamp
        Direction from the person to the main light, not normalised.
    lamp_strength, fill_strength, ambient
        Strength of the main light, of the light from the camera's side, and of light from
        everywhere (0 to 1).
    noise
        Strength of the camera's noise, in grey levels.
    """

    boxes: tuple[Box, ...]
    lamp: tuple[float, float, float]
    lamp_strength: float
    fill_strength: float
    ambient: float
    noise: int


def room_of(seed: int) -> Room:
    """The room that belongs to a seed."""
    rng = np.random.default_rng([seed, 53])
    back = float(rng.uniform(1.2, 2.8))
    wall = _shaded(_WALLS, rng)
    boxes = [
        Box(bounds=(-6, 6, -6, back + 0.1, -0.1, 0), colour=_shaded(_FLOORS, rng)),
        Box(bounds=(-6, 6, back, back + 0.1, 0, 5), colour=wall),
        Box(bounds=(-6, 6, back - 0.02, back, 0, 0.09), colour=(0.92, 0.92, 0.9)),
    ]
    if rng.random() < 0.5:
        side = float(rng.choice([-1, 1])) * float(rng.uniform(2.0, 3.0))
        shade = tuple(0.88 * part for part in wall)
        boxes.append(
            Box(bounds=(side - 0.05, side + 0.05, -1, back, 0, 5), colour=shade)  # type: ignore[arg-type]
        )
    for _ in range(int(rng.integers(1, 5))):
        boxes += _thing(rng, back)
    return Room(
        boxes=tuple(boxes),
        lamp=(float(rng.uniform(-2, 2)), float(rng.uniform(-2.5, -0.6)), float(rng.uniform(1, 3))),
        lamp_strength=float(rng.uniform(0.45, 0.75)),
        fill_strength=float(rng.uniform(0.2, 0.4)),
        ambient=float(rng.uniform(0.3, 0.5)),
        noise=int(rng.integers(3, 8)),
    )


def _shaded(choices: tuple[Colour, ...], rng: np.random.Generator) -> Colour:
    red, green, blue = choices[int(rng.integers(len(choices)))]
    shade = float(rng.uniform(0.85, 1.08))
    return min(1.0, red * shade), min(1.0, green * shade), min(1.0, blue * shade)


def _thing(rng: np.random.Generator, back: float) -> list[Box]:
    """A picture, a door, a shelf or a window somewhere on the wall behind."""
    x = float(rng.uniform(-2.5, 2.5))
    colour = _shaded(_THINGS, rng)
    kind = int(rng.integers(4))
    if kind == 0:
        half, z = float(rng.uniform(0.2, 0.45)), float(rng.uniform(1.2, 1.8))
        tall = float(rng.uniform(0.3, 0.6))
        frame = Box(bounds=(x - half, x + half, back - 0.03, back, z, z + tall), colour=colour)
        inner = (x - half + 0.04, x + half - 0.04, back - 0.04, back, z + 0.04, z + tall - 0.04)
        return [frame, Box(bounds=inner, colour=_shaded(_WALLS, rng))]
    if kind == 1:
        door = Box(bounds=(x - 0.45, x + 0.45, back - 0.04, back, 0, 2.05), colour=colour)
        knob = (x + 0.34, x + 0.4, back - 0.1, back, 1.0, 1.05)
        return [door, Box(bounds=knob, colour=(0.75, 0.72, 0.6))]
    if kind == 2:
        boxes = [Box(bounds=(x - 0.5, x + 0.5, back - 0.3, back, 0.0, 1.1), colour=colour)]
        for step in range(5):
            left = x - 0.42 + 0.17 * step
            top = 1.1 + float(rng.uniform(0.12, 0.3))
            boxes.append(
                Box(
                    bounds=(left, left + 0.1, back - 0.25, back - 0.1, 1.1, top),
                    colour=_shaded(_THINGS, rng),
                )
            )
        return boxes
    pane = Box(bounds=(x - 0.6, x + 0.6, back - 0.02, back, 0.9, 2.1), colour=(0.85, 0.92, 0.98))
    bars = [
        Box(bounds=(x - 0.66, x - 0.58, back - 0.05, back, 0.85, 2.15), colour=(0.95, 0.95, 0.94)),
        Box(bounds=(x - 0.03, x + 0.03, back - 0.05, back, 0.85, 2.15), colour=(0.95, 0.95, 0.94)),
        Box(bounds=(x + 0.58, x + 0.66, back - 0.05, back, 0.85, 2.15), colour=(0.95, 0.95, 0.94)),
    ]
    return [pane, *bars]
