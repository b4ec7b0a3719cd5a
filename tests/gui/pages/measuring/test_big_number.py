"""Digits that are read from three metres; no number is a dash."""

import pytest
from PySide6.QtGui import QFontMetricsF
from pytestqt.qtbot import QtBot

from gui.pages.measuring.big_number import BigNumber
from gui.style.appearance import Appearance
from measure.domain.movements import Unit
from tests.gui.conftest import Place


@pytest.mark.parametrize("size", [(1280, 800), (900, 560), (1920, 1080)])
def test_digits_are_at_least_a_sixth_of_the_window(
    appearance: Appearance, qtbot: QtBot, placed: Place, size: tuple[int, int]
) -> None:
    number = BigNumber(appearance)
    window = placed(number, size)
    number.show_value(118.4, Unit.DEGREES)
    assert number.text == "118\u00b0"
    assert number.digit_height() >= window.height() / 6 - 0.01
    font = appearance.digit_font(number.digit_height())
    assert QFontMetricsF(font).tightBoundingRect("0").height() >= window.height() / 6 - 2
    assert QFontMetricsF(font).horizontalAdvance("180") <= number.width()


def test_no_number_is_a_dash_and_never_a_zero(appearance: Appearance) -> None:
    number = BigNumber(appearance)
    number.show_value(None, Unit.DEGREES)
    assert number.text == "\u2013"
    assert number.accessibleName() == "no number"
