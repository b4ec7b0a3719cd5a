"""Progress, clips and set-up."""

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtWidgets import QDialog, QFileDialog, QLabel, QPushButton

from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import CameraError, ClipError
from measure.live.events import LiveEventKind, Phase, SetupHint
from tests.support.gui.memory_keeper import demo_history
from tests.support.gui.stage import TODAY, WindowHarness


@pytest.fixture
def grown(stage: WindowHarness) -> WindowHarness:
    """A stage whose person has twenty weeks behind them."""
    stage.keeper.put(demo_history(stage.keeper.people()[0], TODAY, weeks=20))
    return stage


def test_an_empty_history_says_what_will_stand_here(stage: WindowHarness) -> None:
    stage.window.go(1)
    stage.settle()
    page = stage.window.progress
    texts = [one.text() for one in page.empty.findChildren(type(page.curves.verdict))]
    assert any("four weeks" in text for text in texts)
    assert not page.curves.chart.isVisible()


def test_curves_of_both_shoulders_with_pain(grown: WindowHarness) -> None:
    grown.window.go(1)
    grown.settle()
    page = grown.window.progress
    assert page.curves.chart.isVisible()
    assert "\u25cf Left" in page.curves.legend.text()
    assert "\u25a0 Right" in page.curves.legend.text()
    assert "pain" in page.curves.legend.text()
    assert not page.curves.movement.button(Movement.EXTENSION).isEnabled()
    page.curves.movement.button(Movement.HAND_BEHIND_BACK).click()
    grown.settle()
    assert "weeks" in page.curves.verdict.text()


def test_a_mark_leads_to_its_session(grown: WindowHarness) -> None:
    grown.window.go(1)
    grown.settle()
    page = grown.window.progress
    history = grown.keeper.history(grown.keeper.people()[0].id)
    record = history.measurements[0]
    page.curves.chart.picked.emit(record)
    grown.settle()
    assert page.details.isVisible()
    assert page.details.list.currentRow() == len(history.sessions) - 1
    page.to_curves.click()
    assert page.curves.chart.isVisible()


def answer(stage: WindowHarness, words: str) -> None:
    """Press a button of the dialog that is open."""
    (asked,) = [each for each in stage.window.findChildren(QDialog) if each.isVisible()]
    (wanted,) = [each for each in asked.findChildren(QPushButton) if each.text() == words]
    wanted.click()
    stage.settle()


def test_a_mistaken_session_is_deleted_after_asking(grown: WindowHarness) -> None:
    grown.window.go(1)
    grown.settle()
    page = grown.window.progress
    who = grown.keeper.people()[0].id
    before = grown.keeper.history(who)
    page.show_details()
    page.details.list.setCurrentRow(1)
    page.details.drop.click()
    (asked,) = [each for each in grown.window.findChildren(QDialog) if each.isVisible()]
    assert "Readings in it: 8." in asked.findChildren(QLabel)[0].text()
    assert asked.focusWidget() is asked.findChildren(QPushButton)[0]  # Enter keeps it
    answer(grown, "Keep it")
    assert grown.keeper.history(who) == before
    page.details.drop.click()
    answer(grown, "Delete it")
    after = grown.keeper.history(who)
    gone = before.sessions[-2]
    assert after.sessions == (*before.sessions[:-2], before.sessions[-1])
    assert all(each.session_id != gone.id for each in after.measurements)
    assert len(after.measurements) == len(before.measurements) - 8
    assert page.details.list.count() == len(after.sessions)
    assert page.details.isVisible()


def test_after_the_only_session_the_empty_page_is_shown(stage: WindowHarness) -> None:
    person = stage.keeper.people()[0]
    one = demo_history(person, TODAY, weeks=20)
    session = one.sessions[0]
    stage.keeper.put(
        replace(
            one,
            sessions=(session,),
            measurements=tuple(e for e in one.measurements if e.session_id == session.id),
        )
    )
    stage.window.go(1)
    stage.settle()
    page = stage.window.progress
    page.show_details()
    page.details.drop.click()
    answer(stage, "Delete it")
    assert stage.keeper.history(person.id).sessions == ()
    assert page.empty.isVisible()


def test_an_early_history_gives_no_verdict(stage: WindowHarness) -> None:
    stage.keeper.put(demo_history(stage.keeper.people()[0], TODAY, weeks=1))
    stage.window.go(1)
    stage.settle()
    assert "four weeks and eight sessions" in stage.window.progress.curves.verdict.text()


CLIPS = [Path("bed-three_flexion_right.mp4"), Path("abduction-left.mov")]


def read(stage: WindowHarness) -> None:
    stage.window.go(2)
    stage.window.clips.open(CLIPS)
    stage.settle()
    stage.window.clips.reading.button.click()
    stage.settle(150)


def test_a_clip_is_opened_and_its_name_understood(stage: WindowHarness) -> None:
    page = stage.window.clips
    stage.window.go(2)
    page.open(CLIPS)
    stage.settle()
    assert page.clip == CLIPS[0]
    assert (page.movement.value, page.side.value) == (Movement.FLEXION, Side.RIGHT)
    page.list.setCurrentRow(1)
    stage.settle()
    assert (page.movement.value, page.side.value) == (Movement.ABDUCTION, Side.LEFT)


def test_a_clip_is_read_and_its_first_hold_shown(stage: WindowHarness) -> None:
    read(stage)
    page = stage.window.clips
    assert page.title.text() == "Flexion, right arm"
    assert page.band.words == "118\u00b0 (113 to 123)"
    assert len(page.trials.ticks) == 3
    assert not page.trials.ticks[2].isEnabled()
    assert page.player.moment.text() == "1.6 s"
    assert page.player.chart.isVisible()


def test_a_trial_that_is_left_out_changes_the_reading(stage: WindowHarness) -> None:
    read(stage)
    page = stage.window.clips
    page.trials.ticks[1].setChecked(False)
    assert page.band.words == "117\u00b0 (112 to 122)"
    page.trials.ticks[0].setChecked(False)
    page.trials.ticks[1].setChecked(True)
    assert page.band.words == "119\u00b0 (114 to 124)"
    page.trials.ticks[0].setChecked(True)
    assert page.band.words == "118\u00b0 (113 to 123)"


def test_a_reading_is_kept_as_a_session(stage: WindowHarness) -> None:
    read(stage)
    page = stage.window.clips
    page.trials.ticks[1].setChecked(False)
    page.keep.click()
    stage.settle()
    assert not page.keep.isEnabled()
    history = stage.keeper.history(stage.keeper.people()[0].id)
    (record,) = history.measurements
    assert record.measurement.value == 117.0
    assert history.sessions[0].note == "From the clip bed-three_flexion_right.mp4"


def test_scrubbing_shows_the_moment(stage: WindowHarness) -> None:
    read(stage)
    page = stage.window.clips
    page.player.slider.setValue(page.player.slider.maximum())
    assert page.player.moment.text() == "9.0 s"
    page.player.chart.moved.emit(4.6)
    assert page.player.moment.text() == "4.6 s"


def test_a_clip_that_cannot_be_read_is_told(stage: WindowHarness) -> None:
    def fail(path: Path, movement: Movement, side: Side, progress: object) -> None:
        raise ClipError("The clip is damaged. Record it again.")

    stage.services.read_clip = fail  # type: ignore[assignment]
    told: list[str] = []
    stage.window.clips.message_raised.connect(told.append)
    read(stage)
    assert told == ["The clip is damaged. Record it again."]
    assert stage.window.clips.reading.button.accessibleName() == "Read this clip"


def test_a_folder_without_clips_is_told(
    stage: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[str] = []
    stage.window.clips.message_raised.connect(told.append)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    stage.window.clips.ask_for_folder()
    assert told == ["There are no clips in this folder."]
    (tmp_path / "one.MP4").touch()
    (tmp_path / "two.txt").touch()
    stage.window.clips.ask_for_folder()
    assert stage.window.clips.clip == tmp_path / "one.MP4"


def go_to_setup(stage: WindowHarness) -> None:
    stage.window.go(3)
    stage.settle()


def test_the_camera_is_open_only_while_it_is_needed(stage: WindowHarness) -> None:
    assert not stage.services.feed.running
    go_to_setup(stage)
    assert stage.services.feed.running
    first = stage.engine
    stage.window.go(1)
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
    assert words[0] == "\u25b6  Step back a little."
    assert words[1].startswith("\u2713")
    assert words[2] == "\u25b6  More light, please."


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
    stage.window.setup.known.click()
    assert stage.services.settings.camera == "Integrated Webcam"
    stage.window.known.known.calibrate.click()
    assert stage.window.known.currentWidget() is stage.window.known.lens
