"""The display scale shared by screen and paper."""

import pytest

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import paleness, scale_holding, scale_of, share_of_scale


@pytest.mark.parametrize("movement", list(Movement))
def test_the_scale_holds_what_is_usual(movement: Movement) -> None:
    low, high = scale_of(movement)
    assert low <= MOVEMENTS[movement].usual[0]
    assert MOVEMENTS[movement].usual[1] <= high


@pytest.mark.parametrize(
    ("value", "share"), [(-0.15, 0.0), (0.35, 0.5), (0.85, 1.0), (-0.4, 0.0), (1.1, 1.0)]
)
def test_a_reach_lies_between_the_scale_s_ends(value: float, share: float) -> None:
    assert share_of_scale(value, Movement.HAND_BEHIND_BACK) == pytest.approx(share)


def test_a_chart_s_scale_holds_every_reading() -> None:
    reach = Movement.HAND_BEHIND_BACK
    assert scale_holding(reach, []) == scale_of(reach)
    assert scale_holding(reach, [0.2, 0.6]) == scale_of(reach)
    assert scale_holding(reach, [-0.3, 1.0]) == (-0.3, 1.0)


@pytest.mark.parametrize(
    ("half_deg", "expected"), [(2.0, 0.0), (4.0, 0.0), (10.0, 0.5), (16.0, 1.0), (40.0, 1.0)]
)
def test_wide_intervals_are_pale(half_deg: float, expected: float) -> None:
    assert paleness(90 - half_deg, 90 + half_deg, Unit.DEGREES) == pytest.approx(expected)
    half = half_deg / 80
    assert paleness(0.4 - half, 0.4 + half, Unit.FRACTION) == pytest.approx(expected)
