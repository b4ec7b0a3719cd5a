"""A dialog with a question: what loses something looks so, and is not what Enter does."""

from PySide6.QtWidgets import QDialog, QPushButton
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.plain_dialog import plain_dialog


def test_agreeing_to_a_loss_is_framed_and_closing_is_the_main_button(
    appearance: Appearance, qtbot: QtBot
) -> None:
    asked = plain_dialog("Delete it?", "Keep it", more="It is gone then.", agree="Delete it")
    qtbot.addWidget(asked)
    buttons = {one.text(): one for one in asked.findChildren(QPushButton)}
    roles = {words: one.property("role") for words, one in buttons.items()}
    assert roles == {"Keep it": "main", "Delete it": "loss"}
    buttons["Keep it"].click()
    assert asked.result() == QDialog.DialogCode.Rejected
