from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.landmarks import Side, arm
from measure.domain.movements import Movement, View
from measure.kinematics.elevation import elevation_of, hanging_part_deg
from measure.kinematics.keypoints import arm_keypoints
from tests.support.stick_figure import elevation_track

CASES = [
    (Movement.FLEXION, View.SIDE),
    (Movement.EXTENSION, View.SIDE),
    (Movement.ABDUCTION, View.FRONT),
    (Movement.ABDUCTION, View.BACK),
]
ANGLES = np.array([0.0, 30.0, 45.0, 60.0, 90.0, 120.0, 150.0, 175.0, 185.0])


def read(track, movement, side, view):
    return elevation_of(arm_keypoints(track, side), movement, view)


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(("movement", "view"), CASES)
def test_a_straight_arm_reads_its_angle(movement, view, side):
    track = elevation_track(ANGLES, movement, side, view)
    elevation = read(track, movement, side, view)
    np.testing.assert_allclose(elevation.value_deg, ANGLES, atol=1e-9)
    np.testing.assert_allclose(arm_keypoints(track, side).elbow_deg, 180, atol=1e-6)


@pytest.mark.parametrize("size", [(640, 480), (1280, 720), (720, 1280), (1080, 1920)])
def test_the_angle_does_not_depend_on_the_picture_shape(size):
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE, size=size)
    elevation = read(track, Movement.FLEXION, Side.LEFT, View.SIDE)
    np.testing.assert_allclose(elevation.value_deg, ANGLES, atol=0.1)


@settings(max_examples=30)
@given(roll=st.floats(-40, 40), trunk=st.floats(40, 400))
def test_camera_roll_and_distance_change_nothing(roll, trunk):
    track = elevation_track(
        ANGLES, Movement.ABDUCTION, Side.RIGHT, View.FRONT, roll_deg=roll, trunk_px=trunk
    )
    elevation = read(track, Movement.ABDUCTION, Side.RIGHT, View.FRONT)
    np.testing.assert_allclose(elevation.value_deg, ANGLES, atol=1e-6)


def test_a_lean_of_the_whole_body_is_no_movement_against_the_trunk():
    lean = np.linspace(0, 15, len(ANGLES))
    track = elevation_track(ANGLES, Movement.ABDUCTION, Side.LEFT, View.FRONT, lean_deg=lean)
    elevation = read(track, Movement.ABDUCTION, Side.LEFT, View.FRONT)
    np.testing.assert_allclose(elevation.value_deg, ANGLES, atol=1e-6)
    np.testing.assert_allclose(elevation.vertical_deg, ANGLES + lean, atol=1e-6)


def test_a_bent_elbow_shows_in_the_elbow_angle_and_moves_the_wrist_line():
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE, elbow_bend_deg=30.0)
    elevation = read(track, Movement.FLEXION, Side.LEFT, View.SIDE)
    np.testing.assert_allclose(arm_keypoints(track, Side.LEFT).elbow_deg, 150, atol=1e-6)
    np.testing.assert_allclose(elevation.elbow_line_deg, ANGLES, atol=1e-6)
    assert np.all(elevation.wrist_line_deg > ANGLES + 10)


def test_a_hanging_arm_is_read_off_the_elbow_line_alone():
    track = elevation_track(
        np.zeros(1), Movement.ABDUCTION, Side.LEFT, View.FRONT, elbow_bend_deg=40
    )
    elevation = read(track, Movement.ABDUCTION, Side.LEFT, View.FRONT)
    assert elevation.value_deg[0] == pytest.approx(0, abs=1e-6)
    assert elevation.wrist_line_deg[0] > 15


@pytest.mark.parametrize(
    ("movement", "view", "share", "most", "half_at"),
    [
        (Movement.ABDUCTION, View.FRONT, 0.7, 2.1, 30.0),
        (Movement.FLEXION, View.SIDE, 1.0, 8.0, 15.0),
    ],
)
def test_a_share_of_the_wrists_lead_counts_up_to_a_limit(movement, view, share, most, half_at):
    # The upper arm is 0.55 long, the forearm 0.50.
    small, large = (
        read(
            elevation_track(
                np.array([half_at, 90.0]), movement, Side.LEFT, view, elbow_bend_deg=bend
            ),
            movement,
            Side.LEFT,
            view,
        ).value_deg
        for bend in (4.0, 45.0)
    )
    lead = np.degrees(np.arctan2(0.5 * np.sin(np.radians(4)), 0.55 + 0.5 * np.cos(np.radians(4))))
    assert small[1] == pytest.approx(90 + share * lead, abs=1e-6)
    assert small[0] == pytest.approx(half_at + share * lead / 2, abs=1e-6)
    assert large == pytest.approx([half_at + most / 2, 90 + most], abs=1e-6)


def test_the_other_arm_changes_nothing():
    track = elevation_track(ANGLES, Movement.ABDUCTION, Side.LEFT, View.FRONT)
    points = track.points_px.copy()
    other = arm(Side.RIGHT)
    points[:, [other.elbow, other.wrist]] -= [0.0, 200.0]
    raised = read(replace(track, points_px=points), Movement.ABDUCTION, Side.LEFT, View.FRONT)
    np.testing.assert_allclose(raised.value_deg, ANGLES, atol=1e-9)


def test_extension_is_counted_from_the_hanging_arm():
    def part(rests_at_deg, value_deg, *, at_rest=True):
        track = elevation_track(np.array([rests_at_deg]), Movement.EXTENSION, Side.LEFT, View.SIDE)
        elevation = read(track, Movement.EXTENSION, Side.LEFT, View.SIDE)
        return hanging_part_deg([elevation], np.array([value_deg]), np.array([at_rest]))[0]

    assert part(-4.0, 60.0) == pytest.approx(-2.0, abs=1e-6)  # cos 60 = 1/2
    assert part(3.0, 60.0) == pytest.approx(1.5, abs=1e-6)
    assert part(-12.0, 0.0) == pytest.approx(-5.0, abs=1e-6)
    assert part(-4.0, 60.0, at_rest=False) == 0


def test_a_missing_wrist_leaves_no_reading_but_an_elbow_line():
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE)
    points = track.points_px.copy()
    points[3, 15] = np.nan
    elevation = read(replace(track, points_px=points), Movement.FLEXION, Side.LEFT, View.SIDE)
    assert np.isnan(elevation.value_deg[3])
    assert elevation.elbow_line_deg[3] == pytest.approx(60)


def test_other_movements_are_refused():
    track = elevation_track(ANGLES, Movement.FLEXION, Side.LEFT, View.SIDE)
    with pytest.raises(ValueError, match="not an elevation"):
        read(track, Movement.HAND_BEHIND_BACK, Side.LEFT, View.BACK)
