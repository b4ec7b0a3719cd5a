"""Pain is chosen like in a group of radio buttons, and every number says what it answers."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.pain_scale import PainScale
from tests.gui.conftest import Place


def test_numbers_name_their_question(appearance: Appearance, placed: Place) -> None:
    scale = PainScale("Pain now")
    placed(scale, (900, 200))
    assert [member.text() for member in scale.buttons] == [str(pain) for pain in range(11)]
    assert scale.button(3).accessibleName() == "Pain now, 3 of 10"
    assert len({member.y() for member in scale.buttons}) == 1


def test_arrows_choose_and_a_question_is_one_tab_stop(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    scale = PainScale("Pain now")
    placed(scale, (900, 200))
    stops = [m for m in scale.buttons if m.focusPolicy() is Qt.FocusPolicy.StrongFocus]
    assert stops == [scale.button(0)]
    scale.button(0).setFocus()
    with qtbot.waitSignal(scale.picked):
        QTest.keyClick(scale.button(0), Qt.Key.Key_Right)
    assert scale.value == 1
    QTest.keyClick(scale.button(1), Qt.Key.Key_Right)
    QTest.keyClick(scale.button(2), Qt.Key.Key_Left)
    assert scale.value == 1
    stops = [m for m in scale.buttons if m.focusPolicy() is Qt.FocusPolicy.StrongFocus]
    assert stops == [scale.button(1)]


def test_a_second_press_takes_the_answer_back(appearance: Appearance, placed: Place) -> None:
    scale = PainScale("Pain now")
    placed(scale, (900, 200))
    scale.button(7).click()
    assert scale.value == 7
    scale.button(4).click()
    assert scale.value == 4
    scale.button(4).click()
    assert scale.value is None
