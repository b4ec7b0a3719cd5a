"""The calendar of a field for a day can be read at every size of the text."""

import datetime as dt
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale, QRect
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import (
    QApplication,
    QStyle,
    QStyleOptionViewItem,
    QTableView,
    QToolButton,
)

from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.date_field import DateField


@pytest.fixture(autouse=True)
def as_before(qapp: QApplication) -> Iterator[None]:
    """Put look and locale back as they were."""
    locale, sheet, palette = QLocale(), qapp.styleSheet(), qapp.palette()
    yield
    QLocale.setDefault(locale)
    qapp.setStyleSheet(sheet)
    qapp.setPalette(palette)


def opened(field: DateField) -> QTableView:
    """Open the calendar, and return its days."""
    field.open.click()
    QApplication.processEvents()
    days = field.calendar.findChild(QTableView)
    assert isinstance(days, QTableView)
    return days


@pytest.mark.parametrize("language", ["en_GB", "es_ES"])
@pytest.mark.parametrize("percent", [100, 150, 200])
def test_no_day_and_no_name_of_a_day_is_cut_short(
    qapp: QApplication, language: str, percent: int
) -> None:
    QLocale.setDefault(QLocale(language))
    appearance = Appearance(Scheme.LIGHT, percent)
    appearance.apply()
    field = DateField(appearance, "Day")
    field.show_day(dt.date(2026, 11, 28))
    field.show()
    days = opened(field)
    model = days.model()
    for row in range(model.rowCount()):
        for column in range(model.columnCount()):
            index = model.index(row, column)
            words = str(index.data())
            place = days.visualRect(index)
            if place.isEmpty():
                continue
            option = QStyleOptionViewItem()
            option.initFrom(days)
            option.rect, option.text, option.widget = place, words, days
            option.features = QStyleOptionViewItem.ViewItemFeature.HasDisplay
            room = days.style().subElementRect(QStyle.SubElement.SE_ItemViewItemText, option, days)
            margin = days.style().pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin) + 1
            needed = QFontMetrics(days.font()).horizontalAdvance(words)
            assert needed <= room.width() - 2 * margin, words


@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
def test_month_and_year_stand_in_ink_on_a_ground_of_the_palette(
    qapp: QApplication, scheme: Scheme
) -> None:
    appearance = Appearance(scheme, 100)
    appearance.apply()
    field = DateField(appearance, "Day")
    field.show_day(dt.date(2026, 11, 28))
    field.show()
    opened(field)
    for name in ("month", "year"):
        part = field.calendar.findChild(QToolButton, f"qt_calendar_{name}button")
        assert isinstance(part, QToolButton)
        assert part.text()
        corner = part.mapTo(field.calendar, part.rect().topLeft())
        seen = field.calendar.grab(QRect(corner, part.size())).toImage()
        colours = {
            seen.pixelColor(x, y).name() for x in range(seen.width()) for y in range(seen.height())
        }
        assert {appearance.palette.ink, appearance.palette.sunken} <= colours
