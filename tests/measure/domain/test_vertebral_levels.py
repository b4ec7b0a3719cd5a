import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.vertebral_levels import (
    ILIAC_SPINES,
    centimetres_in,
    level_at,
    level_of,
    levels_in,
    region_of,
)


def height_of(percent_from_c7):
    """The height above mid-hip of a place so many per cent down from C7 to the iliac spines."""
    return 1 - percent_from_c7 / 100 * (1 - ILIAC_SPINES)


@pytest.mark.parametrize(
    ("percent", "level"), [(21.0, "T4"), (39.0, "T7"), (54.1, "T10"), (70.9, "L1"), (86.1, "L4")]
)
def test_published_anchors(percent, level):
    assert level_at(height_of(percent)) == level


@pytest.mark.parametrize(
    ("height", "level"), [(0.08, "sacrum"), (0.0, "buttock"), (-0.3, "thigh"), (1.0, "T1")]
)
def test_ends(height, level):
    assert level_at(height) == level


@given(st.floats(-0.5, 1.1), st.floats(0, 0.3))
def test_a_higher_thumb_never_has_a_lower_level(height, more):
    order = ["thigh", "buttock", "sacrum", "S2", "S1"]
    order += [f"L{n}" for n in range(5, 0, -1)] + [f"T{n}" for n in range(12, 0, -1)]
    assert order.index(level_at(height + more)) >= order.index(level_at(height))


def test_from_s2_to_t5_are_fourteen_levels():
    assert levels_in(height_of(27.0) - height_of(100.0)) == pytest.approx(14)


def test_c7_to_the_iliac_spines_are_51_cm():
    assert centimetres_in(height_of(0.0) - height_of(100.0)) == pytest.approx(50.9)


def test_the_usual_reach_is_t12_to_t5():
    low, high = MOVEMENTS[Movement.HAND_BEHIND_BACK].usual
    assert (level_at(low), level_at(high)) == ("T12", "T5")
    assert (low, high) == pytest.approx((height_of(65.3), height_of(27.0)), abs=0.006)


def test_a_band_names_both_ends():
    level = level_of(0.1, 0.3, 0.5)
    assert (level.low, level.high) == ("sacrum", level_at(0.5))
    assert level.band == "sacrum to lower thoracic, most likely upper lumbar"
    assert region_of("L4") == "lower lumbar"
