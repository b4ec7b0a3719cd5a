"""Reminders: off until somebody switches them on and chooses times."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QLineEdit, QWidget

from gui.protocol.reminders import times_in
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.layouts import column
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox


class ReminderCard(QWidget):
    """Switches reminders on, and takes their times."""

    def __init__(self, appearance: Appearance, settings: WindowSettings) -> None:
        super().__init__()
        self._settings = settings
        self.wanted = WrappingCheckBox(appearance, tr("Remind me while Thawline is open"))
        self.times = QLineEdit()
        self.times.setAccessibleName(tr("times of the reminders, such as 08:00, 19:00"))
        self.times.setPlaceholderText(tr("such as 08:00, 19:00"))
        self.hint = label("", "quiet")
        self.wanted.setChecked(settings.reminders)
        self.times.setText(", ".join(f"{time:%H:%M}" for time in settings.reminder_times))
        self.wanted.toggled.connect(self._switch)
        self.times.textEdited.connect(self._take)
        column(
            self.wanted,
            self.times,
            self.hint,
            on=self,
            spacing=appearance.gap(1),
        )
        self._show()

    @Slot(bool)
    def _switch(self, wanted: bool) -> None:
        self._settings.reminders = wanted
        self._show()

    @Slot()
    def _take(self) -> None:
        """Save the times as soon as they are times."""
        try:
            self._settings.reminder_times = times_in(self.times.text())
        except ValueError:
            self.hint.setText(tr("Enter times as 08:00, 19:00."))
        else:
            self._show()

    def _show(self) -> None:
        self.times.setVisible(self.wanted.isChecked())
        self.hint.setVisible(self.wanted.isChecked())
        self.hint.setText(tr("A quiet message at these times, and nothing more."))
