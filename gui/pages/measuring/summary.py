"""Summary page: a session's results, one card a movement, and the ways on from there."""

import datetime as dt
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QPlainTextEdit, QPushButton, QWidget

from gui.pages.measuring.result_card import ResultCard, Said, Task
from gui.pages.measuring.typed_values import TypedValues
from gui.protocol.plan import MovementTask, SessionMode
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.result_wording import line_of_results, result_notes, short_reason
from gui.text.session_wording import correction_next_time, without_reading
from gui.text.wording import pain_sentence, side_name, task_title, tr
from gui.widgets.announcement import announce
from gui.widgets.buttons import ButtonRow, bind_keys, button
from gui.widgets.layouts import clear_layout, column, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import label
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement
from measure.domain.records import History, LimitingFactor, MeasurementRecord, Pain
from measure.domain.session_comparison import last_readings, of_session, times_read
from measure.domain.session_facts import ClinicianValue, ExerciseTiming

#: Height of the field for a note, pixels. [technical]
_NOTE_PX = 90
#: Space between the links, which have a pixel more at each end of their words, pixels. [technical]
_LINKS_PX = 22


class WithoutReading(QWidget):
    """Movements of which nothing was captured, each with its reason and what measures it again."""

    #: One of them is to be measured once more (MovementTask).
    again = Signal(object)

    def __init__(self, spacing: int) -> None:
        super().__init__()
        self._said: tuple[str, ...] = ()
        self._lines = column(on=self, spacing=spacing)

    def text(self) -> str:
        """Return what is said, a line each."""
        return "\n".join(self._said)

    def show_lines(self, lines: Mapping[str, MovementTask | None]) -> None:
        """Show lines, each with what its button measures, or None where that is not offered."""
        self._said = tuple(lines)
        clear_layout(self._lines)
        for words, task in lines.items():
            said = label(words, "quiet")
            way = [] if task is None else [self._way(task)]
            self._lines.addWidget(widget_with(row((said, 1), *way, spacing=2 * GAP_PX)))
        self.setVisible(bool(lines))

    def _way(self, task: MovementTask) -> QPushButton:
        made = button(tr("Measure again"))
        title = task_title(task.movement, task.side)
        made.setAccessibleName(tr("Measure again: {task}").format(task=title))
        made.clicked.connect(partial(self._measure_again, task))
        return made

    def _measure_again(self, task: MovementTask, _checked: bool = False) -> None:
        self.again.emit(task)


class SummaryPage(QWidget):
    """Shows what the session gave; in a clinic it leads on to the other side."""

    #: (a note of the person's own, tuple[ClinicianValue, ...])
    finished = Signal(str, object)
    #: Something is to be measured that was not planned (MovementTask).
    task_wanted = Signal(object)
    another = Signal()
    progress_wanted = Signal()
    report_wanted = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = label("", "display")
        self.next_side = button(tr("Measure this side"), key=tr("T"))
        self.without = WithoutReading(appearance.gap(1))
        self.without.again.connect(self.task_wanted)
        self._other_side: MovementTask | None = None
        self.typed = TypedValues()
        self.typing = button(tr("Add goniometer values"), "line-link", checkable=True)
        self.typing.toggled.connect(self._show_typing)
        self.copy = button(tr("Copy as text"), "line-link")
        self.progress = button(tr("Progress"), "line-link")
        self.report = button(tr("Report"), "line-link")
        self.noting = button(tr("Add a note"), "line-link", checkable=True)
        self.noting.toggled.connect(self._show_note)
        self.note = QPlainTextEdit()
        self.note.setPlaceholderText(tr("A note, if you like"))
        self.note.setAccessibleName(tr("Note"))
        self.note.setTabChangesFocus(True)
        self.note.setMaximumHeight(_NOTE_PX)
        self.next_movement = button(tr("Another movement"), key=tr("M"))
        self.finish = button(tr("Finish"), "main", key=tr("Enter"))
        self._as_line: Callable[[Sequence[ClinicianValue]], str] | None = None
        ways = [self.report, self.progress, self.noting, self.copy, self.typing]
        links = ButtonRow(ways, wide=True, apart=_LINKS_PX)
        foot = column(self.without, links, spacing=appearance.gap(2))
        self.card = ResultCard(appearance, self.next_side, widget_with(foot))
        self.card.again.connect(self.task_wanted)
        for source, slot in (
            (self.next_side, self._measure_other_side),
            (self.next_movement, self.another),
            (self.finish, self._finish),
            (self.copy, self._copy),
            (self.progress, self.progress_wanted),
            (self.report, self.report_wanted),
        ):
            source.clicked.connect(slot)
        self.typed.completed.connect(self.finish.setFocus)
        self.typed.edited.connect(self._show_by_hand)
        frame_page(
            self,
            self.title,
            self.card,
            self.typed,
            self.note,
            1,
            buttons=[self.next_movement, self.finish],
            caution=True,
        )
        bind_keys(self, self.next_side, "T")
        bind_keys(self, self.next_movement, "M")
        bind_keys(self, self.finish, "Return", "Enter")

    def show_session(
        self, measuring: MeasurementSession, name: str, history: History, today: dt.date
    ) -> None:
        """Show what was measured.

        Parameters
        ----------
        name
            What the measured person is called.
        history
            What was saved of the person before this session.
        """
        outcomes = measuring.guide.outcomes
        results = of_session(outcome.measurement for outcome in outcomes)
        conduct = measuring.log.conduct
        clinic = measuring.mode is SessionMode.CLINIC
        self._other_side = None
        wanted = self._wanted(measuring, results) if clinic else None
        before = last_readings(history, conduct)
        details = _details(measuring)
        self._show_without(measuring, results)
        read = any(result.status is Status.READING for result in results.values())
        repeated = _repeated(measuring, history, today)
        self.card.show_results(results, before, details, wanted, today=today, repeated=repeated)
        self.next_side.setVisible(wanted is not None)
        saving, first = measuring.log.saving, not history.measurements
        self.title.setText(_title(bool(results), read=read, saved=saving, first=first))
        asked = {task: said.pain for task, said in details.items()}
        earlier = _earlier_today(results, before, today)
        asked |= dict.fromkeys(earlier, tr("measured earlier today"))
        in_line = {**results, **earlier}
        self._as_line = partial(line_of_results, name, today, conduct, in_line, asked)
        self.next_movement.setVisible(clinic)
        self.copy.say(tr("Copy as text"))
        self.copy.setVisible(bool(results))
        self.noting.setVisible(measuring.log.saving)
        self.note.setVisible(self.noting.isChecked() and measuring.log.saving)
        # In a clinic a word of the window's head leads there.
        self.progress.setVisible(measuring.log.saving and not clinic)
        self.report.setVisible(measuring.log.saving)
        self.typed.offer(results)
        self._show_by_hand()
        self.typing.setVisible(clinic and measuring.log.saving and bool(results))
        self.typed.setVisible(self.typing.isChecked() and not self.typing.isHidden())
        (self.next_movement if clinic else self.finish).setFocus()

    @property
    def line(self) -> str:
        """The results as text, with what is typed in by now; empty without any."""
        return "" if self._as_line is None else self._as_line(self.typed.values)

    @Slot()
    def _show_by_hand(self) -> None:
        """Show on the card what is typed in by now."""
        self.card.show_by_hand(self.typed.values)

    def _show_without(
        self, measuring: MeasurementSession, results: Mapping[Task, Measurement]
    ) -> None:
        """List what was begun and gave nothing, with the reason, so that it is not missed."""
        nothing = {
            (outcome.task.movement, outcome.task.side): outcome
            for outcome in measuring.guide.outcomes
            if not outcome.captured
        }
        again = {task: _again(measuring, outcome.task) for task, outcome in nothing.items()}
        said = {
            without_reading(outcome): again[task]
            for task, outcome in nothing.items()
            if task not in results
        }
        if not results and measuring.log.begun and _pain_said(measuring):
            said[tr("What you said about pain is saved.")] = None
        self.without.show_lines(said)

    def _wanted(
        self, measuring: MeasurementSession, results: Mapping[Task, Measurement]
    ) -> Task | None:
        """Return the other side of the last movement, if only that is not measured yet."""
        task = measuring.guide.task
        other = task.side.other
        if (task.movement, other) in results or (task.movement, task.side) not in results:
            return None
        self._other_side = replace(task, side=other)
        self.next_side.setAccessibleName(
            tr("Measure the {side} side").format(side=side_name(other))
        )
        return task.movement, other

    @Slot()
    def _measure_other_side(self) -> None:
        if self._other_side is not None:
            self.task_wanted.emit(self._other_side)

    @Slot()
    def _copy(self) -> None:
        QGuiApplication.clipboard().setText(self.line)
        self.copy.say(tr("Copied as text"))
        announce(self.copy, self.copy.accessibleName())

    @Slot(bool)
    def _show_typing(self, shown: bool) -> None:
        """Show the fields with the keyboard in the first, or hide them."""
        self.typed.setVisible(shown)
        if shown:
            self.typed.begin()
            bring_into_view(self.typed)

    @Slot(bool)
    def _show_note(self, shown: bool) -> None:
        """Show the field for a note with the keyboard in it, or hide it."""
        self.note.setVisible(shown)
        if shown:
            self.note.setFocus()
            bring_into_view(self.note)

    @property
    def entered(self) -> tuple[str, tuple[ClinicianValue, ...]]:
        """The note and the goniometer values as far as they are entered."""
        return self.note.toPlainText().strip(), self.typed.values

    @Slot()
    def _finish(self) -> None:
        if self.typed.holds_at_fault():
            if not self.typing.isChecked():
                self.typing.setChecked(True)
                self.typed.holds_at_fault()
            return
        self.finished.emit(*self.entered)
        self.forget()

    def forget(self) -> None:
        """Hold nothing of what was entered, nor of the results."""
        self._as_line = None
        self.typing.setChecked(False)
        self.noting.setChecked(False)
        self.typed.clear()
        self.note.clear()


def _earlier_today(
    results: Mapping[Task, Measurement], before: Mapping[Task, MeasurementRecord], today: dt.date
) -> dict[Task, Measurement]:
    """Return the readings of earlier today with which the card compares these results."""
    others = [(movement, side.other) for movement, side in results]
    return {
        task: before[task].measurement
        for task in others
        if task not in results and task in before and before[task].taken.day == today
    }


def _repeated(measuring: MeasurementSession, history: History, today: dt.date) -> set[Movement]:
    """Return the movements of which a side was read more than once today, this session included."""
    log = measuring.log
    if not log.saving:
        return set()
    after = log.state.timing is ExerciseTiming.AFTER
    times = times_read(history, log.conduct, today, after_exercises=after)
    times.update(
        (outcome.task.movement, outcome.task.side)
        for outcome in measuring.guide.outcomes
        if outcome.measurement is not None and outcome.measurement.status is Status.READING
    )
    return {movement for (movement, _), count in times.items() if count > 1}


def _details(measuring: MeasurementSession) -> dict[Task, Said]:
    """Return what is said about each result: pain, notes, and where the person stood."""
    details = {}
    for outcome in measuring.guide.outcomes:
        measurement, task = outcome.measurement, outcome.task
        if measurement is None:
            continue
        asked = outcome.pain is not None or outcome.stopped_by is not None
        pain = pain_sentence(outcome.pain, outcome.stopped_by) + "." if asked else ""
        notes = (
            result_notes(measurement, task.trials),
            measuring.messages.by_task.get(task, ""),
        )
        stopped = outcome.stopped_by is LimitingFactor.PAIN
        advice = "" if stopped else "".join(map(correction_next_time, measurement.refused_for[:1]))
        details[task.movement, task.side] = Said(
            pain,
            tuple(filter(None, notes)),
            lacking=short_reason(measurement),
            advice=advice,
            again=_again(measuring, task),
        )
    return details


def _pain_said(measuring: MeasurementSession) -> bool:
    """Return whether any pain was told, beforehand or with a movement."""
    pains = (outcome.pain for outcome in measuring.guide.outcomes)
    return measuring.log.pain != Pain() or any(pain is not None for pain in pains)


def _again(measuring: MeasurementSession, task: MovementTask) -> MovementTask | None:
    """Return a movement if it may be measured once more.

    It may not where pain stopped it, or where a movement of the session hurt too much.
    """
    outcomes, limit = measuring.guide.outcomes, measuring.guide.pain_limit
    rests = measuring.asks_for_check or any((said.pain or 0) >= limit for said in outcomes)
    this = [said for said in outcomes if _same(said.task, task)]
    stopped = any(said.stopped_by is LimitingFactor.PAIN for said in this)
    return None if rests or stopped else task


def _same(task: MovementTask, other: MovementTask) -> bool:
    return (task.movement, task.side) == (other.movement, other.side)


def _title(measured: bool, *, read: bool, saved: bool, first: bool) -> str:
    if not measured:
        return tr("Nothing was measured.")
    if not read:
        return tr("No reading today")
    if not saved:
        return tr("Today's results, not saved")
    # With the first ones there is nothing to compare.
    return tr("First results, saved") if first else tr("Today's results, saved")
