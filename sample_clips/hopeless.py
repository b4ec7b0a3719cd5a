"""Clips that must be refused, and readable clips that resemble them.

Reasons are the codes that a refusal may give; any of those listed is right.
"""

from dataclasses import replace

from sample_clips.body import shape_of, stature_guess_m
from sample_clips.casting import StratifiedDraw, random_scenario
from sample_clips.scenario import Camera, Compensation, ExtraEvent, Movement, Scenario, View

#: Kinds of clips that must be refused.
HOPELESS_KINDS = (
    "flexion-from-front",
    "flexion-far-arm",
    "extension-far-arm",
    "abduction-from-side",
    "rotation-from-front",
    "reach-from-front",
    "hips-outside",
    "hand-leaves-top",
    "walks-off",
    "turned-picture",
    "second-crosses",
    "elbow-very-bent",
    "far-out-of-plane",
    "no-hold",
)
#: Kinds of clips that must not be refused though they come near a limit.
NEAR_MISS_KINDS = (
    "flexion-yaw-near-limit",
    "abduction-yaw-near-limit",
    "elbow-slightly-bent",
    "leans-slightly",
    "hand-near-top",
    "hips-near-bottom",
    "short-hold",
    "small-flexion",
    "stands-aside",
    "rotation-placement-off",
)


def unreadable_scenario(kind: str, body: int, seed: int) -> Scenario:
    """One clip that must be refused.

    Raises
    ------
    ValueError
        For a kind that is not in ``HOPELESS_KINDS``.
    """
    name = f"hopeless-{kind}-{seed % 100:02d}"
    flexion = _plain(name, Movement.FLEXION, View.SIDE, body, seed)
    abduction = _plain(name, Movement.ABDUCTION, View.FRONT, body, seed)
    stature_m = stature_guess_m(shape_of(body))
    match kind:
        case "flexion-from-front":
            return _refused(replace(flexion, heading_deg=8.0), "wrong-view", "out-of-plane")
        case "flexion-far-arm":
            return _far(flexion)
        case "extension-far-arm":
            return _far(_plain(name, Movement.EXTENSION, View.SIDE, body, seed))
        case "abduction-from-side":
            side_on = replace(abduction, heading_deg=-85.0 * abduction.side.outward)
            return _refused(side_on, "wrong-view", "out-of-plane", "hidden")
        case "rotation-from-front":
            clip = _plain(name, Movement.EXTERNAL_ROTATION, View.OBLIQUE, body, seed)
            return _refused(
                replace(clip, heading_deg=3.0, peak=65.0), "wrong-view", "no-facing-stance"
            )
        case "reach-from-front":
            clip = _plain(name, Movement.HAND_BEHIND_BACK, View.BACK, body, seed)
            return _refused(replace(clip, heading_deg=5.0), "wrong-view", "hidden", "no-move")
        case "hips-outside":
            camera = Camera(distance_m=1.7, aim_m=0.53 * stature_m + 0.9)
            return _refused(replace(abduction, camera=camera), "out-of-picture")
        case "hand-leaves-top":
            camera = Camera(distance_m=stature_m, aim_m=0.55 * stature_m)
            return _refused(replace(flexion, camera=camera, peak=160.0), "out-of-picture")
        case "walks-off":
            gone = replace(flexion, story=ExtraEvent.WALKS_OFF)
            return _refused(gone, "nobody", "person-lost", "other-person", "no-move")
        case "turned-picture":
            camera = Camera(roll_deg=90.0, distance_m=3.0, aim_m=0.55 * stature_m)
            return _refused(replace(abduction, camera=camera), "turned-picture")
        case "second-crosses":
            crossed = replace(
                flexion, story=ExtraEvent.SECOND_CROSSES, second_body=body + 1, peak=110.0
            )
            return _refused(crossed, "two-people", "other-person", "person-lost", "hidden")
        case "elbow-very-bent":
            return _refused(_cheating(flexion, elbow_bend_deg=60.0), "elbow-bent")
        case "far-out-of-plane":
            clip = replace(_cheating(flexion, out_of_plane_deg=50.0), peak=80.0)
            return _refused(clip, "out-of-plane", "wrong-view", "limb-length")
        case "no-hold":
            tempo = replace(flexion.tempo, hold_s=0.1, move_s=1.9, return_s=1.9)
            return _refused(replace(flexion, tempo=tempo, peak=140.0), "no-hold")
    raise ValueError(f"unknown kind {kind!r}; known: {', '.join(HOPELESS_KINDS)}")


def readable_near_miss(kind: str, body: int, seed: int) -> Scenario:
    """One clip that must be read.

    Raises
    ------
    ValueError
        For a kind that is not in ``NEAR_MISS_KINDS``.
    """
    name = f"near-miss-{kind}-{seed % 100:02d}"
    flexion = _plain(name, Movement.FLEXION, View.SIDE, body, seed)
    abduction = _plain(name, Movement.ABDUCTION, View.FRONT, body, seed)
    match kind:
        case "flexion-yaw-near-limit":
            return replace(flexion, heading_deg=flexion.heading_deg + 17.0)
        case "abduction-yaw-near-limit":
            return replace(abduction, heading_deg=-18.0)
        case "elbow-slightly-bent":
            return _cheating(abduction, elbow_bend_deg=16.0)
        case "leans-slightly":
            return _cheating(flexion, lean_deg=7.0)
        case "hand-near-top":
            return replace(flexion, camera=replace(flexion.camera, distance_m=1.6), peak=165.0)
        case "hips-near-bottom":
            return replace(abduction, camera=replace(abduction.camera, distance_m=1.7), peak=70.0)
        case "short-hold":
            return replace(flexion, tempo=replace(flexion.tempo, hold_s=1.25))
        case "small-flexion":
            return replace(flexion, peak=38.0)
        case "stands-aside":
            return replace(flexion, camera=replace(flexion.camera, aside_m=-0.6, distance_m=2.9))
        case "rotation-placement-off":
            clip = _plain(name, Movement.EXTERNAL_ROTATION, View.OBLIQUE, body, seed)
            return replace(clip, heading_deg=clip.heading_deg + 9.0, peak=35.0)
    raise ValueError(f"unknown kind {kind!r}; known: {', '.join(NEAR_MISS_KINDS)}")


def _plain(name: str, movement: Movement, view: View, body: int, seed: int) -> Scenario:
    """A clean clip: no compensation, straight placement."""
    clip = random_scenario(
        name=name,
        movement=movement,
        view=view,
        body=body,
        seed=seed,
        draw=StratifiedDraw(seed=seed, index=0, count=1),
    )
    out = clip.side.outward
    heading = {View.SIDE: -90.0 * out, View.OBLIQUE: -45.0 * out, View.BACK: 180.0}.get(view, 0.0)
    return replace(
        clip,
        heading_deg=heading,
        compensation=Compensation(),
        camera=Camera(distance_m=clip.camera.distance_m, hfov_deg=clip.camera.hfov_deg),
        peak=_clean_peak(movement),
    )


def _clean_peak(movement: Movement) -> float:
    return {
        Movement.FLEXION: 120.0,
        Movement.EXTENSION: 45.0,
        Movement.ABDUCTION: 110.0,
        Movement.EXTERNAL_ROTATION: 50.0,
        Movement.HAND_BEHIND_BACK: 0.45,
    }[movement]


def _far(scenario: Scenario) -> Scenario:
    turned = replace(scenario, heading_deg=90.0 * scenario.side.outward)
    return _refused(turned, "far-arm", "wrong-view", "hidden")


def _cheating(scenario: Scenario, **cheat: float) -> Scenario:
    return replace(scenario, compensation=replace(scenario.compensation, **cheat))


def _refused(scenario: Scenario, *reasons: str) -> Scenario:
    return replace(scenario, expected=reasons)
