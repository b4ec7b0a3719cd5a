"""One tap for each stretch of the plan: done just now. No counting, no praise."""

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.look import Look
from gui.widgets.text import button, clear, label
from gui.words import tr
from measure.programme import STRETCHES
from measure.records import Plan, Stretch


class StretchRow(QWidget):
    """A button for each stretch of the plan; out of sight without one."""

    #: The stretch that was done.
    done = Signal(object)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(look.gap(1))

    def show_plan(self, plan: Plan | None) -> None:
        """Offer the stretches of the plan that is in force."""
        clear(self._row)
        stretches = plan.stretches if plan else ()
        self.setVisible(bool(stretches))
        if stretches:
            self._row.addWidget(label(tr("Done just now:"), "quiet"))
        for planned in stretches:
            one = button(tr(STRETCHES[planned.stretch].name).capitalize())
            one.clicked.connect(partial(self._tapped, planned.stretch))
            self._row.addWidget(one)

    def _tapped(self, stretch: Stretch, _checked: bool = False) -> None:
        self.done.emit(stretch)
