"""Recorded clips: opened, read, scrubbed, their trials accepted or left out, kept."""

from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import ClipError
from tests.support.gui.stage import WindowHarness

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
    assert page.band.words == "118\u00b0 (112 to 124)"
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
    assert page.band.words == "118\u00b0 (112 to 124)"


def test_a_reading_is_kept_as_a_session(stage: WindowHarness) -> None:
    read(stage)
    page = stage.window.clips
    page.trials.ticks[1].setChecked(False)
    page.keep.click()
    stage.settle()
    assert not page.keep.isEnabled()
    history = stage.history()
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
