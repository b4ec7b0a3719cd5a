"""Messages above the page: they go away by themselves, or stay until others come."""

import pytest
from PySide6.QtCore import QTimer
from pytestqt.qtbot import QtBot

from gui.widgets.message_bar import MessageBar


@pytest.fixture
def bar(qtbot: QtBot) -> MessageBar:
    made = MessageBar()
    qtbot.addWidget(made)
    return made


def test_messages_go_away_by_themselves(bar: MessageBar) -> None:
    bar.tell("The disk is full.")
    assert bar.isVisible()
    assert not bar.stays
    (timer,) = bar.findChildren(QTimer)
    timer.timeout.emit()
    assert not bar.isVisible()


def test_a_lasting_message_stays_until_another_comes(bar: MessageBar) -> None:
    bar.tell("The sessions are kept on a network disk.", stays=True)
    assert bar.stays
    bar.tell("Something else.")
    assert not bar.stays


def test_messages_that_are_shown_stay_beside_new_ones_up_to_three_lines(bar: MessageBar) -> None:
    for text in ("one", "two", "two", "three", "four"):
        bar.tell(text)
    assert bar.text == "two\nthree\nfour"
    bar.tell("")
    assert not bar.isVisible()
