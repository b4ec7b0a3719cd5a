"""A row of large buttons of which one is chosen."""

from collections.abc import Callable, Sequence
from typing import Generic, TypeVar

from PySide6.QtCore import QEvent, QObject, Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QPushButton, QSizePolicy

from gui.widgets.buttons import button
from gui.widgets.layouts import FlowRow

Choice = TypeVar("Choice")

#: Space between the buttons, pixels. [technical]
_GAP_PX = 8
#: Buttons with no more characters than this may be as narrow as _LEAST_PX. [technical]
_SHORT = 2
#: Least width of a short button, pixels. [technical]
_LEAST_PX = 44


class _CheckableRow(FlowRow):
    """The Qt part of a ChoiceRow: signals cannot live in a generic class."""

    picked = Signal(int)

    def __init__(self, texts: Sequence[str], columns: int, may_be_empty: bool, role: str) -> None:
        super().__init__(_GAP_PX, most_columns=columns, level=True)
        self._may_be_empty = may_be_empty
        # An exclusive group would let the arrow keys choose, and could not be emptied.
        self._group = QButtonGroup(self)
        self._group.setExclusive(False)
        made = []
        for place, text in enumerate(texts):
            choice = button(text, role)
            choice.setCheckable(True)
            choice.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
            if len(text) <= _SHORT:
                choice.setMinimumWidth(_LEAST_PX)
            choice.installEventFilter(self)
            self._group.addButton(choice, place)
            made.append(choice)
        self.offer(made)
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

    def choose(self, chosen: int | None) -> None:
        for place, choice in enumerate(self.buttons):
            choice.setChecked(place == chosen)

    @Slot(int)
    def _clicked(self, place: int) -> None:
        if self.buttons[place].isChecked() or not self._may_be_empty:
            self.choose(place)
        # What follows may take seconds: only the chosen one is to look chosen meanwhile.
        for choice in self.buttons:
            choice.repaint()
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
        texts = [name(value) for value in values]
        # Numbers have little room beside them, however large the text.
        numbers = all(text.isdecimal() for text in texts)
        role = ("scale" if numbers else "large") if large else ("narrow" if numbers else "")
        self.row = _CheckableRow(texts, columns, may_be_empty, role)
        self.row.setAccessibleName(title)
        for choice in self.row.buttons:
            if title:
                choice.setAccessibleName(f"{title}: {choice.accessibleName()}")
        self.picked = self.row.picked

    @property
    def value(self) -> Choice | None:
        for value, choice in zip(self._values, self.row.buttons, strict=True):
            if choice.isChecked():
                return value
        return None

    def choose(self, value: Choice | None) -> None:
        self.row.choose(self._values.index(value) if value in self._values else None)

    def button(self, value: Choice) -> QPushButton:
        chosen = self.row.buttons[self._values.index(value)]
        assert isinstance(chosen, QPushButton)
        return chosen


def typed_rating(text: str) -> int | None:
    """Return the pain rating, 0..10, that a key stands for: a digit, or X for 10; else None."""
    if text.lower() == "x":
        return 10
    return int(text) if len(text) == 1 and text.isascii() and text.isdigit() else None
