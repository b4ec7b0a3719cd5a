"""One session in full: every measurement with its trials, what was refused and why, conditions."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QListWidget, QSplitter, QVBoxLayout, QWidget

from gui.look import Look
from gui.widgets.reading_band import ReadingBand, shown_measurement, shown_trial
from gui.widgets.text import card, clear, label, scrolled
from gui.words import (
    conduct_words,
    reason_sentence,
    stopped_by_name,
    task_title,
    tr,
    view_name,
)
from measure.history import History
from measure.records import MeasurementRecord, SessionRecord


class SessionDetails(QWidget):
    """The sessions at the left, the chosen one at the right."""

    chosen = Signal(str)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._history: History | None = None
        self._sessions: tuple[SessionRecord, ...] = ()
        self.list = QListWidget()
        self.list.setAccessibleName(tr("sessions"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.currentRowChanged.connect(self._show)
        self._right = QWidget()
        self._column = QVBoxLayout(self._right)
        self._column.setContentsMargins(12, 0, 12, 0)
        self._column.setSpacing(look.gap(2))
        splitter = QSplitter()
        splitter.addWidget(self.list)
        splitter.addWidget(scrolled(self._right))
        splitter.setStretchFactor(0, 3)
        splitter.setStretchFactor(1, 7)
        splitter.setChildrenCollapsible(False)
        splitter.setSizes([320, 880])
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(splitter)

    def show_history(self, history: History) -> None:
        """List the sessions, the latest first."""
        self._history = history
        self._sessions = tuple(reversed(history.sessions))
        self.list.clear()
        for session in self._sessions:
            count = len(self._records(session))
            self.list.addItem(
                tr("{day}\n{count} readings").format(
                    day=session.started.local.strftime("%d.%m.%Y %H:%M"), count=count
                )
            )
        if self._sessions:
            self.list.setCurrentRow(0)

    def show_session(self, session_id: str) -> None:
        """Choose a session."""
        for row, session in enumerate(self._sessions):
            if session.id == session_id:
                self.list.setCurrentRow(row)

    def _records(self, session: SessionRecord) -> Sequence[MeasurementRecord]:
        history = self._history
        return (
            [each for each in history.measurements if each.session_id == session.id]
            if history
            else []
        )

    @Slot(int)
    def _show(self, row: int) -> None:
        clear(self._column)
        if not 0 <= row < len(self._sessions):
            return
        session = self._sessions[row]
        self._column.addWidget(label(session_words(session), "lead"))
        if session.note:
            self._column.addWidget(label(session.note))
        for record in self._records(session):
            self._column.addWidget(self._record_card(record))
        self._column.addStretch(1)

    def _record_card(self, record: MeasurementRecord) -> QWidget:
        found = record.measurement
        band = ReadingBand(self._look, type_size=1.3)
        band.show_reading(
            found.movement, shown_measurement(found), task_title(found.movement, found.side)
        )
        parts: list[QWidget] = [band, label(pain_line(record), "quiet")]
        for number, trial in enumerate(found.trials, start=1):
            one = ReadingBand(self._look)
            title = tr("Trial {number}, at {time} s").format(
                number=number, time=round(trial.hold_start_s or trial.start_s, 1)
            )
            one.show_reading(found.movement, shown_trial(trial, found.movement), title)
            parts.append(one)
        if found.reasons and found.value is not None:
            notes = " ".join(reason_sentence(reason) for reason in found.reasons)
            parts.append(label(tr("Noted: ") + notes, "quiet"))
        parts.append(label(conditions(record), "small"))
        return card(*parts)


def session_words(session: SessionRecord) -> str:
    """Return when and how the session was."""
    words = session.started.local.strftime("%d.%m.%Y %H:%M")
    unfinished = "" if session.finished else tr(" (cut short; what was captured is here)")
    return f"{words}. {conduct_words(session.conduct)}.{unfinished}"


def pain_line(record: MeasurementRecord) -> str:
    """Return what was said about pain and the end of the movement."""
    if record.pain_during is None and record.stopped_by is None:
        return tr("Pain was not stated.")
    parts = []
    if record.pain_during is not None:
        parts.append(tr("Pain {pain} of 10").format(pain=record.pain_during))
    if record.stopped_by is not None:
        parts.append(tr("stopped by: {what}").format(what=stopped_by_name(record.stopped_by)))
    return ", ".join(parts) + "."


def conditions(record: MeasurementRecord) -> str:
    """Return what the number was measured with and against."""
    found = record.measurement
    passes = ", ".join(found.provenance.passes) or found.provenance.model
    return tr("{conduct}. View: {view}. Against: {reference}. Model: {passes}.").format(
        conduct=conduct_words(record.conduct),
        view=view_name(found.view),
        reference=tr("trunk axis") if found.reference.value == "trunk-axis" else tr("plumb line"),
        passes=passes,
    )
