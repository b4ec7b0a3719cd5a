"""Dates beneath a chart name their month, in the language of the window."""

from collections.abc import Iterator
from itertools import pairwise

import pyqtgraph as pg
import pytest
from PySide6.QtCore import QDateTime, QLocale
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.widgets.day_axis import DayAxis

DAY_S = 86_400
NOON_S = QDateTime.fromString("2026-08-12T12:00:00", "yyyy-MM-ddTHH:mm:ss").toSecsSinceEpoch()


@pytest.fixture
def language() -> Iterator[None]:
    before = QLocale()
    yield
    QLocale.setDefault(before)


@pytest.mark.parametrize(
    ("code", "spacing_s", "words"),
    [
        ("en", DAY_S, "12 Aug"),
        ("es", DAY_S, "12 ago"),
        ("en", 5 * DAY_S, "12 Aug"),
        ("es", 30 * DAY_S, "ago"),
        ("en", 365 * DAY_S, "2026"),
        ("en", 6 * 3600, "12:00"),
    ],
)
def test_ticks_are_dates_as_people_read_them(
    qapp: QApplication, language: None, code: str, spacing_s: float, words: str
) -> None:
    QLocale.setDefault(QLocale(code))
    assert DayAxis().tickStrings([NOON_S], 1.0, spacing_s) == [words]


@pytest.mark.parametrize("days", [3, 14, 60, 140, 900])
def test_dates_do_not_run_into_each_other(qtbot: QtBot, days: int) -> None:
    axis = DayAxis()
    plot = pg.PlotWidget(axisItems={"bottom": axis})
    qtbot.addWidget(plot)
    plot.resize(1100, 200)
    plot.setXRange(NOON_S - days * DAY_S, NOON_S, padding=0)
    plot.show()
    qtbot.waitUntil(lambda: axis.picture is not None)
    width_px = axis.size().width()
    span_s = days * DAY_S
    dates = [
        (place, words)
        for spacing, places in axis.tickValues(NOON_S - span_s, NOON_S, width_px)
        for place, words in zip(places, axis.tickStrings(places, 1.0, spacing), strict=True)
        if words
    ]
    assert len(dates) >= 2
    for (start, words), (end, _) in pairwise(sorted(dates)):
        wide_px = axis.fontMetrics.horizontalAdvance(words)
        assert (end - start) / span_s * width_px > wide_px, words
