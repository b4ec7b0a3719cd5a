"""The ring of the focus: with the keyboard only, and of another form than a chosen answer."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.style.focus_ring import INSET_PX, shows_ring
from gui.widgets.buttons import button
from gui.widgets.layouts import column, row, widget_with


def test_the_ring_comes_with_the_first_key_and_goes_with_the_mouse(
    appearance: Appearance, qtbot: QtBot
) -> None:
    answer, other = button("Left", checkable=True), button("Right", checkable=True)
    page = widget_with(column(answer, other))
    qtbot.addWidget(page)
    page.resize(300, 160)
    page.show()
    qtbot.waitExposed(page)
    handle = page.windowHandle()
    page.activateWindow()
    answer.setFocus()
    qtbot.waitUntil(answer.hasFocus)
    answer.grab()
    QTest.mouseClick(handle, Qt.MouseButton.LeftButton, pos=QPoint(1, 1))
    assert not shows_ring(answer)
    plain = answer.grab().toImage()
    QTest.keyClick(handle, Qt.Key.Key_Shift)
    assert not shows_ring(answer)
    QTest.keyClick(handle, Qt.Key.Key_Down)
    focused = answer if answer.hasFocus() else other
    assert shows_ring(focused)
    ringed = focused.grab().toImage()
    middle = ringed.height() // 2
    ink = appearance.colour("ink")
    assert QColor(ringed.pixel(1, middle)) == ink
    # A gap lies between the ring and the button itself, chosen or not.
    ground = QColor(ringed.pixel(4, middle))
    assert ground != ink
    assert QColor(plain.pixel(1, middle)) != ink
    QTest.mouseClick(handle, Qt.MouseButton.LeftButton, pos=QPoint(1, 1))
    assert not shows_ring(focused)


@pytest.mark.parametrize("role", ["", "main", "word", "large", "narrow"])
def test_the_ring_cuts_no_letter(appearance: Appearance, qtbot: QtBot, role: str) -> None:
    ringed, other = button("Begin the full baseline", role), button("Back")
    page = widget_with(column(row(ringed, 1), other))
    qtbot.addWidget(page)
    page.show()
    qtbot.waitExposed(page)
    page.activateWindow()
    ringed.setFocus()
    qtbot.waitUntil(ringed.hasFocus)
    QTest.mouseClick(page.windowHandle(), Qt.MouseButton.LeftButton, pos=QPoint(1, 1))
    plain = ringed.grab().toImage()
    QTest.keyClick(page.windowHandle(), Qt.Key.Key_Home)
    assert shows_ring(ringed)
    # The text and what is beside it, without the corners.
    across, high = INSET_PX + 2, ringed.height() // 3
    inside = ringed.rect().adjusted(across, high, -across, -high)
    assert ringed.grab().toImage().copy(inside) == plain.copy(inside)
