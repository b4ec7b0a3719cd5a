"""Pages with a camera's picture say what keeps it from coming, and try again."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.session.known_setup import KnownHere, gather_from_shelves
from gui.session.known_state import look_up
from gui.text.sentences import trouble_sentence
from gui.widgets.camera_view import CameraView
from measure.camera.faults import Trouble
from measure.live.events import EventKind, Phase
from tests.support.gui.stage import Stage

#: No trouble where single pictures are wanted.
STILL_GOOD = Trouble.CAMERA_SLOW


def setup(stage: Stage) -> CameraView:
    return stage.window.setup.camera


def lens(stage: Stage) -> CameraView:
    stage.window.setup.known.click()
    stage.window.known.known.calibrate.click()
    return stage.window.known.lens.camera


def level(stage: Stage) -> CameraView:
    stage.window.setup.known.click()
    stage.window.known.known.uprights.click()
    return stage.window.known.mark.camera


def back(stage: Stage) -> CameraView:
    stage.window.setup.known.click()
    stage.window.known.known.mark_back.click()
    return stage.window.known.mark.camera


@pytest.fixture(params=[setup, lens, level, back])
def view(request: pytest.FixtureRequest, stage: Stage, data_folder: Path) -> CameraView:
    """The camera's picture on each page that has one."""
    stage.services.look_up = look_up
    stage.services.known = KnownHere(gather_from_shelves)
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(3)
    stage.settle()
    open_page: Callable[[Stage], CameraView] = request.param
    opened = open_page(stage)
    stage.settle()
    return opened


def test_every_trouble_is_said_and_tried_again(stage: Stage, view: CameraView) -> None:
    for trouble in Trouble:
        if trouble is not STILL_GOOD:
            check_trouble(stage, view, trouble)


def check_trouble(stage: Stage, view: CameraView, trouble: Trouble) -> None:
    assert not view.retry.isVisible()
    stage.engine.happen(EventKind.TROUBLE, trouble=trouble, text="What exactly it is.")
    stage.engine.show(Phase.TROUBLE)  # the pictures of a covered camera, for example
    stage.settle()
    assert view._sentence.text == trouble_sentence(trouble)
    assert view.retry.isVisible()
    assert view.video.transform() is None
    assert view.video._empty == "What exactly it is."
    starts = stage.engine.calls.count("start")
    QTest.keyClick(QApplication.focusWidget() or stage.window, Qt.Key.Key_R)
    assert stage.engine.calls.count("start") == starts + 1
    assert not view.retry.isVisible()
    assert view._sentence.text != trouble_sentence(trouble)
    stage.settle()
    assert view.video.transform() is not None


def test_what_mends_itself_takes_its_words_back(stage: Stage, view: CameraView) -> None:
    stage.engine.happen(EventKind.TROUBLE, trouble=Trouble.CAMERA_BLACK)
    stage.settle()
    assert view.video._empty == trouble_sentence(Trouble.CAMERA_BLACK)
    stage.engine.happen(EventKind.RECOVERED)
    stage.engine.show(Phase.LOOKING_FOR_PERSON)
    stage.settle()
    assert view._sentence.text != trouble_sentence(Trouble.CAMERA_BLACK)
    assert not view.retry.isVisible()
    assert view.video.transform() is not None


def test_a_trouble_is_still_said_on_the_page_that_is_opened_next(stage: Stage) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(3)
    stage.engine.happen(EventKind.TROUBLE, trouble=Trouble.CAMERA_DENIED)
    stage.settle()
    camera = lens(stage)
    stage.settle()
    assert camera._sentence.text == trouble_sentence(Trouble.CAMERA_DENIED)
    assert camera.retry.isVisible()


def test_a_slow_camera_does_for_single_pictures(stage: Stage) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(3)
    stage.engine.happen(EventKind.TROUBLE, trouble=STILL_GOOD)
    stage.engine.show(Phase.LOOKING_FOR_PERSON)
    stage.settle()
    first = setup(stage)
    assert first._sentence.text == trouble_sentence(STILL_GOOD)
    assert first.video.transform() is not None
    camera = lens(stage)
    stage.settle()
    assert camera._sentence.text != trouble_sentence(STILL_GOOD)
    assert not camera.retry.isVisible()


def test_a_picture_from_before_a_trouble_is_not_taken(stage: Stage) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    stage.window.go(3)
    level(stage)
    stage.engine.show(Phase.LOOKING_FOR_PERSON)
    stage.settle()
    page = stage.window.known.mark
    assert page.take.isEnabled()
    stage.engine.happen(EventKind.TROUBLE, trouble=Trouble.CAMERA_UNPLUGGED)
    stage.settle()
    assert not page.take.isEnabled()
    stage.engine.happen(EventKind.RECOVERED)
    stage.engine.show(Phase.LOOKING_FOR_PERSON)
    stage.settle()
    assert page.take.isEnabled()
