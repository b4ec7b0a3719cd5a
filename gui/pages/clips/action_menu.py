"""A button that opens a list of actions."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QMenu, QWidget

from gui.widgets.buttons import RingedButton


class ActionMenuButton(RingedButton):
    """Opens a list of things to do; each item calls its function."""

    def __init__(
        self,
        text: str,
        actions: Sequence[tuple[str, Callable[[], None]]],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(f"{text}  \u25be", parent)
        self.setAccessibleName(text)
        menu = QMenu(self)
        for words, function in actions:
            menu.addAction(words).triggered.connect(lambda _checked=False, call=function: call())
        self.setMenu(menu)
