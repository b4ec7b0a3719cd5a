"""One tap for each stretch of the plan: done just now. No counting, no praise."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QSize, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QPushButton, QVBoxLayout, QWidget

from gui.look import Look
from gui.widgets.text import button, clear, label
from gui.words import stretch_name, tr
from measure.records import Plan, Stretch, StretchLog

_GAP_PX = 8


class _Taps(QWidget):
    """Buttons side by side, in as many lines as they need."""

    def __init__(self) -> None:
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(_GAP_PX)
        self._columns = 0
        self.buttons: list[QPushButton] = []

    def offer(self, buttons: Sequence[QPushButton]) -> None:
        clear(self._grid)
        self.buttons = list(buttons)
        self._columns = 0
        self._arrange(self.width())

    def minimumSizeHint(self) -> QSize:
        return QSize(self._width(1), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange(event.size().width())

    def _arrange(self, room: int) -> None:
        most = max(1, len(self.buttons))
        columns = next((n for n in range(most, 1, -1) if self._width(n) <= room), 1)
        if columns != self._columns:
            self._columns = columns
            for place, one in enumerate(self.buttons):
                self._grid.addWidget(one, place // columns, place % columns)
            self.updateGeometry()

    def _width(self, columns: int) -> int:
        """Return how wide the buttons are in so many columns."""
        widths = [0] * columns
        for place, one in enumerate(self.buttons):
            widths[place % columns] = max(widths[place % columns], one.minimumSizeHint().width())
        return sum(widths) + _GAP_PX * (columns - 1)


class StretchRow(QWidget):
    """A button for each stretch of the plan; out of sight without one."""

    #: The stretch that was done.
    done = Signal(object)
    #: The identifier of a tap that was a mistake.
    taken_back = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._log: StretchLog | None = None
        self.limit = label("", "quiet")
        self._taps = _Taps()
        self.undo = button(tr("Take it back"), "link")
        self.undo.clicked.connect(self._take_back)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(look.gap(1))
        for one in (self.limit, self._taps, self.undo):
            layout.addWidget(one)
        self.undo.hide()

    @property
    def buttons(self) -> tuple[QPushButton, ...]:
        """The buttons of the plan's stretches, in its order."""
        return tuple(self._taps.buttons)

    def show_plan(self, plan: Plan | None) -> None:
        """Offer the stretches of the plan that is in force."""
        stretches = plan.stretches if plan else ()
        self.setVisible(bool(stretches))
        if plan is None or not stretches:
            self.show_noted(None)
            return
        self.limit.setText(
            tr("Done just now, stopped at pain {limit} of 10 at the latest:").format(
                limit=plan.pain_limit
            )
        )
        taps = []
        for planned in stretches:
            one = button(stretch_name(planned.stretch))
            one.clicked.connect(partial(self._tapped, planned.stretch))
            taps.append(one)
        self._taps.offer(taps)

    def show_noted(self, log: StretchLog | None) -> None:
        """Say what was noted last and offer to take it back; None says nothing."""
        self._log = log
        self.undo.setVisible(log is not None)
        if log is not None:
            self.undo.say(
                tr("Noted: {stretch}, {time}. Take it back").format(
                    stretch=stretch_name(log.stretch), time=log.done.local.strftime("%H:%M")
                )
            )

    def _tapped(self, stretch: Stretch, _checked: bool = False) -> None:
        self.done.emit(stretch)

    @Slot()
    def _take_back(self) -> None:
        log = self._log
        if log is not None:
            self.taken_back.emit(log.id)
