"""The slope of difference on mean: exact lines, the usual interval, people with repeats."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from calibration.statistics.proportional_bias import proportional_bias


def singles(values: np.ndarray) -> list[np.ndarray]:
    return [np.array([value]) for value in values]


def test_a_camera_that_reads_nine_tenths() -> None:
    # c = 0.9 g: the difference is -0.1 g, the mean 0.95 g, the slope -0.1 / 0.95.
    goniometer = np.array([30.0, 60.0, 90.0, 120.0])
    line = proportional_bias(singles(0.9 * goniometer), singles(goniometer))
    assert line is not None
    assert line.slope.value == pytest.approx(-0.1 / 0.95)
    assert line.slope.low == pytest.approx(line.slope.high)
    assert line.residual_sd_deg == pytest.approx(0, abs=1e-9)
    assert line.difference_at(95.0) == pytest.approx(-10.0)
    assert line.camera_per_goniometer == pytest.approx(0.9)
    assert (line.lowest_deg, line.highest_deg) == pytest.approx((28.5, 114.0))


def test_a_constant_offset_is_no_gain_error() -> None:
    goniometer = np.array([30.0, 60.0, 90.0])
    line = proportional_bias(singles(goniometer + 5), singles(goniometer))
    assert line is not None
    assert line.slope.value == pytest.approx(0, abs=1e-12)
    assert line.at_centre_deg == pytest.approx(5)


def test_the_slope_and_interval_agree_with_an_independent_regression() -> None:
    random = np.random.default_rng(3)
    goniometer = random.uniform(20, 160, 25)
    camera = 0.95 * goniometer + random.normal(0, 4, 25)
    line = proportional_bias(singles(camera), singles(goniometer))
    oracle = stats.linregress((camera + goniometer) / 2, camera - goniometer)
    assert line is not None
    assert line.slope.value == pytest.approx(oracle.slope)
    half = stats.t.ppf(0.975, 23) * oracle.stderr
    assert line.slope.half_width == pytest.approx(half)


def test_repeats_of_one_person_do_not_pass_for_people() -> None:
    # Copying every pair ten times adds no knowledge; the interval must not shrink much.
    random = np.random.default_rng(5)
    goniometer = random.uniform(20, 160, 12)
    camera = goniometer + random.normal(0, 5, 12)
    once = proportional_bias(singles(camera), singles(goniometer))
    copied = proportional_bias(
        [np.repeat(value, 10) for value in camera], [np.repeat(value, 10) for value in goniometer]
    )
    assert once is not None
    assert copied is not None
    assert copied.slope.value == pytest.approx(once.slope.value)
    assert copied.slope.half_width > 0.7 * once.slope.half_width


def test_the_interval_with_repeats_holds_the_truth_as_often_as_it_says() -> None:
    # 12 people, 4 angles each, offset SD 4 a person, error SD 2, no gain error.
    random = np.random.default_rng(8)
    held = 0
    for _ in range(400):
        goniometer = [random.uniform(30, 150, 4) for _ in range(12)]
        camera = [g + random.normal(0, 4) + random.normal(0, 2, 4) for g in goniometer]
        line = proportional_bias(camera, goniometer)
        assert line is not None
        held += line.slope.holds(0.0)
    assert 0.91 <= held / 400 <= 0.99


@pytest.mark.parametrize(
    ("camera", "goniometer"),
    [
        ([10.0, 20.0], [10.0, 20.0]),  # two people
        ([90.0, 90.0, 90.0], [90.0, 90.0, 90.0]),  # no range
        ([80.0, 90.0, 100.0], [100.0, 90.0, 80.0]),  # means all alike
    ],
)
def test_no_line(camera: list[float], goniometer: list[float]) -> None:
    assert proportional_bias(singles(np.array(camera)), singles(np.array(goniometer))) is None


def test_no_line_when_one_person_makes_the_whole_range() -> None:
    camera = [np.array([90.0, 90.0]), np.array([90.0]), np.array([20.0, 150.0])]
    assert proportional_bias(camera, camera) is None


angles = st.lists(
    st.tuples(st.integers(0, 1800), st.integers(0, 1800)), min_size=4, max_size=12, unique=True
)


@settings(max_examples=60, deadline=None)
@given(rows=angles)
def test_exchanging_the_instruments_turns_the_sign_of_the_slope(
    rows: list[tuple[int, int]],
) -> None:
    camera = np.array([row[0] / 10 for row in rows])
    goniometer = np.array([row[1] / 10 for row in rows])
    straight = proportional_bias(singles(camera), singles(goniometer))
    other = proportional_bias(singles(goniometer), singles(camera))
    if straight is None or other is None:
        assert straight is other
        return
    assert other.slope.value == pytest.approx(-straight.slope.value)
    assert other.slope.low == pytest.approx(-straight.slope.high)
    assert other.at_centre_deg == pytest.approx(-straight.at_centre_deg)
