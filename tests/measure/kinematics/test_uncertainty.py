import math

import pytest

from measure.domain.measurements import BASIS_SENTENCES, IntervalBasis
from measure.domain.movements import MOVEMENTS, Family, Movement, View
from measure.domain.reasons import Reason
from measure.kinematics.uncertainty import (
    LEAST_HALF_WIDTH,
    difficulty,
    half_width,
    interval_basis,
    measured_half_width,
    too_wide,
    with_allowance,
)

VIEWS = [(movement, view) for movement in Movement for view in MOVEMENTS[movement].views]
HANGING = 0.0


@pytest.mark.parametrize(("movement", "view"), VIEWS)
def test_spread_and_doubt_make_a_reading_harder(movement, view):
    calm = difficulty(movement, view, HANGING, 0.0, ())
    assert difficulty(movement, view, HANGING, 10.0, ()) > calm >= 1
    doubted = difficulty(movement, view, HANGING, 0.0, (Reason.ELBOW_BENT,))
    assert doubted == pytest.approx(1.25 * calm)
    assert difficulty(movement, view, HANGING, 0.0, (Reason.SHRUG,)) == calm


def test_a_raised_arm_is_harder_to_read_than_a_hanging_one():
    abduction = [
        difficulty(Movement.ABDUCTION, View.FRONT, value, 0.0, ())
        for value in (-5.0, 0.0, 45.0, 90.0, 170.0)
    ]
    assert abduction == pytest.approx([1.0, 1.0, 1.25, 1.5, 1.5])
    assert difficulty(Movement.FLEXION, View.SIDE, 90.0, 0.0, ()) == pytest.approx(1.5 * 1.15)
    assert difficulty(Movement.ABDUCTION, View.FRONT, 0.0, 8.0, ()) == pytest.approx(math.sqrt(2))
    assert difficulty(Movement.EXTERNAL_ROTATION, View.OBLIQUE, 60.0, 0.0, ()) == 1


@pytest.mark.parametrize(("movement", "view"), VIEWS)
def test_the_interval_is_the_measured_part_with_what_it_could_not_see(movement, view):
    facts = MOVEMENTS[movement]
    measured = measured_half_width(movement, view, "heavy")
    assert half_width(movement, view, "heavy", 1.4) == with_allowance(movement, 1.4 * measured)
    assert with_allowance(movement, 100.0) == 100.0 + facts.allowance
    assert with_allowance(movement, 0.0) == max(
        facts.allowance, LEAST_HALF_WIDTH.get(facts.family, 0.0)
    )
    assert measured_half_width(movement, view, "never-measured") >= 1.25 * measured


@pytest.mark.parametrize(("movement", "view"), VIEWS)
def test_an_allowance_stands_where_no_real_people_do(movement, view):
    virtual = interval_basis(movement, view) is IntervalBasis.VIRTUAL_PEOPLE
    assert virtual == (MOVEMENTS[movement].allowance > 0)
    assert virtual == (movement not in (Movement.ABDUCTION, Movement.FLEXION))


def test_an_interval_can_be_too_wide_to_say_anything():
    for movement, facts in MOVEMENTS.items():
        limits = {Family.ELEVATION: 20.0, Family.ROTATION: 30.0, Family.REACH: 0.3}
        widest = limits[facts.family]
        assert not too_wide(movement, widest)
        assert too_wide(movement, 1.01 * widest)


def test_every_basis_has_its_sentence():
    assert BASIS_SENTENCES.keys() == set(IntervalBasis)
