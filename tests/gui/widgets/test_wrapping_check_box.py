"""Check boxes whose text wraps."""

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.wrapping_check_box import WrappingCheckBox
from tests.gui.conftest import Place


def test_a_box_is_ticked_by_mouse_and_space(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    tick = WrappingCheckBox(appearance, "A sore day")
    placed(tick, (400, 100))
    qtbot.mouseClick(tick, Qt.MouseButton.LeftButton)
    assert tick.isChecked()
    qtbot.keyClick(tick, Qt.Key.Key_Space)
    assert not tick.isChecked()
    assert tick.heightForWidth(120) > tick.heightForWidth(400)
