"""Intraclass correlations against published tables, and what must hold for any table."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from calibration.statistics.icc import (
    Z90,
    Z95,
    intraclass_correlation,
    k_mean,
    mean_squares,
    minimal_detectable_change,
)

#: After Shrout & Fleiss 1979 (doi:10.1037/0033-2909.86.2.420): six targets, four judges. The
#: numbers were entered from memory; the first test holds them against all six coefficients that
#: are printed for them, reckoned apart from our own functions.
SHROUT_FLEISS = np.array(
    [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]],
    dtype=np.float64,
)


def test_the_table_has_all_six_printed_coefficients() -> None:
    n, k = SHROUT_FLEISS.shape
    rows, columns = SHROUT_FLEISS.mean(axis=1), SHROUT_FLEISS.mean(axis=0)
    whole = SHROUT_FLEISS.mean()
    between = k * np.sum((rows - whole) ** 2) / (n - 1)
    judges = n * np.sum((columns - whole) ** 2) / (k - 1)
    within = np.sum((SHROUT_FLEISS - rows[:, None]) ** 2) / (n * (k - 1))
    left = SHROUT_FLEISS - rows[:, None] - columns + whole
    error = np.sum(left**2) / ((n - 1) * (k - 1))
    coefficients = [
        (between - within) / (between + (k - 1) * within),
        (between - error) / (between + (k - 1) * error + k * (judges - error) / n),
        (between - error) / (between + (k - 1) * error),
        (between - within) / between,
        (between - error) / (between + (judges - error) / n),
        (between - error) / between,
    ]
    assert np.round(coefficients, 2).tolist() == [0.17, 0.29, 0.71, 0.44, 0.62, 0.91]


def test_the_mean_squares_printed_by_shrout_and_fleiss() -> None:
    squares = mean_squares(SHROUT_FLEISS)
    assert round(squares.shoulders, 2) == 11.24
    assert round(squares.raters, 2) == 32.49
    assert round(squares.residual, 2) == 1.02


def test_the_coefficients_printed_by_shrout_and_fleiss() -> None:
    reliability = intraclass_correlation(SHROUT_FLEISS)
    assert reliability is not None
    assert round(reliability.icc_2_1.value, 2) == 0.29
    assert round(reliability.icc_3_1.value, 2) == 0.71
    assert round(reliability.icc_a_k.value, 2) == 0.62
    assert round(k_mean(reliability.icc_3_1.value, 4), 2) == 0.91  # their ICC(3,4)


def test_a_table_worked_by_hand() -> None:
    # Three shoulders, two raters: 10 12 / 20 20 / 30 34. Mean of all 21.
    # Row means 11, 20, 32: squares about 21 are 100 + 1 + 121 = 222, times k = 2, over
    # n - 1 = 2: 222. Column means 20, 22: 1 + 1 = 2, times n = 3, over 1: 6.
    # Residuals -0, 0 / 1, -1 / -1, 1: sum of squares 4, over (n - 1)(k - 1) = 2: 2.
    squares = mean_squares(np.array([[10.0, 12.0], [20.0, 20.0], [30.0, 34.0]]))
    assert squares.shoulders == pytest.approx(222)
    assert squares.raters == pytest.approx(6)
    assert squares.residual == pytest.approx(2)
    reliability = intraclass_correlation(np.array([[10.0, 12.0], [20.0, 20.0], [30.0, 34.0]]))
    assert reliability is not None
    # ICC(3,1) = (222 - 2) / (222 + 2); ICC(2,1) = 220 / (224 + 2 (6 - 2) / 3);
    # ICC(A,2) = 220 / (222 + (6 - 2) / 3).
    assert reliability.icc_3_1.value == pytest.approx(220 / 224)
    assert reliability.icc_2_1.value == pytest.approx(220 / (224 + 8 / 3))
    assert reliability.icc_a_k.value == pytest.approx(220 / (222 + 4 / 3))
    # Variance of the raters (6 - 2) / 3; with the residual 2 that is 10/3.
    assert reliability.sem_agreement == pytest.approx((10 / 3) ** 0.5)
    assert reliability.sem_consistency.value == pytest.approx(2**0.5)
    # F interval with (2, 2) degrees: F(0.975; 2, 2) = 39. F = 111: from 111/39 to 111 * 39.
    assert reliability.icc_3_1.low == pytest.approx((111 / 39 - 1) / (111 / 39 + 1))
    assert reliability.icc_3_1.high == pytest.approx((111 * 39 - 1) / (111 * 39 + 1))


def test_minimal_detectable_change_of_a_standard_error_of_one() -> None:
    assert round(minimal_detectable_change(1.0, z=Z90), 2) == 2.33
    assert round(minimal_detectable_change(1.0, z=Z95), 2) == 2.77


def test_raters_who_agree_completely() -> None:
    reliability = intraclass_correlation(np.array([[10.0, 10.0], [20.0, 20.0], [35.0, 35.0]]))
    assert reliability is not None
    assert reliability.icc_2_1.value == pytest.approx(1)
    assert reliability.sem_agreement == pytest.approx(0)
    assert reliability.mdc95 == pytest.approx(0)


def test_shoulders_that_are_all_alike_have_no_coefficient() -> None:
    assert intraclass_correlation(np.full((5, 2), 90.1)) is None


@pytest.mark.parametrize(
    ("table", "part"),
    [
        (np.zeros((2, 2)), "too few"),
        (np.zeros((5, 1)), "too few"),
        (np.zeros(5), "too few"),
        (np.array([[1.0, 2.0], [np.nan, 3.0], [4.0, 5.0]]), "missing"),
        (np.array([[1.0, 2.0], [np.inf, 3.0], [4.0, 5.0]]), "missing"),
    ],
)
def test_tables_that_cannot_be_judged(table: np.ndarray, part: str) -> None:
    with pytest.raises(ValueError, match=part):
        intraclass_correlation(table)


def test_the_agreement_interval_holds_the_truth_as_often_as_it_says() -> None:
    # Shoulders SD 20, raters' offsets SD 3 (two fixed draws a study), error SD 5.
    random = np.random.default_rng(6)
    truth = 400 / (400 + 9 + 25)
    held = 0
    for _ in range(400):
        table = (
            random.normal(0, 20, (25, 1))
            + random.normal(0, 3, (1, 6))
            + random.normal(0, 5, (25, 6))
        )
        reliability = intraclass_correlation(table)
        assert reliability is not None
        held += reliability.icc_2_1.holds(truth)
    assert 0.92 <= held / 400 <= 0.98


tables = arrays(
    np.float64,
    st.tuples(st.integers(3, 8), st.integers(2, 4)),
    elements=st.floats(0, 180).map(lambda number: round(number, 1)),
)


@settings(max_examples=60, deadline=None)
@given(table=tables, shift=st.floats(-50, 50), scale=st.floats(0.5, 3))
def test_shift_and_scale_change_no_coefficient(
    table: np.ndarray, shift: float, scale: float
) -> None:
    before, after = intraclass_correlation(table), intraclass_correlation(table * scale + shift)
    if before is None or after is None:
        assert np.ptp(table) < 1e-6
        return
    for name in ("icc_2_1", "icc_3_1", "icc_a_k"):
        plain, changed = getattr(before, name), getattr(after, name)
        assert changed.value == pytest.approx(plain.value, abs=1e-5)
        assert changed.low == pytest.approx(plain.low, abs=1e-5)
    assert after.sem_agreement == pytest.approx(scale * before.sem_agreement, rel=1e-4, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(table=tables, seed=st.integers(0, 99))
def test_the_order_of_shoulders_and_raters_does_not_matter(table: np.ndarray, seed: int) -> None:
    random = np.random.default_rng(seed)
    mixed = random.permutation(random.permutation(table, axis=0), axis=1)
    before, after = intraclass_correlation(table), intraclass_correlation(mixed)
    if before is None or after is None:
        assert before is after
        return
    assert after.icc_2_1.value == pytest.approx(before.icc_2_1.value, abs=1e-9)
    assert before.icc_2_1.low <= before.icc_2_1.value + 1e-9
    assert before.icc_2_1.value <= before.icc_2_1.high + 1e-9
    assert before.icc_3_1.low <= before.icc_3_1.value <= before.icc_3_1.high
