"""Recorded clips: listed, read in the background, looked at, their trials in or out, saved."""

import threading
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtWidgets import QFileDialog, QPushButton
from pytestqt.qtbot import QtBot

from gui.app.window_pages import MainPage
from gui.pages.clips.clip_rows import Fact
from gui.pages.clips.clips_page import ClipsPage
from gui.pages.clips.list_view import Order, ShownClips
from gui.pages.clips.result_files import RESULTS_NAME
from gui.session.interfaces import ReadClip
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import ClipError, MachineError
from tests.support.gui.clip_folder import NAMES, fill_folder, open_folder, read_first, row_named
from tests.support.gui.stage import WindowHarness, read_drawn_clips


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return fill_folder(tmp_path)


@pytest.fixture
def page(stage: WindowHarness, folder: Path) -> ClipsPage:
    return open_folder(stage, folder)


def texts(page: ClipsPage, fact: Fact) -> dict[str, str]:
    """Return the words of a fact by the name of the clip."""
    return {row.clip.name: row.text(fact) for row in page.model.rows}


def test_a_folder_is_listed_and_names_are_understood(page: ClipsPage, folder: Path) -> None:
    assert page.list.isVisible()
    assert texts(page, Fact.MOVEMENT) == {
        NAMES[0]: "Flexion",
        NAMES[1]: "Abduction",
        NAMES[2]: "not chosen",
    }
    assert texts(page, Fact.SIDE)[NAMES[1]] == "Left"
    assert texts(page, Fact.STATUS)[NAMES[2]] == "Needs an answer"
    assert page.list.words.text() == "1 clip needs movement and side"
    assert page.model.rows[0].clip.name == NAMES[2], "what needs an answer stands first"
    assert page.results == folder / RESULTS_NAME


def test_the_same_clips_are_listed_once(
    stage: WindowHarness, page: ClipsPage, folder: Path
) -> None:
    page.open([folder])
    stage.settle()
    assert len(page.model.rows) == len(NAMES)


def test_what_is_dropped_is_opened(stage: WindowHarness, folder: Path) -> None:
    page = stage.window.clips
    stage.window.go(MainPage.CLIPS)
    assert page.empty.isVisible()
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(folder / NAMES[0])), QUrl("https://example.org/a.mp4")])
    drop = QDropEvent(
        QPointF(5, 5),
        Qt.DropAction.CopyAction,
        data,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    page.dropEvent(drop)
    stage.settle()
    assert [row.clip for row in page.model.rows] == [folder / NAMES[0]]
    assert page.review.isVisible()


def test_a_manifest_says_movement_side_and_person(stage: WindowHarness, folder: Path) -> None:
    manifest = folder / "study.csv"
    manifest.write_text(
        "clip,movement,side,view,reference,person\n"
        "IMG_4711.mp4,extension,left,side,41.5,bramble\n"
        "IMG_4711.mp4,extension,right,,,bramble\n"
    )
    page = stage.window.clips
    page.open([manifest])
    stage.settle()
    entries = [row.entry for row in page.model.rows]
    assert entries[0] == ClipEntry(
        clip=folder / "IMG_4711.mp4",
        movement=Movement.EXTENSION,
        side=Side.LEFT,
        view=entries[0].view if entries[0] else None,
        reference=41.5,
        person="bramble",
    )
    assert len(entries) == 2
    assert stage.services.settings.recent_clips == (manifest,)


@pytest.mark.parametrize("together", [True, False])
def test_a_folder_with_its_manifest_lists_no_clip_twice(
    stage: WindowHarness, folder: Path, together: bool
) -> None:
    manifest = folder / "study.csv"
    manifest.write_text("clip,movement,side,person\nIMG_4711.mp4,extension,left,bramble\n")
    page = stage.window.clips
    for named in ([folder, manifest],) if together else ([folder], [manifest], [folder]):
        page.open(named)
        stage.settle()
        stage.window.clips.show_list()
    assert sorted(row.clip.name for row in page.model.rows) == sorted(NAMES)
    assert row_named(page, NAMES[2]).person == "bramble"


def test_a_manifest_that_makes_no_sense_is_told(stage: WindowHarness, folder: Path) -> None:
    said: list[str] = []
    stage.window.clips.message_raised.connect(said.append)
    (folder / "other.csv").write_text("name,weight\nplum,3\n")
    stage.window.clips.open([folder / "other.csv"])
    stage.settle()
    assert len(said) == 1
    assert "has no column clip" in said[0]
    assert stage.window.clips.model.rows == []


def test_a_folder_without_clips_is_told(
    stage: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    stage.window.clips.message_raised.connect(said.append)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    stage.window.clips.ask_for_folder()
    stage.settle()
    assert said == ["There are no clips in this folder."]


def test_folders_are_offered_again(stage: WindowHarness, page: ClipsPage, folder: Path) -> None:
    assert stage.services.settings.recent_clips == (folder,)
    page.list.table.selectAll()
    page.list.remove.click()
    stage.settle()
    assert page.empty.isVisible()
    assert [offered.toolTip() for offered in page.empty.recent] == [str(folder)]
    page.empty.recent[0].click()
    stage.settle()
    assert len(page.model.rows) == len(NAMES)


def test_movement_and_side_are_set_for_the_chosen_clips(
    stage: WindowHarness, page: ClipsPage
) -> None:
    page.list.table.selectRow(page.model.rows.index(row_named(page, NAMES[2])))
    page.list.movement.picked.emit(Movement.EXTENSION)
    page.list.side.picked.emit(Side.LEFT)
    assert texts(page, Fact.MOVEMENT) == {
        NAMES[0]: "Flexion",
        NAMES[1]: "Abduction",
        NAMES[2]: "Extension",
    }
    page.list.table.selectAll()
    page.list.movement.picked.emit(Movement.FLEXION)
    assert set(texts(page, Fact.MOVEMENT).values()) == {"Flexion"}
    assert page.list.read.isEnabled()


def test_a_long_list_is_sorted_and_shows_one_state(
    stage: WindowHarness, page: ClipsPage, folder: Path
) -> None:
    pages = page.list
    assert not pages.order.isVisible(), "three clips are seen at a glance"
    for number in range(12):
        (folder / f"{number:02}-flexion-left.mp4").touch()
    page.open([folder])
    stage.settle()
    assert pages.order.isVisible()
    pages.order._pick(Order.NAME)
    names = [row.clip.name for row in page.model.rows]
    assert names == sorted(names, key=str.casefold)
    page.read([row_named(page, NAMES[1])])
    stage.settle()
    assert [row.clip.name for row in page.model.rows] == names, "reading keeps the order"
    pages.shown._pick(ShownClips.MEASURED)

    def seen() -> list[str]:
        table = pages.table
        return [name for place, name in enumerate(names) if not table.isRowHidden(place)]

    assert seen() == [NAMES[1]]
    pages.shown._pick(ShownClips.OPEN)
    assert seen() == [NAMES[2]]
    pages.shown._pick(ShownClips.ALL)
    assert seen() == names


def test_all_clips_are_read_in_the_background(stage: WindowHarness, page: ClipsPage) -> None:
    page.list.read.click()
    assert page.batch.running
    assert [row.status for row in page.model.rows if row.queued] == ["Being read", "In the queue"]
    stage.settle()
    assert texts(page, Fact.STATUS) == {
        NAMES[0]: "Measured",
        NAMES[1]: "Measured",
        NAMES[2]: "Needs an answer",
    }
    assert texts(page, Fact.READING)[NAMES[0]] == "118\u00b0"
    assert texts(page, Fact.RANGE)[NAMES[0]] == "112 to 124"
    assert texts(page, Fact.REASONS)[NAMES[0]] == "Trunk leaned; 2 trials"
    page.list.read.click()
    assert page.list.table.chosen == [row_named(page, NAMES[2])], "what it waits for is shown"


class HeldReader:
    """Reads one clip, then waits until it is stopped."""

    def __init__(self) -> None:
        self.calls: list[int] = []
        self.threads: set[int] = set()

    def __call__(
        self,
        entries: Sequence[ClipEntry],
        setup: KnownSetup,
        results: Path | None,
        progress: Callable[[float], bool],
        *,
        fresh: bool = False,
    ) -> Iterator[ReadClip]:
        self.calls.append(len(entries))
        self.threads.add(threading.get_ident())
        if len(self.calls) > 1:
            yield from read_drawn_clips(entries, setup, results, progress, fresh=fresh)
            return
        yield next(read_drawn_clips(entries, setup, results, progress))
        while progress(1.5):
            pass


def test_reading_is_stopped_and_goes_on(
    stage: WindowHarness, page: ClipsPage, qtbot: QtBot
) -> None:
    reader = HeldReader()
    page.batch._reader = reader
    row_named(page, NAMES[2]).choose(Movement.FLEXION, Side.LEFT)
    page.list.read.click()
    qtbot.waitUntil(lambda: page.batch.finished == 1)
    assert (page.list.read.accessibleName(), page.list.read.property("role")) == ("Stop", "")
    assert page.list.detail.text().startswith("Clips read: 1 of 3, ")
    assert page.batch.remaining_s is not None
    assert 0.3 < page.batch.share < 0.6
    page.list.read.click()
    stage.settle()
    assert not page.batch.running
    assert page.list.read.accessibleName() == "Continue reading"
    page.list.read.click()
    stage.settle()
    assert reader.calls == [3, 2]
    assert threading.get_ident() not in reader.threads
    assert all(row.measurement is not None for row in page.model.rows)


def test_movement_and_side_are_chosen_while_other_clips_are_read(
    stage: WindowHarness, page: ClipsPage, qtbot: QtBot
) -> None:
    page.batch._reader = HeldReader()
    page.list.read.click()
    qtbot.waitUntil(lambda: page.batch.finished == 1)
    table, listed = page.list.table, page.list
    table.selectRow(page.model.rows.index(row_named(page, NAMES[0])))
    assert not listed.movement.isEnabled(), "it is about to be read"
    table.selectRow(page.model.rows.index(row_named(page, NAMES[2])))
    assert listed.movement.isEnabled()
    assert listed.detail.text().endswith(" 1 clip needs movement and side")
    listed.movement.picked.emit(Movement.FLEXION)
    listed.side.picked.emit(Side.LEFT)
    assert row_named(page, NAMES[2]).status == "Waiting"
    listed.read.click()
    stage.settle()
    assert not page.batch.running
    assert [row.waits for row in page.model.rows].count(True) == 2
    assert listed.movement.isEnabled()


def test_a_run_that_fails_says_why_and_leaves_the_rest(
    stage: WindowHarness, page: ClipsPage
) -> None:
    def fail(*_arguments: object, **_more: object) -> Iterator[ReadClip]:
        raise MachineError("There is no pose model here.")

    said: list[str] = []
    page.message_raised.connect(said.append)
    page.batch._reader = fail
    page.list.read.click()
    stage.settle()
    assert said == ["There is no pose model here."]
    assert texts(page, Fact.STATUS)[NAMES[0]] == "Waiting"


def test_a_clip_that_cannot_be_read_says_so_in_the_list(
    stage: WindowHarness, page: ClipsPage
) -> None:
    row = row_named(page, NAMES[0])
    assert row.entry is not None
    row.take(
        ClipResult(number=0, entry=row.entry, error=ClipError("The clip is damaged. Film again."))
    )
    assert row.status == "Not read"
    assert row.reasons == "The clip is damaged. Film again."
    page.show_clip(row)
    said = page.review.why.cause.text(), page.review.why.remedy.text()
    assert said == ("The clip is damaged.", "Film again.")
    assert [page.review.read.isEnabled(), page.review.player.isVisible()] == [True, False]
    page.model.changed(row)
    assert page.list.read.accessibleName() == "Continue reading"
    row_named(page, NAMES[2]).choose(Movement.FLEXION, Side.LEFT)
    page.list.show_batch()
    assert page.list.words.text() == "1 clip could not be read"
    page.read([row_named(page, NAMES[1])])
    stage.settle()
    assert page.list.words.text() == "1 of 3 clips read"
    assert page.list.detail.text().startswith("1 clip could not be read \u00b7 Results are saved")
    for name in NAMES[1:]:
        page.list.table.selectRow(page.model.rows.index(row_named(page, name)))
        page.list.remove.click()
    assert page.list.read.accessibleName() == "Try again"


def test_a_clip_is_read_and_its_first_hold_shown(stage: WindowHarness, page: ClipsPage) -> None:
    read_first(stage, page)
    review = page.review
    assert (review.movement.value, review.side.value) == (Movement.FLEXION, Side.RIGHT)
    assert review.band.words == "118\u00b0 (112 to 124)"
    assert [tick is None for tick in review.trials.ticks] == [False, False, True]
    assert review.player.moment.text() == "Frame 41 of 226, 1.60 s"
    assert review.player.chart.isVisible()


def test_a_trial_that_is_left_out_changes_the_reading(
    stage: WindowHarness, page: ClipsPage
) -> None:
    read_first(stage, page)
    first, second = page.review.trials.ticks[:2]
    assert first is not None
    assert second is not None
    second.setChecked(False)
    assert page.review.band.words == "117\u00b0 (112 to 122)"
    assert texts(page, Fact.REASONS)[NAMES[0]].startswith("1 of 2 trials kept by you;")
    first.setChecked(False)
    assert page.review.band.words == "No trials were accepted."
    assert texts(page, Fact.STATUS)[NAMES[0]] == "Left out"
    assert not page.review.save.isEnabled()
    assert page.review.row is not None
    assert page.review.row.result is not None
    assert page.review.row.result.left_out == (1, 2), "goes with the result"
    first.setChecked(True)
    second.setChecked(True)
    assert page.review.band.words == "118\u00b0 (112 to 124)"


def test_what_is_next_is_the_main_button(stage: WindowHarness, page: ClipsPage) -> None:
    def main_of(*buttons: QPushButton) -> list[str]:
        shown = [one for one in buttons if one.isVisible() and one.property("role") == "main"]
        return [one.accessibleName() for one in shown]

    pages, review = page.list, page.review
    assert main_of(pages.add, pages.save, pages.read) == ["Read 2 clips"]
    pages.read.click()
    stage.settle()
    assert pages.read.accessibleName() == "Choose movement and side"
    page.show_clip(row_named(page, NAMES[2]))
    assert main_of(review.read, review.save) == ["Read this clip"]
    page.show_clip(row_named(page, NAMES[0]))
    assert main_of(review.read, review.save) == ["Save for Rowan"]
    for _ in ("asks for the day", "saves"):
        review.save.click()
        stage.settle()
    assert main_of(review.read, review.save, review.after, review.back) == ["Back to the list"]
    page.model.remove([row_named(page, NAMES[2])])
    page.show_list()
    assert main_of(pages.add, pages.save, pages.read) == ["Export results"]


# -- player and keys --------------------------------------------------------------------------


def test_keys_step_play_and_zoom(
    stage: WindowHarness, page: ClipsPage, press: Callable[..., None], qtbot: QtBot
) -> None:
    read_first(stage, page)
    player = page.review.player
    before = player.slider.value()
    press(Qt.Key.Key_Right)
    press(Qt.Key.Key_Right)
    press(Qt.Key.Key_Left)
    assert player.slider.value() == before + 1
    press(Qt.Key.Key_Plus)
    assert player.video.zoom > 1.0
    press(Qt.Key.Key_0)
    assert player.video.zoom == 1.0
    whole = _shown_seconds(page)
    press(Qt.Key.Key_Z)
    assert _shown_seconds(page) < whole
    press(Qt.Key.Key_C)
    assert _shown_seconds(page) == pytest.approx(whole)
    press(Qt.Key.Key_Space)
    assert player.playing
    qtbot.waitUntil(lambda: player.slider.value() > before + 3)
    press(Qt.Key.Key_Space)
    assert not player.playing
    press(Qt.Key.Key_Escape)
    assert page.list.isVisible()


def _shown_seconds(page: ClipsPage) -> float:
    (first, last), _ = page.review.player.chart._plot.getPlotItem().vb.viewRange()
    return float(last - first)


def test_space_on_a_trial_ticks_it_and_plays_nothing(
    stage: WindowHarness, page: ClipsPage, press: Callable[..., None]
) -> None:
    read_first(stage, page)
    tick = page.review.trials.ticks[0]
    assert tick is not None
    tick.setFocus()
    press(Qt.Key.Key_Space)
    assert not tick.isChecked()
    assert not page.review.player.playing


def test_page_keys_go_to_the_neighbours(
    stage: WindowHarness, page: ClipsPage, press: Callable[..., None]
) -> None:
    page.list.table.selectRow(0)
    press(Qt.Key.Key_Return)
    assert page.review.row is page.model.rows[0]
    assert not page.review.before.isEnabled()
    press(Qt.Key.Key_PageDown)
    assert page.review.row is page.model.rows[1]
    press(Qt.Key.Key_PageUp)
    assert page.review.row is page.model.rows[0]


def test_the_picture_grows_about_the_mouse(stage: WindowHarness, page: ClipsPage) -> None:
    read_first(stage, page)
    video = page.review.player.video
    before = video.transform()
    assert before is not None
    place = QPointF(before.left + before.width * 0.75, before.top + before.height * 0.25)
    video._zoom_at(2.0, place)
    after = video.transform()
    assert after is not None
    assert after.width == pytest.approx(2 * before.width, abs=2)
    assert after.left + after.width * 0.75 == pytest.approx(place.x(), abs=2)
    assert after.top + after.height * 0.25 == pytest.approx(place.y(), abs=2)


# -- results ----------------------------------------------------------------------------------
