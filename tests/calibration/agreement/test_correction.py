"""When a study may correct the camera, and that the correction does what it says."""

import numpy as np
import pytest

from calibration.agreement.correction import (
    NoCorrection,
    ProposedCorrection,
    fit_correction,
)
from calibration.agreement.pairs_table import PairedReading
from calibration.agreement.study import Agreement, analyse_agreement
from calibration.statistics.bland_altman import Pairing
from measure.domain.landmarks import Side
from measure.domain.movements import Movement


def study(
    people: int,
    *,
    repeats: int = 1,
    gain: float = 1.0,
    bias: float = 0.0,
    noise: float = 2.0,
    angles: tuple[float, float] = (30.0, 160.0),
    pairing: Pairing = Pairing.SAME_MOVE,
    seed: int = 1,
) -> Agreement:
    random = np.random.default_rng(seed)
    pairs = []
    for person in range(people):
        for angle in random.uniform(*angles, repeats):
            camera = gain * angle + bias + random.normal(0, noise)
            pairs.append(
                PairedReading(
                    person=f"P{person}",
                    movement=Movement.FLEXION,
                    side=Side.LEFT,
                    camera_deg=float(camera),
                    goniometer_deg=float(angle),
                )
            )
    judged = analyse_agreement(pairs, pairing)
    assert isinstance(judged, Agreement)
    return judged


def offered(judged: Agreement) -> ProposedCorrection:
    proposed = fit_correction(judged, "spring")
    assert isinstance(proposed, ProposedCorrection), proposed
    return proposed


def test_a_constant_bias_is_taken_off() -> None:
    proposed = offered(study(30, bias=5))
    assert proposed.correction.gain == 0
    assert proposed.correction.bias_deg == pytest.approx(5, abs=0.8)
    assert (proposed.correction.pairs, proposed.correction.study) == (30, "spring")
    assert proposed.correction.corrected_deg(105) == pytest.approx(100, abs=0.8)
    assert proposed.error_after_deg < proposed.error_before_deg
    assert "degrees are taken off" in proposed.sentence
    assert "starts a new series" in proposed.sentence


def test_a_gain_error_is_taken_out_over_the_whole_range() -> None:
    proposed = offered(study(40, repeats=2, gain=0.9, bias=3, noise=1))
    for angle in (30, 90, 160):
        assert proposed.correction.corrected_deg(0.9 * angle + 3) == pytest.approx(angle, abs=1.0)
    assert proposed.error_after_deg < 1.5
    assert "degrees are added" in proposed.sentence


def test_the_correction_solves_an_exact_line_exactly() -> None:
    proposed = offered(study(30, gain=1.08, bias=1, noise=1e-9))
    for angle in (50.0, 100.0, 140.0):
        assert proposed.correction.corrected_deg(1.08 * angle + 1) == pytest.approx(angle, abs=1e-5)


@pytest.mark.parametrize(
    ("judged", "part"),
    [
        (study(29, bias=5), "it needs 30 pairs"),
        (study(9, repeats=6, bias=5), "it needs 10 people"),
        (study(30, bias=5, pairing=Pairing.SEPARATE), "at the same moment"),
        (study(40), "no clear difference"),
        (study(30, bias=8, noise=12), "the bias is known only to"),
        (study(40, bias=14), "a bias of 13.8"),
        (study(60, gain=0.7, bias=22, noise=1), "a gain error of -0.4"),
        (study(60, gain=1.15, bias=-5, noise=1), "at the end of the range"),
    ],
)
def test_no_correction_and_why(judged: Agreement, part: str) -> None:
    proposed = fit_correction(judged, "spring")
    assert isinstance(proposed, NoCorrection)
    assert part in proposed.sentence


def test_a_narrow_range_of_angles_gives_no_gain() -> None:
    assert offered(study(60, gain=0.9, bias=14, noise=1, angles=(80, 120))).correction.gain == 0


def test_people_with_many_pairs_count_once() -> None:
    # Ten people without bias, one with 60 pairs and 8 degrees: no bias of people in general.
    random = np.random.default_rng(4)
    pairs = [
        PairedReading(
            person=f"P{person}",
            movement=Movement.FLEXION,
            side=Side.LEFT,
            camera_deg=float(angle + (8 if person == 0 else 0) + random.normal(0, 1)),
            goniometer_deg=float(angle),
        )
        for person in range(11)
        for angle in random.uniform(40, 150, 60 if person == 0 else 3)
    ]
    judged = analyse_agreement(pairs)
    assert isinstance(judged, Agreement)
    assert isinstance(fit_correction(judged, "spring"), NoCorrection)


def test_outside_the_studied_angles_the_correction_stays_what_it_is_at_their_end() -> None:
    proposed = offered(study(40, repeats=2, gain=0.9, bias=3, noise=1)).correction
    assert proposed.lowest_deg is not None
    assert proposed.highest_deg is not None
    at_end = proposed.corrected_deg(proposed.highest_deg) - proposed.highest_deg
    assert proposed.corrected_deg(proposed.highest_deg + 30) == proposed.highest_deg + 30 + at_end
    at_end = proposed.corrected_deg(proposed.lowest_deg) - proposed.lowest_deg
    assert proposed.corrected_deg(proposed.lowest_deg - 30) == pytest.approx(
        proposed.lowest_deg - 30 + at_end
    )
