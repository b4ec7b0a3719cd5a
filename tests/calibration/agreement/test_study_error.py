"""A study's errors as the interval of later readings."""

import math
from dataclasses import replace

import numpy as np
import pytest

from calibration.agreement.study_error import study_error
from calibration.statistics.bland_altman import Pairing
from measure.domain.acquisition import Correction, Setup
from measure.domain.error_sizes import StudyError, check_study
from measure.domain.measurements import IntervalBasis
from measure.domain.movements import Movement, View
from measure.errors import InputError
from measure.kinematics.uncertainty import half_width, interval_basis, measured_half_width
from tests.support.paired_readings import crowd, judged, pair

ERROR = StudyError(
    sd_deg=5.0, bias_deg=-3.0, bias_half_deg=1.0, pairs=40, people=20, study="garden"
)


def test_the_interval_reaches_over_a_bias_that_is_not_corrected() -> None:
    assert ERROR.half_width_deg(corrected=True) == pytest.approx(1.96 * 5 + 1)
    assert ERROR.half_width_deg(corrected=False) == pytest.approx(1.96 * 5 + 1 + 3)


def test_a_study_takes_the_place_of_the_allowance() -> None:
    setup = Setup(study=ERROR)
    for movement, view in ((Movement.FLEXION, View.SIDE), (Movement.EXTENSION, View.SIDE)):
        measured = measured_half_width(movement, view, "heavy")
        assert half_width(movement, view, "heavy", 1.0, setup) == max(measured, 13.8)
        assert half_width(movement, view, "heavy", 9.0, setup) == 9 * measured
        assert interval_basis(movement, view, setup) is IntervalBasis.OWN_STUDY
        assert interval_basis(movement, view, Setup()) is not IntervalBasis.OWN_STUDY


def test_a_bias_counts_unless_a_correction_of_the_same_study_takes_it_off() -> None:
    correction = Correction(
        bias_deg=-3.0,
        gain=0.0,
        centre_deg=90.0,
        pairs=40,
        study="garden",
        lowest_deg=20.0,
        highest_deg=160.0,
    )
    halves = [
        half_width(Movement.EXTENSION, View.SIDE, "heavy", 1.0, Setup(study=ERROR, correction=used))
        for used in (correction, replace(correction, study="an older one"), None)
    ]
    assert halves == pytest.approx([10.8, 13.8, 13.8])


def test_a_large_study_gives_its_errors() -> None:
    study = judged(crowd(40))
    error = study_error(study, "garden")
    assert error is not None
    assert (error.sd_deg, error.pairs, error.people) == (study.limits.sd.value, 40, 40)
    assert error.bias_half_deg == study.limits.bias.half_width


@pytest.mark.parametrize("rows", [crowd(29), [pair(f"P{n % 9}", 90 + n, 88) for n in range(40)]])
def test_a_small_study_gives_none(rows: list) -> None:
    assert study_error(judged(rows), "garden") is None


def test_readings_at_different_moments_give_none() -> None:
    assert study_error(judged(crowd(40), Pairing.SEPARATE), "garden") is None


def test_the_goniometers_own_error_is_taken_off_where_repeats_tell() -> None:
    random = np.random.default_rng(2)
    rows = []
    for n in range(300):
        angle = random.normal(100, 20)
        for repeat in (1, 2):
            camera, goniometer = random.normal(0, 3), random.normal(0, 4)
            rows.append(pair(f"P{n}", angle + camera, angle + goniometer, repeat=repeat))
    error = study_error(judged(rows), "garden")
    assert error is not None
    assert error.sd_deg == pytest.approx(3, abs=0.35)
    assert judged(rows).limits.sd.value == pytest.approx(5, abs=0.3)


def test_the_interval_of_later_people_holds_as_often_as_it_says() -> None:
    """Studies of 30 people; the camera errs by 5 degrees and 2 of bias, the goniometer by 0."""
    random = np.random.default_rng(6)
    held = []
    for _ in range(400):
        angles = random.uniform(40, 160, 30)
        rows = [
            pair(f"P{n}", angle + 2 + random.normal(0, 5), angle) for n, angle in enumerate(angles)
        ]
        error = study_error(judged(rows), "garden")
        assert error is not None
        later = 2 + random.normal(0, 5, 200)
        held.append(np.mean(np.abs(later) <= error.half_width_deg(corrected=False)))
    assert 0.95 <= np.mean(held) <= 0.99


@pytest.mark.parametrize(
    ("movement", "changes"),
    [
        (Movement.HAND_BEHIND_BACK, {}),
        (Movement.FLEXION, {"sd_deg": -1.0}),
        (Movement.FLEXION, {"bias_deg": math.nan}),
        (Movement.FLEXION, {"bias_half_deg": 100.0}),
        (Movement.FLEXION, {"pairs": 29}),
    ],
)
def test_impossible_studies(movement: Movement, changes: dict[str, float]) -> None:
    values = {name: getattr(ERROR, name) for name in StudyError.__dataclass_fields__} | changes
    with pytest.raises(InputError):
        check_study(movement, StudyError(**values))
