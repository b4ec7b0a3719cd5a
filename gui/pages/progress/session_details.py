"""Session list: every measurement with its trials, refusals and conditions."""

import datetime as dt
from collections import Counter, defaultdict
from collections.abc import Sequence

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QPushButton, QWidget

from gui.drawing.reading_on_body import Reading
from gui.pages.progress.session_list import SessionList, SessionsCard
from gui.pages.progress.session_readings import SessionReadings, in_order, trials_read
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, CONTENT_PX, GAP_PX, MARGIN_PX
from gui.text.result_wording import by_hand_words
from gui.text.wording import (
    basis_sentence,
    conduct_sentence,
    measurement_words,
    movement_name,
    notes_words,
    pain_sentence,
    person_name,
    task_title,
    tr,
)
from gui.widgets.beside_row import BesideRow
from gui.widgets.buttons import MenuButton, button
from gui.widgets.figures.pictured_card import figure_tile
from gui.widgets.figures.reading_figure import ReadingFigure
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.plain_dialog import plain_dialog
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from measure.domain.movements import Movement, View
from measure.domain.records import History, MeasurementRecord, Pain, SessionRecord
from measure.domain.session_facts import ExerciseTiming
from measure.domain.session_timing import timing_of
from measure.progress.dates import date_words

#: Side of the tile of the drawn body beside the days, and where those are not, pixels. [technical]
_BODY_PX, _LARGE_BODY_PX = 208, 280
#: Time with which a clip is saved of which only the day is known; no clock is so exact. [project]
_DAY_ALONE = dt.time(12)
#: Least width of the list of days, in sizes of the text; times of day make it wider. [technical]
_LIST_WIDTH = 11.5
#: Text size up to which the days have room beside a session, and what was read in a trial in a
#: column of its own, per cent. [technical]
_BESIDE_PERCENT, _TRIALS_PERCENT = 130, 110


class SessionDetails(QWidget):
    """The sessions at the left, the chosen one at the right."""

    #: A SessionRecord that is to be deleted, asked and agreed to.
    dropped = Signal(object)
    #: Pain is to be corrected: the SessionRecord, its day in words, and its MeasurementRecords.
    correction_wanted = Signal(object, str, object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._records: dict[str, list[MeasurementRecord]] = {}
        self._history: History | None = None
        self._sessions: tuple[SessionRecord, ...] = ()
        self.title = label("", "display")
        self.movement = MenuButton(tr("movement"))
        self.movement.picked.connect(self._list_sessions)
        self.list = SessionList()
        self._rows = SessionsCard(self.list)
        self.list.setAccessibleName(tr("sessions"))
        self.list.currentRowChanged.connect(self._show)
        self.earlier = button(tr("Earlier"))
        self.later = button(tr("Later"))
        self.earlier.clicked.connect(self._go_back)
        self.later.clicked.connect(self._go_on)
        self.day = label("", "title")
        self.day.setWordWrap(False)
        #: Deletes the session; it stands in the foot of the page.
        self.drop = button(tr("Delete this session..."), "link")
        self.drop.clicked.connect(self._ask_to_drop)
        #: Leads to the ratings of pain of the session, to be corrected; it stands beside one.
        self.correct: QPushButton
        #: What stands beneath the day of the chosen session, on its card.
        self._column = column()
        self._readings: SessionReadings | None = None
        #: What was read in the chosen movement: its drawing, made with a session, and its words.
        self._figure: ReadingFigure
        self._reading = column(spacing=appearance.gap(1))
        self._lay_out()
        appearance.changed.connect(self._fit)
        self._fit()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self._heading = widget_with(row((self.title, 1), self.movement, spacing=gap(2)))
        self._left = widget_with(column((self._rows, 1), margins=(0, 0, 0, 2 * GAP_PX)))
        steps = row(self.earlier, self.later, spacing=gap(1))
        head = row((self.day, 1), steps, spacing=gap(2))
        self._card = card(head, widget_with(self._column), 1, spacing=gap(1))
        #: The title of the page, where all of it scrolls.
        self._above = column()
        self._page = column(self._above, self._card, 0, spacing=gap(2))
        session = scrollable(widget_with(self._page), wide=True)
        under = row(self._left, (session, 1), spacing=gap(2))
        self._whole = column((under, 1), on=self, spacing=gap(2))

    def show_history(self, history: History) -> None:
        """List the sessions, the latest first; the movement that was chosen stays chosen.

        The session does as well, unless the latest is another one than before.
        """
        self._history = history
        self.title.setText(tr("All sessions: {person}").format(person=person_name(history.person)))
        self._records = defaultdict(list)
        for record in history.measurements:
            self._records[record.session_id].append(record)
        measured = {record.measurement.movement for record in history.measurements}
        before, chosen, latest = self.movement.value, self._chosen, self._sessions[:1]
        self.movement.offer(
            [None, *(movement for movement in Movement if movement in measured)], _filter_name
        )
        if before in measured:
            self.movement.choose(before)
        self._list_sessions()
        unchanged = [session.id for session in latest] == [
            session.id for session in self._sessions[:1]
        ]
        if chosen is not None and unchanged:
            self._choose_session(chosen.id)

    @Slot()
    def _list_sessions(self) -> None:
        history, wanted = self._history, self.movement.value
        if history is None:
            return
        self._sessions = tuple(
            session
            for session in reversed(history.sessions)
            if wanted is None or self._shown(session)
        )
        self.list.clear()
        self.list.addItems(list_words(self._sessions))
        self._widen_list()
        if self._sessions:
            self.list.setCurrentRow(0)

    @Slot()
    def _fit(self) -> None:
        """Large text leaves the width to the readings; sessions are gone through, all scrolls."""
        roomy = self._roomy
        for step in (self.earlier, self.later):
            step.setVisible(not roomy)
        self._widen_list()
        self._left.setVisible(roomy)
        for layout in (self._whole, self._above):
            layout.removeWidget(self._heading)
        (self._whole if roomy else self._above).insertWidget(0, self._heading)
        inside = self._card.layout()
        assert inside is not None
        inside.setSpacing(self._appearance.gap(1 if roomy else 0.5))
        # Beside the days the card of the session ends where theirs does.
        self._page.setStretchFactor(self._card, int(roomy))
        self._keep_to_grid()

    def _widen_list(self) -> None:
        """Give the list of days the width of its longest row."""
        least = self._appearance.px(_LIST_WIDTH)
        self._left.setFixedWidth(max(least, self._rows.needed_px()))

    @property
    def _roomy(self) -> bool:
        return self._appearance.percent <= _BESIDE_PERCENT

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._keep_to_grid()

    def _keep_to_grid(self) -> None:
        """Keep to the columns of other pages, with the scroll bar at the window's edge."""
        beside = max(MARGIN_PX, (self.width() - CONTENT_PX) // 2)
        roomy, outside = self._roomy, MARGIN_PX - BAR_PX
        left, top = (beside, MARGIN_PX) if roomy else (outside, 0)
        self._whole.setContentsMargins(left, top, outside, 0)
        self._heading.setContentsMargins(0, 0, beside - outside if roomy else 0, 0)
        right = beside - MARGIN_PX
        if roomy:
            self._page.setContentsMargins(0, 0, right, 2 * GAP_PX)
        else:
            self._page.setContentsMargins(beside - outside, MARGIN_PX, right, GAP_PX)

    @property
    def _chosen(self) -> SessionRecord | None:
        """The session that is shown, or None."""
        place = self.list.currentRow()
        return self._sessions[place] if 0 <= place < len(self._sessions) else None

    def _choose_session(self, session_id: str) -> None:
        """Choose a session of those that are listed, if it is among them."""
        for place, session in enumerate(self._sessions):
            if session.id == session_id:
                self.list.setCurrentRow(place)

    @Slot()
    def _go_back(self) -> None:
        self.list.setCurrentRow(self.list.currentRow() + 1)

    @Slot()
    def _go_on(self) -> None:
        self.list.setCurrentRow(self.list.currentRow() - 1)

    def _shown(self, session: SessionRecord) -> list[MeasurementRecord]:
        """Return the measurements of a session that are of the chosen movement."""
        wanted = self.movement.value
        return [
            record
            for record in self._records[session.id]
            if wanted is None or record.measurement.movement is wanted
        ]

    def show_record(self, record: MeasurementRecord) -> None:
        """Choose a reading's session, among those of all movements, and the reading in it."""
        self.movement.choose(None)
        self._list_sessions()
        self._choose_session(record.session_id)
        if self._readings is not None:
            self._readings.choose(record)
            self._show_reading(record)

    @Slot()
    def _ask_to_drop(self) -> None:
        """Ask before a session is deleted."""
        session = self._chosen
        if session is None:
            return
        kept = tr(
            "Readings in it: {count}. You can undo this until Thawline is closed. Exports, reports "
            "and backups made earlier still contain it."
        )
        asked = plain_dialog(
            tr("Delete the session of {day}?").format(day=day_words(session)),
            tr("Keep it"),
            self,
            more=kept.format(count=len(self._records[session.id])),
            agree=tr("Delete it"),
        )
        asked.accepted.connect(lambda: self.dropped.emit(session))
        asked.open()

    def _correctable(self, words: str) -> QWidget:
        """Return words about pain with the button that leads to its correction."""
        self.correct = button(tr("Correct pain..."), "line-link")
        self.correct.clicked.connect(self._want_correction)
        return BesideRow(label(words, "quiet"), self.correct)

    @Slot()
    def _want_correction(self) -> None:
        session = self._chosen
        if session is not None:
            records = in_order(self._records[session.id])
            self.correction_wanted.emit(session, day_words(session), records)

    @Slot(int)
    def _show(self, place: int) -> None:
        clear_layout(self._column)
        self._readings = None
        self.earlier.setEnabled(place + 1 < len(self._sessions))
        self.later.setEnabled(place > 0)
        if not 0 <= place < len(self._sessions):
            return
        session = self._sessions[place]
        self.day.setText(day_words(session))
        records, before = self._shown(session), before_words(session.pain)
        lines = [self._state_words(session, measured=bool(records))]
        if records:
            parts = self._reading_parts(records)
            lines = [_ending_words(session), *lines, before]
        else:
            words = column(label(tr("Nothing was measured.")), spacing=self._appearance.gap(1))
            words.addWidget(self._correctable(before or pain_sentence(None, None) + "."))
            parts = [words]
        quiet = [label(words, "quiet") for words in filter(None, lines)]
        if session.note:
            quiet.append(label(session.note))
        self._column.addWidget(widget_with(column(*parts, *quiet, spacing=self._appearance.gap(2))))
        if self._readings is not None:
            first = self._readings.records[0]
            self._readings.choose(first)
            self._show_reading(first)

    def _reading_parts(self, records: list[MeasurementRecord]) -> list[QBoxLayout]:
        """Return a session's readings, with room for the words and the drawing of one of them."""
        gap = self._appearance.gap
        readings = SessionReadings(self._appearance, records)
        readings.picked.connect(self._show_reading)
        self._readings = readings
        self._figure = ReadingFigure(self._appearance)
        side_px = _BODY_PX if self._roomy else _LARGE_BODY_PX
        tile = figure_tile(self._figure)
        tile.setFixedSize(side_px, side_px)
        self._reading = column(spacing=gap(1))
        read = row((column(self._reading, 1), 1), column(tile, 1), spacing=gap(3))
        return [column(readings, separator(), spacing=gap(2)), read]

    def _state_words(self, session: SessionRecord, *, measured: bool) -> str:
        """Return what else is known of the shoulder that day, or nothing."""
        done = () if self._history is None else self._history.exercises_done
        parts = []
        if measured and timing_of(session, done) is ExerciseTiming.AFTER:
            parts.append(
                tr(
                    "Measured after exercises, so shown separately and not compared with the "
                    "others."
                )
            )
        if session.state.pain_relief:
            parts.append(tr("Pain relief within 4 hours before."))
        return " ".join(parts)

    @Slot(object)
    def _show_reading(self, record: MeasurementRecord) -> None:
        """Show what was read in one movement: where it lies on the body, its trials, its terms."""
        clear_layout(self._reading)
        measurement = record.measurement
        self._figure.show_reading(
            Reading(
                movement=measurement.movement,
                side=measurement.side,
                value=measurement.value,
                low=measurement.low,
                high=measurement.high,
            )
        )
        for words in self._words_of(record):
            self._reading.addWidget(words)

    def _words_of(self, record: MeasurementRecord) -> list[QWidget]:
        measurement = record.measurement
        pain = pain_sentence(record.pain_during, record.stopped_by) + "."
        title = label(task_title(measurement.movement, measurement.side), "strong")
        title.setToolTip(basis_sentence(measurement))
        parts: list[QWidget] = [title]
        if measurement.value is None or measurement.level is not None:
            # A number stands in the list of readings already.
            parts.append(label(measurement_words(measurement)))
        parts.append(self._correctable(pain))
        beside = self._appearance.percent <= _TRIALS_PERCENT
        parts.append(trials_read(measurement, self._appearance, beside=beside))
        session = self._sessions[self.list.currentRow()]
        values, task = session.clinician_values, (measurement.movement, measurement.side)
        if by_hand := by_hand_words(values, *task):
            parts.append(label(by_hand))
        if notes := notes_words(measurement):
            parts.append(label(notes, "quiet"))
        parts.append(label(conditions(record), "small"))
        return parts


def _filter_name(movement: Movement | None) -> str:
    return tr("All movements") if movement is None else movement_name(movement)


def _ending_words(session: SessionRecord) -> str:
    """Return that a session ended early, or nothing."""
    return "" if session.finished else tr("Ended early; these are the results up to then.")


def day_words(session: SessionRecord) -> str:
    """Return when a session began, by the clock of the place.

    Of a clip of which only the day is known, it is the day alone.
    """
    local = session.started.local
    if local.time() == _DAY_ALONE:
        return date_words(local.date(), tr)
    return f"{date_words(local.date(), tr)}, {local:%H:%M}"


def list_words(sessions: Sequence[SessionRecord]) -> list[str]:
    """Return the days of sessions, with the time where a day has more than one."""
    days = [session.started.local.date() for session in sessions]
    number = Counter(days)
    return [
        day_words(session) if number[day] > 1 else date_words(day, tr)
        for session, day in zip(sessions, days, strict=True)
    ]


def before_words(pain: Pain) -> str:
    """Return the ratings of pain that were given before the first movement."""
    parts = [
        words.format(pain=rating)
        for words, rating in (
            (tr("at rest {pain}"), pain.rest),
            (tr("last night {pain}"), pain.night),
            (tr("worst in 24 hours {pain}"), pain.worst_24h),
        )
        if rating is not None
    ]
    return (
        tr("Pain before the session (0 to 10): {ratings}.").format(ratings=", ".join(parts))
        if parts
        else ""
    )


def conditions(record: MeasurementRecord) -> str:
    """Return what the number was measured with and against."""
    measurement = record.measurement
    views = {
        View.SIDE: tr("from the side"),
        View.FRONT: tr("from the front"),
        View.BACK: tr("from behind"),
        View.OBLIQUE: tr("turned halfway"),
    }
    levels = {"lite": tr("fast"), "full": tr("standard"), "heavy": tr("detailed")}
    model = measurement.provenance.model
    on_trunk = measurement.reference.value == "trunk-axis"
    words = tr("{conduct}. Viewed {view}, measured against {reference}. Body tracking: {level}.")
    return words.format(
        conduct=conduct_sentence(record.conduct),
        view=views[measurement.view],
        reference=tr("the trunk") if on_trunk else tr("the vertical"),
        level=levels.get(model, model),
    )
