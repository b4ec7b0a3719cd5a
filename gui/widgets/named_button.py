"""A button with a picture and a name of any length, which is shortened to what fits."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSizePolicy

from gui.widgets.text import ShortcutButton

#: Beside the name: the button's padding, and the gap after the picture, pixels.
_AROUND_PX = 52


class ElidedButton(ShortcutButton):
    """Shows a name that is not ours; the whole of it is its accessible name and its tool tip."""

    def __init__(self, name: str) -> None:
        super().__init__(name, "")
        self.setProperty("role", "tile")
        self.setCheckable(True)
        self.setToolTip(name)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)

    def _fit(self) -> None:
        room = max(40, self.width() - self.iconSize().width() - _AROUND_PX)
        wanted = self.fontMetrics().elidedText(self._text, Qt.TextElideMode.ElideMiddle, room)
        if wanted != self.text():
            self.setText(wanted)
