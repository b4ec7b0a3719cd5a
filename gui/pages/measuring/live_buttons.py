"""Buttons beneath a live picture: always one line, so that the picture keeps its room."""

from collections.abc import Sequence

from PySide6.QtGui import QFontMetricsF, QResizeEvent
from PySide6.QtWidgets import QPushButton, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX, BUTTON_PADDING_PX
from gui.widgets.buttons import BUTTON_GAP_PX, ButtonRow

#: Border and rounding beside the padding of a button, pixels. [technical]
_BORDER_PX = 4
#: Words may be smaller by this much for the keys to have room beside them. [technical]
_WITH_KEYS = 0.7


class LiveButtons(ButtonRow):
    """A row of buttons in one line: in the chosen text size, or smaller where that does not fit.

    The size is that in which all have room, so that it stays as they come and go. It never goes
    below the text size of 100 %; there the row breaks into lines as any other. Somewhat smaller
    words leave room for all keys.

    Parameters
    ----------
    instead
        A button that stands in the place of others, and so needs no room beside them.
    """

    def __init__(
        self,
        appearance: Appearance,
        buttons: Sequence[QPushButton],
        instead: QPushButton | None = None,
        parent: QWidget | None = None,
    ) -> None:
        self._appearance = appearance
        self._together = tuple(buttons)
        self._px = appearance.px()
        shown = buttons if instead is None else [*buttons, instead]
        super().__init__(shown, parent, wide=True)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            # A layout may have asked for the lines of the former width since the last change.
            self.updateGeometry()

    def _arrange(self) -> None:
        px = self._largest_px()
        if px != self._px:
            self._px = px
            line = round(QFontMetricsF(self._appearance.font(px)).height())
            self.setStyleSheet(f"QPushButton {{ font-size: {px}px; min-height: {line}px; }}")
        super()._arrange()

    def _widths_here(self) -> list[int]:
        """Return the widths of the buttons shown, with their keys where those of all have room."""
        with_keys = self._width_with_keys(self._px) <= self.width()
        return self._widths(with_keys=with_keys)

    def _most_px(self) -> int:
        """Return the size of type that is wanted."""
        return self._appearance.px()

    def _largest_px(self) -> int:
        """Return the largest type in which the words of the buttons stand in one line."""
        largest = self._most_px()
        smallest = max(BODY_PX, round(largest * _WITH_KEYS))
        for px in range(largest, smallest - 1, -1):
            if self._width_with_keys(px) <= self.width():
                return px
        sizes = range(largest, BODY_PX, -1)
        return next((px for px in sizes if self._width_at(px) <= self.width()), BODY_PX)

    def _width_with_keys(self, px: int) -> float:
        """Return the width of the line with all keys in this type, pixels."""
        keys = (member.accessibleDescription() for member in self._together)
        return self._width_with(px, [f"  \u00b7  {key}" for key in keys])

    def _width_at(self, px: int) -> float:
        """Return the width of the line in this type, pixels."""
        return self._width_with(px, [""] * len(self._together))

    def _width_with(self, px: int, keys: Sequence[str]) -> float:
        """Return the width with something behind each word; the last is bold where it is main."""
        number, words = len(self._together), 0.0
        around = 2 * (BUTTON_PADDING_PX[1] + _BORDER_PX)
        for place, (member, key) in enumerate(zip(self._together, keys, strict=True), start=1):
            metrics = QFontMetricsF(self._appearance.font(px, bold=place == number))
            words += metrics.horizontalAdvance(member.accessibleName() + key)
        return words + around * number + BUTTON_GAP_PX * (number - 1)
