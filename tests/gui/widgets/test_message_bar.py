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


def test_an_offer_that_was_taken_leaves_and_the_rest_stays(bar: MessageBar) -> None:
    bar.tell("The disk is nearly full.")
    bar.offer("Hazel was deleted.")
    assert bar.undo.isVisible()
    bar.drop_offer()
    assert not bar.undo.isVisible()
    bar.tell("Undone.")
    assert bar.text == "The disk is nearly full.\nUndone."


def test_what_can_be_undone_stands_beside_no_other_message(bar: MessageBar) -> None:
    bar.offer("Hazel was deleted.")
    bar.offer("A backup was restored.")
    assert bar.text == "A backup was restored."
    bar.tell("The disk is nearly full.")
    assert bar.text == "The disk is nearly full."
    assert not bar.undo.isVisible()
