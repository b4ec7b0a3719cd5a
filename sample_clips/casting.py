"""Scenarios by seed: body, movement, compensation and camera drawn from ranges.

The ranges are those that readings are fitted and judged on; an unfamiliar clip leaves them in at
least one respect.
"""

from dataclasses import dataclass, replace

import numpy as np

from sample_clips.scenario import (
    Camera,
    Compensation,
    HandPosture,
    Movement,
    Scenario,
    Side,
    Tempo,
    View,
    nominal_heading_deg,
)

_ARM_RAISING = (Movement.FLEXION, Movement.EXTENSION, Movement.ABDUCTION)
#: (low, high) of restricted and of fuller ranges, in the movement's unit.
_RANGES = {
    Movement.FLEXION: ((55.0, 125.0), (120.0, 172.0)),
    Movement.EXTENSION: ((16.0, 40.0), (38.0, 64.0)),
    Movement.ABDUCTION: ((45.0, 115.0), (110.0, 172.0)),
    Movement.EXTERNAL_ROTATION: ((-5.0, 45.0), (35.0, 88.0)),
    Movement.HAND_BEHIND_BACK: ((0.02, 0.35), (0.33, 0.72)),
}
#: (low, high) of very stiff shoulders, in the movement's unit; a reach ends at hip or buttock.
VERY_STIFF_RANGES = {
    Movement.FLEXION: (20.0, 45.0),
    Movement.EXTENSION: (5.0, 15.0),
    Movement.ABDUCTION: (20.0, 45.0),
    Movement.EXTERNAL_ROTATION: (-10.0, 10.0),
    Movement.HAND_BEHIND_BACK: (-0.08, 0.06),
}

#: By how much the peak differs between visits, at most, in the movement's unit.
_NEARLY = {
    movement: 0.03 if movement is Movement.HAND_BEHIND_BACK else 4.0 for movement in Movement
}


@dataclass(frozen=True, slots=True, kw_only=True)
class StratifiedDraw:
    """Even draws, one per quantity: share ``index`` of ``count`` clips that cover a range."""

    seed: int
    index: int
    count: int

    def even(self, low: float, high: float, name: str) -> float:
        """A value such that the clips of one group together cover the range evenly."""
        rng = np.random.default_rng([self.seed, *name.encode()])
        place = int(rng.permutation(self.count)[self.index])
        inside = float(np.random.default_rng([self.seed, self.index, *name.encode()]).random())
        return low + (high - low) * (place + inside) / self.count


def random_scenario(
    *, name: str, movement: Movement, view: View, body: int, seed: int, draw: StratifiedDraw
) -> Scenario:
    """One ordinary clip of a movement, within the familiar ranges."""
    rng = np.random.default_rng([seed, 97])
    side = Side.LEFT if rng.random() < 0.5 else Side.RIGHT
    restricted = draw.even(0, 1, "restricted") < 0.5
    low, high = _RANGES[movement][0 if restricted else 1]
    yaw = draw.even(-15, 15, "yaw")
    return Scenario(
        name=name,
        movement=movement,
        side=side,
        view=view,
        body=body,
        seed=seed,
        peak=round(draw.even(low, high, "peak"), 4),
        heading_deg=round(nominal_heading_deg(view, side) + yaw, 3),
        camera=_camera(rng, draw),
        tempo=_tempo(rng),
        compensation=_compensation(movement, rng),
        rhythm=round(float(rng.uniform(1.85, 2.15)), 3),
        loose_m=round(float(rng.uniform(0, 0.006)), 4),
    )


def make_very_stiff(scenario: Scenario, draw: StratifiedDraw) -> Scenario:
    """The same clip with a peak that a very stiff shoulder reaches."""
    low, high = VERY_STIFF_RANGES[scenario.movement]
    return replace(scenario, peak=round(draw.even(low, high, "stiff peak"), 4))


def make_unfamiliar(scenario: Scenario) -> Scenario:
    """The same clip with at least one thing that familiar clips never show."""
    rng = np.random.default_rng([scenario.seed, 131])
    picks = rng.random(4) < 0.45
    picks[int(rng.integers(4))] = True
    strange = replace(scenario, unfamiliar=True)
    if picks[0]:
        rhythm = rng.uniform(1.2, 1.6) if rng.random() < 0.5 else rng.uniform(2.6, 3.4)
        strange = replace(strange, rhythm=round(float(rhythm), 3))
    if picks[1]:
        strange = replace(strange, loose_m=round(float(rng.uniform(0.012, 0.032)), 4))
    if picks[2]:
        hands = (HandPosture.FLAT, HandPosture.FIST, HandPosture.POINTING)
        strange = replace(strange, hand=hands[int(rng.integers(3))])
    if picks[3]:
        camera = replace(
            scenario.camera,
            hfov_deg=round(float(rng.choice([rng.uniform(50, 58), rng.uniform(74, 90)])), 2),
            barrel=round(float(rng.uniform(0.01, 0.07)), 4),
        )
        strange = replace(strange, camera=camera)
    return strange


def repeat_visit(scenario: Scenario, name: str, visit: int) -> Scenario:
    """The same person, side and camera on another day.

    Clothes and light are others, tempo too; the placement and the peak differ a little.
    """
    seed = scenario.seed + visit
    rng = np.random.default_rng([seed, 151])
    camera = scenario.camera
    return replace(
        scenario,
        name=name,
        seed=seed,
        peak=round(scenario.peak + _NEARLY[scenario.movement] * float(rng.uniform(-1, 1)), 4),
        heading_deg=round(scenario.heading_deg + float(rng.uniform(-3, 3)), 3),
        camera=replace(
            camera,
            distance_m=round(camera.distance_m * float(rng.uniform(0.95, 1.05)), 3),
            pitch_deg=round(camera.pitch_deg + float(rng.uniform(-1, 1)), 3),
            roll_deg=round(camera.roll_deg + float(rng.uniform(-1, 1)), 3),
            aside_m=round(camera.aside_m + float(rng.uniform(-0.1, 0.1)), 3),
        ),
        tempo=_tempo(rng),
        loose_m=round(float(rng.uniform(0, 0.006)), 4),
    )


def _camera(rng: np.random.Generator, draw: StratifiedDraw) -> Camera:
    wide = rng.random() < 0.18
    return Camera(
        width=1280 if wide else 640,
        height=720 if wide else 480,
        fps=15,
        hfov_deg=round(float(rng.uniform(60, 70)), 2),
        distance_m=round(draw.even(1.8, 3.2, "distance"), 3),
        pitch_deg=round(draw.even(-8, 8, "pitch"), 3),
        roll_deg=round(draw.even(-3, 3, "roll"), 3),
        aside_m=round(float(rng.uniform(-0.2, 0.2)), 3),
    )


def _tempo(rng: np.random.Generator) -> Tempo:
    def seconds(low: float, high: float) -> float:
        return round(float(rng.uniform(low, high)), 3)

    return Tempo(
        facing_s=seconds(1.0, 1.4),
        turn_s=seconds(0.8, 1.3),
        neutral_s=seconds(1.0, 1.5),
        move_s=seconds(1.1, 2.2),
        hold_s=seconds(1.35, 1.85),
        return_s=seconds(0.9, 1.6),
    )


def _compensation(movement: Movement, rng: np.random.Generator) -> Compensation:
    def sometimes(share: float, cheat: tuple[float, float], usual: tuple[float, float]) -> float:
        cheats = rng.random() < share
        return round(float(rng.uniform(*(cheat if cheats else usual))), 3)

    if movement in _ARM_RAISING:
        return Compensation(
            elbow_bend_deg=sometimes(0.2, (10, 25), (2, 8)),
            lean_deg=sometimes(0.25, (3, 10), (0, 1.5)),
            shrug_deg=sometimes(0.25, (3, 10), (0, 1.5)),
            out_of_plane_deg=sometimes(0.25, (6, 20), (-3, 5)),
        )
    if movement is Movement.EXTERNAL_ROTATION:
        return Compensation(
            elbow_bend_deg=sometimes(0.3, (-7, 17), (2, 8)),
            shrug_deg=sometimes(0.2, (2, 6), (0, 1)),
            out_of_plane_deg=sometimes(0.15, (5, 14), (-1, 3)),
            trunk_turn_deg=sometimes(0.15, (3, 8), (-1, 1)),
        )
    return Compensation(
        lean_deg=sometimes(0.25, (3, 8), (0, 2)), shrug_deg=sometimes(0.25, (3, 8), (0, 1.5))
    )
