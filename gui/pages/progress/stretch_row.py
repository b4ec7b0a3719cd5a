"""Buttons that note a stretch of the plan as done just now."""

from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import stretch_name, tr
from gui.widgets.buttons import FlowRow, button
from gui.widgets.text import label
from measure.domain.records import Plan, Stretch, StretchLog

_GAP_PX = 8


class StretchRow(QWidget):
    """A button for each stretch of the plan; out of sight without one."""

    #: The stretch that was done.
    done = Signal(object)
    #: The identifier of a tap that was a mistake.
    taken_back = Signal(str)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._log: StretchLog | None = None
        self.limit = label("", "quiet")
        self._taps = FlowRow(_GAP_PX)
        self.undo = button(tr("Take it back"), "link")
        self.undo.clicked.connect(self._take_back)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(appearance.gap(1))
        for widget in (self.limit, self._taps, self.undo):
            layout.addWidget(widget)
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
            widget = button(stretch_name(planned.stretch))
            widget.clicked.connect(partial(self._tapped, planned.stretch))
            taps.append(widget)
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
