"""Bands of readings on the screen."""

from gui.drawing.interval_band import band_opacity
from measure.domain.movements import Unit


def test_a_narrow_band_is_strong_and_a_wide_one_pale() -> None:
    narrow = band_opacity(118, 126, Unit.DEGREES)
    wide = band_opacity(90, 154, Unit.DEGREES)
    assert narrow > band_opacity(112, 132, Unit.DEGREES) > wide
    assert 0.2 < wide < narrow < 0.9
    assert band_opacity(0.45, 0.55, Unit.FRACTION) > band_opacity(0.2, 0.8, Unit.FRACTION)
