"""Widgets in one place: changing them costs the page around nothing."""

import pytest
from PySide6.QtCore import QCoreApplication, QSize
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.widgets.fixed_size_stack import FixedSizeStack


class Page(QWidget):
    """Counts how often a layout asks for its size."""

    def __init__(self, least):
        super().__init__()
        self.asked = 0
        self.least = least

    def minimumSizeHint(self):
        self.asked += 1
        return self.least


@pytest.fixture
def window(qtbot):
    made = QWidget()
    qtbot.addWidget(made)
    made.beside = Page(QSize(50, 20))
    made.pages = [Page(QSize(80, 60)), Page(QSize(120, 40))]
    made.deck = FixedSizeStack(made.pages)
    layout = QVBoxLayout(made)
    for each in (made.beside, made.deck):
        layout.addWidget(each)
    made.resize(400, 300)
    made.show()
    QCoreApplication.processEvents()
    return made


def test_one_is_shown_and_all_fill_the_place(window):
    for place in (1, 0, 0, 1):
        window.deck.set_current_index(place)
        assert window.deck.index == place
        assert [each.isVisible() for each in window.pages] == [place == 0, place == 1]
        assert window.pages[place].geometry() == window.deck.rect()


def test_the_deck_needs_the_room_of_the_largest(window):
    assert window.deck.minimumSizeHint() == QSize(120, 60)
    window.resize(500, 200)
    assert window.pages[1].geometry() == window.deck.rect()


def test_a_change_asks_nobody_else_and_a_larger_widget_does(window):
    window.beside.asked = 0
    for place in (1, 0, 1):
        window.deck.set_current_index(place)
        QCoreApplication.processEvents()
    assert window.beside.asked == 0
    window.pages[1].least = QSize(120, 90)
    window.pages[1].updateGeometry()
    QCoreApplication.processEvents()
    assert window.deck.height() >= 90
    assert window.minimumSizeHint().height() >= 110
