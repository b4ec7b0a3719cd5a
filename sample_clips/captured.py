"""Clips of recorded motion: it drives the virtual person's arms, so that the truth is known.

The motion file stays where it is; nothing of it is kept here. Its arm directions, seen from its
own trunk, are given to the person, whose joints then tell the truth as in any other clip.
"""

import argparse
import json
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from sample_clips.arm import ArmGoal
from sample_clips.body import bodies_folder, load_body, shape_of
from sample_clips.bvh import Motion, read_bvh
from sample_clips.film import PosedFrame, posed_frame, render_video, stand_camera, truth_entry
from sample_clips.motion import MotionPhase, MotionState
from sample_clips.person import VirtualPerson
from sample_clips.scenario import Camera, Movement, Scenario, Side, View

FloatArray = NDArray[np.float64]


def arm_goals(motion: Motion) -> list[dict[Side, ArmGoal]]:
    """Both arms of every frame, in the frame of the thorax (person faces -y, left is +x).

    Raises
    ------
    ValueError
        When the file names its joints otherwise than ``LeftShoulder``, ``LeftElbow`` and so on.
    """
    wanted = [f"{side}{joint}" for side in ("Left", "Right") for joint in _JOINTS]
    missing = [name for name in wanted if name not in motion.positions]
    if missing:
        raise ValueError(f"the motion lacks the joints {', '.join(missing)}")
    at = motion.positions
    hips = (at["LeftHip"] + at["RightHip"]) / 2
    shoulders = (at["LeftShoulder"] + at["RightShoulder"]) / 2
    goals = []
    for frame in range(len(hips)):
        up = _unit(shoulders[frame] - hips[frame])
        left = at["LeftShoulder"][frame] - at["RightShoulder"][frame]
        left = _unit(left - up * (left @ up))
        # Rows: the person's x (left), y (backwards) and z (up).
        view = np.array([left, np.cross(up, left), up])
        goals.append({side: _goal(at, side, frame, view) for side in Side})
    return goals


_JOINTS = ("Hip", "Shoulder", "Elbow", "Wrist")


def _goal(at: dict[str, FloatArray], side: Side, frame: int, view: FloatArray) -> ArmGoal:
    name = side.value.capitalize()
    shoulder, elbow, wrist = (at[f"{name}{joint}"][frame] for joint in _JOINTS[1:])
    humerus, forearm = view @ _unit(elbow - shoulder), view @ _unit(wrist - elbow)
    across = forearm - humerus * (forearm @ humerus)
    return ArmGoal(
        humerus=humerus,
        bend_towards=_unit(across),
        elbow_deg=float(np.degrees(np.arccos(np.clip(humerus @ forearm, -1, 1)))),
    )


def _unit(vector: FloatArray) -> FloatArray:
    return np.asarray(vector / np.linalg.norm(vector), dtype=np.float64)


def captured_frames(person: VirtualPerson, motion: Motion) -> tuple[PosedFrame, ...]:
    """Every frame of the motion, posed, with its truth."""
    shots = []
    for frame, goals in enumerate(arm_goals(motion)):
        now = MotionState(
            time_s=frame * motion.frame_s,
            phase=MotionPhase.MOVE,
            repeat=0,
            raised=0.0,
            turned=1.0,
            squared=0.0,
            gone=0.0,
        )
        shots.append(posed_frame(person, now, person.follow(now, goals)))
    return tuple(shots)


def main(arguments: Sequence[str] | None = None) -> int:
    """Film one motion file: ``captured-abduction-SIDE.mp4``, its table and its entry."""
    parser = argparse.ArgumentParser(prog="python -m sample_clips.captured", description=__doc__)
    parser.add_argument("folder", type=Path, help="where the clip goes")
    parser.add_argument("--bvh", type=Path, required=True, help="the motion file")
    parser.add_argument("--side", type=Side, choices=list(Side), default=Side.LEFT)
    parser.add_argument("--body", type=int, default=20, help="number of the body")
    options = parser.parse_args(arguments)
    motion = read_bvh(options.bvh)
    scenario = Scenario(
        name=f"captured-abduction-{options.side}",
        movement=Movement.ABDUCTION,
        side=options.side,
        view=View.FRONT,
        body=options.body,
        seed=60_000 + options.body,
        peak=0.0,
        heading_deg=0.0,
        camera=Camera(fps=round(1 / motion.frame_s)),
    )
    person = VirtualPerson(load_body(shape_of(scenario.body), bodies_folder()), scenario)
    shots = captured_frames(person, motion)
    camera, lens = stand_camera(scenario, shots)
    scenario = replace(scenario, camera=camera)
    options.folder.mkdir(parents=True, exist_ok=True)
    clip = options.folder / f"{scenario.name}.mp4"
    render_video(scenario, shots, lens, person.body, None, clip, 21)
    entry = {**truth_entry(scenario, shots, lens), "motion": options.bvh.name}
    clip.with_suffix(".json").write_text(json.dumps(entry, indent=1) + "\n", encoding="utf-8")
    print(
        f"{clip}: {len(shots)} frames, {min(s.truth.value for s in shots):.1f} to "
        f"{max(s.truth.value for s in shots):.1f} degrees"
    )
    return 0


if __name__ == "__main__":
    sys.exit(main())
