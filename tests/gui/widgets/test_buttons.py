"""Rows of buttons break into lines; buttons show their key and their choice."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.buttons import HELD_BACK_MS, ButtonRow, MenuButton, bind_keys, button
from gui.widgets.layouts import column
from measure.domain.movements import Movement
from tests.gui.conftest import Place


@pytest.mark.parametrize(("wide", "lines"), [(900, 1), (440, 2), (220, 3)])
def test_buttons_are_as_wide_as_their_words_and_go_on_in_the_next_line(
    appearance: Appearance, qtbot: QtBot, placed: Place, wide: int, lines: int
) -> None:
    buttons = [button("x" * 16), button("x" * 9), button("x" * 16, "main")]
    row = ButtonRow(buttons)
    placed(row, (wide, 400))
    qtbot.wait(20)
    assert len({one.y() for one in buttons}) == lines
    assert buttons[1].width() < buttons[0].width() < row.width() or lines == 3
    assert buttons[0].x() == row.rect().left()
    assert buttons[-1].geometry().right() == row.rect().right()
    assert buttons[-1].geometry().bottom() == row.rect().bottom()
    buttons[1].hide()
    qtbot.wait(20)
    assert len({buttons[0].y(), buttons[2].y()}) == max(1, lines - 1)


def test_keys_are_told_in_a_row_where_all_have_room(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    buttons = [button("Pause", key="Space"), button("Continue", "main", key="Enter")]
    row = ButtonRow(buttons)
    placed(row, (600, 100))
    qtbot.wait(20)
    assert [one.text() for one in buttons] == ["Pause  \u00b7  Space", "Continue  \u00b7  Enter"]
    row.window().resize(260, 100)
    qtbot.wait(20)
    assert [one.text() for one in buttons] == ["Pause", "Continue"]


def test_a_button_tells_its_key_only_where_there_is_room(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    one = button("Delete last trial", key="Backspace")
    placed(one, (600, 100))
    assert "Backspace" in one.text()
    assert one.accessibleName() == "Delete last trial"
    assert one.accessibleDescription() == "Backspace"
    one.setFixedWidth(190)
    qtbot.wait(10)
    assert one.text() == "Delete last trial"


def test_a_list_button_shows_and_tells_what_was_picked(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    pick = MenuButton("movement")
    pick.offer(list(Movement), str)
    assert pick.value is Movement.FLEXION
    with qtbot.waitSignal(pick.picked) as told:
        pick.menu().actions()[2].trigger()
    assert told.args == [Movement.ABDUCTION]
    assert pick.value is Movement.ABDUCTION
    assert pick.accessibleName() == "movement: abduction"
    pick.offer([], str)
    assert pick.value is None


def test_a_list_button_of_a_form_has_its_arrow_at_its_end(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    field = MenuButton("side", field=True)
    field.offer(["left", "right"], str)
    placed(field, (400, 50))
    assert field.text() == "left"
    picture = field.grab().toImage()
    middle = range(picture.height() // 4, 3 * picture.height() // 4)

    def marked(first: int, last: int) -> bool:
        seen = {picture.pixel(x, y) for x in range(first, last) for y in middle}
        return len(seen) > 1

    wide = picture.width()
    assert marked(8, 60)
    assert not marked(120, wide - 70)
    assert marked(wide - 50, wide - 10)


def test_enter_presses_a_focused_button_where_the_page_has_no_enter(qtbot: QtBot) -> None:
    page, pressed = QWidget(), list[str]()
    qtbot.addWidget(page)
    first, second = button("First", key="H"), button("Second")
    column(first, second, on=page)
    first.clicked.connect(lambda: pressed.append("first"))
    second.clicked.connect(lambda: pressed.append("second"))
    with qtbot.waitActive(page):
        page.show()
        page.activateWindow()
    for target in (first, second):
        target.setFocus()
        qtbot.keyClick(target, Qt.Key.Key_Return)
    assert pressed == ["first", "second"]
    bind_keys(page, second, "Return")
    first.setFocus()
    qtbot.keyClick(first, Qt.Key.Key_Return)
    assert pressed == ["first", "second", "second"]


def click_again(target: QWidget) -> None:
    """Click soon after another click in the same place."""
    QTest.mouseDClick(target, Qt.MouseButton.LeftButton)
    QTest.mouseRelease(target, Qt.MouseButton.LeftButton)


def test_a_double_click_does_not_press_what_came_in_the_place_of_the_first(qtbot: QtBot) -> None:
    """Else "None of these" would answer the next list unread."""
    page, pressed = QWidget(), list[str]()
    qtbot.addWidget(page)
    first, second = button("None of these"), button("None of those")
    for target in (first, second):
        target.setParent(page)
    second.hide()
    first.clicked.connect(lambda: pressed.append("first"))
    second.clicked.connect(lambda: pressed.append("second"))
    page.show()
    QTest.mouseClick(first, Qt.MouseButton.LeftButton)
    first.hide()
    second.show()
    click_again(second)
    assert pressed == ["first"]
    QTest.mouseClick(second, Qt.MouseButton.LeftButton)
    click_again(second)
    assert pressed == ["first", "second", "second"]


def test_a_button_that_is_held_back_is_pressed_a_moment_later(qtbot: QtBot) -> None:
    target, pressed = button("None of these"), list[str]()
    qtbot.addWidget(target)
    target.clicked.connect(lambda: pressed.append("pressed"))
    target.show()
    target.hold_back()
    QTest.mouseClick(target, Qt.MouseButton.LeftButton)
    click_again(target)
    for key in (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter):
        QTest.keyClick(target, key)
    assert pressed == []
    QTest.qWait(HELD_BACK_MS + 50)
    QTest.mouseClick(target, Qt.MouseButton.LeftButton)
    QTest.keyClick(target, Qt.Key.Key_Space)
    assert pressed == ["pressed", "pressed"]
