"""The end of a session: every reading with its band and the pain beside it."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QGridLayout, QPlainTextEdit, QVBoxLayout, QWidget

from gui.protocol.plan import Outcome, Pace
from gui.session.session import Measuring
from gui.style.look import Look
from gui.text.words import stopped_by_name, task_title, tr
from gui.widgets.buttons import ButtonRow
from gui.widgets.notice_line import NoticeLine
from gui.widgets.reading_band import ReadingBand, Shown, shown_measurement
from gui.widgets.text import button, clear, label, scrolled


class SummaryPage(QWidget):
    """Shows what the session gave; in a clinic it leads on to the other side."""

    #: A note of the person's own.
    finished = Signal(str)
    other_side = Signal()
    another = Signal()

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.title = label("", "title")
        self.bands: list[ReadingBand] = []
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
        self._rows.setHorizontalSpacing(self._look.gap(4))
        self._rows.setVerticalSpacing(self._look.gap(2))
        buttons = ButtonRow([self.next_side, self.next_movement, self.finish])
        told = QWidget()
        column = QVBoxLayout(told)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(self._look.gap(2))
        column.addWidget(self.title)
        column.addWidget(self._list, 1)
        column.addWidget(self.note)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 16, 24, 8)
        layout.setSpacing(self._look.gap(2))
        layout.addWidget(scrolled(told), 1)
        layout.addWidget(buttons)
        layout.addWidget(NoticeLine())

    def show_session(self, measuring: Measuring) -> None:
        """Show what was measured."""
        outcomes = measuring.guide.outcomes
        self.title.setText(
            tr("Measured today. Everything is kept.") if outcomes else tr("Nothing was measured.")
        )
        clear(self._rows)
        self.bands = []
        columns = 2 if len(outcomes) > 1 else 1
        for place, outcome in enumerate(outcomes):
            remark = measuring.remarks.get(outcome.task, "")
            self._rows.addWidget(self._row(outcome, remark), place // columns, place % columns)
        self._rows.setRowStretch(len(outcomes), 1)
        clinic = measuring.pace is Pace.CLINIC
        self.next_side.setVisible(clinic)
        self.next_movement.setVisible(clinic)
        self.note.clear()
        (self.next_side if clinic else self.finish).setFocus()

    def _row(self, outcome: Outcome, remark: str) -> QWidget:
        task, measurement = outcome.task, outcome.measurement
        band = ReadingBand(self._look, type_size=1.2)
        shown = (
            shown_measurement(measurement)
            if measurement
            else Shown(words=tr("Nothing was captured."))
        )
        band.show_reading(task.movement, shown, task_title(task.movement, task.side))
        self.bands.append(band)
        row = QWidget()
        layout = QVBoxLayout(row)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(band)
        layout.addWidget(label(pain_words(outcome), "quiet"))
        if remark:
            layout.addWidget(label(remark))
        layout.addStretch(1)
        return row

    @Slot()
    def _finish(self) -> None:
        self.finished.emit(self.note.toPlainText().strip())


def pain_words(outcome: Outcome) -> str:
    """Return what was said about pain and the end of the movement."""
    parts = []
    if outcome.pain is not None:
        parts.append(tr("pain {pain} of 10").format(pain=outcome.pain))
    if outcome.stopped_by is not None:
        stop = stopped_by_name(outcome.stopped_by).lower()
        parts.append(tr("stopped by {reason}").format(reason=stop))
    return ", ".join(parts).capitalize() if parts else tr("Pain was not stated")
