"""A button that opens a short list and shows what was chosen from it."""

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QMenu, QPushButton, QWidget


class MenuButton(QPushButton):
    """Holds one of several values. The value is any object; the list shows its words."""

    picked = Signal(object)

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = title
        self.setAccessibleName(title)
        self._values: list[Any] = []
        self._words: list[str] = []
        self._place = -1
        self._menu = QMenu(self)
        self.setMenu(self._menu)
        self.setProperty("role", "pick")

    @property
    def value(self) -> Any:
        """The chosen value, or None when there is nothing to choose from."""
        return self._values[self._place] if 0 <= self._place < len(self._values) else None

    @property
    def values(self) -> tuple[Any, ...]:
        return tuple(self._values)

    def offer(self, values: Sequence[Any], words: Callable[[Any], str]) -> None:
        """Offer other values; the first is chosen."""
        self._values = list(values)
        self._words = [words(value) for value in self._values]
        self._menu.clear()
        for place, text in enumerate(self._words):
            self._menu.addAction(text).triggered.connect(partial(self._pick, place))
        self.choose(self._values[0] if self._values else None)

    def choose(self, value: Any) -> None:
        """Show a value as chosen, without a signal."""
        self._place = self._values.index(value) if value in self._values else -1
        text = self._words[self._place] if self._place >= 0 else ""
        self.setText(f"{text}  \u25be")
        self.setAccessibleName(f"{self._title}: {text}")

    def _pick(self, place: int, _checked: bool = False) -> None:
        self.choose(self._values[place])
        self.picked.emit(self._values[place])
