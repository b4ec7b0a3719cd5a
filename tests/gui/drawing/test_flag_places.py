"""Flags of a chart stand beside each other, near the days that they are of."""

from itertools import pairwise

import pytest

from gui.drawing.flag_places import spread, words_before


def test_flags_with_room_stand_on_their_days() -> None:
    assert spread([10, 100, 300], [20] * 3, left_px=0, right_px=400) == [10, 100, 300]


def test_flags_of_one_day_stand_beside_each_other() -> None:
    assert spread([50, 50, 55], [20] * 3, left_px=0, right_px=400) == [50, 70, 90]


def test_flags_at_the_end_go_back_and_push_those_before_them() -> None:
    assert spread([10, 375, 390, 399], [20] * 4, left_px=0, right_px=400) == [10, 360, 380, 400]


def test_a_flag_with_a_word_keeps_room_for_it() -> None:
    assert spread([100, 150, 390], [80, 20, 60], left_px=0, right_px=340) == [100, 180, 340]


@pytest.mark.parametrize("count", [0, 1, 7, 40])
def test_no_flag_lies_on_another_and_their_order_stays(count: int) -> None:
    places = [200.0 + number for number in range(count)]
    middles = spread(places, [20] * count, left_px=0, right_px=400)
    assert len(middles) == count
    assert all(later - earlier >= 20 for earlier, later in pairwise(middles))


@pytest.mark.parametrize(
    ("places", "before"),
    [
        ([10.0, 200.0, 300.0], [False, False, False]),
        ([150.0, 200.0, 300.0], [True, False, False]),
        ([200.0, 370.0], [False, True]),
        ([150.0, 190.0, 230.0], None),
        ([100.0, 110.0], None),
        ([], []),
    ],
)
def test_a_word_without_room_on_the_right_stands_on_the_left(
    places: list[float], before: list[bool] | None
) -> None:
    words_px = [60.0] * len(places)
    assert words_before(places, words_px, 10, left_px=0, right_px=400) == before
