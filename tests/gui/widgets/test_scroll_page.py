"""A page that scrolls: its width never depends on whether there is something to scroll."""

import pytest
from PySide6.QtCore import QCoreApplication, QSize, Qt
from PySide6.QtGui import QPalette
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from gui.style.measures import BODY_PX, MARGIN_PX
from gui.text.wording import notice
from gui.widgets.buttons import button
from gui.widgets.fold import FADED_PX, SOLID_PX, STRIP_PX
from gui.widgets.page_frame import frame_page
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label

#: The widths at which the contents below change their minds, and the room there is.
EDGE_PX, ROOM_PX = 390, 300
#: Height of a line that goes on below the edge, pixels.
LINE_PX = 60
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


def test_page_keys_scroll_from_a_button_of_the_foot(appearance, placed):
    page, tall = QWidget(), QWidget()
    tall.setMinimumHeight(2000)
    leave = button("Back")
    frame_page(page, tall, buttons=[leave])
    placed(page, (600, 400))
    leave.setFocus()
    bar = page.findChild(QScrollArea).verticalScrollBar()
    QTest.keyClick(leave, Qt.Key.Key_PageDown)
    assert bar.value() > 0
    QTest.keyClick(leave, Qt.Key.Key_PageUp)
    assert bar.value() == 0


def test_a_short_page_stands_in_the_optical_middle(appearance, placed):
    page, words = QWidget(), label("Nothing has been measured yet.")
    frame_page(page, words, buttons=[button("Back")], short=True)
    page.setMinimumHeight(580)
    placed(page, (600, 600))
    QCoreApplication.processEvents()
    above = words.mapTo(page, words.rect().topLeft()).y()
    below = page.findChild(QScrollArea).height() - above - words.height()
    assert 100 < above < below
    assert words.font().pixelSize() > BODY_PX


def test_the_caution_stands_between_the_buttons_where_it_has_room(appearance, placed):
    caution, back, go_on = _foot_of_a_page(placed, 1300)
    assert caution.left() > back.right()
    assert caution.right() < go_on.left()
    assert back.top() <= caution.top()
    assert caution.bottom() <= back.bottom()


def test_the_caution_stands_beneath_the_buttons_of_a_narrow_page(appearance, placed):
    caution, back, go_on = _foot_of_a_page(placed, 420)
    assert caution.top() > max(back.bottom(), go_on.bottom())
    assert caution.left() == back.left()


def _foot_of_a_page(placed, width):
    """Return the places of caution, way back and way on."""
    page = QWidget()
    back, go_on = button("Back"), button("Continue", "main")
    frame_page(page, buttons=[back, go_on], caution=True)
    placed(page, (width, 400))
    caution = next(words for words in page.findChildren(QLabel) if words.text() == notice())
    assert caution.isVisible()
    return caution.geometry(), back.geometry(), go_on.geometry()


def test_a_painted_sign_says_that_there_is_more_until_the_end_is_seen(area_of):
    contents = QWidget()
    contents.setMinimumHeight(3 * ROOM_PX)
    area = area_of(contents)
    area.resize(EDGE_PX, ROOM_PX)
    QCoreApplication.processEvents()
    signs = [
        child
        for child in area.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly)
        if child.testAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
    ]
    assert len(signs) == 1
    assert signs[0].isVisible()
    assert signs[0].accessibleName() == ""
    assert signs[0].focusPolicy() is Qt.FocusPolicy.NoFocus
    assert signs[0].geometry().bottom() == area.viewport().geometry().bottom()
    bar = area.verticalScrollBar()
    bar.setValue(bar.maximum())
    assert not signs[0].isVisible()
    bar.setValue(0)
    assert signs[0].isVisible()


@pytest.fixture
def lines_below(qtbot):
    """An area of red lines that go on below its edge, and how red it is at a height, 0..1."""
    page, lines = QWidget(), [QLabel() for _ in range(8)]
    layout = QVBoxLayout(page)
    layout.setContentsMargins(0, 0, 0, 0)
    layout.setSpacing(0)
    for line in lines:
        line.setFixedHeight(LINE_PX)
        line.setStyleSheet("background: #ff0000")
        layout.addWidget(line)
    area = scrollable(page)
    qtbot.addWidget(area)
    area.resize(400, ROOM_PX)
    area.show()
    qtbot.wait(20)

    def red(place, across=80):
        picture = area.grab().toImage()
        ground = area.palette().color(QPalette.ColorRole.Window).greenF()
        return 1 - picture.pixelColor(across, place).greenF() / ground

    return area, red


@pytest.mark.parametrize("scrolled", [0, 1, 25, LINE_PX - 1])
def test_nothing_is_cut_at_the_lower_edge_it_fades_out(lines_below, scrolled):
    area, red = lines_below
    area.verticalScrollBar().setValue(scrolled)
    shares = [red(ROOM_PX - 1 - below) for below in range(STRIP_PX + 2)]
    assert shares == sorted(shares)  # the lower, the fainter: no band, no edge
    assert max(one - other for one, other in zip(shares[1:], shares, strict=False)) < 0.1
    assert shares[0] < 0.05
    assert shares[-1] > 0.99
    assert red(10) > 0.99


def test_what_comes_next_is_seen_above_the_edge(lines_below):
    _, red = lines_below
    assert red(ROOM_PX - STRIP_PX + 10) > 0.7
    assert red(ROOM_PX - FADED_PX - 6) > 0.4


def test_the_sign_stands_on_the_ground_alone(lines_below):
    area, red = lines_below
    middle = area.viewport().geometry().center().x()
    for above in range(1, SOLID_PX):
        assert all(red(ROOM_PX - above, middle + aside) < 0.01 for aside in (-60, -18, 18, 60))


def test_the_end_of_a_page_is_seen_without_a_fade(lines_below, qtbot):
    area, red = lines_below
    area.verticalScrollBar().setValue(area.verticalScrollBar().maximum())
    qtbot.wait(20)
    assert red(ROOM_PX - 1) > 0.99


@pytest.mark.parametrize(("missing", "scrolls"), [(2 * MARGIN_PX - 20, False), (200, True)])
def test_a_page_gives_up_empty_room_before_it_scrolls(qtbot, missing, scrolls):
    page, tall = QWidget(), label("Word")
    tall.setMinimumHeight(400 - 2 * MARGIN_PX + missing)
    frame_page(page, tall)
    qtbot.addWidget(page)
    page.resize(600, 400)
    page.show()
    qtbot.wait(20)
    bar = page.findChild(QScrollArea).verticalScrollBar()
    assert (bar.maximum() > 0) is scrolls
    assert (tall.y() < MARGIN_PX) is not scrolls
