"""Points through a lens and back, against OpenCV, and where the model ends."""

import dataclasses

import cv2
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.acquisition import LensProfile
from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import Track
from measure.kinematics.camera_geometry import real_points, undistort_points, undistort_track

WIDE = LensProfile(
    camera_name="virtual",
    width_px=1280,
    height_px=720,
    focal_px=(640.0, 644.0),
    centre_px=(650.0, 352.0),
    distortion=(-0.22, 0.06, 0.001, -0.0007, -0.004),
    reprojection_px=0.1,
    views=20,
)
STRAIGHT = dataclasses.replace(
    WIDE, focal_px=(640.0, 640.0), centre_px=(639.5, 359.5), distortion=(0.0, 0.0, 0.0, 0.0, 0.0)
)


def grid(width: int = 1280, height: int = 720) -> np.ndarray:
    across, down = np.meshgrid(np.linspace(0, width - 1, 17), np.linspace(0, height - 1, 11))
    return np.stack([across, down], axis=-1)


def test_a_straight_lens_changes_nothing() -> None:
    assert undistort_points(grid(), STRAIGHT) == pytest.approx(grid())


def test_agreement_with_opencv() -> None:
    camera = np.array([[640.0, 0, 650.0], [0, 644.0, 352.0], [0, 0, 1]])
    ideal = np.array([[640.0, 0, 639.5], [0, 640.0, 359.5], [0, 0, 1]])
    points = grid().reshape(-1, 2)
    oracle = cv2.undistortPoints(
        points.reshape(-1, 1, 2),
        camera,
        np.array(WIDE.distortion),
        R=np.eye(3),
        P=ideal,
        criteria=(cv2.TERM_CRITERIA_COUNT | cv2.TERM_CRITERIA_EPS, 200, 1e-12),
    ).reshape(-1, 2)
    assert undistort_points(points, WIDE) == pytest.approx(oracle, abs=0.01)


@settings(max_examples=100, deadline=None)
@given(x=st.floats(0, 1279), y=st.floats(0, 719))
def test_there_and_back(x: float, y: float) -> None:
    point = np.array([x, y])
    assert real_points(undistort_points(point, WIDE), WIDE) == pytest.approx(point, abs=0.01)


def test_missing_points_stay_missing_and_leave_the_others_alone() -> None:
    points = np.array([[100.0, 100.0], [np.nan, 5.0], [np.inf, 5.0]])
    ideal = undistort_points(points, WIDE)
    assert np.isfinite(ideal[0]).all()
    assert np.isnan(ideal[1:]).all()


def test_points_that_the_model_does_not_reach_are_missing() -> None:
    # 1 - 0.28 r^2 alone bends back at r = 1.09: no direction is shown beyond 0.73 of a focal.
    folding = dataclasses.replace(STRAIGHT, distortion=(-0.28, 0.0, 0.0, 0.0, 0.0))
    inside, beyond = np.array([639.5 + 0.7 * 640, 359.5]), np.array([639.5 + 0.75 * 640, 359.5])
    assert np.isfinite(undistort_points(inside, folding)).all()
    assert np.isnan(undistort_points(beyond, folding)).all()


def track(width: int, height: int) -> Track:
    return Track(
        time_s=np.array([0.0]),
        points_px=np.full((1, LANDMARKS, 2), 200.0),
        visibility=np.ones((1, LANDMARKS)),
        presence=np.ones((1, LANDMARKS)),
        state=np.zeros(1, dtype=np.int64),
        people=np.ones(1, dtype=np.int64),
        width_px=width,
        height_px=height,
    )


def test_a_track_is_made_ideal_only_at_the_profiles_own_size() -> None:
    made = undistort_track(track(1280, 720), WIDE)
    assert made.points_px[0, 0] == pytest.approx(undistort_points(np.array([200.0, 200.0]), WIDE))
    with pytest.raises(ValueError, match="does not fit"):
        undistort_track(track(640, 480), WIDE)
