"""Roster of the clips that come with the project.

Their bodies take no part in the accuracy bench.
"""

from sample_clips.body import shape_of, stature_guess_m
from sample_clips.scenario import (
    Camera,
    Compensation,
    ExtraEvent,
    Movement,
    Scenario,
    Side,
    Tempo,
    View,
    nominal_heading_deg,
)

#: Bodies of the sample clips, kept out of the bench.
SAMPLE_BODIES = tuple(range(28, 36))

_PORTRAIT = Camera(width=480, height=640, fps=24, hfov_deg=50.0, distance_m=2.6)


def sample_scenarios() -> tuple[Scenario, ...]:
    """All sample clips: those to be read, then those to be refused."""
    return (*_readings(), *_refusals())


def _readings() -> tuple[Scenario, ...]:
    flexion, extension, abduction = Movement.FLEXION, Movement.EXTENSION, Movement.ABDUCTION
    rotation, reach = Movement.EXTERNAL_ROTATION, Movement.HAND_BEHIND_BACK
    left, right = Side.LEFT, Side.RIGHT
    side, front, back, oblique = View.SIDE, View.FRONT, View.BACK, View.OBLIQUE
    return (
        _clip("flexion-left-full", flexion, left, side, 28, 7, 154.0, yaw=4),
        _clip("flexion-left-restricted", flexion, left, side, 29, 3, 82.0, yaw=-5, lean=3.0),
        _clip("flexion-right-full", flexion, right, side, 31, 16, 146.0, camera=_PORTRAIT),
        _clip(
            "flexion-right-three-repeats",
            flexion,
            right,
            side,
            30,
            22,
            112.0,
            yaw=-3,
            peers=(5.0, -3.0),
        ),
        _clip("extension-left-full", extension, left, side, 32, 17, 52.0, yaw=6),
        _clip("extension-right-restricted", extension, right, side, 33, 2, 30.0, yaw=-4),
        _clip("abduction-left-full", abduction, left, front, 34, 11, 150.0, yaw=5),
        _clip(
            "abduction-right-restricted", abduction, right, front, 35, 47, 78.0, yaw=-6, shrug=5.0
        ),
        _clip("abduction-right-from-behind", abduction, right, back, 28, 38, 124.0, yaw=3),
        _clip("external-rotation-left-full", rotation, left, oblique, 30, 41, 62.0, yaw=4),
        _clip("external-rotation-right-restricted", rotation, right, oblique, 29, 45, 18.0, yaw=-5),
        _clip("hand-behind-back-left-full", reach, left, back, 31, 53, 0.6, yaw=4),
        _clip("hand-behind-back-right-restricted", reach, right, back, 33, 14, 0.24, yaw=-3),
        _clip("hand-behind-back-right-from-side", reach, right, side, 34, 72, 0.45, yaw=3),
    )


def _refusals() -> tuple[Scenario, ...]:
    tall_m = stature_guess_m(shape_of(32))
    small_m = stature_guess_m(shape_of(29))
    return (
        _clip(
            "flexion-left-filmed-from-front",
            Movement.FLEXION,
            Side.LEFT,
            View.SIDE,
            30,
            62,
            110.0,
            yaw=90.0,
            expected=("wrong-view",),
        ),
        _clip(
            "abduction-left-hips-outside",
            Movement.ABDUCTION,
            Side.LEFT,
            View.FRONT,
            29,
            69,
            100.0,
            camera=Camera(fps=20, distance_m=1.7, aim_m=0.53 * small_m + 0.9),
            expected=("out-of-picture",),
        ),
        _clip(
            "flexion-right-hand-leaves-top",
            Movement.FLEXION,
            Side.RIGHT,
            View.SIDE,
            32,
            78,
            158.0,
            camera=Camera(fps=20, distance_m=1.02 * tall_m, aim_m=0.54 * tall_m),
            expected=("out-of-picture",),
        ),
        _clip(
            "flexion-left-walks-off",
            Movement.FLEXION,
            Side.LEFT,
            View.SIDE,
            35,
            86,
            120.0,
            story=ExtraEvent.WALKS_OFF,
            expected=("nobody", "person-lost"),
        ),
    )


def _clip(
    name: str,
    movement: Movement,
    side: Side,
    view: View,
    body: int,
    seed: int,
    peak: float,
    *,
    yaw: float = 0.0,
    lean: float = 0.0,
    shrug: float = 0.0,
    peers: tuple[float, ...] = (),
    camera: Camera | None = None,
    story: ExtraEvent = ExtraEvent.ORDINARY,
    expected: tuple[str, ...] = ("reading",),
) -> Scenario:
    return Scenario(
        name=name,
        movement=movement,
        side=side,
        view=view,
        body=body,
        seed=seed,
        peak=peak,
        heading_deg=nominal_heading_deg(view, side) + yaw,
        expected=expected,
        camera=camera or Camera(fps=20, distance_m=2.4, pitch_deg=1.5, roll_deg=-0.5),
        tempo=Tempo(hold_s=1.8),
        compensation=Compensation(lean_deg=lean, shrug_deg=shrug),
        peers=peers,
        story=story,
    )
