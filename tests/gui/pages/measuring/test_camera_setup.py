"""The set-up page: cameras, place, left and right."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from gui.app.window_pages import MainPage
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.errors import CameraError
from measure.live.events import LiveEventKind, Phase, SetupHint
from tests.support.gui.stage import WindowHarness


def go_to_setup(stage: WindowHarness) -> None:
    stage.window.go(MainPage.SETUP)
    stage.settle()


def test_the_camera_is_open_only_while_it_is_needed(stage: WindowHarness) -> None:
    assert not stage.services.feed.running
    go_to_setup(stage)
    assert stage.services.feed.running
    first = stage.engine
    stage.window.go(MainPage.PROGRESS)
    stage.settle(150)
    assert first.closed
    assert not stage.services.feed.running


def test_the_cameras_are_chosen_and_remembered_by_name(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup
    assert [one.accessibleName() for one in page.cameras] == ["Integrated Webcam", "Desk Camera HD"]
    page.cameras[1].click()
    stage.settle()
    assert stage.services.settings.camera == "Desk Camera HD"
    assert stage.engine.source is not None
    assert stage.engine.source.setup.camera.name == "Desk Camera HD"


def test_distance_level_and_light_are_said_in_words(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup
    stage.engine.show(Phase.SEARCHING_FOR_PERSON, hints=(SetupHint.STEP_BACK, SetupHint.MORE_LIGHT))
    stage.settle()
    page.refresh()
    assert page.sentence.text == "Step back a little."
    words = [one.text() for one in page.checks.values()]
    assert words[0] == "\u2717  Distance: too close"
    assert words[1].startswith("\u2713")
    assert words[2] == "\u2717  Light: too dark"
    stage.settle()
    tops = [one.y() for one in page.checks.values()]
    assert tops[0] < tops[2] < tops[1]


def test_every_trouble_has_its_sentence_and_a_way_to_try_again(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup
    said = set()
    for trouble in SourceFault:
        stage.engine.happen(LiveEventKind.TROUBLE, trouble=trouble)
        stage.settle()
        assert page.camera.retry.isVisible()
        said.add(page.sentence.text)
        starts = stage.engine.calls.count("start")
        page.camera.retry.click()
        assert stage.engine.calls.count("start") == starts + 1
        stage.settle()
        assert not page.camera.retry.isVisible()
    assert len(said) == len(SourceFault)


def test_without_cameras_the_page_says_so(stage: WindowHarness) -> None:
    def none_found() -> tuple[str, ...]:
        raise CameraError("The cameras could not be listed.")

    stage.services.find_cameras = none_found
    go_to_setup(stage)
    assert stage.window.setup.cameras == []


@pytest.mark.parametrize(("side", "mirrored"), [(Side.RIGHT, False), (Side.LEFT, True)])
def test_the_raised_right_hand_tells_whether_the_source_is_mirrored(
    stage: WindowHarness, side: Side, mirrored: bool
) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    go_to_setup(stage)
    page = stage.window.setup
    stage.engine.happen(LiveEventKind.HAND_RAISED, side=side)
    stage.settle()
    assert not stage.services.settings.already_mirrored("Integrated Webcam")
    page.hand.click()
    assert page.sentence.text == "Raise your right hand."
    stage.engine.happen(LiveEventKind.HAND_RAISED, side=side)
    stage.settle()
    assert stage.services.settings.already_mirrored("Integrated Webcam") is mirrored
    assert stage.engine.source is not None
    assert stage.engine.source.setup.camera.already_mirrored is mirrored


@pytest.mark.parametrize(("side", "mirrored"), [(Side.LEFT, False), (Side.RIGHT, True)])
def test_the_other_hand_tells_the_same(stage: WindowHarness, side: Side, mirrored: bool) -> None:
    stage.services.settings.camera = "Integrated Webcam"
    go_to_setup(stage)
    page = stage.window.setup
    page.hand.click()
    assert page.other_hand.text() == "Use the left hand"
    page.other_hand.click()
    assert page.sentence.text == "Raise your left hand."
    stage.engine.happen(LiveEventKind.HAND_RAISED, side=side)
    stage.settle()
    assert stage.services.settings.already_mirrored("Integrated Webcam") is mirrored
    assert not page.other_hand.isVisible()


def test_the_check_of_left_and_right_can_be_given_up(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup
    page.hand.click()
    stage.settle()
    assert page.hand_note.text().startswith("Thawline then knows left from right.")
    assert not page.start.isVisible()
    QTest.keyClick(page, Qt.Key.Key_Escape)
    stage.settle()
    assert page.sentence.text != "Raise your right hand."
    assert page.start.isVisible()
    assert not page.end_asking.isVisible()


def test_picture_and_words_end_at_one_height(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup

    def foot(shown: QWidget) -> int:
        return shown.mapTo(page, shown.rect().bottomLeft()).y()

    assert foot(page.cameras[-1]) == foot(page.camera)
    page.hand.click()
    stage.settle()
    assert not page.cameras[-1].isVisible()
    assert foot(page.hand_figure.parentWidget()) == foot(page.camera)


def test_what_few_people_need_is_shown_on_request(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup
    assert not page.mirror.isVisible()
    page.more.click()
    assert page.mirror.isVisible()
    assert page.cameras[0].isVisible()
    page.more.click()
    assert not page.mirror.isVisible()


def test_measuring_waits_for_a_camera(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup
    assert page.start.isEnabled()
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_BUSY)
    stage.settle()
    assert not page.start.isEnabled()
    assert not page.unseen.isVisible()
    assert page.trouble.isVisible()
    assert page.camera.retry.property("role") == "main"


def test_the_preview_is_mirrored_as_wanted_and_the_analysis_never(stage: WindowHarness) -> None:
    go_to_setup(stage)
    page = stage.window.setup
    page.mirror.setChecked(False)
    assert not stage.services.settings.mirror_preview
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle()
    transform = page.camera.video.transform()
    assert transform is not None
    assert not transform.mirrored
    assert stage.engine.source is not None
    assert not stage.engine.source.setup.camera.already_mirrored


def test_a_clip_stands_for_the_camera(stage: WindowHarness) -> None:
    stage.services.clips = (Path("one.mp4"), Path("two.mp4"))
    go_to_setup(stage)
    assert [one.accessibleName() for one in stage.window.setup.cameras] == ["one.mp4"]
    assert stage.services.next_source().clip == Path("one.mp4")
    assert stage.services.next_source().clip == Path("two.mp4")
    assert stage.services.next_source().clip == Path("two.mp4")


def test_the_camera_shown_as_chosen_is_the_one_that_is_calibrated(stage: WindowHarness) -> None:
    go_to_setup(stage)
    assert stage.services.settings.camera is None
    stage.window.setup.camera_and_body.click()
    assert stage.services.settings.camera == "Integrated Webcam"
    stage.window.calibration.overview.calibrate.click()
    assert stage.window.calibration.currentWidget() is stage.window.calibration.lens


def test_sound_and_voice_can_be_tried(stage: WindowHarness) -> None:
    """A silent computer says so, and that the screen says the same."""
    page = stage.window.setup
    stage.window.go(MainPage.SETUP)
    page.tone.click()
    assert "No sound device" in page.sound_words.text()
    page.voice.click()
    assert "No voice" in page.sound_words.text()


def test_a_good_place_leads_straight_to_measuring(stage: WindowHarness) -> None:
    stage.window.go(MainPage.SETUP)
    stage.settle()
    assert stage.window.setup.start.isVisible()
    stage.window.setup.start.click()
    stage.settle()
    assert stage.window.measure.live.isVisible()
