"""The head of the window: one row at every size, its menu by key, messages that cover no page."""

import pytest
from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QWidget

from gui.app.application import configure_application
from gui.app.head import Head
from gui.app.window_pages import MainPage
from gui.pages.settings.data_page import DataPage
from gui.widgets import message_bar
from measure.live.events import Phase
from tests.support.gui.measuring_steps import begin_single
from tests.support.gui.screenshots import LANGUAGES, SIZES, language_in_force, resize
from tests.support.gui.stage import WindowHarness

#: Greatest height of the head, pixels.
ONE_ROW_PX = 60
#: Height of the line beneath the word of the page that is shown, pixels.
_UNDERLINE_PX = 4


def in_window(widget: QWidget) -> QPoint:
    return widget.mapTo(widget.window(), QPoint(0, 0))


@pytest.mark.parametrize("percent", [100, 200])
@pytest.mark.parametrize("language", LANGUAGES)
def test_the_head_is_one_row(qapp: QApplication, language: str, percent: int) -> None:
    configure_application(qapp)
    with language_in_force(qapp, language):
        stage = WindowHarness(percent=percent)
        for size in SIZES:
            resize(stage, size)
            words = stage.window.words
            assert len({in_window(word).y() for word in words}) == 1
            assert in_window(stage.window.measure).y() <= ONE_ROW_PX
        stage.close()


def _letter_lines(widget: QWidget) -> tuple[int, int]:
    """Return the first and last line of a word's first letter, in the window."""
    place = in_window(widget)
    image = widget.window().grab(QRect(place, widget.size())).toImage()
    high = image.height() - _UNDERLINE_PX
    dark = [
        [y for y in range(high) if image.pixelColor(x, y).lightness() < 128]
        for x in range(image.width())
    ]
    # The stem of the letter: a line beneath it, for its key, begins further left.
    stem = next(lines for lines in dark if len(lines) > _UNDERLINE_PX)
    return place.y() + stem[0], place.y() + stem[-1]


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_all_words_of_the_head_stand_on_one_line_in_one_size(
    qapp: QApplication, percent: int
) -> None:
    configure_application(qapp)
    stage = WindowHarness(percent=percent)
    stage.window.go(MainPage.PROGRESS)
    head = stage.window.findChild(Head)
    assert head is not None
    head.show_who("Me")
    stage.settle()
    measure, who, menu = head.words[0], head._who, head._menu_button
    sizes = {word.fontInfo().pixelSize() for word in (measure, who, menu)}
    assert len(sizes) == 1
    # Each begins with the same letter.
    assert _letter_lines(measure) == _letter_lines(who)
    assert _letter_lines(measure)[0] == _letter_lines(menu)[0]
    stage.close()


def test_a_key_opens_the_menu_with_every_menu_in_it(stage: WindowHarness) -> None:
    stage.window.activateWindow()
    stage.settle()
    QTest.keySequence(stage.window, QKeySequence("F10"))
    stage.settle()
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    names = [action.text().replace("&", "") for action in menu.actions()]
    menu.close()
    assert names == ["File", "Edit", "People and data", "Go to", "View", "Help"]


def test_keys_work_while_the_head_is_out_of_sight(stage: WindowHarness) -> None:
    window = stage.window
    begin_single(stage.window.measure)
    stage.settle()
    assert not window.words[0].isVisible()
    window.activateWindow()
    stage.settle()
    go = next(
        action
        for action in window.findChildren(QAction)
        if action.shortcut() == QKeySequence("Ctrl+3")
    )
    assert go.isEnabled()
    QTest.keySequence(window, QKeySequence("Ctrl+3"))
    stage.settle()
    assert window.place == MainPage.PROGRESS


def test_a_message_covers_no_page_and_leaves_with_the_page(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = stage.window
    before = in_window(window.measure)
    window.messages.tell("Saved as rowan.pdf.")
    stage.settle()
    bottom = in_window(window.messages).y() + window.messages.height()
    assert in_window(window.measure).y() >= bottom
    monkeypatch.setattr(message_bar, "_READ_MS", 0)
    window.go(MainPage.PROGRESS)
    stage.settle()
    assert window.messages.isHidden()
    window.go(MainPage.MEASURE)
    stage.settle()
    assert in_window(window.measure) == before
    window.show_data(DataPage.PEOPLE)
    window.messages.tell("Saved as rowan.pdf.")
    stage.settle()
    window.show_data(DataPage.BACKUP)
    assert window.messages.isHidden()
    window.messages.tell("The sessions are kept on a network disk.", stays=True)
    stage.settle()
    window.go(MainPage.MEASURE)
    assert window.messages.isVisible()


def test_a_message_covers_no_measuring_and_leaves_the_notes_their_room(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = stage.window
    begin_single(window.measure)
    stage.settle()
    window.messages.tell("The camera was unplugged.")
    stage.settle()
    bottom = in_window(window.messages).y() + window.messages.height()
    assert in_window(window.measure.live).y() >= bottom
    monkeypatch.setattr(message_bar, "_READ_AFAR_MS", 0)
    stage.engine.show(Phase.MOVE, 40.0)
    stage.settle(30)
    assert window.messages.isHidden()
    window.messages.tell("The camera was unplugged.")
    window.messages.close_it.click()
    assert window.messages.isHidden()
