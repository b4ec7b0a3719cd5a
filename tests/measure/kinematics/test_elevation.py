import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.kinematics.elevation import elevation_of
from measure.kinematics.keypoints import arm_keypoints
from tests.support.stick_figure import elevation_track

CASES = [
    (Movement.FLEXION, View.SIDE),
    (Movement.EXTENSION, View.SIDE),
    (Movement.ABDUCTION, View.FRONT),
    (Movement.ABDUCTION, View.BACK),
]
ANGLES = np.array([0.0, 30.0, 45.0, 60.0, 90.0, 120.0, 150.0, 175.0, 185.0])


def read(track, movement, side, view, at_rest=1):
    rest = np.arange(len(track)) < at_rest
    return elevation_of(arm_keypoints(track, side), movement, view, rest)


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(("movement", "view"), CASES)
def test_a_straight_arm_reads_its_angle(movement, view, side):
    elevation = read(elevation_track(ANGLES, movement, side, view), movement, side, view)
    np.testing.assert_allclose(elevation.raw_deg, ANGLES, atol=1e-9)
    np.testing.assert_allclose(elevation.elbow_deg, 180, atol=1e-6)


@pytest.mark.parametrize("size", [(640, 480), (1280, 720), (720, 1280), (1080, 1920)])
def test_the_angle_does_not_depend_on_the_picture_shape(size):
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE, size=size)
    elevation = read(track, Movement.FLEXION, Side.LEFT, View.SIDE)
    np.testing.assert_allclose(elevation.raw_deg, ANGLES, atol=0.1)


@settings(max_examples=30)
@given(roll=st.floats(-40, 40), trunk=st.floats(40, 400))
def test_camera_roll_and_distance_change_nothing(roll, trunk):
    track = elevation_track(
        ANGLES, Movement.ABDUCTION, Side.RIGHT, View.FRONT, roll_deg=roll, trunk_px=trunk
    )
    elevation = read(track, Movement.ABDUCTION, Side.RIGHT, View.FRONT)
    np.testing.assert_allclose(elevation.raw_deg, ANGLES, atol=1e-6)


def test_a_lean_of_the_whole_body_is_no_movement_against_the_trunk():
    lean = np.linspace(0, 15, len(ANGLES))
    track = elevation_track(ANGLES, Movement.ABDUCTION, Side.LEFT, View.FRONT, lean_deg=lean)
    elevation = read(track, Movement.ABDUCTION, Side.LEFT, View.FRONT)
    np.testing.assert_allclose(elevation.raw_deg, ANGLES, atol=1e-6)
    np.testing.assert_allclose(elevation.vertical_deg, ANGLES + lean, atol=1e-6)


def test_a_bent_elbow_shows_in_the_elbow_angle_and_moves_the_wrist_line():
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE, elbow_bend_deg=30.0)
    elevation = read(track, Movement.FLEXION, Side.LEFT, View.SIDE)
    np.testing.assert_allclose(elevation.elbow_deg, 150, atol=1e-6)
    np.testing.assert_allclose(elevation.elbow_line_deg, ANGLES, atol=1e-6)
    assert np.all(elevation.wrist_line_deg > ANGLES + 10)


def test_a_missing_wrist_leaves_no_reading_but_an_elbow_line():
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE)
    points = track.points_px.copy()
    points[3, 15] = np.nan
    from dataclasses import replace

    elevation = read(replace(track, points_px=points), Movement.FLEXION, Side.LEFT, View.SIDE)
    assert np.isnan(elevation.raw_deg[3])
    assert elevation.elbow_line_deg[3] == pytest.approx(60)


def test_other_movements_are_refused():
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE)
    with pytest.raises(ValueError, match="not an elevation"):
        read(track, Movement.HAND_BEHIND_BACK, Side.LEFT, View.BACK)
