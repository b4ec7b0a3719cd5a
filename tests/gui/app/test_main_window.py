"""The window as a whole: its rows and menus, its look, its names, its thread."""

import threading
import time
from collections.abc import Callable
from types import FunctionType
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QFileDialog,
    QLabel,
    QListWidget,
    QPlainTextEdit,
    QSlider,
)
from pytestqt.qtbot import QtBot

import gui.app.main_window
from gui.app.application import configure_application
from gui.app.window_pages import MainPage
from gui.pages.clips.clip_player import ClipPlayer
from gui.pages.clips.clips_page import ClipsPage
from gui.pages.measuring.camera_setup import SetupPage
from gui.pages.measuring.live import LivePage
from gui.pages.measuring.measure_page import MeasurePage
from gui.pages.progress.curves import CurvesView
from gui.pages.progress.progress_page import ProgressPage
from gui.session.clip_batch import ClipBatch
from gui.session.engine_feed import EngineBridge
from gui.session.measurement_session import MeasurementSession
from gui.session.person_selection import PersonSelection
from gui.session.repository import SessionRepository
from gui.style.palette import DARK, LIGHT, Scheme
from gui.text.wording import notice
from gui.workers.worker_thread import BackgroundWorker
from measure.live.events import Phase
from measure.storage.store import Store
from tests.support.gui.measuring_steps import begin_single
from tests.support.gui.screenshots import states
from tests.support.gui.stage import WindowHarness

Press = Callable[..., None]


def action(stage: WindowHarness, text: str) -> QAction:
    """Return the action of the menus whose text has these words."""
    found = [
        each
        for each in stage.window.findChildren(QAction)
        if text in each.text().replace("&", "") and each.text()
    ]
    return found[0]


def store_in_a_bad_place() -> Store:
    store = Store.in_memory()
    store.warnings = ("The sessions are kept on a network disk.", "No room is left.")
    return store


def test_a_bad_place_for_the_sessions_is_told_and_stays(stage: WindowHarness, qtbot: QtBot) -> None:
    assert stage.window.messages.isHidden()
    stage.services.keeper = SessionRepository(store_in_a_bad_place)
    window = gui.app.main_window.MainWindow(stage.services)
    qtbot.addWidget(window)
    stage.settle()
    assert not window.messages.isHidden()
    assert window.messages.text == "The sessions are kept on a network disk.\nNo room is left."
    assert window.messages.stays
    window.messages.tell("Something else.")
    assert not window.messages.stays


def test_five_words_lead_to_five_pages(stage: WindowHarness) -> None:
    window = stage.window
    assert [word.text() for word in window.words] == [
        *("Measure", "Exercises", "Progress", "Clips", "Set-up")
    ]
    pages = (window.measure, window.exercises, window.progress, window.clips, window.setup)
    for place, page in enumerate(pages):
        window.words[place].click()
        assert page.isVisible()
        assert window.words[place].isChecked()
    action(stage, "Measure").trigger()
    assert window.measure.isVisible()


def test_opening_another_page_pauses_a_session(stage: WindowHarness) -> None:
    begin_single(stage.window.measure)
    stage.settle()
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    measuring = stage.window.measure.measuring
    assert measuring is not None
    assert measuring.guide.paused
    assert stage.services.feed.running
    stage.window.go(MainPage.MEASURE)
    assert stage.window.measure.live.isVisible()
    assert not stage.window.words[0].isVisible()


def test_the_scheme_and_the_text_size_are_chosen_and_remembered(stage: WindowHarness) -> None:
    appearance, settings = stage.services.appearance, stage.services.settings
    stage.window.show_settings()
    page = stage.window.settings.settings
    page.scheme.button(Scheme.DARK).click()
    assert (appearance.palette, settings.scheme) == (DARK, Scheme.DARK)
    page.scheme.button(Scheme.LIGHT).click()
    assert (appearance.palette, settings.scheme) == (LIGHT, Scheme.LIGHT)
    for _ in range(6):
        action(stage, "Text larger").trigger()
    assert (appearance.percent, settings.text_percent, page.text.value) == (200, 200, 200)
    action(stage, "Text smaller").trigger()
    assert appearance.percent == 175
    page.text.button(125).click()
    assert (appearance.percent, settings.text_percent) == (125, 125)
    action(stage, "Normal text size").trigger()
    assert (appearance.percent, settings.text_percent, page.text.value) == (100, 100, 100)


def test_cues_are_switched_and_remembered(stage: WindowHarness) -> None:
    stage.window.show_settings()
    page = stage.window.settings.settings
    page.tones.setChecked(False)
    page.tones.setChecked(True)
    page.speech.setChecked(False)
    assert stage.services.cues.tones_wanted
    assert not stage.services.cues.speech_wanted
    assert not stage.services.settings.speech


@pytest.mark.parametrize("text", ["Keys", "About Thawline"])
def test_the_help_menu_shows_its_dialogs(stage: WindowHarness, text: str) -> None:
    action(stage, text).trigger()
    stage.settle()
    dialog = QApplication.activeModalWidget()
    assert dialog is not None
    assert any(len(one.text()) > 20 for one in dialog.findChildren(QLabel))
    dialog.close()


def test_a_report_is_written_beside_the_window(
    stage: WindowHarness, tmp_path: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "rowan.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    action(stage, "Report for a clinic visit").trigger()
    stage.settle()
    stage.settle()
    stage.window.report.write.click()
    stage.settle()
    stage.settle()
    assert target.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    assert "rowan.html" in stage.window.messages.text


def test_every_page_with_a_number_carries_the_notice(stage: WindowHarness) -> None:
    window = stage.window
    for page in (window.measure.live, window.measure.pain, window.measure.summary, window.clips):
        assert notice() in [one.text() for one in page.findChildren(QLabel)]
    texts = [one.text() for one in window.progress.findChildren(QLabel)]
    assert texts.count(notice()) >= 2


def test_everything_that_takes_the_keyboard_has_a_name(stage: WindowHarness) -> None:
    kinds = (QAbstractButton, QListWidget, QSlider, QPlainTextEdit)
    unnamed = [
        f"{type(each).__name__} {each.objectName()} in {type(each.parent()).__name__}"
        for kind in kinds
        for each in stage.window.findChildren(kind)
        if each.focusPolicy() is not Qt.FocusPolicy.NoFocus
        and not each.accessibleName()
        and not getattr(each, "text", str)()
    ]
    assert unnamed == []


# -- one thread -------------------------------------------------------------------------------


def test_every_method_of_the_window_runs_in_its_thread(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Only what is handed to a worker, or told from one, may run elsewhere."""
    elsewhere = {"_note_share", "_work", "_keep", "_finish", "_lacking"}
    here = threading.get_ident()
    seen: dict[str, set[bool]] = {}

    def recorded(name: str, method: Callable[..., Any]) -> Callable[..., Any]:
        def call(*args: Any, **more: Any) -> Any:
            seen.setdefault(name, set()).add(threading.get_ident() == here)
            return method(*args, **more)

        return call

    for kind in (
        MeasurePage,
        LivePage,
        ProgressPage,
        CurvesView,
        ClipsPage,
        ClipPlayer,
        ClipBatch,
        SetupPage,
        PersonSelection,
        MeasurementSession,
        EngineBridge,
        BackgroundWorker,
        gui.app.main_window.MainWindow,
    ):
        for name, method in list(vars(kind).items()):
            plain = isinstance(method, FunctionType)
            if plain and not name.startswith("__") and name not in elsewhere:
                monkeypatch.setattr(kind, name, recorded(f"{kind.__name__}.{name}", method))
    configure_application(qapp)
    stage = WindowHarness()
    for _ in states(stage):
        stage.settle()
    stage.close()
    assert len(seen) > 100
    assert [name for name, threads in seen.items() if False in threads] == []


def test_the_main_thread_is_not_held_up_while_measuring(stage: WindowHarness) -> None:
    """Taking and drawing a frame costs the window's thread little; the best of a few counts."""
    begin_single(stage.window.measure)
    stage.settle()
    stage.engine.show(Phase.MOVE, 60.0)
    stage.settle()
    longest = []
    for value in range(12):
        stage.engine.show(Phase.MOVE, 60.0 + value % 2)
        before = time.perf_counter()
        stage.services.feed.pull()
        QApplication.processEvents()
        longest.append(time.perf_counter() - before)
    assert sorted(longest)[len(longest) // 4] < 0.05
