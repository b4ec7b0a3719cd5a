"""One of several large buttons is chosen, by mouse and by keys."""

import pytest
from PySide6.QtCore import QEvent, QObject, Qt
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.choice_row import ChoiceRow
from tests.gui.conftest import Place


def test_one_of_several_is_chosen(appearance: Appearance, qtbot: QtBot, placed: Place) -> None:
    choices: ChoiceRow[int] = ChoiceRow([1, 2, 3], str, may_be_empty=True)
    window = placed(choices.row, (400, 100))
    assert choices.value is None
    choices.button(2).click()
    assert choices.value == 2
    choices.button(3).click()
    assert choices.value == 3
    choices.button(3).click()
    assert choices.value is None
    choices.button(1).setFocus()
    qtbot.keyClick(choices.button(1), Qt.Key.Key_Right)
    assert window.focusWidget() is choices.button(2)


def test_a_choice_that_must_be_made_cannot_be_taken_back(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    choices = ChoiceRow(["a", "b"], str)
    placed(choices.row, (400, 100))
    choices.choose("a")
    choices.button("a").click()
    assert choices.value == "a"


@pytest.mark.parametrize(("wide", "lines"), [(1100, 1), (420, 3), (230, 5)])
def test_choices_break_into_lines_where_they_do_not_fit(
    appearance: Appearance, qtbot: QtBot, placed: Place, wide: int, lines: int
) -> None:
    choices = ChoiceRow(["x" * 14] * 5, str)
    placed(choices.row, (wide, 500))
    qtbot.wait(20)
    tops = {one.y() for one in choices.row.buttons}
    assert len(tops) == lines
    assert all(one.x() + one.width() <= choices.row.width() for one in choices.row.buttons)


def test_large_numbers_fill_their_buttons_and_large_words_keep_room(
    appearance: Appearance, placed: Place
) -> None:
    numbers = ChoiceRow(list(range(11)), str, large=True)
    words = ChoiceRow(["left", "right"], str, large=True)
    assert {made.property("role") for made in numbers.row.buttons} == {"scale"}
    assert {made.property("role") for made in words.row.buttons} == {"large"}


def test_only_the_chosen_one_looks_chosen_before_anything_follows(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    sizes = ChoiceRow([100, 200], str)
    sizes.choose(100)
    painted: list[QEvent.Type] = []

    class Watch(QObject):
        def eventFilter(self, watched: QObject, event: QEvent) -> bool:
            if event.type() is QEvent.Type.Paint:
                painted.append(event.type())
            return False

    watch = Watch()
    sizes.button(100).installEventFilter(watch)
    placed(sizes.row, (300, 100))
    at_picked: list[int] = []
    sizes.picked.connect(lambda _place: at_picked.append(len(painted)))
    qtbot.waitUntil(lambda: bool(painted))
    painted.clear()
    sizes.button(200).click()
    assert at_picked[0] >= 1
