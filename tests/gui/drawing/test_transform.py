"""From pixels to the widget: letterbox, mirror, and back to what one sees."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gui.drawing.transform import VideoTransform


def test_a_picture_of_the_same_shape_fills_the_space() -> None:
    transform = VideoTransform.fitted((1280, 720), (640, 360))
    assert (transform.left, transform.top, transform.width, transform.height) == (0, 0, 640, 360)
    assert transform.points(np.array([639.5, 359.5])).tolist() == [320.0, 180.0]


def test_a_wide_picture_leaves_room_above_and_below() -> None:
    transform = VideoTransform.fitted((200, 100), (100, 100))
    assert (transform.left, transform.top, transform.width, transform.height) == (0, 25, 100, 50)


def test_a_tall_picture_leaves_room_at_the_sides() -> None:
    transform = VideoTransform.fitted((100, 200), (100, 100))
    assert (transform.left, transform.top, transform.width, transform.height) == (25, 0, 50, 100)


def test_mirrored_exchanges_left_and_right_only() -> None:
    plain = VideoTransform.fitted((100, 100), (100, 100))
    mirrored = VideoTransform.fitted((100, 100), (100, 100), mirrored=True)
    point = np.array([9.5, 29.5])
    assert plain.points(point).tolist() == [10.0, 30.0]
    assert mirrored.points(point).tolist() == [90.0, 30.0]


def test_the_edges_of_the_picture_are_half_a_pixel_outside_its_first_and_last_centres() -> None:
    transform = VideoTransform.fitted((4, 2), (40, 20))
    corners = transform.points(np.array([[-0.5, -0.5], [3.5, 1.5]]))
    assert corners.tolist() == [[0.0, 0.0], [40.0, 20.0]]


def test_missing_points_stay_missing() -> None:
    transform = VideoTransform.fitted((10, 10), (10, 10), mirrored=True)
    assert np.isnan(transform.points(np.array([np.nan, np.nan]))).all()


@settings(deadline=None)
@given(
    st.integers(1, 4000),
    st.integers(1, 4000),
    st.floats(50, 3000),
    st.floats(50, 3000),
    st.booleans(),
)
def test_the_whole_picture_lies_inside(
    width: int, height: int, across: float, down: float, mirrored: bool
) -> None:
    transform = VideoTransform.fitted((width, height), (across, down), mirrored=mirrored)
    corners = transform.points(np.array([[-0.5, -0.5], [width - 0.5, height - 0.5]]))
    assert corners.min() >= -1e-6
    assert corners[:, 0].max() <= across + 1
    assert corners[:, 1].max() <= down + 1


@pytest.mark.parametrize("mirrored", [False, True])
def test_the_shape_of_the_picture_is_kept_within_a_unit(mirrored: bool) -> None:
    transform = VideoTransform.fitted((1920, 1080), (733, 511), mirrored=mirrored)
    assert transform.width / transform.height == pytest.approx(1920 / 1080, rel=0.003)
