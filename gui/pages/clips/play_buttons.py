"""Buttons of the player: play, and a frame back or on; in a row, or the steps beneath."""

from PySide6.QtCore import QSize

from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import ShortcutButton, button
from gui.widgets.layouts import FlowRow

#: Places in a line of the grid when the steps stand beneath: one for each of them. [technical]
_STEPS = 2


class PlayButtons(FlowRow):
    """Play and step buttons in a row or, where that has no room, the steps beneath play."""

    def __init__(self) -> None:
        super().__init__(GAP_PX, filling=False)
        self._stacked = False
        self.play = button(tr("Play"), key=tr("Space"))
        self.back = step_button("\u2190", tr("Previous frame"))
        self.on = step_button("\u2192", tr("Next frame"))
        self.offer([self.back, self.play, self.on])

    def stack(self, stacked: bool) -> None:
        """Let the steps stand beneath, or all in a row again."""
        if stacked is not self._stacked:
            self._stacked, self._columns = stacked, 0
            self._arrange(self.width())

    def stacked_size(self) -> QSize:
        """Return the size that is needed where the steps stand beneath, also while it plays."""
        metrics, play, step = self.play.fontMetrics(), self.play.sizeHint(), self.back.sizeHint()
        frame = play.width() - metrics.horizontalAdvance(self.play.accessibleName())
        words = max(map(metrics.horizontalAdvance, (tr("Play"), tr("Pause"))))
        steps = step.width() + GAP_PX + self.on.sizeHint().width()
        return QSize(max(frame + words, steps), play.height() + GAP_PX + step.height())

    def _arrange(self, room: int) -> None:
        if not self._stacked:
            super()._arrange(room)
            return
        self._grid.addWidget(self.play, 0, 0, 1, _STEPS)
        for place, step in enumerate((self.back, self.on)):
            self._grid.addWidget(step, 1, place)
            self._grid.setColumnStretch(place, 1)
        self._grid.setColumnStretch(_STEPS, 0)
        self._grid.setColumnStretch(_STEPS + 1, 0)


def step_button(key: str, name: str) -> ShortcutButton:
    """Return a bare button that shows its key alone, and says its name to who rests on it."""
    made = button(key, "bare")
    made.setAccessibleName(name)
    made.setToolTip(name)
    return made
