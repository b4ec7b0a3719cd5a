"""Clips at every text size: columns, rows, picture, buttons and curve are never cut."""

from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QPointF, QRect, Qt
from PySide6.QtWidgets import QLabel, QStyle, QStyleOptionSlider

from gui.app.window_pages import MainPage
from gui.pages.clips.clip_table_model import COLUMNS, Column
from gui.pages.clips.clips_page import ClipsPage
from gui.pages.clips.measurement_band import ASIDE_PX
from gui.widgets.fold import SOLID_PX, MoreBelow
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.movements import Movement
from tests.support.gui.clip_folder import NAMES, fill_folder, open_folder, read_first, row_named
from tests.support.gui.screenshots import PERCENTS, SIZES, resize
from tests.support.gui.stage import WindowHarness


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return fill_folder(tmp_path)


@pytest.fixture
def page(stage: WindowHarness, folder: Path) -> ClipsPage:
    return open_folder(stage, folder)


def headings(page: ClipsPage) -> list[str]:
    table = page.list.table
    return [
        str(page.model.headerData(place, Qt.Orientation.Horizontal))
        for place in range(page.model.columnCount())
        if not table.isColumnHidden(place)
    ]


@pytest.mark.parametrize(
    ("percent", "expected"),
    [(100, ["Clip", "Movement", "Result", "Notes"]), (200, ["Clip", "Result"])],
)
def test_the_columns_fit_and_those_without_room_are_left_out(
    stage: WindowHarness, page: ClipsPage, percent: int, expected: list[str]
) -> None:
    stage.window.resize(1366, 700)
    stage.services.appearance.choose(percent=percent)
    assert "Notes" not in headings(page), "there are none before anything is read"
    page.list.read.click()
    stage.settle()
    table = page.list.table
    assert headings(page) == expected
    wide = sum(table.columnWidth(place) for place in range(page.model.columnCount()))
    assert wide <= table.viewport().width()
    row = row_named(page, NAMES[0])
    table.selectRow(page.model.rows.index(row))
    assert page.list.note.text() == ("" if table.shows_reasons else row.reasons)
    assert page.list.movement.isVisible()
    table.selectAll()
    assert page.list.note.text() == "Movement and side apply to the 3 selected clips."
    table.clearSelection()
    assert not page.list.movement.isVisible(), "nothing to choose for"
    assert not table.horizontalScrollBar().isVisible()


@pytest.mark.parametrize("percent", PERCENTS)
def test_picture_buttons_and_curve_are_seen_whole(
    stage: WindowHarness, page: ClipsPage, percent: int
) -> None:
    stage.services.appearance.choose(percent=percent)
    read_first(stage, page)
    player = page.review.player
    for size in SIZES:
        resize(stage, size)
        for shown in (player.video, player.play, player.slider, player.chart):
            place = QRect(shown.mapTo(page.review, QPoint()), shown.size())
            assert player.geometry().contains(place), (size, shown)
        curve = player.chart._plot.getPlotItem().vb
        assert curve.height() >= 110, size


@pytest.mark.parametrize("percent", PERCENTS)
def test_no_row_of_the_table_is_cut(
    stage: WindowHarness, page: ClipsPage, folder: Path, percent: int
) -> None:
    for number in range(20):
        (folder / f"more-{number}-flexion-left.mp4").touch()
    page.open([folder])
    stage.settle()
    stage.services.appearance.choose(percent=percent)
    table = page.list.table
    for size in SIZES:
        resize(stage, size)
        ends = [
            table.visualRect(page.model.index(place, 0)).bottom()
            for place in range(len(page.model.rows))
        ]
        seen = table.viewport().height()
        assert any(0 <= seen - 1 - end <= 1 for end in ends), (size, seen, ends)


@pytest.mark.parametrize(
    ("percent", "third", "note"),
    [
        (100, "Trial 3: not counted", "Trunk leaned"),
        (150, "3: trunk leaned", None),
        (200, "3: trunk leaned", None),
    ],
)
def test_why_a_trial_does_not_count_is_said_once_and_nothing_scrolls_beside_the_picture(
    stage: WindowHarness, page: ClipsPage, percent: int, third: str, note: str | None
) -> None:
    stage.services.appearance.choose(percent=percent)
    resize(stage, (1366, 700))
    read_first(stage, page)
    resize(stage, (1366, 700))
    review = page.review
    assert review.notes.text() == ""
    box = review.trials.findChildren(WrappingCheckBox)[-1]
    assert (box.text(), box.accessibleName()) == (third, "Trial 3: not counted (trunk leaned)")
    assert [words.text() for words in review.trials._notes][-1:] == [note] * bool(note)
    assert review.player._words.verticalScrollBar().maximum() == 0


@pytest.mark.parametrize("percent", PERCENTS)
def test_words_beside_the_picture_fade_into_what_they_stand_on(
    stage: WindowHarness, page: ClipsPage, percent: int
) -> None:
    stage.services.appearance.choose(percent=percent)
    resize(stage, (1024, 700))
    read_first(stage, page)
    player = page.review.player
    for size in SIZES:
        resize(stage, size)
        ground = stage.services.appearance.colour("raised" if player.has_curve_across else "ground")
        fold = player._words.findChild(MoreBelow)
        fold.show()
        picture = player.grab(QRect(fold.mapTo(player, QPoint()), fold.size())).toImage()
        shown = picture.pixelColor(picture.width() - 2, picture.height() - SOLID_PX // 2)
        inner = picture.pixelColor(picture.width() // 4, picture.height() - SOLID_PX // 4)
        assert (shown.name(), inner.name()) == (ground.name(), ground.name()), size


@pytest.mark.parametrize("size", SIZES)
def test_buttons_stand_beside_the_curve_and_the_slider_runs_along_its_time(
    stage: WindowHarness, page: ClipsPage, size: tuple[int, int]
) -> None:
    resize(stage, size)
    read_first(stage, page)
    player = page.review.player
    assert player.has_curve_across
    play, back, on, slider, moment = (
        QRect(shown.mapTo(player.chart, QPoint()), shown.size())
        for shown in (player.play, player.back, player.on, player.slider, player.moment)
    )
    curve = player.chart._plot
    assert play.right() == on.right() < curve.x()
    assert play.left() == back.left() == moment.left()
    assert play.bottom() < back.top() == on.top() < moment.top()
    assert moment.bottom() < player.chart.height()
    assert player.chart.rect().contains(slider)
    assert slider.bottom() < curve.y()
    assert curve.width() > 0.75 * player.chart.width()
    option, box = QStyleOptionSlider(), curve.getPlotItem().vb
    parts = QStyle.ComplexControl.CC_Slider, QStyle.SubControl.SC_SliderHandle
    for frame in (0, 40, 113, player.slider.maximum()):
        player.slider.setValue(frame)
        player.slider.initStyleOption(option)
        thumb = player.slider.style().subControlRect(parts[0], option, parts[1], player.slider)
        seen = player.slider.mapTo(player.chart, thumb.center()).x()
        marked = box.mapViewToScene(QPointF(player.chart._now_s, 0.0)).x() + curve.x()
        assert abs(seen - marked) <= 2, frame


def test_name_choices_and_links_of_the_chosen_row_have_one_middle(
    stage: WindowHarness, page: ClipsPage
) -> None:
    resize(stage, (1366, 700))
    table, tools = page.list.table, page.list.tools
    table.selectRow(1)
    row = table.visualRect(page.model.index(1, 0))
    middles = [
        shown.mapTo(table.viewport(), shown.rect().center()).y()
        for shown in (tools.movement, tools.side, tools.open_clip, tools.remove)
    ]
    assert all(abs(middle - row.center().y()) <= 2 for middle in middles), middles


def test_a_trial_that_is_left_out_says_so_beside_it(stage: WindowHarness, page: ClipsPage) -> None:
    resize(stage, (1366, 700))
    read_first(stage, page)
    trials = page.review.trials
    second = trials.ticks[1]
    assert second is not None
    second.setChecked(False)
    assert [note.text() for note in trials._notes] == ["", "Discarded by you", "Trunk leaned"]
    assert second.text() == "Trial 2: 119\u00b0 (114 to 124)"
    assert second.accessibleName() == "Trial 2: 119\u00b0 (114 to 124), discarded by you"
    second.setChecked(True)
    assert trials._notes[1].text() == ""


def test_the_words_have_the_left_edge_of_the_curve_beneath_them(
    stage: WindowHarness, page: ClipsPage
) -> None:
    stage.services.appearance.choose(percent=200)
    resize(stage, (1366, 700))
    read_first(stage, page)
    resize(stage, (1366, 700))
    player = page.review.player
    assert not player.has_curve_across
    assert player.chart.x() == player._words.x() + ASIDE_PX


@pytest.mark.parametrize(
    ("percent", "size", "words"), [(100, (1366, 700), "Clip "), (200, (1024, 700), "")]
)
def test_the_name_comes_before_what_the_number_of_the_clip_means(
    stage: WindowHarness, page: ClipsPage, percent: int, size: tuple[int, int], words: str
) -> None:
    stage.services.appearance.choose(percent=percent)
    resize(stage, size)
    read_first(stage, page)
    place = page.model.rows.index(row_named(page, NAMES[0])) + 1
    assert page.review.head.place.text() == f"{words}{place} of 3"


def test_a_long_name_takes_more_lines_of_one_size_and_all_rows_have_one_height(
    stage: WindowHarness, page: ClipsPage, folder: Path
) -> None:
    name = "second_visit_of_the_garden_group_in_spring-external-rotation-left.mp4"
    (folder / name).touch()
    page.open([folder])
    stage.settle()
    resize(stage, (1366, 700))
    table, cells = page.list.table, page.list.table._cells
    place = page.model.rows.index(row_named(page, name))
    row = page.model.rows[place]
    lines = cells._name_lines(row, 240)
    assert "".join(lines) == name, "it goes on after a sign, whole"
    assert len(lines) == 3
    assert cells._name_font(row, 240) == cells._fonts()[0]
    wide = table.columnWidth(0)
    assert len(cells._name_lines(row, wide)) == 2
    heights = {table.rowHeight(each) for each in range(len(page.model.rows))}
    assert len(heights) == 1, heights
    assert cells.height_of(row, {Column.CLIP: wide}) <= heights.pop() <= 68


def test_no_column_moves_when_clips_are_read(stage: WindowHarness, page: ClipsPage) -> None:
    resize(stage, (1366, 700))
    table = page.list.table
    before = [table.columnViewportPosition(place) for place in range(len(COLUMNS))]
    page.list.read.click()
    assert [table.columnViewportPosition(place) for place in range(len(COLUMNS))] == before
    stage.settle()
    assert [table.columnViewportPosition(place) for place in range(len(COLUMNS))] == before


def test_what_a_manifest_is_stands_where_nothing_was_opened_before(
    stage: WindowHarness, folder: Path
) -> None:
    stage.window.go(MainPage.CLIPS)
    empty = stage.window.clips.empty
    assert empty._about.isVisible()
    empty.show_recent((folder,))
    assert not empty._about.isVisible()
    assert empty.manifest.isVisible()


@pytest.mark.parametrize("size", SIZES)
def test_more_clips_can_be_dropped_beneath_the_table(
    stage: WindowHarness, page: ClipsPage, size: tuple[int, int]
) -> None:
    resize(stage, size)
    table, more = page.list.table, page.list.more
    assert more.isVisible()
    assert more.geometry().top() > table.geometry().bottom()
    assert more.parentWidget().rect().contains(more.geometry())
    stage.services.appearance.choose(percent=200)
    resize(stage, (1024, 700))
    assert not more.isVisible(), "the rows have the room"
    stage.services.appearance.choose(percent=100)
    resize(stage, size)
    place = more.geometry()
    page.list.read.click()
    assert more.isVisible(), "the page keeps its shape"
    assert "after reading" in more.findChild(QLabel).text()
    stage.settle()
    assert more.geometry() == place
    assert "Drop" in more.findChild(QLabel).text()


def test_the_side_stands_beneath_a_movement_that_leaves_it_no_room(
    stage: WindowHarness, page: ClipsPage
) -> None:
    resize(stage, (1366, 700))
    table, tools = page.list.table, page.list.tools
    table.selectRow(0)
    for movement, beside in ((Movement.FLEXION, True), (Movement.EXTERNAL_ROTATION, False)):
        tools.movement.picked.emit(movement)
        stage.settle()
        places = [
            QRect(shown.mapTo(table.viewport(), QPoint()), shown.size())
            for shown in (tools.movement, tools.side)
        ]
        row = table.visualRect(page.model.index(table.currentIndex().row(), 1))
        assert all(row.contains(place) for place in places), movement
        assert (places[0].top() == places[1].top()) is beside
        assert (places[0].left() == places[1].left()) is not beside
