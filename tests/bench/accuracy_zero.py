"""How far the truth's lines lie from those along the skin, which a goniometer is laid on.

    python -m tests.bench.accuracy_zero

Poses bodies of the final set and prints, by movement and angle, by how much the line along the
middle of the upper arm's outline (from the deltoid's insertion to the epicondyles) and the line
along the middle of the trunk's outline differ from the lines between joint centres that the truth
is taken from (mean and standard deviation). Needs the synth extra.
"""

import argparse
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sample_clips.bench_set import FINAL_BODIES
from sample_clips.body import Body, bodies_folder, load_body, shape_of
from sample_clips.film import posed_frame
from sample_clips.motion import MotionPhase, MotionState
from sample_clips.person import VirtualPerson
from sample_clips.scenario import Movement, Scenario, Side, View, nominal_heading_deg
from sample_clips.skeleton import Skin
from sample_clips.truth import trunk_frame

FloatArray = NDArray[np.float64]

#: Angles at which each movement is held, degrees.
_HELD = {
    (Movement.FLEXION, View.SIDE): (0.0, 30.0, 90.0, 150.0),
    (Movement.EXTENSION, View.SIDE): (0.0, 30.0, 60.0),
    (Movement.ABDUCTION, View.FRONT): (0.0, 30.0, 90.0, 150.0),
}
#: The upper arm from the deltoid's insertion to just above the epicondyles, as shares of the
#: line between the joint centres, and the trunk from the hips to below the armpits.
_ARM_SHARES, _TRUNK_SHARES = (0.45, 0.95), (0.05, 0.8)
#: Slices along a line, and half the thickness of one as a share of the line.
_SLICES, _HALF_SLICE = 9, 0.05
_ARM_BONES = ("shoulder01", "upperarm01", "upperarm02", "lowerarm01")
_TRUNK_BONES = ("root", "pelvis", "spine", "upperleg01", "clavicle")


@dataclass(frozen=True, slots=True, kw_only=True)
class Turns:
    """How far outlines are turned from joint lines in one pose, degrees towards the movement.

    The trunk's outline is of no use in the frontal plane, where the raised arm draws it along.
    """

    arm_deg: float
    trunk_deg: float


def turns_of(person: VirtualPerson) -> Turns:
    """Return how far the outlines are turned in the hold."""
    now = MotionState(
        time_s=0, phase=MotionPhase.HOLD, repeat=0, raised=1, turned=1, squared=1, gone=0
    )
    shot = posed_frame(person, now, person.pose(now))
    body, side, joints = person.body, person.scenario.side, shot.joints
    skin = Skin(body, body.vertices, body.normals).pose(shot.bones)[0]
    up, forward, left = trunk_frame(joints, person.thorax_forward(shot.bones))
    towards = {
        Movement.FLEXION: forward,
        Movement.EXTENSION: -forward,
        Movement.ABDUCTION: left * side.outward,
    }[person.scenario.movement]
    angle = np.radians(shot.truth.value)
    hips, shoulders = (
        (joints[f"left_{name}"] + joints[f"right_{name}"]) / 2 for name in ("hip", "shoulder")
    )
    return Turns(
        arm_deg=outline_turn_deg(
            skin[_carried(body, tuple(f"{bone}{side.suffix}" for bone in _ARM_BONES))],
            (joints[f"{side}_shoulder"], joints[f"{side}_elbow"]),
            np.cos(angle) * towards + np.sin(angle) * up,
            _ARM_SHARES,
        ),
        trunk_deg=outline_turn_deg(
            skin[_carried(body, _TRUNK_BONES)], (shoulders, hips), towards, _TRUNK_SHARES
        ),
    )


def outline_turn_deg(
    points: FloatArray,
    ends: tuple[FloatArray, FloatArray],
    across: FloatArray,
    shares: tuple[float, float],
) -> float:
    """Return by how much the middle of an outline turns away from a line, degrees.

    Parameters
    ----------
    points
        Skin points, shape (N, 3).
    ends
        Start and end of the line, each of shape (3,).
    across
        Unit vector perpendicular to the line in the plane that is looked at; turning the line's
        end towards it counts as positive.
    shares
        Part of the line that is used, from its start (0) to its end (1).
    """
    start, end = ends
    length = float(np.linalg.norm(end - start))
    along = (points - start) @ (end - start) / length**2
    sideways = (points - start) @ across
    places = np.linspace(*shares, _SLICES)
    middles = []
    for place in places:
        inside = sideways[np.abs(along - place) < _HALF_SLICE]
        middles.append((inside.min() + inside.max()) / 2)
    slope = np.polyfit(places * length, middles, 1)[0]
    return float(np.degrees(np.arctan(slope)))


def _carried(body: Body, bones: tuple[str, ...]) -> NDArray[np.bool_]:
    """Return which skin points move mostly with bones whose names begin so."""
    wanted = np.array([name.startswith(bones) for name in body.bones])
    return np.asarray((wanted[body.bone_indices] * body.bone_weights).sum(axis=1) > 0.5)


def main() -> None:
    argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0]).parse_args()
    print("| movement | held at | upper arm's outline | trunk's outline | a goniometer on both |")
    print("|---|---|---|---|---|")
    for (movement, view), peaks in _HELD.items():
        for peak in peaks:
            turns = [turns_of(_person(number, movement, view, peak)) for number in FINAL_BODIES]
            arm = np.array([each.arm_deg for each in turns])
            trunk = np.array([each.trunk_deg for each in turns])
            if movement is Movement.ABDUCTION:
                cells = (_say(arm), "", _say(arm))
            else:
                cells = (_say(arm), _say(trunk), _say(arm - trunk))
            print(f"| {movement} | {peak:.0f}° | {' | '.join(cells)} |")


def _person(number: int, movement: Movement, view: View, peak: float) -> VirtualPerson:
    scenario = Scenario(
        name="",
        movement=movement,
        side=Side.LEFT,
        view=view,
        body=number,
        seed=number,
        peak=peak,
        heading_deg=nominal_heading_deg(view, Side.LEFT),
    )
    return VirtualPerson(load_body(shape_of(number), bodies_folder()), scenario)


def _say(values: FloatArray) -> str:
    return f"{np.mean(values):+.1f}° ({np.std(values, ddof=1):.1f}°)"


if __name__ == "__main__":
    main()
