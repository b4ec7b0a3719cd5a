"""Summary page: every reading of the session with its band and its pain."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QGridLayout, QPlainTextEdit, QWidget

from gui.protocol.plan import SessionMode, TaskResult
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.text.wording import notes_words, pain_sentence, task_title, tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import clear_layout, column, widget_with
from gui.widgets.measurement_band import MeasurementBand, band_for_measurement
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
        gap = self._appearance.gap
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setHorizontalSpacing(gap(4))
        self._rows.setVerticalSpacing(gap(2))
        shown = widget_with(column(self.title, (self._list, 1), self.note, spacing=gap(2)))
        column(
            (scrollable(shown), 1),
            ButtonRow([self.next_side, self.next_movement, self.finish]),
            NoticeBar(),
            on=self,
            margins=(24, 16, 24, 8),
            spacing=gap(2),
        )

    def show_session(self, measuring: MeasurementSession) -> None:
        """Show what was measured."""
        outcomes = measuring.guide.outcomes
        self.title.setText(
            tr("Today's results - saved") if outcomes else tr("Nothing was measured.")
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
        task = outcome.task
        band = MeasurementBand(self._appearance, type_size=1.2)
        title = task_title(task.movement, task.side)
        band.show_reading(task.movement, band_for_measurement(outcome.measurement), title)
        self.bands.append(band)
        pain = label(pain_sentence(outcome.pain, outcome.stopped_by), "quiet")
        below = [label(words) for words in (notes_words(outcome.measurement), message) if words]
        return widget_with(column(band, pain, *below, 1, spacing=0))

    @Slot()
    def _finish(self) -> None:
        self.finished.emit(self.note.toPlainText().strip())
