"""Bias and limits against worked examples, hand tables, an independent formula, and simulation.

The data of Bland & Altman and the figures known from their papers were entered from memory, and
the papers were not at hand to check them. That so many figures come out to the digit makes a slip
unlikely, and no more: what the formulas do is shown by the tables worked by hand.
"""

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from calibration.statistics.bland_altman import (
    LimitsOfAgreement,
    Pairing,
    bland_altman,
)
from calibration.statistics.pooled_variance import pooled_variance

#: After Bland & Altman 1986 (doi:10.1016/S0140-6736(86)90837-8), peak flow of 17 people in
#: l/min: first reading with the Wright meter and with the mini meter.
WRIGHT = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]
#: Their second readings.
WRIGHT_2 = [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421]

#: After Bland & Altman 1999 (doi:10.1177/096228029900800204): cardiac output of 12 people in
#: l/min by radionuclide ventriculography and by impedance cardiography.
HEART = [
    ("7.83 7.42 7.89 7.12 7.88", "6.57 5.62 6.90 6.57 6.35"),
    ("6.16 7.26 6.71 6.54", "4.06 4.29 4.26 4.09"),
    ("4.75 5.24 4.86 4.78 6.05 5.42", "4.71 5.50 5.08 5.02 6.01 5.67"),
    ("4.21 3.61 3.72 3.87 3.92", "4.14 4.20 4.61 4.68 5.04"),
    ("3.13 2.98 2.85 3.17 3.09 3.12", "3.03 2.86 2.77 2.46 2.32 2.43"),
    ("5.92 6.42 5.92 6.27", "5.90 5.81 5.70 5.76"),
    ("7.13 6.62 6.58 6.93", "5.09 4.63 4.61 5.09"),
    ("4.54 4.81 5.11 5.29 5.39 5.57", "4.72 4.61 4.36 4.20 4.36 4.20"),
    ("4.48 4.92 3.97", "3.17 3.12 2.96"),
    ("4.22 4.65 4.74 4.44 4.50", "4.35 4.62 3.16 3.53 3.53"),
    ("6.78 6.07 6.52 6.42 6.41 5.76", "7.20 6.09 7.00 7.10 7.40 6.80"),
    ("5.06 4.72 4.90 4.80 4.90 5.10", "4.50 4.20 3.80 3.80 4.20 4.50"),
]


def singles(values: Sequence[float] | np.ndarray) -> list[np.ndarray]:
    return [np.array([value], dtype=np.float64) for value in values]


def repeats(column: int) -> list[np.ndarray]:
    return [np.array([float(word) for word in row[column].split()]) for row in HEART]


def test_peak_flow_gives_the_figures_known_of_1986() -> None:
    limits = bland_altman(singles(WRIGHT), singles(MINI))
    assert round(limits.bias.value, 1) == -2.1
    assert round(limits.sd.value, 1) == 38.8
    # Limits of 2 standard deviations from the rounded figures: -79.7 and 75.5.
    bias, sd = round(limits.bias.value, 1), round(limits.sd.value, 1)
    assert round(bias - 2 * sd, 1) == -79.7
    assert round(bias + 2 * sd, 1) == 75.5
    # The 95 % interval of the bias: -22.0 to 17.8.
    assert round(limits.bias.low, 1) == -22.0
    assert round(limits.bias.high, 1) == 17.8
    assert limits.lower.value == pytest.approx(limits.bias.value - 1.959964 * limits.sd.value)
    assert np.isnan(limits.within_sd)


def test_the_wright_meter_repeats_as_known_of_1986() -> None:
    pairs = [np.array(pair, dtype=np.float64) for pair in zip(WRIGHT, WRIGHT_2, strict=True)]
    variance, degrees = pooled_variance(pairs)
    assert degrees == 17
    assert round(float(np.sqrt(variance)), 1) == 15.3


def test_unequal_repeats_against_an_independent_formula() -> None:
    camera, goniometer = repeats(0), repeats(1)
    assert round(pooled_variance(camera)[0], 4) == 0.1072
    assert round(pooled_variance(goniometer)[0], 4) == 0.1379
    limits = bland_altman(camera, goniometer, Pairing.SEPARATE)
    # The variance of the means' difference, plus (1 - mean of 1/m) of each within one.
    means = [np.array([group.mean() for group in groups]) for groups in (camera, goniometer)]
    difference = means[0] - means[1]
    variance = float(np.var(difference, ddof=1))
    for groups in (camera, goniometer):
        degrees = sum(len(group) - 1 for group in groups)
        within = sum(float(np.sum((group - group.mean()) ** 2)) for group in groups) / degrees
        variance += (1 - stats.hmean([len(group) for group in groups]) ** -1) * within
    assert limits.bias.value == pytest.approx(float(np.mean(difference)))
    assert limits.sd.value == pytest.approx(variance**0.5)
    half = stats.norm.isf(0.025) * variance**0.5
    assert limits.lower.value == pytest.approx(limits.bias.value - half)
    assert limits.upper.value == pytest.approx(limits.bias.value + half)


def test_a_table_with_repeats_worked_by_hand() -> None:
    # Differences: 1, 3 / 2, 2 / 6, 4. Means 2, 2, 5: their mean 3, variance (1 + 1 + 4)/2 = 3.
    # Within: 2 + 0 + 2 = 4 over 3 degrees. m = 2 each, so a half of 4/3 is added: 11/3.
    camera = [np.array([91.0, 93.0]), np.array([52.0, 52.0]), np.array([126.0, 124.0])]
    goniometer = [np.array([90.0, 90.0]), np.array([50.0, 50.0]), np.array([120.0, 120.0])]
    limits = bland_altman(camera, goniometer)
    assert limits.bias.value == pytest.approx(3)
    assert limits.between_sd == pytest.approx(3**0.5)
    assert limits.within_sd == pytest.approx((4 / 3) ** 0.5)
    assert limits.sd.value == pytest.approx((11 / 3) ** 0.5)
    # t(0.975; 2) = 4.302653: half of the bias's interval is that times sqrt(3 / 3).
    assert limits.bias.half_width == pytest.approx(4.302653, abs=1e-5)
    assert (limits.units, limits.pairs) == (3, 6)


def test_unequal_repeats_count_each_person_once() -> None:
    # One person with 50 pairs must not drown the others: the bias is the mean of 0, 0, 9.
    camera = [np.full(50, 9.0), np.zeros(1), np.zeros(1)]
    goniometer = [np.zeros(50), np.zeros(1), np.zeros(1)]
    assert bland_altman(camera, goniometer).bias.value == pytest.approx(3)


def test_differences_that_are_all_the_same() -> None:
    limits = bland_altman(singles([95, 85, 75]), singles([90, 80, 70]))
    assert limits.bias.value == 5
    assert limits.lower.value == limits.upper.value == 5


@pytest.mark.parametrize(
    ("camera", "goniometer", "how"),
    [
        ([[1.0], [2.0]], [[1.0], [2.0]], Pairing.SAME_MOVE),
        ([[1.0], [2.0], [3.0]], [[1.0], [2.0]], Pairing.SAME_MOVE),
        ([[1.0], [2.0], [3.0]], [[1.0], [2.0], []], Pairing.SEPARATE),
        ([[1.0], [2.0], [3.0, 4.0]], [[1.0], [2.0], [3.0]], Pairing.SAME_MOVE),
        ([[1.0], [2.0], [np.nan]], [[1.0], [2.0], [3.0]], Pairing.SAME_MOVE),
    ],
)
def test_tables_that_cannot_be_judged(
    camera: list[list[float]], goniometer: list[list[float]], how: Pairing
) -> None:
    with pytest.raises(ValueError, match=r"too few|unequal|missing"):
        bland_altman([np.array(c) for c in camera], [np.array(g) for g in goniometer], how)


@pytest.mark.parametrize(("people", "share"), [(8, 0.07), (20, 0.04), (60, 0.02)])
def test_the_interval_of_a_limit_is_close_to_the_exact_one(people: int, share: float) -> None:
    # Without repeats the exact interval comes from the noncentral t distribution.
    random = np.random.default_rng(people)
    limits = bland_altman(singles(random.normal(2, 5, people)), singles(np.zeros(people)))
    shift = 1.959964 * people**0.5
    mean, sign = limits.bias.value, limits.sd.value / people**0.5
    low = mean + sign * float(stats.nct.ppf(0.025, people - 1, shift))
    high = mean + sign * float(stats.nct.ppf(0.975, people - 1, shift))
    assert limits.upper.low == pytest.approx(low, abs=share * (high - low))
    assert limits.upper.high == pytest.approx(high, abs=share * (high - low))


def test_intervals_with_repeats_hold_the_truth_as_often_as_they_say() -> None:
    # 15 people, 1 to 4 pairs; differences: people SD 4, pairs SD 3, so SD 5; bias -2.
    random = np.random.default_rng(11)
    held = np.zeros(3)
    rounds = 600
    for _ in range(rounds):
        counts = random.integers(1, 5, 15)
        camera = [
            -2 + random.normal(0, 4) + random.normal(0, 3, count) for count in counts.tolist()
        ]
        limits = bland_altman(camera, [np.zeros(len(group)) for group in camera])
        held += [
            limits.bias.holds(-2),
            limits.upper.holds(-2 + 1.959964 * 5),
            limits.sd.holds(5),
        ]
    assert (np.abs(held / rounds - 0.95) < 0.025).all(), held / rounds


differences = st.lists(
    st.lists(
        st.tuples(st.floats(0, 180), st.floats(0, 180)).map(
            lambda pair: (round(pair[0], 1), round(pair[1], 1))
        ),
        min_size=1,
        max_size=4,
    ),
    min_size=3,
    max_size=8,
)


def both(rows: list[list[tuple[float, float]]]) -> tuple[list[np.ndarray], list[np.ndarray]]:
    return (
        [np.array([pair[0] for pair in person]) for person in rows],
        [np.array([pair[1] for pair in person]) for person in rows],
    )


def ends(limits: LimitsOfAgreement) -> list[float]:
    return [
        value
        for estimate in (limits.bias, limits.lower, limits.upper)
        for value in (estimate.low, estimate.value, estimate.high)
    ]


@settings(max_examples=60, deadline=None)
@given(rows=differences, how=st.sampled_from(Pairing))
def test_exchanging_the_instruments_turns_the_signs(
    rows: list[list[tuple[float, float]]], how: Pairing
) -> None:
    camera, goniometer = both(rows)
    straight = bland_altman(camera, goniometer, how)
    exchanged = bland_altman(goniometer, camera, how)
    assert ends(exchanged) == pytest.approx(
        [-x for x in (straight.bias.high, straight.bias.value, straight.bias.low)]
        + [-x for x in (straight.upper.high, straight.upper.value, straight.upper.low)]
        + [-x for x in (straight.lower.high, straight.lower.value, straight.lower.low)],
        abs=1e-9,
    )
    assert exchanged.sd.value == pytest.approx(straight.sd.value)


@settings(max_examples=60, deadline=None)
@given(rows=differences, shift=st.floats(-30, 30), scale=st.floats(0.2, 4))
def test_shift_and_scale(rows: list[list[tuple[float, float]]], shift: float, scale: float) -> None:
    camera, goniometer = both(rows)
    before = bland_altman(camera, goniometer)
    moved = bland_altman([c + shift for c in camera], goniometer)
    larger = bland_altman([scale * c for c in camera], [scale * g for g in goniometer])
    assert ends(moved) == pytest.approx([value + shift for value in ends(before)], abs=1e-6)
    assert ends(larger) == pytest.approx([value * scale for value in ends(before)], abs=1e-6)
    assert before.lower.low <= before.lower.value <= before.bias.value
