"""Field for a day that is typed, stepped through, or chosen in a calendar."""

import datetime as dt

from PySide6.QtCore import QDate, Qt, Signal, Slot
from PySide6.QtWidgets import (
    QAbstractButton,
    QCalendarWidget,
    QFrame,
    QLineEdit,
    QMenu,
    QToolButton,
    QWidget,
    QWidgetAction,
)

from gui.style.appearance import Appearance
from gui.text.day_text import day_from_text, day_text
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import row, separator

#: Longest day that is typed, such as "25 de septiembre de 2026". [technical]
_MOST_LETTERS = 28
#: Least width of the field, in sizes of the text. [technical]
_LEAST_WIDTH = 8
#: Least width of the buttons beside it, pixels. [technical]
_STEP_PX = 40
#: Least width and height of the calendar, in sizes of the text. [technical]
_CALENDAR = 19, 14
#: Edge around the field and its buttons, pixels. [technical]
_EDGE_PX = 1
_DAY = dt.timedelta(days=1)


class DateField(QWidget):
    """Holds a day; what is typed counts once it is one.

    Parameters
    ----------
    fills
        Whether the field is as wide as its place.
    """

    changed = Signal()

    def __init__(self, appearance: Appearance, title: str, *, fills: bool = False) -> None:
        super().__init__()
        self.text = QLineEdit()
        self.text.setAccessibleName(title)
        self.text.setMaxLength(_MOST_LETTERS)
        self.text.textEdited.connect(self.changed)
        self.earlier, self.later = button("\u2039", "narrow"), button("\u203a", "narrow")
        for step, words in ((self.earlier, tr("A day earlier")), (self.later, tr("A day later"))):
            step.setToolTip(words)
            step.setAccessibleName(f"{title}: {words}")
        self.earlier.clicked.connect(self._step_back)
        self.later.clicked.connect(self._step_on)
        self.calendar = QCalendarWidget()
        self.calendar.setAccessibleName(title)
        self.calendar.setVerticalHeaderFormat(QCalendarWidget.VerticalHeaderFormat.NoVerticalHeader)
        _name_parts(self.calendar, title)
        for signal in (self.calendar.clicked, self.calendar.activated):
            signal.connect(self._choose)
        self.open = button("\u25be", "narrow")
        for step in (self.earlier, self.later, self.open):
            step.setMinimumWidth(_STEP_PX)
        self.open.setToolTip(tr("Calendar"))
        self.open.setAccessibleName(tr("Calendar: {title}").format(title=title))
        self._menu = QMenu(self.open)
        action = QWidgetAction(self._menu)
        action.setDefaultWidget(self.calendar)
        self._menu.addAction(action)
        self._menu.aboutToShow.connect(self._show_month)
        self.open.setMenu(self._menu)
        spare = () if fills else (1,)
        row((self._joined(), int(fills)), *spare, on=self)
        appearance.changed.connect(self._fit)
        self._appearance = appearance
        self._fit()

    def _joined(self) -> QFrame:
        """Return the field and its buttons as one, hairlines between them."""
        made = QFrame()
        made.setProperty("role", "joined")
        edge = _EDGE_PX
        row(
            self.earlier,
            separator(upright=True),
            (self.text, 1),
            separator(upright=True),
            self.later,
            separator(upright=True),
            self.open,
            on=made,
            margins=(edge, edge, edge, edge),
            spacing=0,
        )
        return made

    @property
    def day(self) -> dt.date | None:
        """The day, or None for what is none."""
        return day_from_text(self.text.text())

    def show_day(self, day: dt.date) -> None:
        self.text.setText(day_text(day))
        self.changed.emit()

    @Slot()
    def _fit(self) -> None:
        px = self._appearance.px
        self.text.setMinimumWidth(px(_LEAST_WIDTH))
        wide, high = _CALENDAR
        self.calendar.setMinimumSize(px(wide), px(high))

    @Slot()
    def _show_month(self) -> None:
        """Open the calendar at the field's day."""
        day = self.day
        if day is not None:
            self.calendar.setSelectedDate(QDate(day.year, day.month, day.day))
        self.calendar.setFocus()

    @Slot(QDate)
    def _choose(self, chosen: QDate) -> None:
        self._menu.close()
        self.show_day(dt.date(chosen.year(), chosen.month(), chosen.day()))
        self.text.setFocus()

    @Slot()
    def _step_back(self) -> None:
        day = self.day
        if day is not None and day > dt.date.min:
            self.show_day(day - _DAY)

    @Slot()
    def _step_on(self) -> None:
        day = self.day
        if day is not None and day < dt.date.max:
            self.show_day(day + _DAY)


def _name_parts(calendar: QCalendarWidget, title: str) -> None:
    """Give the parts of a calendar names for who hears them."""
    names = {
        "qt_calendar_prevmonth": tr("Previous month"),
        "qt_calendar_nextmonth": tr("Next month"),
        "qt_calendar_monthbutton": tr("Month"),
        "qt_calendar_yearbutton": tr("Year"),
    }
    # Arrows in the colour of the words: the style's own are black on every ground.
    for name, arrow in (("qt_calendar_prevmonth", "\u2039"), ("qt_calendar_nextmonth", "\u203a")):
        step = calendar.findChild(QToolButton, name)
        if step is not None:
            step.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
            step.setText(arrow)
    for part in (*calendar.findChildren(QAbstractButton), *calendar.findChildren(QLineEdit)):
        part.setAccessibleName(names.get(part.objectName(), title))
