"""Foot of a page: the caution beside the buttons or beneath them, never higher than a button."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.buttons import button
from gui.widgets.page_frame import PageFoot

#: Width in which the caution is one line for sure, pixels.
WIDE_PX = 2000
#: Width of a usual page, and one in which the caution needs two lines, pixels.
PAGE_PX, NARROW_PX = 960, 300


def foot_of(qtbot: QtBot, ways: int, wide_px: int) -> tuple[PageFoot, QLabel]:
    """Return a shown foot with so many ways beside its main button, and its caution."""
    foot = PageFoot([*(button(f"Another way, {way}") for way in range(ways)), button("On", "main")])
    qtbot.addWidget(foot)
    foot.resize(wide_px, 200)
    foot.show()
    return foot, foot.findChildren(QLabel)[0]


@pytest.mark.parametrize(
    ("ways", "percent", "between", "lines"),
    [
        (0, 100, True, 1),
        (1, 100, True, 1),
        (3, 100, True, 2),
        (4, 100, False, 1),
        (0, 150, False, 1),
        (1, 200, False, 1),
    ],
)
def test_the_caution_is_beside_the_buttons_if_no_higher_or_one_line_beneath_them(
    qtbot: QtBot, appearance: Appearance, ways: int, percent: int, between: bool, lines: int
) -> None:
    appearance.choose(percent=percent)
    appearance.apply()
    foot, caution = foot_of(qtbot, ways, PAGE_PX)
    high = caution.heightForWidth(caution.width())
    assert high == lines * caution.heightForWidth(WIDE_PX)
    assert caution.height() >= high
    assert (caution.y() == 0) is between
    assert foot.sizeHint().height() == foot.buttons[0].height() or not between
    for way in foot.buttons:
        assert not way.geometry().intersects(caution.geometry())


def test_the_caution_goes_on_in_a_second_line_where_one_has_no_room(
    qtbot: QtBot, appearance: Appearance
) -> None:
    appearance.apply()
    foot, caution = foot_of(qtbot, 0, NARROW_PX)
    assert caution.height() >= caution.heightForWidth(caution.width())
    assert caution.heightForWidth(caution.width()) > caution.heightForWidth(WIDE_PX)
    assert not foot.buttons[0].geometry().intersects(caution.geometry())


@pytest.mark.parametrize("ways", [0, 1])
def test_the_caution_keeps_its_place_in_the_middle_of_the_page(
    qtbot: QtBot, appearance: Appearance, ways: int
) -> None:
    appearance.apply()
    _foot, caution = foot_of(qtbot, ways, PAGE_PX)
    assert caution.alignment() & Qt.AlignmentFlag.AlignHCenter
    assert abs(caution.geometry().center().x() - PAGE_PX / 2) <= 1


def test_two_lines_of_the_caution_are_even(qtbot: QtBot, appearance: Appearance) -> None:
    appearance.apply()
    _foot, caution = foot_of(qtbot, 3, PAGE_PX)
    assert caution.heightForWidth(caution.width()) > caution.heightForWidth(WIDE_PX)
    assert caution.heightForWidth(caution.width() - 1) > caution.heightForWidth(caution.width())


def test_the_caution_ends_the_line_where_no_button_does(
    qtbot: QtBot, appearance: Appearance
) -> None:
    appearance.apply()
    foot = PageFoot([button("Back to where one was before"), button("Another way than that")])
    qtbot.addWidget(foot)
    foot.resize(PAGE_PX, 200)
    foot.show()
    caution = foot.findChildren(QLabel)[0]
    assert caution.alignment() & Qt.AlignmentFlag.AlignTrailing
    assert caution.geometry().right() == PAGE_PX - 1
