"""Deming regression: a table worked by hand, its limits, and how often its interval holds."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calibration.statistics.deming import (
    DemingLine,
    ErrorRatio,
    deming,
    deming_slope,
    error_ratio,
)

EQUAL = ErrorRatio(camera_variance=9.0, goniometer_variance=9.0, degrees=40)


def columns(values: np.ndarray) -> list[np.ndarray]:
    return [np.array([value]) for value in values]


def test_four_points_worked_by_hand() -> None:
    # Goniometer 0, 2, 4, 6 and camera 1, 2, 5, 8: means 3 and 4, sums of squares 20 and 30, of
    # products 24. With equal errors 30 - 20 = 10, so (10 + sqrt(100 + 4 * 576)) / 48.
    camera, goniometer = np.array([1.0, 2, 5, 8]), np.array([0.0, 2, 4, 6])
    assert deming_slope(camera, goniometer, 1.0) == pytest.approx((10 + 2404**0.5) / 48)
    # A camera without error (ratio 0): regression of the goniometer on it, turned round, 30 / 24.
    assert deming_slope(camera, goniometer, 0.0) == pytest.approx(30 / 24)
    # A goniometer nearly without error: ordinary regression, 24 / 20.
    assert deming_slope(camera, goniometer, 1e9) == pytest.approx(1.2, rel=1e-6)


def test_equal_errors_are_the_first_principal_axis() -> None:
    random = np.random.default_rng(1)
    goniometer = random.normal(90, 30, 50)
    camera = 1.1 * goniometer + random.normal(0, 5, 50)
    across, up = np.linalg.svd(
        np.stack([goniometer, camera]).T - [goniometer.mean(), camera.mean()]
    )[2][0]
    assert deming_slope(camera, goniometer, 1.0) == pytest.approx(up / across)


@given(st.floats(0.1, 10), st.integers(0, 1000))
def test_exchanging_the_instruments_turns_the_slope_over(ratio: float, seed: int) -> None:
    random = np.random.default_rng(seed)
    goniometer = random.normal(90, 30, 20)
    camera = goniometer + random.normal(0, 5, 20)
    slope = deming_slope(camera, goniometer, ratio)
    turned = deming_slope(goniometer, camera, 1 / ratio)
    assert slope is not None
    assert turned == pytest.approx(1 / slope)


def test_readings_that_do_not_rise_together_have_no_line() -> None:
    falling = columns(np.array([4.0, 3, 2, 1, 0])), columns(np.arange(5.0))
    assert deming(*falling, EQUAL) is None
    assert deming(columns(np.arange(3.0)), columns(np.arange(3.0)), EQUAL) is None


def test_the_error_variances_leave_out_what_both_share() -> None:
    # Each shoulder twice: camera 0 and 4, goniometer 0 and 2. Variances 8 and 2, covariance 4.
    camera, goniometer = [np.array([0.0, 4])] * 10, [np.array([0.0, 2])] * 10
    apart = error_ratio(camera, goniometer, same_move=False)
    assert apart is not None
    assert (apart.camera_variance, apart.goniometer_variance) == pytest.approx((8, 2))
    assert apart.ratio == pytest.approx(4)
    # Taken off, the goniometer would err less than nothing: no ratio.
    assert error_ratio(camera, goniometer, same_move=True) is None
    crossed = (
        [np.array([0.0, 4]), np.array([0.0, 0.0])] * 10,
        [np.array([0.0, 1]), np.array([0, 2.0])] * 10,
    )
    # Variances 8 and 0, half of each: 4; 0.5 and 2: 1.25; covariance 2 and 0: 1.
    same = error_ratio(*crossed, same_move=True)
    assert same is not None
    assert (same.camera_variance, same.goniometer_variance) == pytest.approx((3, 0.25))


def test_nine_repeats_are_too_few_for_a_ratio() -> None:
    repeats = [np.array([0.0, 3])] * 9
    assert error_ratio(repeats, repeats, same_move=False) is None
    assert error_ratio([*repeats, *repeats[:1]], [*repeats, *repeats[:1]], same_move=False)


def lines(camera_sd: float, goniometer_sd: float, people: int, studies: int) -> list[DemingLine]:
    """Lines of studies without gain error, the ratio known."""
    random = np.random.default_rng(8)
    errors = ErrorRatio(
        camera_variance=camera_sd**2, goniometer_variance=goniometer_sd**2, degrees=40
    )
    found = []
    for _ in range(studies):
        truth = random.normal(100, 20, people)
        camera = truth + random.normal(0, camera_sd, people)
        goniometer = truth + random.normal(0, goniometer_sd, people)
        line = deming(columns(camera), columns(goniometer), errors)
        assert line is not None
        found.append(line)
    return found


@pytest.mark.parametrize(("camera_sd", "goniometer_sd"), [(4.0, 4.0), (12.0, 4.0), (3.0, 6.0)])
def test_the_interval_holds_the_truth_as_often_as_it_says(
    camera_sd: float, goniometer_sd: float
) -> None:
    held = [line.slope.holds(1.0) for line in lines(camera_sd, goniometer_sd, 40, 400)]
    assert 0.92 <= np.mean(held) <= 0.98
