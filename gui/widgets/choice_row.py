"""A row of large buttons of which one is chosen."""

from collections.abc import Callable, Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QPushButton, QSizePolicy, QWidget

from gui.widgets.text import button

Choice = TypeVar("Choice")

_GAP_PX = 8
#: Buttons with a figure or two may be as narrow as this.
_SHORT, _LEAST_PX = 2, 44


class _ButtonGroupRow(QWidget):
    """The Qt part: signals cannot live in a generic class."""

    picked = Signal(int)

    def __init__(self, texts: Sequence[str], columns: int, may_be_empty: bool, role: str) -> None:
        super().__init__()
        self._may_be_empty = may_be_empty
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        self._columns = min(columns, max(1, len(texts)))
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(_GAP_PX)
        self.buttons: list[QPushButton] = []
        for place, text in enumerate(texts):
            one = button(text, role, checkable=True)
            one.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
            if len(text) <= _SHORT:
                one.setMinimumWidth(_LEAST_PX)
            one.installEventFilter(self)
            self._group.addButton(one, place)
            self.buttons.append(one)
        self._arrange(self._columns)
        self._group.idClicked.connect(self._clicked)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the left and right keys walk along the row, round its ends."""
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            step = (event.key() == Qt.Key.Key_Right) - (event.key() == Qt.Key.Key_Left)
            if step and watched in self.buttons:
                place = self.buttons.index(watched)
                self.buttons[(place + step) % len(self.buttons)].setFocus()
                return True
        return super().eventFilter(watched, event)

    def sizeHint(self) -> QSize:
        """Return the size of as few lines as allowed, whatever they are at present."""
        return QSize(self._width(self._columns), super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """Return one column's width, and the height of the present lines."""
        return QSize(self._width(1), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        room = event.size().width()
        columns = next((n for n in range(self._columns, 1, -1) if self._width(n) <= room), 1)
        if columns != self._grid.property("columns"):
            self._arrange(columns)
            self.updateGeometry()

    def _width(self, columns: int) -> int:
        """Return how wide the buttons are in so many columns."""
        widths = [0] * columns
        for place, one in enumerate(self.buttons):
            needed = max(one.minimumWidth(), one.minimumSizeHint().width())
            short = len(one.text()) <= _SHORT
            widths[place % columns] = max(widths[place % columns], _LEAST_PX if short else needed)
        return sum(widths) + _GAP_PX * (columns - 1)

    def _arrange(self, columns: int) -> None:
        self._grid.setProperty("columns", columns)
        for place, one in enumerate(self.buttons):
            self._grid.addWidget(one, place // columns, place % columns)

    def chosen(self) -> int | None:
        for place, one in enumerate(self.buttons):
            if one.isChecked():
                return place
        return None

    def choose(self, place: int | None) -> None:
        for each, one in enumerate(self.buttons):
            one.setChecked(each == place)

    @Slot(int)
    def _clicked(self, place: int) -> None:
        if self.buttons[place].isChecked() or not self._may_be_empty:
            self.choose(place)
        self.picked.emit(place)


class ChoiceRow(Generic[Choice]):
    """Large buttons for the values of one question."""

    def __init__(
        self,
        values: Sequence[Choice],
        name: Callable[[Choice], str],
        *,
        columns: int = 99,
        may_be_empty: bool = False,
        title: str = "",
        large: bool = False,
    ) -> None:
        self._values = list(values)
        role = "large" if large else ""
        self.row = _ButtonGroupRow([name(value) for value in values], columns, may_be_empty, role)
        self.row.setAccessibleName(title)
        self.picked = self.row.picked

    @property
    def value(self) -> Choice | None:
        place = self.row.chosen()
        return None if place is None else self._values[place]

    def choose(self, value: Choice | None) -> None:
        self.row.choose(self._values.index(value) if value in self._values else None)

    def button(self, value: Choice) -> QPushButton:
        return self.row.buttons[self._values.index(value)]
