"""A reading drawn on a body: the band where its values are, inside the picture, on its side."""

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter
from pytestqt.qtbot import QtBot

from gui.drawing.reading_on_body import Reading, landmarks_of, paint_reading_on_body
from gui.style.appearance import Appearance
from gui.widgets.figures.reading_figure import ReadingFigure
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import scale_of

EVERY = pytest.mark.parametrize("movement", list(Movement))
WIDE, HIGH = 320, 300


def drawn(appearance: Appearance, reading: Reading, *, mirrored: bool = False) -> QImage:
    image = QImage(WIDE, HIGH, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    place = QRectF(4, 4, WIDE - 8, HIGH - 8)
    paint_reading_on_body(painter, appearance, place, reading, words_px=15, mirrored=mirrored)
    painter.end()
    return image


def reading_at(movement: Movement, share: float, half: float = 0.04) -> Reading:
    """Return a reading at a share of its scale."""
    low, high = scale_of(movement)
    value, wide = low + (high - low) * share, (high - low) * half
    return Reading(
        movement=movement, side=Side.LEFT, value=value, low=value - wide, high=value + wide
    )


@EVERY
@pytest.mark.parametrize("share", [0.0, 0.5, 1.0])
@pytest.mark.parametrize("mirrored", [False, True])
def test_everything_lies_inside_the_picture(
    appearance: Appearance, movement: Movement, share: float, mirrored: bool
) -> None:
    image = drawn(appearance, reading_at(movement, share), mirrored=mirrored)
    rim = [(x, y) for x in range(WIDE) for y in (0, HIGH - 1)]
    rim += [(x, y) for y in range(HIGH) for x in (0, WIDE - 1)]
    assert all(image.pixelColor(x, y).alpha() == 0 for x, y in rim)


@EVERY
def test_another_value_or_interval_is_another_picture(
    appearance: Appearance, movement: Movement
) -> None:
    pictures = [
        drawn(appearance, reading_at(movement, 0.5)),
        drawn(appearance, reading_at(movement, 0.6)),
        drawn(appearance, reading_at(movement, 0.5, half=0.15)),
        drawn(appearance, Reading(movement=movement, side=Side.LEFT)),
    ]
    assert all(one != other for k, one in enumerate(pictures) for other in pictures[k + 1 :])


@EVERY
def test_places_are_named_along_the_whole_scale(movement: Movement) -> None:
    values = [value for value, _ in landmarks_of(movement)]
    low, high = scale_of(movement)
    assert values == sorted(values)
    assert low <= values[0] < values[-1] <= high
    if MOVEMENTS[movement].unit is Unit.DEGREES:
        assert (values[0], values[-1]) == (low, high)


def test_the_figure_says_what_it_shows(appearance: Appearance, qtbot: QtBot) -> None:
    figure = ReadingFigure(appearance)
    qtbot.addWidget(figure)
    figure.show_reading(
        Reading(movement=Movement.FLEXION, side=Side.LEFT, value=118.2, low=112.0, high=124.0)
    )
    assert figure.accessibleName() == "drawing on the body, left arm: 118\u00b0 (112 to 124)"
    figure.show_reading(Reading(movement=Movement.FLEXION, side=Side.LEFT))
    assert figure.accessibleName() == "drawing on the body, left arm: no reading"
