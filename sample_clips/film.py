"""Filming: poses, renders and encodes every frame of a scenario, and writes its truth.

Needs PyVista and the ``ffmpeg`` program, which only making clips needs.
"""

import subprocess
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from sample_clips.body import Body, load_body, shape_of
from sample_clips.lens import VirtualLens, fitting_lens, place_lens
from sample_clips.motion import MotionPhase, MotionState, frame_states, plan_segments
from sample_clips.person import VirtualPerson
from sample_clips.scenario import (
    Camera,
    Compensation,
    ExtraEvent,
    Movement,
    Scenario,
    Side,
    View,
    nominal_heading_deg,
)
from sample_clips.skeleton import PosedBones
from sample_clips.stage import SceneRenderer
from sample_clips.truth import JOINTS, FrameTruth, frame_truth, joint_positions, write_frames
from sample_clips.wardrobe import outfit_of

FloatArray = NDArray[np.float64]
#: No room is deeper than this, in metres.
_FARTHEST_M = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PosedFrame:
    """One posed frame: the moment, the bones, the joints by name, and their truth."""

    moment: MotionState
    bones: PosedBones
    joints: dict[str, FloatArray]
    truth: FrameTruth


def pose_frames(person: VirtualPerson, scenario: Scenario) -> tuple[PosedFrame, ...]:
    """Pose every frame of a scenario."""
    return tuple(posed_frame(person, now, person.pose(now)) for now in frame_states(scenario))


def posed_frame(person: VirtualPerson, now: MotionState, bones: PosedBones) -> PosedFrame:
    """The joints and the truth of posed bones."""
    scenario = person.scenario
    tips = {side: person.thumb_tip(bones, side) for side in Side}
    joints = joint_positions(person.body, bones, tips)
    truth = frame_truth(joints, person.thorax_forward(bones), scenario.movement, scenario.side)
    return PosedFrame(moment=now, bones=bones, joints=joints, truth=truth)


def stand_camera(scenario: Scenario, shots: tuple[PosedFrame, ...]) -> tuple[Camera, VirtualLens]:
    """Stand the camera so that hips, head and the measured hand are in the picture.

    A camera that is too near for that is moved back. A scenario with a height to aim at is
    filmed as it says, whatever that cuts off.

    Raises
    ------
    ValueError
        When no distance shows what matters.
    """
    camera = scenario.camera
    if camera.aim_m is not None:
        return camera, place_lens(camera, camera.aim_m)
    points = []
    for shot in shots:
        if shot.moment.phase is MotionPhase.AWAY:
            continue
        joints = shot.joints
        wrist, elbow = (joints[f"{scenario.side}_{name}"] for name in ("wrist", "elbow"))
        top_of_head = joints["c7"] + np.array([0.0, 0.0, 0.28])
        finger_tips = wrist + 0.75 * (wrist - elbow)
        points += [*joints.values(), top_of_head, finger_tips]
    wanted = np.array(points)
    while (lens := fitting_lens(camera, wanted)) is None:
        if camera.distance_m > _FARTHEST_M:
            raise ValueError(f"{scenario.name}: the movement fits no picture")
        camera = replace(camera, distance_m=round(camera.distance_m + 0.1, 3))
    return camera, lens


def render_clip(
    scenario: Scenario, folder: Path, bodies: Path, quality: int = 24
) -> dict[str, Any]:
    """Make one clip: ``NAME.mp4`` and ``NAME.csv`` in a folder.

    Parameters
    ----------
    bodies
        Folder where bodies are kept.
    quality
        The encoder's constant rate factor; lower is better and larger.

    Returns
    -------
    The clip's entry for ``truth.json``.
    """
    person = VirtualPerson(load_body(shape_of(scenario.body), bodies), scenario)
    shots = pose_frames(person, scenario)
    camera, lens = stand_camera(scenario, shots)
    scenario = replace(scenario, camera=camera)
    passer = _passer(scenario, bodies)
    render_video(
        scenario, shots, lens, person.body, passer, folder / f"{scenario.name}.mp4", quality
    )
    return truth_entry(scenario, shots, lens)


def render_video(
    scenario: Scenario,
    shots: tuple[PosedFrame, ...],
    lens: VirtualLens,
    body: Body,
    passer: VirtualPerson | None,
    clip: Path,
    quality: int,
) -> None:
    """Render and encode shots of one body, and write the truth file beside the clip.

    Raises
    ------
    RuntimeError
        When the encoder fails; nothing is left under the clip's name then.
    """
    stage = SceneRenderer(
        scenario.seed, lens, with_shadow=scenario.story is not ExtraEvent.WALKS_OFF
    )
    stage.add(0, body, scenario.seed, scenario.loose_m)
    if passer is not None:
        stage.add(1, passer.body, passer.scenario.seed, 0.0)
    partial = clip.with_suffix(".part.mp4")
    encoder = subprocess.Popen(
        _encoder_command(scenario, stage.room.noise, quality, partial), stdin=subprocess.PIPE
    )
    assert encoder.stdin is not None
    length_s = shots[-1].moment.time_s
    try:
        for shot in shots:
            stage.move(0, shot.bones)
            if passer is not None:
                across = np.array([6.0 * shot.moment.time_s / length_s - 3.0, -0.7, 0.0])
                stage.move(1, passer.pose(_walking(shot.moment)), across)
            encoder.stdin.write(stage.picture().tobytes())
    finally:
        encoder.stdin.close()
        failed = encoder.wait()
        stage.close()
    if failed:
        raise RuntimeError(f"ffmpeg could not write {partial.name} (exit code {failed})")
    write_frames(clip.with_suffix(".csv"), [_row(shot, lens) for shot in shots])
    partial.replace(clip)


def truth_entry(
    scenario: Scenario, shots: tuple[PosedFrame, ...], lens: VirtualLens
) -> dict[str, Any]:
    """What ``truth.json`` says about a clip."""
    holds = []
    for segment in plan_segments(scenario):
        if segment.phase is not MotionPhase.HOLD:
            continue
        inside = [
            s
            for s in shots
            if s.moment.phase is MotionPhase.HOLD and s.moment.repeat == segment.repeat
        ]
        if not inside:
            continue
        holds.append(
            {
                "value": round(float(np.mean([s.truth.value for s in inside])), 4),
                "start_s": round(segment.start_s, 4),
                "end_s": round(segment.end_s, 4),
                "elbow_flexion_deg": _mean(inside, "elbow_flexion_deg"),
                "trunk_lean_deg": _mean(inside, "trunk_lean_deg"),
                "out_of_plane_deg": _mean(inside, "out_of_plane_deg"),
                "heading_deg": _mean(inside, "heading_deg"),
            }
        )
    camera = asdict(scenario.camera)
    camera["yaw_deg"] = round(
        scenario.heading_deg - nominal_heading_deg(scenario.view, scenario.side), 3
    )
    camera["height_m"] = round(float(lens.position[2]), 3)
    camera["focal_px"] = round(lens.focal_px, 3)
    return {
        "file": f"{scenario.name}.mp4",
        "movement": scenario.movement.value,
        "side": scenario.side.value,
        "view": scenario.view.value,
        "expected": list(scenario.expected),
        "unit": "fraction" if scenario.movement is Movement.HAND_BEHIND_BACK else "deg",
        "holds": holds,
        "body": scenario.body,
        "seed": scenario.seed,
        "c7_height_m": round(float(shots[0].joints["c7"][2]), 3),
        "camera": camera,
        "compensation": asdict(scenario.compensation),
        "posture": asdict(scenario.posture),
        "rhythm": scenario.rhythm,
        "loose_m": scenario.loose_m,
        "hand": scenario.hand.value,
        "story": scenario.story.value,
        "unfamiliar": scenario.unfamiliar,
        "sleeve": outfit_of(scenario.seed).sleeve,
        "frames": len(shots),
        "fps": scenario.camera.fps,
    }


def _mean(shots: list[PosedFrame], name: str) -> float:
    return round(float(np.mean([getattr(shot.truth, name) for shot in shots])), 2)


def _row(shot: PosedFrame, lens: VirtualLens) -> list[str]:
    truth = shot.truth
    pixels = lens.project(np.array([shot.joints[name] for name in JOINTS]))
    return [
        f"{shot.moment.time_s:.4f}",
        shot.moment.phase.value,
        str(shot.moment.repeat),
        f"{truth.value:.4f}",
        f"{truth.elbow_flexion_deg:.2f}",
        f"{truth.trunk_lean_deg:.2f}",
        f"{truth.out_of_plane_deg:.2f}",
        f"{truth.heading_deg:.2f}",
        *(f"{value:.2f}" for value in pixels.ravel()),
    ]


def _passer(scenario: Scenario, bodies: Path) -> VirtualPerson | None:
    if scenario.story is not ExtraEvent.SECOND_CROSSES or scenario.second_body is None:
        return None
    walk = Scenario(
        name="passer",
        movement=Movement.FLEXION,
        side=Side.LEFT,
        view=View.SIDE,
        body=scenario.second_body,
        seed=scenario.seed + 1,
        peak=0.0,
        heading_deg=90.0,
        compensation=Compensation(),
    )
    return VirtualPerson(load_body(shape_of(scenario.second_body), bodies), walk)


def _walking(now: MotionState) -> MotionState:
    return MotionState(
        time_s=now.time_s,
        phase=MotionPhase.NEUTRAL,
        repeat=0,
        raised=0,
        turned=1,
        squared=1,
        gone=0.01,
    )


def _encoder_command(scenario: Scenario, noise: int, quality: int, target: Path) -> list[str]:
    camera = scenario.camera
    filters = f"gblur=sigma=0.55,noise=alls={noise}:allf=t:all_seed={scenario.seed % 10_000}"
    return [
        *("ffmpeg", "-nostdin", "-loglevel", "error", "-y", "-f", "rawvideo"),
        *("-pix_fmt", "rgb24", "-s", f"{camera.width}x{camera.height}"),
        *("-r", str(camera.fps), "-i", "-", "-vf", filters, "-threads", "1"),
        *("-c:v", "libx264", "-preset", "veryfast", "-crf", str(quality)),
        *("-pix_fmt", "yuv420p", "-movflags", "+faststart", str(target)),
    ]
