"""Agreement from all pairs: against the table, a balanced analysis by hand, and coverage."""

import math

import numpy as np
import pytest

from calibration.statistics.bland_altman import Pairing
from calibration.statistics.icc import intraclass_correlation
from calibration.statistics.variance_components import components, reliability_of_pairs

#: Four shoulders, two instruments, two repeats each.
BALANCED = np.array(
    [
        [[10, 12], [13, 15]],
        [[20, 22], [21, 25]],
        [[31, 29], [30, 34]],
        [[38, 42], [45, 47]],
    ],
    dtype=np.float64,
)


def test_one_pair_a_shoulder_gives_the_coefficients_of_the_table() -> None:
    table = np.array([[10.0, 12], [21, 20], [33, 36], [41, 45], [52, 50]])
    camera, goniometer = ([np.array([value]) for value in column] for column in table.T)
    table_result = intraclass_correlation(table)
    result = reliability_of_pairs(camera, goniometer, list("ABCDE"), Pairing.SAME_MOVE)
    assert result is not None
    assert table_result is not None
    for name in ("icc_2_1", "icc_3_1", "icc_a_k"):
        assert getattr(result, name).value == pytest.approx(getattr(table_result, name).value)
    assert result.sem_agreement == pytest.approx(table_result.sem_agreement)
    assert result.sem_consistency.value == pytest.approx(table_result.sem_consistency.value)
    assert result.sem_consistency.low == pytest.approx(table_result.sem_consistency.low)


def test_equal_repeats_give_the_balanced_analysis_of_variance() -> None:
    # Two-way analysis with replicates, n = 4, k = 2, m = 2, straight from its definition.
    n, k, m = BALANCED.shape
    centre = BALANCED.mean()
    of_shoulder = BALANCED.mean(axis=(1, 2)) - centre
    of_instrument = BALANCED.mean(axis=(0, 2)) - centre
    cells = BALANCED.mean(axis=2)
    crossed = cells - centre - of_shoulder[:, None] - of_instrument[None, :]
    shoulders = k * m * np.sum(of_shoulder**2) / (n - 1)
    instruments = n * m * np.sum(of_instrument**2) / (k - 1)
    both = m * np.sum(crossed**2) / ((n - 1) * (k - 1))
    error = np.sum((BALANCED - cells[..., None]) ** 2) / (n * k * (m - 1))
    parts = components(list(BALANCED[:, 0]), list(BALANCED[:, 1]), Pairing.SEPARATE)
    assert parts.shoulders == pytest.approx((shoulders - both) / (k * m))
    assert parts.residual == pytest.approx((both - error) / m + error)
    assert parts.instruments == pytest.approx(max(0.0, (instruments - both) / (n * m)))


def test_the_balanced_analysis_worked_by_hand() -> None:
    # Cell means: 11 14, 21 23, 30 32, 40 46; differences -3 -2 -2 -6, mean -3.25, variance 43/12.
    # Every cell has the variance 2, but the second, fourth and sixth: goniometer 2, 8, 8, 2.
    parts = components(list(BALANCED[:, 0]), list(BALANCED[:, 1]), Pairing.SEPARATE)
    camera_within, goniometer_within = (2 + 2 + 2 + 8) / 4, (2 + 8 + 8 + 2) / 4
    variance = 43 / 12 + (camera_within + goniometer_within) / 2
    assert parts.residual == pytest.approx(variance / 2)
    assert parts.instruments == pytest.approx((3.25**2 - 43 / 12 / 4) / 2)


def test_too_few_people_give_nothing() -> None:
    three = [np.array([float(n), n + 1]) for n in range(3)]
    assert reliability_of_pairs(three, three, list("ABC"), Pairing.SAME_MOVE) is None


def test_intervals_hold_the_truth_as_often_as_they_say() -> None:
    random = np.random.default_rng(5)
    between, move, error, people, studies = 20.0, 5.0, 4.0, 25, 300
    # A reading's variance: the shoulder's, the position's, the instrument's error.
    truth = (between**2 + move**2) / (between**2 + move**2 + error**2)
    held, sem = [], []
    for _ in range(studies):
        camera, goniometer = [], []
        for _ in range(people):
            angles = random.normal(100, between) + random.normal(0, move, random.integers(1, 5))
            camera.append(angles + random.normal(0, error, len(angles)))
            goniometer.append(angles + random.normal(0, error, len(angles)))
        result = reliability_of_pairs(camera, goniometer, range(people), Pairing.SAME_MOVE)
        assert result is not None
        held.append(result.icc_3_1.holds(truth))
        sem.append(result.sem_consistency.holds(error))
    assert 0.90 <= np.mean(held) <= 0.99
    # With one to four repeats the chi-square intervals are a little narrow: 92 to 93 %.
    assert 0.90 <= np.mean(sem) <= 0.98
    assert math.isfinite(result.icc_a_k.high)
