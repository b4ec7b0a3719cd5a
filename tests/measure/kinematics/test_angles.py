import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.kinematics.angles import (
    corner_deg,
    direction_deg,
    mean_near_median,
    plane_from_pixels,
    turn_deg,
    wrap_deg,
)

finite = st.floats(-1e3, 1e3, allow_nan=False)


@pytest.mark.parametrize(
    ("vector", "angle"),
    [((1, 0), 0), ((0, 1), 90), ((-1, 0), 180), ((0, -1), -90), ((1, 1), 45), ((-1, -1), -135)],
)
def test_direction_of_known_vectors(vector, angle):
    assert direction_deg(np.array(vector, dtype=float)) == pytest.approx(angle)


def test_zero_vector_has_no_direction():
    assert np.isnan(direction_deg(np.zeros(2)))


def test_pixels_below_are_lower_in_the_plane():
    assert plane_from_pixels(np.array([3.0, 5.0])).tolist() == [3.0, -5.0]


@pytest.mark.parametrize(
    ("start", "end", "turn"),
    [((1, 0), (0, 1), 90), ((0, 1), (1, 0), -90), ((1, 0), (-1, 0), -180), ((0, -1), (1, 0), 90)],
)
def test_turn_is_signed(start, end, turn):
    assert turn_deg(np.array(start, float), np.array(end, float)) == pytest.approx(turn)


@pytest.mark.parametrize("bend", [0, 10, 45, 90, 135])
def test_corner_of_a_bent_limb(bend):
    last = np.array([np.cos(np.radians(bend)), np.sin(np.radians(bend))])
    corner = corner_deg(np.array([-2.0, 0.0]), np.zeros(2), last)
    assert corner == pytest.approx(180 - bend)


@given(finite, st.floats(-720, 720))
def test_wrap_keeps_the_direction(angle, lowest):
    wrapped = float(wrap_deg(np.float64(angle), lowest=lowest))
    assert lowest - 1e-9 <= wrapped < lowest + 360 + 1e-9
    assert np.cos(np.radians(wrapped)) == pytest.approx(np.cos(np.radians(angle)), abs=1e-6)


def test_missing_stays_missing():
    assert np.isnan(direction_deg(np.array([np.nan, 1.0])))
    assert np.isnan(mean_near_median(np.array([np.nan, np.nan]), 1.0))


def test_mean_near_median_leaves_spikes_out():
    values = np.array([10.0, 10.2, 9.8, 95.0, np.nan])
    assert mean_near_median(values, 5.0) == pytest.approx(10.0)


def test_two_groups_far_from_the_median_between_them_have_no_mean():
    assert np.isnan(mean_near_median(np.array([10.0, 60.0]), 5.0))
