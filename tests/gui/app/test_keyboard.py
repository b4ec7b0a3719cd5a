"""Every page by keyboard and ear: names stand alone, Tab ends, Escape goes back, focus follows."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from gui.app.application import configure_application
from gui.app.main_window import MainWindow
from gui.app.page_focus import innermost_page
from gui.app.window_pages import MainPage
from gui.pages.settings.data_page import DataPage
from gui.protocol.red_flags import ScreeningAnswer
from gui.widgets import announcement
from tests.support.gui.measuring_steps import begin_single
from tests.support.gui.screenshots import CHAPTERS, states
from tests.support.gui.stage import WindowHarness
from tests.support.keyboard import complaints, stops


@pytest.mark.parametrize("chapter", CHAPTERS)
def test_every_stop_of_every_state_has_a_name_of_its_own(qapp: QApplication, chapter: str) -> None:
    configure_application(qapp)
    stage = WindowHarness()
    wrong = []
    seen = 0
    for name in states(stage, chapter):
        stage.settle()
        seen += 1
        wrong += [f"{name}: {complaint}" for complaint in complaints(stage.window)]
    stage.close()
    assert seen > 16
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("page", ["start", "settings", "people", "clips", "set-up", "help"])
def test_the_tab_key_goes_round_once_and_ends_where_it_began(
    stage: WindowHarness, page: str
) -> None:
    show(stage.window, page)
    stage.settle()
    reachable = stops(stage.window)
    reachable[0].setFocus()
    met: list[QWidget | None] = []
    for _ in range(len(reachable) + 1):
        met.append(QApplication.focusWidget())
        QTest.keyClick(QApplication.focusWidget() or stage.window, Qt.Key.Key_Tab)
    assert met[0] is met[-1] or met[0] in met[1:]
    assert None not in met
    assert {widget for widget in met if widget is not None} <= set(reachable)


def show(window: MainWindow, page: str) -> None:
    ways: dict[str, Callable[[], None]] = {
        "start": lambda: window.go(MainPage.MEASURE),
        "settings": window.show_settings,
        "people": lambda: window.show_data(DataPage.PEOPLE),
        "clips": lambda: window.go(MainPage.CLIPS),
        "set-up": lambda: window.go(MainPage.SETUP),
        "help": window.show_help,
        "report": window.show_report,
        "programme": window.show_home_programme,
        "events": window.show_events,
        "camera and body": window.show_calibration,
    }
    ways[page]()


@pytest.mark.parametrize(
    "page", ["settings", "people", "help", "report", "programme", "events", "camera and body"]
)
def test_escape_goes_back_and_the_focus_follows(stage: WindowHarness, page: str) -> None:
    window = stage.window
    window.go(MainPage.PROGRESS)
    stage.settle()
    show(window, page)
    stage.settle()
    shown = innermost_page(window._pages)
    focused = QApplication.focusWidget()
    assert shown is not None
    assert focused is not None
    assert shown.isAncestorOf(focused), f"the focus is on {focused}"
    QTest.keyClick(focused, Qt.Key.Key_Escape)
    stage.settle()
    assert not shown.isVisible()
    after = innermost_page(window._pages)
    focused = QApplication.focusWidget()
    assert after is not None
    assert focused is not None
    assert after.isAncestorOf(focused)


def test_the_focus_stays_with_the_safety_questions(
    new_stage: WindowHarness, none_fits: tuple[ScreeningAnswer, ...]
) -> None:
    page = new_stage.window.measure
    page.start.at_home.start.click()
    new_stage.settle()
    assert page.safety.isVisible()
    for answer in none_fits[:-1]:
        page.safety.give(answer)
        new_stage.settle()
        focused = QApplication.focusWidget()
        assert focused is not None
        assert page.safety.isAncestorOf(focused)


def test_a_sentence_is_announced_as_it_changes(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []

    class Heard:
        @staticmethod
        def updateAccessibility(event: object) -> None:
            said.append(event.message())  # type: ignore[attr-defined]

    monkeypatch.setattr(announcement, "QAccessible", Heard)
    assert QAccessible is not Heard
    begin_single(stage.window.measure)
    stage.settle()
    sentence = stage.window.measure.live.sentence
    assert said
    assert said[-1] == sentence.text
    stage.window.messages.tell("The camera was unplugged.")
    assert said[-1] == "The camera was unplugged."
