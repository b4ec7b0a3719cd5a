"""Known poses give exactly their angles, whatever way the person faces or leans."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from sample_clips.scenario import Movement, Side
from sample_clips.skeleton import turn_about
from sample_clips.truth import columns, frame_truth, height_fraction

FloatArray = NDArray[np.float64]
FORWARD = np.array([0.0, -1.0, 0.0])
DOWN = (0.0, 0.0, -1.0)
SIDES = st.sampled_from(list(Side))


def joints(
    side: Side, humerus: tuple[float, float, float], forearm: tuple[float, float, float] = DOWN
) -> dict[str, FloatArray]:
    """A stick figure that faces -y: hips at height 1, shoulders and C7 at 1.5."""
    figure = {
        "left_hip": np.array([0.1, 0, 1.0]),
        "right_hip": np.array([-0.1, 0, 1.0]),
        "left_shoulder": np.array([0.2, 0, 1.5]),
        "right_shoulder": np.array([-0.2, 0, 1.5]),
        "c7": np.array([0.0, 0, 1.5]),
    }
    for one in Side:
        shoulder = figure[f"{one}_shoulder"]
        upper, lower = (humerus, forearm) if one is side else (DOWN, DOWN)
        figure[f"{one}_elbow"] = shoulder + 0.3 * np.array(upper)
        figure[f"{one}_wrist"] = figure[f"{one}_elbow"] + 0.25 * np.array(lower)
        figure[f"{one}_thumb_tip"] = figure[f"{one}_wrist"] + np.array([0, 0, -0.1])
    return figure


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(
    ("movement", "direction", "angle_deg"),
    [
        (Movement.FLEXION, (0, 0, -1), 0),
        (Movement.FLEXION, (0, -1, 0), 90),
        (Movement.FLEXION, (0, 0, 1), 180),
        (Movement.FLEXION, (0, -np.sqrt(0.5), np.sqrt(0.5)), 135),
        (Movement.FLEXION, (0, np.sqrt(0.5), -np.sqrt(0.5)), -45),
        (Movement.EXTENSION, (0, np.sqrt(0.5), -np.sqrt(0.5)), 45),
        (Movement.EXTENSION, (0, -0.6, -0.8), -np.degrees(np.arcsin(0.6))),
        (Movement.ABDUCTION, (1, 0, 0), 90),
        (Movement.ABDUCTION, (0.5, 0, np.sqrt(0.75)), 150),
        (Movement.ABDUCTION, (-0.5, 0, np.sqrt(0.75)), 210),
    ],
)
def test_raised_arm(
    side: Side, movement: Movement, direction: tuple[float, float, float], angle_deg: float
) -> None:
    humerus = (side.outward * direction[0], direction[1], direction[2])
    truth = frame_truth(joints(side, humerus), FORWARD, movement, side)
    assert truth.value == pytest.approx(angle_deg)


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize("angle_deg", [-30.0, 0.0, 45.0, 90.0])
def test_external_rotation_is_the_azimuth_of_the_forearm(side: Side, angle_deg: float) -> None:
    angle = np.radians(angle_deg)
    forearm = (side.outward * np.sin(angle), -np.cos(angle), 0.0)
    truth = frame_truth(joints(side, DOWN, forearm), FORWARD, Movement.EXTERNAL_ROTATION, side)
    assert truth.value == pytest.approx(angle_deg)
    assert truth.elbow_flexion_deg == pytest.approx(90)


def test_arm_out_of_plane_keeps_its_projected_angle() -> None:
    aside = np.radians(20)
    humerus = (np.sin(aside), -np.cos(aside), 0.0)
    truth = frame_truth(joints(Side.LEFT, humerus), FORWARD, Movement.FLEXION, Side.LEFT)
    assert truth.value == pytest.approx(90)
    assert truth.out_of_plane_deg == pytest.approx(20)


@pytest.mark.parametrize(("height_m", "fraction"), [(1.0, 0), (1.5, 1), (1.25, 0.5), (0.9, -0.2)])
def test_reach_is_a_fraction_of_the_line_from_hips_to_c7(height_m: float, fraction: float) -> None:
    point = np.array([0.3, 0.2, height_m])
    assert height_fraction(joints(Side.LEFT, DOWN), point) == pytest.approx(fraction)


@settings(max_examples=60, deadline=None)
@given(
    SIDES,
    st.sampled_from([Movement.FLEXION, Movement.EXTENSION, Movement.ABDUCTION]),
    st.floats(-180, 180),
    st.floats(-25, 25),
    st.floats(-60, 160),
)
def test_turning_and_leaning_the_whole_person_changes_nothing(
    side: Side, movement: Movement, turn_deg: float, lean_deg: float, raise_deg: float
) -> None:
    angle = np.radians(raise_deg)
    sideways, ahead = {
        Movement.FLEXION: (0.0, -np.sin(angle)),
        Movement.EXTENSION: (0.0, np.sin(angle)),
        Movement.ABDUCTION: (side.outward * np.sin(angle), 0.0),
    }[movement]
    figure = joints(side, (sideways, ahead, -np.cos(angle)))
    turn = turn_about((0, 0, 1), turn_deg) @ turn_about((1, 0.3, 0), lean_deg)
    moved = {name: turn @ point + np.array([3, 1, -2]) for name, point in figure.items()}
    truth = frame_truth(moved, turn @ FORWARD, movement, side)
    assert truth.value == pytest.approx(raise_deg)


def test_lean_and_heading() -> None:
    turn = turn_about((0, 0, 1), -90) @ turn_about((1, 0, 0), 10)
    moved = {name: turn @ point for name, point in joints(Side.LEFT, DOWN).items()}
    truth = frame_truth(moved, turn @ FORWARD, Movement.FLEXION, Side.LEFT)
    assert truth.trunk_lean_deg == pytest.approx(10)
    assert truth.heading_deg == pytest.approx(-90)


def test_columns_end_with_two_pixels_per_joint() -> None:
    names = columns()
    assert names[:4] == ("time_s", "phase", "repeat", "value")
    assert names[-2:] == ("c7_x_px", "c7_y_px")
    assert len(names) == 8 + 2 * 11
