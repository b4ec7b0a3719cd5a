"""The chart of readings over weeks: what it says, by pointer, by keys and as a table."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible, QFontMetricsF, QImage
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gui.app.window_pages import MainPage
from gui.drawing.chart_layout import ChartLayout
from gui.drawing.chart_scales import ChartRange
from gui.drawing.curves import ChartContent, chart_content
from gui.pages.progress.chart_sentences import chart_sentence, point_words
from gui.pages.progress.history_chart import HistoryChart
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from measure.progress.overview import progress_of
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY, WindowHarness
from tests.support.record_samples import person


def flexion() -> ChartContent:
    history = demo_history(person(), TODAY, weeks=20)
    sides = [
        side for side in progress_of(history, TODAY).sides if side.movement is Movement.FLEXION
    ]
    return chart_content(history, Movement.FLEXION, AssessmentCondition(), sides, TODAY)


@pytest.fixture
def chart(qtbot: QtBot) -> HistoryChart:
    made = HistoryChart(Appearance(Scheme.LIGHT))
    qtbot.addWidget(made)
    made.resize(900, 460)
    made.show_content(flexion(), ChartRange.ALL)
    made.show()
    return made


def test_keys_go_from_reading_to_reading_and_say_it(
    chart: HistoryChart, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    monkeypatch.setattr(
        QAccessible, "updateAccessibility", lambda event: said.append(event.message())
    )
    points = chart.points
    for key in (Qt.Key.Key_Home, Qt.Key.Key_Right, Qt.Key.Key_Right, Qt.Key.Key_Left):
        QTest.keyClick(chart, key)
    assert said == [point_words(points[k]) for k in (0, 1, 2, 1)]
    assert chart.chosen is points[1]
    QTest.keyClick(chart, Qt.Key.Key_End)
    QTest.keyClick(chart, Qt.Key.Key_Right)
    assert chart.chosen is points[-1]
    opened: list[object] = []
    chart.picked.connect(opened.append)
    QTest.keyClick(chart, Qt.Key.Key_Return)
    assert opened == [points[-1].record]


def test_the_pointer_says_what_lies_beneath_it_and_a_click_opens_it(chart: HistoryChart) -> None:
    point = chart.points[7]
    place = chart.layout_now.place(point).toPoint()
    QTest.mouseMove(chart, place)
    assert chart.chosen is point
    opened: list[object] = []
    chart.picked.connect(opened.append)
    QTest.mouseClick(chart, Qt.MouseButton.LeftButton, pos=place)
    assert opened == [point.record]
    QTest.mouseMove(chart, QPoint(3, 3))
    assert chart.chosen is None


def test_the_name_and_the_sentence_of_the_chart(chart: HistoryChart) -> None:
    assert chart.accessibleName() == "Chart: Flexion"
    said = chart.accessibleDescription()
    assert "Readings of both arms from" in said
    assert "arrow keys" in said


def test_a_single_day_is_named_once() -> None:
    content = flexion()
    curve = replace(content.curves[0], points=content.curves[0].points[:1])
    said = chart_sentence(replace(content, curves=(curve,)))
    assert re.fullmatch(r"Readings of the left arm on [^:]+: 1; without a result: 0\.", said)


def test_the_range_is_the_movements_own_whatever_is_measured(chart: HistoryChart) -> None:
    content = flexion()
    high = replace(content.curves[0].points[5], value=200.0, low=190.0, high=210.0)
    curve = replace(content.curves[0], points=(high,))
    chart.show_content(replace(content, curves=(curve,)), ChartRange.ALL)
    values = chart.layout_now.values
    assert (values.low, values.high) == (0.0, 180.0)
    assert chart.layout_now.place(high).y() == pytest.approx(values.top_px)


def test_both_arms_of_a_day_stand_beside_each_other_on_that_day(chart: HistoryChart) -> None:
    layout = chart.layout_now
    for point in chart.points:
        assert abs(layout.place(point).x() - layout.days.x(point.day)) < 4
    left, right = (next(p for p in chart.points if p.side is side) for side in Side)
    assert left.day == right.day
    assert layout.place(left).x() < layout.place(right).x()


def test_a_chosen_range_shows_its_days_only(chart: HistoryChart) -> None:
    every = len(chart.points)
    chart.show_content(flexion(), ChartRange.FOUR_WEEKS)
    assert 0 < len(chart.points) < every
    assert all((TODAY - point.day).days <= 28 for point in chart.points)


def test_a_measurement_without_result_is_drawn_beneath_with_its_side(chart: HistoryChart) -> None:
    refused = next(point for point in chart.points if point.value is None)
    place = chart.layout_now.place(refused)
    assert place.y() > chart.layout_now.values.bottom_px
    assert point_words(refused).split(", ")[1].startswith(f"{refused.side.value}: No reading")


@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
def test_left_and_right_differ_in_lightness(scheme: Scheme) -> None:
    """Told apart in grey print, and for eyes that see no colours."""
    appearance = Appearance(scheme)
    light = sorted(_luminance(appearance, side.value) for side in Side)
    assert (light[1] + 0.05) / (light[0] + 0.05) > 1.5


def _luminance(appearance: Appearance, name: str) -> float:
    colour = appearance.colour(name)
    parts = (colour.redF(), colour.greenF(), colour.blueF())
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize("movement", [Movement.FLEXION, Movement.HAND_BEHIND_BACK])
@pytest.mark.parametrize(("percent", "width"), [(100, 900), (200, 900), (200, 560)])
def test_every_part_is_drawn_inside_at_every_size(
    qtbot: QtBot, movement: Movement, percent: int, width: int
) -> None:
    made = HistoryChart(Appearance(Scheme.LIGHT, percent))
    qtbot.addWidget(made)
    made.resize(width, made.sizeHint().height())
    made.show_content(replace(flexion(), movement=movement), ChartRange.ALL)
    layout = made.layout_now
    assert layout.days.right_px - layout.days.left_px > width * 0.4
    assert layout.values.bottom_px < layout.pain.top_px < layout.pain.bottom_px < made.height()
    assert layout.values.bottom_px - layout.values.top_px > made.height() * 0.3
    assert made.grab().toImage() != QImage()


@pytest.mark.parametrize("percent", [100, 200])
@pytest.mark.parametrize("movement", [Movement.FLEXION, Movement.ABDUCTION])
def test_places_on_the_body_are_named_at_their_lines_clear_of_the_readings(
    qtbot: QtBot, percent: int, movement: Movement
) -> None:
    made = HistoryChart(Appearance(Scheme.LIGHT, percent))
    qtbot.addWidget(made)
    made.resize(900, made.sizeHint().height())
    made.show_content(replace(flexion(), movement=movement), ChartRange.ALL)
    layout = made.layout_now
    metrics = QFontMetricsF(made.appearance.font(layout.words_px))
    assert layout.places == ((0.0, "arm hanging"), (90.0, "shoulder height"))
    image = made.grab().toImage()
    quiet = made.appearance.colour("quiet").name()
    high = round(metrics.height())
    for value, words in layout.places:
        line = round(layout.values.y(value))
        written = {
            top: [
                x
                for x in range(round(layout.left_px) + 1, round(layout.days.right_px))
                if any(image.pixelColor(x, top + y).name() == quiet for y in range(3, high - 3))
            ]
            for top in (line - high, line)
            if top + high <= layout.values.bottom_px + 1
        }
        (top, named), *others = [item for item in written.items() if item[1]]
        assert others == []
        assert max(named) - min(named) > 0.8 * metrics.horizontalAdvance(words)
        assert max(named) > layout.days.right_px - 4
        for point in made.points:
            place = layout.place(point)
            aside = min(named) - layout.mark_px < place.x() < max(named) + layout.mark_px
            assert not (aside and top < place.y() < top + high)
    made.resize(metrics.horizontalAdvance("shoulder height") * 3, made.height())
    assert made.layout_now.places == ()


def test_marks_are_the_smaller_the_closer_the_readings_are(chart: HistoryChart) -> None:
    every = chart.layout_now.mark_px
    chart.show_content(flexion(), ChartRange.FOUR_WEEKS)
    few = chart.layout_now.mark_px
    assert 3.0 <= every < few


def test_the_names_of_the_arms_stand_clear_of_the_last_readings(chart: HistoryChart) -> None:
    layout = chart.layout_now
    last = max(layout.place(point).x() for point in chart.points) + layout.mark_px
    assert last + 10 <= layout.sides_px
    image = chart.grab().toImage()
    right = round(layout.days.right_px) + 6
    ground = image.pixelColor(right, 2)
    top, bottom = round(layout.values.top_px) + 4, round(layout.values.bottom_px) - 4
    line_free = [y for y in range(top, bottom) if _off_lines(layout, y)]
    for x in range(right, round(layout.sides_px)):
        assert all(image.pixelColor(x, y) == ground for y in line_free)


def test_each_arm_is_named_in_the_colour_of_its_course(chart: HistoryChart) -> None:
    layout = chart.layout_now
    image = chart.grab().toImage()
    names = [
        image.pixelColor(x, y).name()
        for x in range(round(layout.sides_px), round(layout.right_px))
        for y in range(round(layout.values.top_px), round(layout.values.bottom_px))
    ]
    for side in Side:
        assert chart.appearance.colour(side.value).name() in names


def _off_lines(layout: ChartLayout, y: int) -> bool:
    """Return whether no line across the plot runs at a height."""
    return all(abs(layout.values.y(value) - y) > 2 for value, _ in layout.names)


def test_the_table_behind_the_chart_holds_the_same(
    stage: WindowHarness, press: Callable[..., None]
) -> None:
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=20))
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    curves = stage.window.progress.curves
    curves.as_table.setFocus()
    press(Qt.Key.Key_Space)
    table = curves.table
    assert table.isVisible()
    assert not curves.chart.isVisible()
    assert table.accessibleName() == "Table: Flexion: arm forwards and up"
    calm = curves.chart.points
    assert all(point.value is not None and not point.apart for point in calm)
    curves.every_mark.click()
    points = curves.chart.points
    assert table.rowCount() == len({point.record.session_id for point in points})
    assert len(points) > len(calm)
    written = [
        table.item(row, column).text()
        for row in range(table.rowCount())
        for column in (1, 2)
        if table.item(row, column).text()
    ]
    assert len(written) == len(points)
    latest = points[-1]
    assert latest.value is not None
    assert f"{latest.value:.0f}°" in table.item(0, 1 if latest.side is Side.LEFT else 2).text()
    curves.range._pick(ChartRange.FOUR_WEEKS)
    shown = curves.chart.points
    assert table.rowCount() == len({point.record.session_id for point in shown})
    assert len(shown) < len(points)
