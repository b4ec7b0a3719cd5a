"""A page that scrolls: its width never depends on whether there is something to scroll."""

import pytest
from PySide6.QtCore import QCoreApplication, QSize
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from gui.widgets.scroll_page import scrollable

#: The widths at which the contents below change their minds, and the room there is.
EDGE_PX, ROOM_PX = 390, 300
#: Questions after which the contents stop changing their minds, to end a chase.
MOST = 500


class Contents(QWidget):
    """Is tall or low by its present width, as rows are that break anew when they are resized."""

    def __init__(self, *, low_when_narrow):
        super().__init__()
        self.asked = 0
        self._low_when_narrow = low_when_narrow
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def hasHeightForWidth(self):
        return True

    def heightForWidth(self, width):
        self.asked += 1
        low = (self.width() < EDGE_PX) is self._low_when_narrow
        return ROOM_PX // 2 if low or self.asked > MOST else ROOM_PX + ROOM_PX // 2

    def sizeHint(self):
        return QSize(100, 100)

    def resizeEvent(self, event):
        super().resizeEvent(event)
        self.updateGeometry()


@pytest.fixture
def area_of(qtbot):
    def made(contents):
        page = QWidget()
        layout = QVBoxLayout(page)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(contents)
        area = scrollable(page)
        qtbot.addWidget(area)
        area.show()
        return area

    return made


@pytest.mark.parametrize("low_when_narrow", [True, False])
def test_bar_and_page_do_not_chase_each_other(area_of, low_when_narrow):
    contents = Contents(low_when_narrow=low_when_narrow)
    area = area_of(contents)
    for width in range(EDGE_PX - 20, EDGE_PX + 40):
        contents.asked = 0
        area.resize(width, ROOM_PX)
        for _ in range(5):
            QCoreApplication.processEvents()
        assert contents.asked < MOST


def test_the_page_is_as_wide_with_the_bar_as_without(area_of):
    contents = Contents(low_when_narrow=True)
    area = area_of(contents)
    widths = []
    for height in (ROOM_PX, 3 * ROOM_PX):
        area.resize(EDGE_PX + 100, height)
        QCoreApplication.processEvents()
        widths.append((contents.width(), area.verticalScrollBar().maximum() > 0))
    assert widths[0][0] == widths[1][0]
    assert [scrolls for _, scrolls in widths] == [True, False]
    assert contents.width() + 2 * area.verticalScrollBar().width() == area.width()
