"""Readings of clips saved for a person, once for each clip, and results saved to a file."""

import csv
import datetime as dt
import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtWidgets import QFileDialog

from gui.pages.clips.clips_page import ClipsPage
from measure.batch.summary import COLUMNS as TABLE_COLUMNS
from tests.support import record_samples as sample
from tests.support.gui.clip_folder import NAMES, fill_folder, open_folder, read_first, row_named
from tests.support.gui.stage import TODAY, WindowHarness
from tests.support.movie_header import movie_of


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return fill_folder(tmp_path)


@pytest.fixture
def page(stage: WindowHarness, folder: Path) -> ClipsPage:
    return open_folder(stage, folder)


def test_a_clip_of_another_person_is_not_saved(stage: WindowHarness, page: ClipsPage) -> None:
    read_first(stage, page)
    row = page.review.row
    assert row is not None
    row.person = "Fennel"
    page.review.show_person(stage.window.measure.people.person)
    assert page.review.save.text() == "Clip of Fennel"
    assert not page.review.save.isEnabled()
    assert "The manifest names Fennel." in page.review.save.toolTip()


def test_a_reading_is_saved_for_the_person_named(stage: WindowHarness, page: ClipsPage) -> None:
    read_first(stage, page)
    assert page.review.save.text() == "Save for Rowan"
    tick = page.review.trials.ticks[1]
    assert tick is not None
    tick.setChecked(False)
    page.review.save.click()
    stage.settle()
    assert not stage.history().measurements, "the file does not say when it was recorded"
    assert page.review.question.words.text() == "On which day was it recorded?"
    page.review.question.day.show_day(TODAY + dt.timedelta(days=1))
    page.review.save.click()
    stage.settle()
    assert not stage.history().measurements, "a day to come"
    page.review.question.day.show_day(dt.date(2026, 3, 5))
    page.review.save.click()
    stage.settle()
    assert not page.review.save.isEnabled()
    assert row_named(page, NAMES[0]).status == "Saved for Rowan, 5 Mar 2026"
    assert page.review.saved.text() == "\u2713  Saved for Rowan, 5 Mar 2026"
    assert page.review.saved.isVisible()
    assert not page.review.save.isVisible()
    (record,) = stage.history().measurements
    assert record.measurement.value == 117.0
    assert record.taken.day == dt.date(2026, 3, 5)
    (session,) = stage.history().sessions
    assert (session.started.day, session.finished) == (dt.date(2026, 3, 5), True)
    assert session.note == f"From the clip {NAMES[0]}"


def test_the_day_of_recording_is_the_clips_own(
    stage: WindowHarness, page: ClipsPage, folder: Path
) -> None:
    recorded = dt.datetime(2026, 2, 3, 12, tzinfo=dt.UTC)
    (folder / NAMES[0]).write_bytes(movie_of(recorded))
    read_first(stage, page)
    page.review.save.click()
    stage.settle()
    (record,) = stage.history().measurements
    assert record.taken.utc == recorded
    assert not page.review.question.isVisible()


def test_the_same_clip_is_saved_once_and_replaced_if_wanted(
    stage: WindowHarness, page: ClipsPage, folder: Path
) -> None:
    (folder / NAMES[0]).write_bytes(movie_of(dt.datetime(2026, 2, 3, 12, tzinfo=dt.UTC)))
    read_first(stage, page)
    page.review.save.click()
    stage.settle()
    (first,) = stage.history().measurements
    shutil.copyfile(folder / NAMES[0], folder / "copy-flexion-right.mp4")
    page.open([folder])  # as after a restart: the same content, under another name
    stage.settle()
    copy = row_named(page, "copy-flexion-right.mp4")
    page.show_clip(copy)
    page.review.read.click()
    stage.settle()
    tick = page.review.trials.ticks[1]
    assert tick is not None
    tick.setChecked(False)
    page.review.save.click()
    stage.settle()
    assert stage.history().measurements == (first,)
    assert page.review.question.words.text() == "This clip is already saved for Rowan."
    assert page.review.save.text() == "Replace the saved reading"
    page.review.save.click()
    stage.settle()
    (second,) = stage.history().measurements
    assert (second.id, second.measurement.value) == (first.id, 117.0)
    assert len(stage.history().sessions) == 1


def test_nothing_is_saved_for_demo_people(stage: WindowHarness, page: ClipsPage) -> None:
    read_first(stage, page)
    (person,) = stage.store.people()
    object.__setattr__(person, "demo", True)
    page.show_person(person)
    assert not page.review.save.isEnabled()
    page.show_person(None)
    assert not page.review.save.isEnabled()
    assert "Measure page" in page.review.save.toolTip()


def test_a_clip_without_a_reading_cannot_be_saved(stage: WindowHarness, page: ClipsPage) -> None:
    read_first(stage, page)
    row = page.review.row
    assert row is not None
    assert row.measurement is not None
    row.counted = replace(sample.REFUSAL, movement=row.measurement.movement)
    page.review.show_person(stage.window.measure.people.person)
    assert page.review.save.text() == "No reading to save"
    assert not page.review.save.isEnabled()


@pytest.mark.parametrize("kind", ["csv", "json"])
def test_results_are_saved_as_the_command_writes_them(
    stage: WindowHarness,
    page: ClipsPage,
    folder: Path,
    monkeypatch: pytest.MonkeyPatch,
    kind: str,
) -> None:
    page.list.read.click()
    stage.settle()
    row = row_named(page, NAMES[0])
    page.show_clip(row)
    tick = page.review.trials.ticks[1]
    assert tick is not None
    tick.setChecked(False)
    target = folder / f"out.{kind}"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    page.ask_where_to_save(kind)
    stage.settle()
    if kind == "csv":
        with target.open(newline="") as file:
            rows = list(csv.DictReader(file))
        assert tuple(rows[0]) == TABLE_COLUMNS
        values = {row["clip"]: row["value"] for row in rows}
        assert [row["trials_left_out"] for row in rows] == ["", "2"]
    else:
        results = json.loads(target.read_text())["results"]
        values = {each["clip"]: str(each["value"]) for each in results}
    assert values == {NAMES[0]: "117.0", NAMES[1]: "118.0"}
    said = stage.window.messages.text
    assert said.endswith("2 of 3 clips; the others have not been read.")
