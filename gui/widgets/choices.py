"""A row of large buttons of which one is chosen."""

from collections.abc import Callable, Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QPushButton, QSizePolicy, QWidget

from gui.widgets.text import button

Choice = TypeVar("Choice")


class _Row(QWidget):
    """The Qt part: signals cannot live in a generic class."""

    picked = Signal(int)

    def __init__(self, texts: Sequence[str], columns: int, may_be_empty: bool, role: str) -> None:
        super().__init__()
        self._may_be_empty = may_be_empty
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        layout = QGridLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        self.buttons: list[QPushButton] = []
        for place, text in enumerate(texts):
            one = button(text, role, checkable=True)
            one.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
            one.setMinimumWidth(44)
            layout.addWidget(one, place // columns, place % columns)
            self._group.addButton(one, place)
            self.buttons.append(one)
        self._group.idClicked.connect(self._clicked)

    def chosen(self) -> int | None:
        for place, one in enumerate(self.buttons):
            if one.isChecked():
                return place
        return None

    def choose(self, place: int | None) -> None:
        for each, one in enumerate(self.buttons):
            one.setChecked(each == place)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        focused = [place for place, one in enumerate(self.buttons) if one.hasFocus()]
        if step is None or not focused:
            super().keyPressEvent(event)
            return
        self.buttons[(focused[0] + step) % len(self.buttons)].setFocus()

    @Slot(int)
    def _clicked(self, place: int) -> None:
        if self.buttons[place].isChecked() or not self._may_be_empty:
            self.choose(place)
        self.picked.emit(place)


class Choices(Generic[Choice]):
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
        self.row = _Row([name(value) for value in values], columns, may_be_empty, role)
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
