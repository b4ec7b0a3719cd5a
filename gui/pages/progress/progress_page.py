"""Progress over weeks: the curves, every session, the home programme and what happened."""

from collections.abc import Callable
from functools import cached_property

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QPushButton, QStackedWidget, QWidget

from gui.pages.progress.curves import CurvesView
from gui.pages.progress.events import EventsPage
from gui.pages.progress.exercise_row import ExerciseRow
from gui.pages.progress.home_programme import HomeProgrammePage
from gui.pages.progress.session_details import SessionDetails
from gui.session.services import Services
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.empty_history import EmptyHistoryHint
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ExerciseLog, Plan
from measure.domain.records import (
    Event,
    History,
    MeasurementRecord,
    Person,
    SessionRecord,
)
from measure.progress.home_programme import plan_on
from measure.progress.overview import Progress, progress_of

#: Places of the pages within this one.
_EMPTY, _CURVES, _DETAILS = range(3)


class ProgressPage(QWidget):
    """Shows one person's history. Without any it says what will stand here."""

    #: A message, in words.
    message_raised = Signal(str)

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._history: History | None = None
        self._person: Person | None = None
        appearance = services.appearance
        self.curves = CurvesView(appearance)
        self.curves.chart.picked.connect(self._open_record)
        #: Beneath what stands here before there are curves.
        self.early_exercises = ExerciseRow(appearance)
        self._exercise_rows = (self.curves.exercises, self.early_exercises)
        for exercise_row in self._exercise_rows:
            exercise_row.done.connect(self._log_exercise)
            exercise_row.taken_back.connect(self._drop_exercise)
        self.details = SessionDetails(appearance)
        self.details.dropped.connect(self._drop_session)
        self.to_details = button(tr("Every session"))
        self.to_curves = button(tr("Back to the curves"))
        self.to_details.clicked.connect(self.show_details)
        self.to_curves.clicked.connect(self.show_curves)
        self._side_buttons: list[QPushButton] = []
        self._pages = QStackedWidget()
        self._lay_out()

    def _lay_out(self) -> None:
        self.empty = widget_with(
            column(
                EmptyHistoryHint(self._services.appearance),
                self.early_exercises,
                ButtonRow(self._to_side_pages()),
                margins=(24, 24, 24, 16),
            )
        )
        ways = ButtonRow([self.to_details, *self._to_side_pages()])
        curves = column(
            (scrollable(self.curves), 1),
            row(ways, margins=(24, 4, 24, 0)),
            row(NoticeBar(), margins=(24, 0, 24, 0)),
            margins=(0, 0, 0, 8),
        )
        details = column((self.details, 1), self.to_curves, NoticeBar(), margins=(24, 8, 24, 8))
        for page in (scrollable(self.empty), widget_with(curves), widget_with(details)):
            self._pages.addWidget(page)
        column(self._pages, on=self)

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
        to_plan, to_events = button(tr("Home programme")), button(tr("Events"))
        to_events.setToolTip(tr("Injection, flare, camera"))
        to_plan.clicked.connect(self.show_plan)
        to_events.clicked.connect(self.show_events)
        self._side_buttons += [to_plan, to_events]
        return to_plan, to_events

    # -- the history ----------------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.reload()

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Show this person's history from now on."""
        self._person = person
        for side_button in self._side_buttons:
            side_button.setEnabled(person is not None)
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
            history = services.keeper.store.history(person.id)
            return history, progress_of(history, today)

        services.records.run(
            look_up, lambda answer: self.show_history(*answer), self.message_raised.emit
        )

    def show_history(self, history: History | None, progress: Progress | None = None) -> None:
        """Show a history and what can be said about it, or what will stand here."""
        self._history = history
        if history is not None:
            today = self._services.today()
            for exercise_row in self._exercise_rows:
                exercise_row.show_plan(plan_on(history.plans, today))
        if history is None or not history.measurements:
            self._pages.setCurrentIndex(_EMPTY)
            return
        self.details.show_history(history)
        self.curves.show_history(history, progress)
        self.curves.show_adherence(progress.programme_weeks if progress else ())
        if self._pages.currentIndex() == _EMPTY:
            self._pages.setCurrentIndex(_CURVES)

    @Slot()
    def show_curves(self) -> None:
        """Show the curves, or what will stand here where there are none yet."""
        measured = self._history is not None and bool(self._history.measurements)
        self._pages.setCurrentIndex(_CURVES if measured else _EMPTY)

    @Slot()
    def show_details(self) -> None:
        self._pages.setCurrentIndex(_DETAILS)
        self.details.list.setFocus()

    @Slot(object)
    def _open_record(self, record: MeasurementRecord) -> None:
        self.details.show_session(record.session_id)
        self.show_details()

    @Slot()
    def show_plan(self) -> None:
        """Show the home programme, to be set or changed."""
        person, keeper, today = self._person, self._services.keeper, self._services.today()
        if person is None:
            return

        def show(plans: list[Plan]) -> None:
            self._pages.setCurrentWidget(self.plan)
            self.plan.show_plan(person, plan_on(plans, today), today)

        self._services.records.run(
            lambda: keeper.store.plans(person.id), show, self.message_raised.emit
        )

    @Slot()
    def show_events(self) -> None:
        """Show what happened between sessions, to be added to."""
        person, keeper, today = self._person, self._services.keeper, self._services.today()
        if person is None:
            return

        def show(history: History) -> None:
            self._pages.setCurrentWidget(self.events)
            self.events.show_events(history, today)

        self._services.records.run(
            lambda: keeper.store.history(person.id), show, self.message_raised.emit
        )

    # -- changes to the record --------------------------------------------------------------------

    @Slot(object)
    def _log_exercise(self, exercise: Exercise) -> None:
        person, keeper = self._person, self._services.keeper
        if person is not None:
            self._services.records.run(
                lambda: keeper.store.log_exercise(person.id, exercise),
                self._exercise_logged,
                self.message_raised.emit,
            )

    def _exercise_logged(self, log: ExerciseLog) -> None:
        self._show_noted(log)
        self.reload()

    def _show_noted(self, log: ExerciseLog | None) -> None:
        for exercise_row in self._exercise_rows:
            exercise_row.show_noted(log)

    @Slot(str)
    def _drop_exercise(self, log_id: str) -> None:
        self._show_noted(None)
        self._change(lambda: self._services.keeper.store.delete_exercise_log(log_id))

    @Slot(object)
    def _save_plan(self, plan: Plan) -> None:
        self._change(lambda: self._services.keeper.store.save_plan(plan))
        self.show_curves()

    @Slot(object)
    def _save_event(self, event: Event) -> None:
        self._change(lambda: self._services.keeper.store.save_event(event))
        self.show_events()

    @Slot(str)
    def _drop_event(self, event_id: str) -> None:
        self._change(lambda: self._services.keeper.store.delete_event(event_id))
        self.show_events()

    @Slot(object)
    def _drop_session(self, session: SessionRecord) -> None:
        """Delete a session that was a mistake, or another person's."""
        self._change(lambda: self._services.keeper.store.delete_session(session.id))

    def _change(self, work: Callable[[], None]) -> None:
        """Change the record; the page is looked up anew when that is done."""
        self._services.records.run(work, lambda _: self.reload(), self.message_raised.emit)
