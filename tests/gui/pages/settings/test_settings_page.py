"""The settings on one page: shown as they are, applied at once, remembered."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.app.window_pages import MainPage
from gui.pages.settings.data_page import DataPage
from gui.pages.settings.settings_page import SettingsPage
from tests.support.gui.stage import WindowHarness


def opened(stage: WindowHarness) -> SettingsPage:
    stage.window.show_settings()
    stage.settle()
    return stage.window.settings.settings


def test_the_camera_is_chosen_by_name_and_an_unplugged_one_stays(stage: WindowHarness) -> None:
    stage.services.settings.camera = "Camera in a drawer"
    page = opened(stage)
    assert page.camera.values == ("Integrated Webcam", "Desk Camera HD", "Camera in a drawer")
    assert page.camera.value == "Camera in a drawer"
    page.camera.picked.emit("Desk Camera HD")
    assert stage.services.settings.camera == "Desk Camera HD"


def test_without_a_camera_there_is_nothing_to_choose(stage: WindowHarness) -> None:
    stage.services.find_cameras = lambda: ()
    page = opened(stage)
    assert not page.camera.isEnabled()
    assert "No camera was found" in page.camera.accessibleName()


def test_voice_and_tones_are_tested_and_their_absence_is_said(stage: WindowHarness) -> None:
    page = opened(stage)
    page.try_speech.click()
    assert "No voice was found" in page.heard.text()
    page.try_tones.click()
    assert "No sound output was found" in page.heard.text()


def test_the_ways_lead_to_the_pages_of_data_and_escape_leads_back(
    stage: WindowHarness, qtbot: QtBot
) -> None:
    page, pages = opened(stage), stage.window.settings
    for name in DataPage:
        page.ways[name].click()
        stage.settle()
        shown = pages.currentWidget()
        assert shown is not page
        qtbot.keyClick(QApplication.focusWidget() or shown, Qt.Key.Key_Escape)
        assert pages.currentWidget() is page
    stage.window.go(MainPage.PROGRESS)
    stage.window.show_settings()
    assert not any(word.isChecked() for word in stage.window.words)
    qtbot.keyClick(page, Qt.Key.Key_Escape)
    assert stage.window.words[MainPage.PROGRESS].isChecked()
    assert stage.window.progress.isVisible()


def test_the_camera_check_is_the_set_up(stage: WindowHarness) -> None:
    opened(stage).check_camera.click()
    assert stage.window.setup.isVisible()
    assert stage.window.words[MainPage.SETUP].isChecked()
