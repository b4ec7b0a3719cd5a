"""Flags above a chart: their words never meet."""

from gui.drawing.flag_places import FlagPlace, flag_places


def test_a_flag_with_room_has_its_words_to_the_right() -> None:
    assert flag_places([(10, 50), (100, 50)], 2, 400) == [FlagPlace(0, True), FlagPlace(0, True)]


def test_words_that_would_meet_go_to_the_next_line_or_away() -> None:
    places = flag_places([(10, 80), (40, 80), (50, 80)], 2, 400)
    assert [(place.line, place.worded) for place in places] == [(0, True), (1, True), (1, False)]


def test_near_the_right_end_words_go_to_the_left_and_meet_nothing() -> None:
    places = flag_places([(300, 90), (390, 100)], 2, 400)
    assert places == [FlagPlace(0, True), FlagPlace(1, True, leftwards=True)]


def test_no_pole_crosses_words_beneath() -> None:
    """The third would be free in the first line, but its pole would cross the second's words."""
    places = flag_places([(10, 80), (20, 200), (120, 50)], 2, 400)
    assert [(place.line, place.worded) for place in places] == [(0, True), (1, True), (1, False)]
