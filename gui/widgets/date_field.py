"""Field for a day that is typed, as 2026-11-25, or stepped through."""

import datetime as dt

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import button

_DAY = dt.timedelta(days=1)


class DateField(QWidget):
    """Holds a day; what is typed counts once it is one."""

    changed = Signal()

    def __init__(self, appearance: Appearance, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.text = QLineEdit()
        self.text.setAccessibleName(title)
        self.text.setMaxLength(10)
        self.text.textEdited.connect(self.changed)
        self.earlier = button(tr("A day earlier"))
        self.later = button(tr("A day later"))
        self.earlier.clicked.connect(self._step_back)
        self.later.clicked.connect(self._step_on)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(appearance.gap(1))
        layout.addWidget(self.text, 1)
        layout.addWidget(self.earlier)
        layout.addWidget(self.later)

    @property
    def day(self) -> dt.date | None:
        """The day, or None for what is no day like 2026-11-25."""
        try:
            return dt.date.fromisoformat(self.text.text().strip())
        except ValueError:
            return None

    def show_day(self, day: dt.date) -> None:
        self.text.setText(day.isoformat())
        self.changed.emit()

    @Slot()
    def _step_back(self) -> None:
        day = self.day
        if day is not None and day > dt.date.min:
            self.show_day(day - _DAY)

    @Slot()
    def _step_on(self) -> None:
        day = self.day
        if day is not None and day < dt.date.max:
            self.show_day(day + _DAY)
