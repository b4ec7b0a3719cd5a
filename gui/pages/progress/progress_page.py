"""Over weeks: curves of both shoulders with pain and stretches beneath, and every session."""

import datetime as dt
from collections.abc import Callable
from functools import cached_property

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QStackedWidget, QVBoxLayout, QWidget

from gui.drawing.curves import conducts_of, curves, movements_of, unix_time_s
from gui.pages.progress.events import EventsPage
from gui.pages.progress.home_programme import HomeProgrammePage
from gui.pages.progress.session_details import SessionDetails
from gui.session.services import Services
from gui.text.progress_wording import progress_line, progress_notes, progress_of_sides, weeks_words
from gui.text.wording import conduct_sentence, movement_name, tr
from gui.widgets.buttons import ButtonRow, MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.empty_history import EmptyHistoryHint
from gui.widgets.history_chart import HistoryChart, legend_text
from gui.widgets.scroll_page import scrollable
from gui.widgets.stretch_row import StretchRow
from gui.widgets.text import NoticeBar, label
from measure.domain.movements import Movement
from measure.domain.records import (
    AssessmentCondition,
    Event,
    History,
    MeasurementRecord,
    Person,
    Plan,
    SessionRecord,
    Stretch,
    StretchLog,
)
from measure.progress.home_programme import plan_on, weeks_done
from measure.progress.overview import Progress, progress_of

#: Places of the pages within this one.
_EMPTY, _CURVES, _DETAILS = range(3)
#: So many weeks of the plan are told of, the present one included. Ours.
_WEEKS = 4


class ProgressPage(QWidget):
    """Shows one person's history. Without any it says what will stand here."""

    #: Something to be told, in words.
    message_raised = Signal(str)

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._history: History | None = None
        self._progress: Progress | None = None
        self._person: Person | None = None
        appearance = services.appearance
        self.movement = ChoiceRow(list(Movement), movement_name, columns=5, title=tr("movement"))
        self.movement.picked.connect(self._draw)
        self.conduct = MenuButton(tr("how it was done"))
        self.conduct.picked.connect(self._draw_chosen)
        self.legend = label("", "quiet")
        self.chart = HistoryChart(appearance)
        self.chart.picked.connect(self._open_record)
        self.verdict = label("", "lead")
        self.notes = label("", "quiet")
        self.adherence = label("", "quiet")
        #: Above the curves, and beneath what stands there before there are any.
        self.stretches, self.early_stretches = StretchRow(appearance), StretchRow(appearance)
        for one in (self.stretches, self.early_stretches):
            one.done.connect(self._log_stretch)
            one.taken_back.connect(self._drop_stretch)
        self.details = SessionDetails(appearance)
        self.details.dropped.connect(self._drop_session)
        self.to_details = button(tr("Every session"))
        self.to_curves = button(tr("Back to the curves"))
        self.to_details.clicked.connect(self.show_details)
        self.to_curves.clicked.connect(self.show_curves)
        self._side_buttons: list[tuple[QPushButton, QPushButton]] = []
        self._pages = QStackedWidget()
        self._empty = QWidget()
        self._lay_out()

    def _lay_out(self) -> None:
        appearance = self._services.appearance
        empty = QVBoxLayout(self._empty)
        empty.setContentsMargins(24, 24, 24, 16)
        empty.addWidget(EmptyHistoryHint(appearance))
        empty.addWidget(self.early_stretches)
        empty.addWidget(ButtonRow(self._to_side_pages()))

        drawn = QWidget()
        column = QVBoxLayout(drawn)
        column.setContentsMargins(24, 8, 24, 8)
        column.setSpacing(appearance.gap(1.5))
        column.addWidget(self.stretches)
        column.addWidget(self.movement.row)
        column.addWidget(self.verdict)
        column.addWidget(self.notes)
        row = QHBoxLayout()
        row.addWidget(self.legend, 1)
        row.addWidget(self.conduct)
        column.addLayout(row)
        column.addWidget(self.chart, 1)
        column.addWidget(self.adherence)
        curves = QWidget()
        beneath = QVBoxLayout(curves)
        beneath.setContentsMargins(0, 0, 0, 8)
        beneath.addWidget(scrollable(drawn), 1)
        ways = QHBoxLayout()
        ways.setContentsMargins(24, 4, 24, 0)
        ways.addWidget(ButtonRow([self.to_details, *self._to_side_pages()]))
        beneath.addLayout(ways)
        notice = QHBoxLayout()
        notice.setContentsMargins(24, 0, 24, 0)
        notice.addWidget(NoticeBar())
        beneath.addLayout(notice)

        whole = QWidget()
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(24, 8, 24, 8)
        rows.addWidget(self.details, 1)
        rows.addWidget(self.to_curves)
        rows.addWidget(NoticeBar())
        for page in (scrollable(self._empty), curves, whole):
            self._pages.addWidget(page)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._pages)

    @cached_property
    def plan(self) -> HomeProgrammePage:
        """The page of the home programme; made when it is first wanted."""
        page = HomeProgrammePage(self._services.appearance)
        page.chosen.connect(self._save_plan)
        page.left.connect(self.show_curves)
        self._pages.addWidget(page)
        return page

    @cached_property
    def events(self) -> EventsPage:
        """The page of what happened; made when it is first wanted."""
        page = EventsPage(self._services.appearance)
        page.noted.connect(self._save_event)
        page.dropped.connect(self._drop_event)
        page.left.connect(self.show_curves)
        self._pages.addWidget(page)
        return page

    def _to_side_pages(self) -> tuple[QPushButton, QPushButton]:
        """Return buttons that lead to the home programme and to what happened."""
        to_plan, to_events = button(tr("Home programme")), button(tr("What happened"))
        to_events.setToolTip(tr("Injection, flare, camera"))
        to_plan.clicked.connect(self.show_plan)
        to_events.clicked.connect(self.show_events)
        self._side_buttons.append((to_plan, to_events))
        return to_plan, to_events

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.reload()

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Show this person's history from now on."""
        self._person = person
        for one in (each for pair in self._side_buttons for each in pair):
            one.setEnabled(person is not None)
        self._show_noted(None)
        self.show_curves()
        if self.isVisible():
            self.reload()

    @Slot()
    def reload(self) -> None:
        """Look the history up anew."""
        person, services = self._person, self._services
        if person is None:
            self.show_history(None)
            return
        today = services.today()

        def look_up() -> tuple[History, Progress]:
            history = services.keeper.history(person.id)
            return history, progress_of(history, today)

        services.records.run(look_up, self._show_found, self.message_raised.emit)

    def _show_found(self, found: tuple[History, Progress]) -> None:
        self.show_history(*found)

    def show_history(self, history: History | None, progress: Progress | None = None) -> None:
        """Show a history and what can be said about it, or what will stand here."""
        self._history, self._progress = history, progress
        seen = movements_of(history) if history else ()
        if history is not None:
            self._show_stretches(history)
        if history is None or not seen:
            self._pages.setCurrentIndex(_EMPTY)
            return
        for movement in Movement:
            self.movement.button(movement).setEnabled(movement in seen)
        if self.movement.value not in seen:
            self.movement.choose(seen[0])
        self.details.show_history(history)
        self._draw()
        if self._pages.currentIndex() == _EMPTY:
            self._pages.setCurrentIndex(_CURVES)

    def _show_stretches(self, history: History) -> None:
        today = self._services.today()
        first = today - dt.timedelta(days=today.weekday() + 7 * (_WEEKS - 1))
        plan = plan_on(history.plans, today)
        weeks = weeks_done(history.plans, history.stretches, first, today)
        for one in (self.stretches, self.early_stretches):
            one.show_plan(plan)
        self.adherence.setText(weeks_words(weeks))
        self.adherence.setVisible(any(week.planned for week in weeks))

    @Slot()
    def _draw(self) -> None:
        """Draw the chosen movement; the ways it was done are offered anew."""
        history, movement = self._history, self.movement.value
        if history is None or movement is None:
            return
        before = self.conduct.value
        conducts = conducts_of(history, movement)
        self.conduct.offer(conducts, conduct_sentence)
        if before in conducts:
            self.conduct.choose(before)
        self.conduct.setVisible(len(conducts) > 1)
        self._draw_chosen()

    @Slot()
    def _draw_chosen(self) -> None:
        history, movement, conduct = self._history, self.movement.value, self.conduct.value
        if history is None or movement is None or conduct is None:
            return
        found = curves(history, movement, conduct)
        self.chart.show_curves(
            movement,
            found,
            [unix_time_s(stretch.done) for stretch in history.stretches],
            history.events,
        )
        signs = [legend_text(curve) for curve in found]
        pain = tr("beneath: pain 0 to 10")
        stretches = tr("\u25b2 stretches done") if history.stretches else ""
        refused = any(point.value is None for curve in found for point in curve.points)
        dashed = tr("dashed: no reading") if refused else ""
        parts = [*dict.fromkeys(signs), dashed, pain, stretches]
        self.legend.setText("    ".join(part for part in parts if part))
        self._show_verdict(movement, conduct)

    def _show_verdict(self, movement: Movement, conduct: AssessmentCondition) -> None:
        progress = self._progress
        if progress is None:
            return
        sides = progress_of_sides(progress, movement, conduct)
        self.verdict.setText("\n".join(progress_line(each) for each in sides))
        told = progress_notes(progress, sides)
        self.notes.setText("\n".join(told))
        self.notes.setVisible(bool(told))

    # -- the home programme, and what happened --------------------------------------------------

    @Slot(object)
    def _log_stretch(self, stretch: Stretch) -> None:
        person, keeper = self._person, self._services.keeper
        if person is not None:
            self._services.records.run(
                lambda: keeper.log_stretch(person.id, stretch),
                self._noted,
                self.message_raised.emit,
            )

    def _noted(self, log: StretchLog) -> None:
        self._show_noted(log)
        self.reload()

    def _show_noted(self, log: StretchLog | None) -> None:
        for one in (self.stretches, self.early_stretches):
            one.show_noted(log)

    @Slot(str)
    def _drop_stretch(self, log_id: str) -> None:
        keeper = self._services.keeper
        self._show_noted(None)
        self._change(lambda: keeper.drop_stretch(log_id))

    @Slot(object)
    def _save_plan(self, plan: Plan) -> None:
        keeper = self._services.keeper
        self._change(lambda: keeper.save_plan(plan))
        self.show_curves()

    @Slot(object)
    def _save_event(self, event: Event) -> None:
        keeper = self._services.keeper
        self._change(lambda: keeper.save_event(event))
        self.show_events()

    @Slot(str)
    def _drop_event(self, event_id: str) -> None:
        keeper = self._services.keeper
        self._change(lambda: keeper.drop_event(event_id))
        self.show_events()

    def _change(self, work: Callable[[], None]) -> None:
        """Have something kept; the page is looked up anew when it is."""
        self._services.records.run(work, lambda _: self.reload(), self.message_raised.emit)

    @Slot()
    def show_plan(self) -> None:
        """Show the home programme, to be set or changed."""
        person, keeper, today = self._person, self._services.keeper, self._services.today()
        if person is None:
            return

        def found(plans: tuple[Plan, ...]) -> None:
            self._pages.setCurrentWidget(self.plan)
            self.plan.show_plan(person, plan_on(plans, today), today)

        self._services.records.run(lambda: keeper.plans(person.id), found, self.message_raised.emit)

    @Slot()
    def show_events(self) -> None:
        """Show what happened between sessions, to be added to."""
        person, keeper, today = self._person, self._services.keeper, self._services.today()
        if person is None:
            return

        def found(events: tuple[Event, ...]) -> None:
            self._pages.setCurrentWidget(self.events)
            self.events.show_events(person, events, today)

        self._services.records.run(
            lambda: keeper.events(person.id), found, self.message_raised.emit
        )

    # -- one session ----------------------------------------------------------------------------

    @Slot(object)
    def _open_record(self, record: MeasurementRecord) -> None:
        self.details.show_session(record.session_id)
        self.show_details()

    @Slot(object)
    def _drop_session(self, session: SessionRecord) -> None:
        """Delete a session that was a mistake, or somebody else's."""
        keeper = self._services.keeper
        self._change(lambda: keeper.drop_session(session.id))

    @Slot()
    def show_details(self) -> None:
        self._pages.setCurrentIndex(_DETAILS)
        self.details.list.setFocus()

    @Slot()
    def show_curves(self) -> None:
        """Show the curves, or what will stand here where there are none yet."""
        known = self._history is not None and bool(self._history.measurements)
        self._pages.setCurrentIndex(_CURVES if known else _EMPTY)
