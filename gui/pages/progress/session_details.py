"""Session list: every measurement with its trials, refusals and conditions."""

from collections import defaultdict

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QListWidget, QSplitter, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import (
    conduct_sentence,
    notes_words,
    pain_sentence,
    task_title,
    tr,
    view_name,
)
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, column, widget_with
from gui.widgets.measurement_band import MeasurementBand, band_for_measurement, band_for_trial
from gui.widgets.plain_dialog import plain_dialog
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from measure.domain.measurements import Trial
from measure.domain.records import History, MeasurementRecord, Pain, SessionRecord


class SessionDetails(QWidget):
    """The sessions at the left, the chosen one at the right."""

    #: A SessionRecord that is to be deleted, asked and agreed to.
    dropped = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._records: dict[str, list[MeasurementRecord]] = {}
        self._sessions: tuple[SessionRecord, ...] = ()
        self.list = QListWidget()
        self.list.setAccessibleName(tr("sessions"))
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.currentRowChanged.connect(self._show)
        self.drop = button(tr("Delete this session..."))
        self.drop.clicked.connect(self._ask_to_drop)
        self._right = QWidget()
        self._column = column(on=self._right, margins=(12, 0, 12, 0), spacing=appearance.gap(2))
        splitter = QSplitter()
        splitter.addWidget(widget_with(column((self.list, 1), self.drop)))
        splitter.addWidget(scrollable(self._right, wide=True))
        splitter.setStretchFactor(0, 3)
        splitter.setStretchFactor(1, 7)
        splitter.setChildrenCollapsible(False)
        splitter.setSizes([320, 880])
        column(splitter, on=self)

    def show_history(self, history: History) -> None:
        """List the sessions, the latest first."""
        self._sessions = tuple(reversed(history.sessions))
        self._records = defaultdict(list)
        for record in history.measurements:
            self._records[record.session_id].append(record)
        words = tr("{day}\nReadings: {count}")
        self.list.clear()
        self.list.addItems(
            [
                words.format(day=day_words(session), count=len(self._records[session.id]))
                for session in self._sessions
            ]
        )
        if self._sessions:
            self.list.setCurrentRow(0)

    def show_session(self, session_id: str) -> None:
        """Choose a session."""
        for row, session in enumerate(self._sessions):
            if session.id == session_id:
                self.list.setCurrentRow(row)

    @Slot()
    def _ask_to_drop(self) -> None:
        """Ask before a session is deleted."""
        row = self.list.currentRow()
        if not 0 <= row < len(self._sessions):
            return
        session = self._sessions[row]
        asked = plain_dialog(
            tr(
                "Delete the session of {day}? Readings in it: {count}. You can undo this until "
                "Thawline is closed. Exports, reports and backups made earlier keep it."
            ).format(day=day_words(session), count=len(self._records[session.id])),
            tr("Keep it"),
            self,
            agree=tr("Delete it"),
        )
        asked.accepted.connect(lambda: self.dropped.emit(session))
        asked.open()

    @Slot(int)
    def _show(self, row: int) -> None:
        clear_layout(self._column)
        if not 0 <= row < len(self._sessions):
            return
        session = self._sessions[row]
        self._column.addWidget(label(session_words(session), "lead"))
        before = before_words(session.pain)
        if before:
            self._column.addWidget(label(before, "quiet"))
        if session.note:
            self._column.addWidget(label(session.note))
        for record in self._records[session.id]:
            self._column.addWidget(self._record_card(record))
        self._column.addStretch(1)

    def _record_card(self, record: MeasurementRecord) -> QWidget:
        measurement = record.measurement
        band = MeasurementBand(self._appearance, type_size=1.3)
        band.show_reading(
            measurement.movement,
            band_for_measurement(measurement),
            task_title(measurement.movement, measurement.side),
        )
        pain = pain_sentence(record.pain_during, record.stopped_by) + "."
        parts: list[QWidget] = [band, label(pain, "quiet")]
        for number, trial in enumerate(measurement.trials, start=1):
            trial_band = MeasurementBand(self._appearance)
            title = trial_title(number, trial)
            trial_band.show_reading(
                measurement.movement, band_for_trial(trial, measurement.movement), title
            )
            parts.append(trial_band)
        if notes := notes_words(measurement):
            parts.append(label(notes, "quiet"))
        parts.append(label(conditions(record), "small"))
        return card(*parts)


def session_words(session: SessionRecord) -> str:
    """Return when and how the session was."""
    unfinished = "" if session.finished else tr(" (cut short; what was captured is here)")
    return f"{day_words(session)}. {conduct_sentence(session.conduct)}.{unfinished}"


def day_words(session: SessionRecord) -> str:
    """Return when a session began, by the clock of the place."""
    return session.started.local.strftime("%Y-%m-%d %H:%M")


def before_words(pain: Pain) -> str:
    """Return the ratings of pain that were given before the first movement."""
    parts = [
        words.format(pain=rating)
        for words, rating in (
            (tr("at rest {pain}"), pain.rest),
            (tr("last night {pain}"), pain.night),
            (tr("at its worst since the day before {pain}"), pain.worst_24h),
        )
        if rating is not None
    ]
    return tr("Pain of 10 beforehand: {ratings}.").format(ratings=", ".join(parts)) if parts else ""


def trial_title(number: int, trial: Trial) -> str:
    """Return which seconds of the camera's pictures, or of the clip, a trial was read from."""
    if trial.hold_start_s is None or trial.hold_end_s is None:
        words = tr("Trial {number}, from {start} to {end} s, no hold")
        start_s, end_s = trial.start_s, trial.end_s
    else:
        words = tr("Trial {number}, held from {start} to {end} s")
        start_s, end_s = trial.hold_start_s, trial.hold_end_s
    return words.format(number=number, start=f"{start_s:.1f}", end=f"{end_s:.1f}")


def conditions(record: MeasurementRecord) -> str:
    """Return what the number was measured with and against."""
    measurement = record.measurement
    passes = ", ".join(measurement.provenance.passes) or measurement.provenance.model
    on_trunk = measurement.reference.value == "trunk-axis"
    return tr("{conduct}. View: {view}. Against: {reference}. Model: {passes}.").format(
        conduct=conduct_sentence(record.conduct),
        view=view_name(measurement.view),
        reference=tr("trunk axis") if on_trunk else tr("plumb line"),
        passes=passes,
    )
