"""The fade at the lower edge of a page: between what it shows, where a gap is near."""

from itertools import pairwise

import pytest
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QApplication, QPushButton, QRadioButton, QVBoxLayout, QWidget

from gui.widgets.fold import REACH_PX, SOLID_PX, MoreBelow, faded
from gui.widgets.layouts import card, column
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label

#: Height of the room of a page, pixels.
EDGE_PX = 400


@pytest.mark.parametrize(
    ("spans", "fade"),
    [
        ([], (352, 380)),
        ([(300, 500)], (352, 380)),  # too tall for a gap: it fades out
        ([(300, 350), (360, 420)], (350, 360)),  # the next thing is not cut, it is not seen
        ([(300, 350), (350, 420)], (339, 355)),  # one touches the other
        ([(300, 350), (355, 375), (390, 420)], (375, 383)),
        ([(300, 335), (310, 340), (365, 420)], (345, 365)),  # things side by side are one
        ([(300, 340)], (352, 380)),
        ([(395, 420)], (352, 380)),
    ],
)
def test_a_page_fades_in_a_gap_that_is_near(spans, fade):
    assert faded(spans, EDGE_PX) == fade


@pytest.mark.parametrize("scrolled", range(0, 60, 7))
def test_no_choice_is_cut_by_the_fade(appearance, placed, scrolled):
    page = QWidget()
    layout = QVBoxLayout(page)
    layout.setSpacing(8)
    choices = [QRadioButton(f"Choice {number}") for number in range(30)]
    for choice in choices:
        layout.addWidget(choice)
    area = scrollable(page)
    placed(area, (400, EDGE_PX))
    area.verticalScrollBar().setValue(scrolled)
    strip = area.findChild(MoreBelow)
    first, last = strip.fade
    edge = area.viewport().height()
    assert edge - REACH_PX <= first < last <= edge - SOLID_PX // 2
    for choice in choices:
        top = choice.mapTo(area.viewport(), choice.rect().topLeft()).y()
        assert top + choice.height() <= first or top >= last - 8


@pytest.mark.parametrize("scrolled", range(0, 120, 13))
def test_a_card_goes_on_down_to_the_edge(appearance, placed, scrolled):
    page = QWidget()
    lines = [label(f"Line {number}") for number in range(30)]
    framed = card(*lines, spacing=24)
    column(framed, on=page)
    area = scrollable(page)
    placed(area, (400, EDGE_PX))
    before = QApplication.palette()
    colours = QApplication.palette()
    colours.setColor(QPalette.ColorRole.Base, "#0000ff")
    colours.setColor(QPalette.ColorRole.Window, "#000000")
    QApplication.setPalette(colours)
    area.setPalette(colours)
    framed.setAutoFillBackground(True)
    framed.setBackgroundRole(QPalette.ColorRole.Base)
    area.verticalScrollBar().setValue(scrolled)
    _, last = area.findChild(MoreBelow).fade
    picture = area.grab().toImage()
    QApplication.setPalette(before)
    edge = area.viewport().height()

    def like_card(below):
        """Return how much of the card is seen in a place without words, at its left."""
        return picture.pixelColor(area.viewport().x() + 10, below).blueF()

    shares = [like_card(place) for place in range(last, edge)]
    assert like_card(edge - REACH_PX) > 0.95
    assert all(low < high + 0.01 for high, low in pairwise(shares))
    assert shares[0] > 0.1  # no bare strip beneath the last line
    assert shares[-1] < 0.1


def page_with_block(begins):
    """Return a page of two red blocks, and the second, which begins that many pixels from its top.

    The second goes on below the edge.
    """
    page = QWidget()
    layout = QVBoxLayout(page)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(16)
    blocks = QPushButton(), QPushButton()
    for block, high in zip(blocks, (begins - 16, 2 * EDGE_PX), strict=True):
        size = f"min-height: {high}px; max-height: {high}px"
        block.setStyleSheet(f"background: #ff0000; border: none; padding: 0; {size}")
        layout.addWidget(block)
    return page, blocks[1]


@pytest.mark.parametrize("begins", [292, 304, 316, 328])
def test_what_comes_next_is_seen_faintly_down_to_the_edge(appearance, placed, begins):
    page, button = page_with_block(begins)
    area = scrollable(page)
    placed(area, (400, EDGE_PX))
    picture = area.grab().toImage()
    ground = area.palette().color(QPalette.ColorRole.Window).greenF()
    edge = area.viewport().height()
    top = button.mapTo(area.viewport(), button.rect().topLeft()).y()
    assert top == begins

    def red(place):
        return 1 - picture.pixelColor(80, area.viewport().y() + place).greenF() / ground

    shares = [red(place) for place in range(top, edge)]
    assert red(top - 18) > 0.99  # what ends above is whole
    assert 0.4 < shares[0] < 0.7
    assert all(low < high + 0.01 for high, low in pairwise(shares))
    assert shares[12] > 0.2  # not its edge alone
    assert max(shares[-SOLID_PX + 1 :]) < 0.02


@pytest.mark.parametrize("scrolled", range(0, 90, 11))
def test_items_of_two_lines_are_kept_whole_where_that_is_wanted(appearance, placed, scrolled):
    page = QWidget()
    layout = QVBoxLayout(page)
    layout.setSpacing(10)
    items = [label("First line\nSecond line") for _ in range(20)]
    for item in items:
        item.setFixedHeight(84)
        layout.addWidget(item)
    area = scrollable(page)
    area.findChild(MoreBelow).keep_items_whole()
    placed(area, (400, EDGE_PX))
    area.verticalScrollBar().setValue(scrolled)
    first, last = area.findChild(MoreBelow).fade
    assert first < last < area.viewport().height()
    for item in items:
        top = item.mapTo(area.viewport(), item.rect().topLeft()).y()
        assert top + item.height() <= first + 2 or top >= last - 10


def test_of_an_item_kept_whole_only_the_first_line_is_seen_below_the_fade(appearance, placed):
    page, item = page_with_block(EDGE_PX - 100)
    area = scrollable(page)
    area.findChild(MoreBelow).keep_items_whole()
    placed(area, (400, EDGE_PX))
    picture = area.grab().toImage()
    ground = area.palette().color(QPalette.ColorRole.Window).greenF()
    edge = area.viewport().height()
    top = item.mapTo(area.viewport(), item.rect().topLeft()).y()
    line = area.fontMetrics().lineSpacing()
    assert line < edge - top - SOLID_PX - 8

    def red(place):
        return 1 - picture.pixelColor(80, area.viewport().y() + place).greenF() / ground

    assert red(top + 2) > 0.3
    assert max(red(place) for place in range(top + line + 1, edge)) < 0.02
