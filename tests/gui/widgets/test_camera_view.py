"""Pages with a camera's picture say what keeps it from coming, and try again."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.app.window_pages import MainPage
from gui.session.known_setup import SetupProvider, load_stored_setup
from gui.session.known_state import load_calibration_state
from gui.text.session_wording import trouble_name, trouble_sentence
from gui.widgets.camera_view import CameraView
from measure.camera.faults import SourceFault
from measure.live.events import LiveEventKind, Phase
from tests.support.gui.stage import WindowHarness

#: No trouble where single pictures are wanted.
STILL_GOOD = SourceFault.CAMERA_SLOW


def setup(stage: WindowHarness) -> CameraView:
    return stage.window.setup.camera


def lens(stage: WindowHarness) -> CameraView:
    stage.window.setup.camera_and_body.click()
    stage.window.calibration.overview.calibrate.click()
    return stage.window.calibration.lens.camera


def level(stage: WindowHarness) -> CameraView:
    stage.window.setup.camera_and_body.click()
    stage.window.calibration.overview.uprights.click()
    return stage.window.calibration.mark.camera


def back(stage: WindowHarness) -> CameraView:
    stage.window.setup.camera_and_body.click()
    stage.window.calibration.overview.mark_back.click()
    return stage.window.calibration.mark.camera


@pytest.fixture(params=[setup, lens, level, back])
def view(request: pytest.FixtureRequest, stage: WindowHarness, data_folder: Path) -> CameraView:
    """The camera's picture on each page that has one."""
    stage.services.load_calibration = load_calibration_state
    stage.services.setup_provider = SetupProvider(load_stored_setup)
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(MainPage.SETUP)
    stage.settle()
    open_page: Callable[[WindowHarness], CameraView] = request.param
    opened = open_page(stage)
    stage.settle()
    return opened


def test_every_trouble_is_said_and_tried_again(stage: WindowHarness, view: CameraView) -> None:
    for trouble in SourceFault:
        if trouble is not STILL_GOOD:
            check_trouble(stage, view, trouble)


def named(view: CameraView, trouble: SourceFault) -> str:
    """Return what a page says of a trouble: its name alone where steps stand beside it."""
    return trouble_name(trouble) if view.steps_beside else trouble_sentence(trouble)


def check_trouble(stage: WindowHarness, view: CameraView, trouble: SourceFault) -> None:
    assert not view.retry.isVisible()
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=trouble, text="What exactly it is.")
    stage.engine.show(Phase.TROUBLE)  # the pictures of a covered camera, for example
    stage.settle()
    assert view.sentence.text == named(view, trouble)
    assert view.retry.isVisible()
    assert view.video.transform() is None
    # What is known in detail of a missing model is meant for the terminal.
    for_terminal = trouble is SourceFault.MODEL_MISSING
    assert view.video.empty_text == ("" if for_terminal else "What exactly it is.")
    starts = stage.engine.calls.count("start")
    QTest.keyClick(QApplication.focusWidget() or stage.window, Qt.Key.Key_R)
    assert stage.engine.calls.count("start") == starts + 1
    assert not view.retry.isVisible()
    assert view.sentence.text != named(view, trouble)
    stage.settle()
    assert view.video.transform() is not None


def test_what_mends_itself_takes_its_words_back(stage: WindowHarness, view: CameraView) -> None:
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_BLACK)
    stage.settle()
    assert view.sentence.text == named(view, SourceFault.CAMERA_BLACK)
    assert view.video.empty_text == ""  # the sentence is not said twice
    stage.engine.happen(LiveEventKind.RECOVERED)
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle()
    assert view.sentence.text != named(view, SourceFault.CAMERA_BLACK)
    assert not view.retry.isVisible()
    assert view.video.transform() is not None


def test_a_trouble_is_still_said_on_the_page_that_is_opened_next(stage: WindowHarness) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(MainPage.SETUP)
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_DENIED)
    stage.settle()
    camera = lens(stage)
    stage.settle()
    assert camera.sentence.text == named(camera, SourceFault.CAMERA_DENIED)
    assert camera.retry.isVisible()


def test_a_slow_camera_does_for_single_pictures(stage: WindowHarness) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(MainPage.SETUP)
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=STILL_GOOD)
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle()
    first = setup(stage)
    assert first.sentence.text == named(first, STILL_GOOD)
    assert first.video.transform() is not None
    camera = lens(stage)
    stage.settle()
    assert camera.sentence.text != named(camera, STILL_GOOD)
    assert not camera.retry.isVisible()


def test_a_picture_from_before_a_trouble_is_not_taken(stage: WindowHarness) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(MainPage.SETUP)
    level(stage)
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle()
    page = stage.window.calibration.mark
    assert page.take.isEnabled()
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    stage.settle()
    assert not page.take.isEnabled()
    stage.engine.happen(LiveEventKind.RECOVERED)
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle()
    assert page.take.isEnabled()
