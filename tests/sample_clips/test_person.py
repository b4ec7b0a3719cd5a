"""The posed person does what the scenario says, on the side that it says."""

import numpy as np
import pytest

from sample_clips.film import PosedFrame, pose_frames
from sample_clips.motion import MotionPhase
from sample_clips.person import VirtualPerson
from sample_clips.scenario import (
    Camera,
    Compensation,
    ExtraEvent,
    Movement,
    Posture,
    Scenario,
    Side,
    View,
    nominal_heading_deg,
)
from tests.support.stick_body import stick_body

BODY = stick_body()


def acted(
    movement: Movement,
    side: Side,
    view: View,
    peak: float,
    *,
    cheat: Compensation | None = None,
    posture: Posture | None = None,
    peers: tuple[float, ...] = (),
    story: ExtraEvent = ExtraEvent.ORDINARY,
) -> tuple[PosedFrame, ...]:
    scenario = Scenario(
        name="clip",
        movement=movement,
        side=side,
        view=view,
        body=0,
        seed=5,
        peak=peak,
        heading_deg=nominal_heading_deg(view, side),
        camera=Camera(fps=4),
        compensation=cheat or Compensation(),
        posture=posture or Posture(),
        peers=peers,
        story=story,
    )
    return pose_frames(VirtualPerson(BODY, scenario), scenario)


def mean_hold(shots: tuple[PosedFrame, ...], name: str = "value", repeat: int = 0) -> float:
    inside = [s for s in shots if s.moment.phase is MotionPhase.HOLD and s.moment.repeat == repeat]
    return float(np.mean([getattr(shot.truth, name) for shot in inside]))


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(
    ("movement", "view", "peak"),
    [
        (Movement.FLEXION, View.SIDE, 150.0),
        (Movement.FLEXION, View.SIDE, 60.0),
        (Movement.EXTENSION, View.SIDE, 45.0),
        (Movement.ABDUCTION, View.FRONT, 120.0),
        (Movement.EXTERNAL_ROTATION, View.OBLIQUE, 55.0),
    ],
)
def test_hold_is_near_the_peak_asked_for(
    movement: Movement, side: Side, view: View, peak: float
) -> None:
    shots = acted(movement, side, view, peak)
    assert mean_hold(shots) == pytest.approx(peak, abs=8)
    rest = [s.truth.value for s in shots if s.moment.phase is MotionPhase.NEUTRAL]
    assert np.abs(rest).max() < 20


@pytest.mark.parametrize("side", list(Side))
def test_reach_ends_at_the_height_asked_for(side: Side) -> None:
    shots = acted(Movement.HAND_BEHIND_BACK, side, View.BACK, 0.4)
    assert mean_hold(shots) == pytest.approx(0.4, abs=0.02)
    assert shots[0].truth.value < 0
    for shot in shots:
        if shot.moment.phase is MotionPhase.HOLD:
            wrist, middle = shot.joints[f"{side}_wrist"], shot.joints["c7"]
            # Seen from behind the person faces +y, so behind the trunk means nearer: smaller y.
            assert wrist[1] < middle[1] - 0.1
            assert abs(wrist[0] - middle[0]) < 0.15


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize("view", list(View))
def test_each_view_shows_the_measured_side(side: Side, view: View) -> None:
    shots = acted(Movement.FLEXION, side, view, 30.0)
    near = shots[0].joints[f"{side}_shoulder"][1] - shots[0].joints[f"{side.other}_shoulder"][1]
    if view in (View.SIDE, View.OBLIQUE):
        assert near < -0.15
    else:
        assert abs(near) < 0.05
        facing = 1 if view is View.FRONT else -1
        assert shots[0].joints["left_shoulder"][0] * facing > 0.1


def test_only_the_measured_arm_rises() -> None:
    shots = acted(Movement.ABDUCTION, Side.RIGHT, View.FRONT, 100.0)
    held = next(shot for shot in shots if shot.moment.phase is MotionPhase.HOLD)
    assert held.joints["right_wrist"][2] > held.joints["right_shoulder"][2]
    assert held.joints["left_wrist"][2] < held.joints["left_shoulder"][2] - 0.3


@pytest.mark.parametrize(("bend_deg", "tolerance"), [(3.0, 1.5), (25.0, 1.5), (60.0, 1.5)])
def test_elbow_bends_as_told(bend_deg: float, tolerance: float) -> None:
    cheat = Compensation(elbow_bend_deg=bend_deg)
    shots = acted(Movement.FLEXION, Side.LEFT, View.SIDE, 90.0, cheat=cheat)
    assert mean_hold(shots, "elbow_flexion_deg") == pytest.approx(bend_deg, abs=tolerance)


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(
    ("movement", "view"), [(Movement.ABDUCTION, View.FRONT), (Movement.FLEXION, View.SIDE)]
)
def test_other_arm_goes_along(side: Side, movement: Movement, view: View) -> None:
    shots = acted(movement, side, view, 100.0, posture=Posture(other_arm=1.2))
    held = next(shot for shot in shots if shot.moment.phase is MotionPhase.HOLD)
    bones = {part: held.joints[f"{side.other}_{part}"] for part in ("shoulder", "elbow")}
    direction = (bones["elbow"] - bones["shoulder"]) / np.linalg.norm(
        bones["elbow"] - bones["shoulder"]
    )
    assert np.degrees(np.arccos(-direction[2])) == pytest.approx(120, abs=8)
    assert mean_hold(shots) == pytest.approx(mean_hold(acted(movement, side, view, 100.0)), abs=1)


@pytest.mark.parametrize("side", list(Side))
def test_carrying_angle_points_the_straight_forearm_outwards(side: Side) -> None:
    shots = acted(
        Movement.FLEXION,
        side,
        View.SIDE,
        30.0,
        cheat=Compensation(elbow_bend_deg=0.0),
        posture=Posture(carrying_deg=12.0),
    )
    assert mean_hold(shots, "elbow_flexion_deg") == pytest.approx(12, abs=1)
    held = next(shot for shot in shots if shot.moment.phase is MotionPhase.HOLD)
    joints = held.joints
    outward = joints[f"{side}_shoulder"] - joints[f"{side.other}_shoulder"]
    upper = joints[f"{side}_elbow"] - joints[f"{side}_shoulder"]
    fore = joints[f"{side}_wrist"] - joints[f"{side}_elbow"]
    lean = [bone @ outward / np.linalg.norm(bone) for bone in (upper, fore)]
    assert lean[1] - lean[0] == pytest.approx(
        np.linalg.norm(outward) * np.sin(np.radians(12)), rel=0.1
    )


def test_carrying_angle_fades_as_the_elbow_bends() -> None:
    posture = Posture(carrying_deg=12.0)
    plain, carried = (
        acted(Movement.EXTERNAL_ROTATION, Side.LEFT, View.OBLIQUE, 20.0, posture=one)
        for one in (None, posture)
    )
    assert mean_hold(carried) == pytest.approx(mean_hold(plain), abs=1.0)


def test_arms_of_a_large_body_hang_off_it() -> None:
    plain, wide = (
        acted(Movement.ABDUCTION, Side.LEFT, View.FRONT, 90.0, posture=one)
        for one in (None, Posture(hang_deg=15.0))
    )
    assert wide[0].truth.value - plain[0].truth.value == pytest.approx(15, abs=1)
    assert mean_hold(wide) == pytest.approx(mean_hold(plain), abs=1)


def test_twist_turns_the_plane_of_a_bent_elbow() -> None:
    cheat = Compensation(elbow_bend_deg=25.0)
    sideways = []
    for twist_deg in (0.0, -50.0):
        shots = acted(
            Movement.FLEXION,
            Side.LEFT,
            View.SIDE,
            90.0,
            cheat=cheat,
            posture=Posture(twist_deg=twist_deg),
        )
        assert mean_hold(shots, "elbow_flexion_deg") == pytest.approx(25, abs=1.5)
        held = next(shot for shot in shots if shot.moment.phase is MotionPhase.HOLD)
        inward = held.joints["right_shoulder"] - held.joints["left_shoulder"]
        fore = held.joints["left_wrist"] - held.joints["left_elbow"]
        sideways.append(float(fore @ inward / np.linalg.norm(inward) / np.linalg.norm(fore)))
    assert sideways[1] - sideways[0] == pytest.approx(
        np.sin(np.radians(25)) * np.sin(np.radians(50)), abs=0.06
    )


@pytest.mark.parametrize("side", list(Side))
def test_rotation_keeps_the_elbow_square_and_faces_first(side: Side) -> None:
    shots = acted(Movement.EXTERNAL_ROTATION, side, View.OBLIQUE, 40.0)
    assert mean_hold(shots, "elbow_flexion_deg") == pytest.approx(90, abs=2)
    facing = [s.truth.heading_deg for s in shots if s.moment.phase is MotionPhase.FACING]
    assert np.abs(facing).max() < 3
    assert mean_hold(shots, "heading_deg") == pytest.approx(-45 * side.outward, abs=3)


@pytest.mark.parametrize(
    ("movement", "view", "shift"),
    [(Movement.FLEXION, View.SIDE, 1), (Movement.ABDUCTION, View.FRONT, -1)],
)
def test_compensations_show_in_the_truth(movement: Movement, view: View, shift: int) -> None:
    """Seen by the camera, the left arm's flexion leans right (backwards), abduction left."""
    plain = acted(movement, Side.LEFT, view, 80.0)
    cheat = Compensation(lean_deg=12.0, out_of_plane_deg=20.0)
    cheating = acted(movement, Side.LEFT, view, 80.0, cheat=cheat)
    shoulders = [
        np.mean(
            [shot.joints["c7"] for shot in shots if shot.moment.phase is MotionPhase.HOLD], axis=0
        )
        for shots in (plain, cheating)
    ]
    aside = mean_hold(cheating, "out_of_plane_deg") - mean_hold(plain, "out_of_plane_deg")
    assert shift * (shoulders[1] - shoulders[0])[0] > 0.04
    assert aside == pytest.approx(20, abs=3)


def test_repeats_have_their_own_peaks() -> None:
    shots = acted(Movement.FLEXION, Side.LEFT, View.SIDE, 90.0, peers=(10.0, -10.0))
    values = [mean_hold(shots, repeat=repeat) for repeat in range(3)]
    assert values[1] - values[0] == pytest.approx(10, abs=1.5)
    assert values[2] - values[0] == pytest.approx(-10, abs=1.5)


@pytest.mark.parametrize("side", list(Side))
def test_walking_off_leaves_the_way_the_person_faces(side: Side) -> None:
    shots = acted(Movement.FLEXION, side, View.SIDE, 90.0, story=ExtraEvent.WALKS_OFF)
    assert -side.outward * shots[-1].joints["c7"][0] > 3


def test_the_same_scenario_moves_the_same() -> None:
    first, second = (acted(Movement.ABDUCTION, Side.LEFT, View.FRONT, 70.0) for _ in range(2))
    for one, other in zip(first, second, strict=True):
        np.testing.assert_array_equal(one.bones.heads, other.bones.heads)


@pytest.mark.parametrize("movement", list(Movement))
def test_bones_keep_their_lengths(movement: Movement) -> None:
    peak = 0.3 if movement is Movement.HAND_BEHIND_BACK else 60.0
    for shot in acted(movement, Side.LEFT, View.BACK, peak):
        for upper, lower in (("shoulder", "elbow"), ("elbow", "wrist")):
            length = np.linalg.norm(shot.joints[f"left_{lower}"] - shot.joints[f"left_{upper}"])
            names = {"shoulder": "upperarm01.L", "elbow": "lowerarm01.L", "wrist": "wrist.L"}
            rest = np.linalg.norm(BODY.head(names[lower]) - BODY.head(names[upper]))
            assert length == pytest.approx(rest, abs=0.006)
