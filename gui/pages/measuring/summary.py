"""The end of a session: every reading with its band and the pain beside it."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QGridLayout, QPlainTextEdit, QVBoxLayout, QWidget

from gui.protocol.plan import SessionMode, TaskResult
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.text.wording import stopped_by_name, task_title, tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import clear_layout
from gui.widgets.measurement_band import BandContent, MeasurementBand, band_for_measurement
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar, label


class SummaryPage(QWidget):
    """Shows what the session gave; in a clinic it leads on to the other side."""

    #: A note of the person's own.
    finished = Signal(str)
    other_side = Signal()
    another = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.title = label("", "title")
        self.bands: list[MeasurementBand] = []
        self.note = QPlainTextEdit()
        self.note.setPlaceholderText(tr("A note, if you like"))
        self.note.setAccessibleName(tr("note"))
        self.note.setTabChangesFocus(True)
        self.note.setMaximumHeight(90)
        self.next_side = button(tr("The other side"), key=tr("O"))
        self.next_movement = button(tr("Another movement"), key=tr("M"))
        self.finish = button(tr("Finish"), "main", key=tr("Enter"))
        self.next_side.clicked.connect(self.other_side)
        self.next_movement.clicked.connect(self.another)
        self.finish.clicked.connect(self._finish)
        self._list = QWidget()
        self._rows = QGridLayout(self._list)
        self._lay_out()

    def _lay_out(self) -> None:
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setHorizontalSpacing(self._appearance.gap(4))
        self._rows.setVerticalSpacing(self._appearance.gap(2))
        buttons = ButtonRow([self.next_side, self.next_movement, self.finish])
        told = QWidget()
        column = QVBoxLayout(told)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(self._appearance.gap(2))
        column.addWidget(self.title)
        column.addWidget(self._list, 1)
        column.addWidget(self.note)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 16, 24, 8)
        layout.setSpacing(self._appearance.gap(2))
        layout.addWidget(scrollable(told), 1)
        layout.addWidget(buttons)
        layout.addWidget(NoticeBar())

    def show_session(self, measuring: MeasurementSession) -> None:
        """Show what was measured."""
        outcomes = measuring.guide.outcomes
        self.title.setText(
            tr("Measured today. Everything is kept.") if outcomes else tr("Nothing was measured.")
        )
        clear_layout(self._rows)
        self.bands = []
        columns = 2 if len(outcomes) > 1 else 1
        for place, outcome in enumerate(outcomes):
            message = measuring.messages.by_task.get(outcome.task, "")
            self._rows.addWidget(self._row(outcome, message), place // columns, place % columns)
        self._rows.setRowStretch(len(outcomes), 1)
        clinic = measuring.mode is SessionMode.CLINIC
        self.next_side.setVisible(clinic)
        self.next_movement.setVisible(clinic)
        self.note.clear()
        (self.next_side if clinic else self.finish).setFocus()

    def _row(self, outcome: TaskResult, message: str) -> QWidget:
        task, measurement = outcome.task, outcome.measurement
        band = MeasurementBand(self._appearance, type_size=1.2)
        shown = (
            band_for_measurement(measurement)
            if measurement
            else BandContent(words=tr("Nothing was captured."))
        )
        band.show_reading(task.movement, shown, task_title(task.movement, task.side))
        self.bands.append(band)
        row = QWidget()
        layout = QVBoxLayout(row)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(band)
        layout.addWidget(label(pain_words(outcome), "quiet"))
        if message:
            layout.addWidget(label(message))
        layout.addStretch(1)
        return row

    @Slot()
    def _finish(self) -> None:
        self.finished.emit(self.note.toPlainText().strip())


def pain_words(outcome: TaskResult) -> str:
    """Return what was said about pain and the end of the movement."""
    parts = []
    if outcome.pain is not None:
        parts.append(tr("pain {pain} of 10").format(pain=outcome.pain))
    if outcome.stopped_by is not None:
        stop = stopped_by_name(outcome.stopped_by).lower()
        parts.append(tr("stopped by {reason}").format(reason=stop))
    return ", ".join(parts).capitalize() if parts else tr("Pain was not stated")
