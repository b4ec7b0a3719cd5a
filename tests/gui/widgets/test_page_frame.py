"""Foot of a page: the caution beside the buttons or beneath them, in as few lines as it can be."""

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


@pytest.mark.parametrize(("ways", "between"), [(0, True), (1, True), (3, False), (4, False)])
def test_the_caution_is_one_line_beside_the_buttons_or_beneath_them(
    qtbot: QtBot, appearance: Appearance, ways: int, between: bool
) -> None:
    appearance.apply()
    foot, caution = foot_of(qtbot, ways, PAGE_PX)
    assert caution.heightForWidth(caution.width()) == caution.heightForWidth(WIDE_PX)
    assert (caution.y() == 0) is between
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
