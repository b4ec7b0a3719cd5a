"""Words of a chart's lines stand where nothing is drawn."""

from PySide6.QtCore import QPointF, QRectF, QSizeF

from gui.drawing.free_places import free_places

WITHIN = QRectF(0, 0, 400, 200)
SIZE = QSizeF(80, 20)


def test_words_stand_above_the_ends_of_their_lines() -> None:
    spots = free_places([200, 100], [SIZE, SIZE], WITHIN, [])
    assert spots == [QRectF(320, 180, 80, 20), QRectF(320, 80, 80, 20)]


def test_words_give_way_to_what_is_drawn_to_the_other_side_of_their_line() -> None:
    (spot,) = free_places([100], [SIZE], WITHIN, [QPointF(x, 88) for x in range(0, 400, 5)])
    assert spot == QRectF(320, 100, 80, 20)


def test_words_stand_at_one_end_and_nowhere_without_room() -> None:
    reading = [QPointF(360, y) for y in (90, 110)]
    assert free_places([200, 100], [SIZE, SIZE], WITHIN, reading) == [
        QRectF(0, 180, 80, 20),
        QRectF(0, 80, 80, 20),
    ]
    both = [QPointF(x, y) for x in (40, 360) for y in (90, 110)]
    assert free_places([200, 100], [SIZE, SIZE], WITHIN, both) == [QRectF(320, 180, 80, 20), None]
    assert free_places([100], [SIZE], WITHIN, both) == [None]


def test_nothing_stands_outside_the_plot() -> None:
    (high,) = free_places([0], [SIZE], WITHIN, [])
    assert high == QRectF(320, 0, 80, 20)
    (low,) = free_places([200], [SIZE], WITHIN, [QPointF(x, 190) for x in range(0, 400, 20)])
    assert low is None
