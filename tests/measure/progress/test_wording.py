"""Wording of progress, in English and translated."""

import pytest

from measure.domain.movements import Movement, Unit
from measure.progress.comparison import Change
from measure.progress.wording import (
    DECIMALS,
    INTERVAL,
    MINUS,
    WITH_INTERVAL,
    change_words,
    number_words,
    plain,
    signed,
    with_decimal_sign,
    with_interval,
)

GAIN = Change(value=18.2, low=12.4, high=24.0)
LOSS = Change(value=-0.06, low=-0.15, high=0.02)
SPANISH = {INTERVAL: "{low} a {high}", WITH_INTERVAL: "{value} [{range}]"}


@pytest.mark.parametrize(
    ("amount", "unit", "expected"),
    [
        (18.2, Unit.DEGREES, "+18°"),
        (-3.6, Unit.DEGREES, f"{MINUS}4°"),
        (-0.2, Unit.DEGREES, "0°"),
        (0.061, Unit.FRACTION, "+4 cm"),
    ],
)
def test_a_change_has_its_sign_unless_it_rounds_to_nothing(
    amount: float, unit: Unit, expected: str
) -> None:
    assert signed(amount, unit) == expected


def test_a_change_stands_with_its_interval() -> None:
    assert change_words(GAIN, Movement.FLEXION) == "+18° (+12 to +24)"
    reach = change_words(LOSS, Movement.HAND_BEHIND_BACK)
    assert reach == f"about {MINUS}1.3 levels, {MINUS}4 ({MINUS}9 to +1) cm"


def test_the_parts_of_a_change_are_translated() -> None:
    assert change_words(GAIN, Movement.FLEXION, SPANISH.__getitem__) == "+18° [+12 a +24]"


def test_a_reach_is_said_by_its_levels() -> None:
    assert plain(0.3, Movement.HAND_BEHIND_BACK) == "L3"
    assert with_interval(0.3, 0.2, 0.4, Movement.HAND_BEHIND_BACK).count(" to ") == 1
    assert with_interval(92.0, 83.0, 101.0, Movement.ABDUCTION) == "92° (83 to 101)"


def comma(text: str) -> str:
    """Translate as a language whose decimal sign is a comma."""
    return text.replace(".", ",") if text == DECIMALS else text


@pytest.mark.parametrize(
    ("value", "digits", "sign", "words"),
    [
        (3.14, 1, False, "3,1"),
        (-0.04, 1, True, "0,0"),
        (-0.06, 1, True, f"{MINUS}0,1"),
        (2.0, 0, True, "+2"),
        (1234.5, 1, False, "1234,5"),
    ],
)
def test_numbers_have_the_decimal_sign_of_the_reader(
    value: float, digits: int, sign: bool, words: str
) -> None:
    assert number_words(value, digits, comma, sign=sign) == words
    assert number_words(value, digits, sign=sign) == words.replace(",", ".")


def test_a_written_number_gets_the_decimal_sign_too() -> None:
    assert with_decimal_sign("+3.1\N{DEGREE SIGN}", comma) == "+3,1\N{DEGREE SIGN}"
    assert change_words(
        Change(value=0.1, low=0.02, high=0.2), Movement.HAND_BEHIND_BACK, comma
    ).startswith("about +2,2 levels")
