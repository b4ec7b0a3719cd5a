"""Progress over weeks: the weekly look, all sessions, goals and events."""

from collections.abc import Callable
from functools import cached_property

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QPushButton, QStackedWidget, QWidget

from gui.pages.measuring.screening import SafetyPage
from gui.pages.progress.empty_history import EmptyHistoryHint
from gui.pages.progress.events import EventEntries, EventsPage, event_words
from gui.pages.progress.goals_page import GoalEntries, GoalsPage
from gui.pages.progress.overview import ProgressOverview
from gui.pages.progress.pain_correction import PainCorrectionPage
from gui.pages.progress.session_details import SessionDetails, day_words
from gui.protocol.plan import SessionMode
from gui.protocol.red_flags import corrected_pain_requires_screening, pain_requires_screening
from gui.session.services import Services
from gui.style.measures import GAP_PX, MARGIN_PX
from gui.text.wording import listed_name, tr
from gui.widgets.buttons import MenuButton, bind_keys, button
from gui.widgets.layouts import centred, column, separator
from gui.widgets.page_frame import PageFoot, frame_page
from gui.widgets.scroll_page import back_to_top
from measure.domain.goal_records import Goal, GoalRating
from measure.domain.records import (
    Event,
    History,
    MeasurementRecord,
    Person,
    SessionRecord,
)
from measure.domain.screening_records import ScreeningOccasion
from measure.progress.overview import Progress, progress_of
from measure.report.pain_correction import PainCorrection, PainRatings

#: Places of the pages within this one.
_EMPTY, _CURVES, _DETAILS = range(3)


class ProgressPage(QWidget):
    """Shows one person's history. Without any it says what will stand here."""

    #: A message, in words.
    message_raised = Signal(str)
    report_wanted = Signal()
    measuring_wanted = Signal()
    #: The identifier of the person to be shown from now on.
    person_chosen = Signal(str)
    #: The identifier of a session that has been deleted.
    session_deleted = Signal(str)
    #: The pain of a session has been corrected.
    pain_corrected = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._history: History | None = None
        self._person: Person | None = None
        #: What was entered on another window's page, until its person is shown here.
        self._resumed: EventEntries | GoalEntries | None = None
        appearance = services.appearance
        self.overview = ProgressOverview(appearance)
        self.curves = self.overview.curves
        self.curves.picked.connect(self._open_record)
        self.overview.goals_wanted.connect(self.show_goals)
        self.overview.report_wanted.connect(self.report_wanted)
        self.details = SessionDetails(appearance)
        self.details.dropped.connect(self._drop_session)
        self.details.correction_wanted.connect(self._show_correction)
        self.to_details, self.to_days = (button(tr("All sessions")) for _ in range(2))
        self.to_measuring = button(tr("Measure now"), "main")
        #: Whose progress is shown, offered where nobody is chosen.
        self.whose = MenuButton(tr("Whose progress?"))
        self.whose.hide()
        self.whose.picked.connect(self._choose_person)
        self.to_measuring.clicked.connect(self.measuring_wanted)
        self.to_report = button(tr("Show report"), "main")
        self.to_report.clicked.connect(self.report_wanted)
        self.to_curves = button(tr("Back to the charts"), key=tr("Escape"))
        for way in (self.to_details, self.to_days):
            way.clicked.connect(self.show_details)
        self.to_curves.clicked.connect(self.show_curves)
        self._side_buttons: list[QPushButton] = []
        self._pages = QStackedWidget()
        services.undo.put_back.connect(self._put_back)
        self._lay_out()

    def _lay_out(self) -> None:
        self.empty, curves, details = QWidget(), QWidget(), QWidget()
        hint = EmptyHistoryHint(self._services.appearance)
        # Pain may have been noted, and nothing measured.
        ways = [self.to_days, self._to_events(), self.whose, self.to_measuring]
        frame_page(self.empty, hint, buttons=ways)
        self.to_days.hide()
        ways = [self.to_details, self._to_events(), self.to_report]
        frame_page(curves, self.overview, buttons=ways, caution=True)
        foot = PageFoot([self.to_curves, self.details.drop])
        margins = (MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX)
        column(
            (self.details, 1), separator(), centred(foot, margins=margins), on=details, spacing=0
        )
        bind_keys(details, self.to_curves, "Escape")
        for page in (self.empty, curves, details):
            self._pages.addWidget(page)
        column(self._pages, on=self)

    @cached_property
    def events(self) -> EventsPage:
        """The page of what happened; made when it is first wanted."""
        page = EventsPage(self._services.appearance)
        page.noted.connect(self._save_event)
        page.dropped.connect(self._drop_event)
        page.left.connect(self.show_curves)
        self._pages.addWidget(page)
        return page

    @cached_property
    def goals(self) -> GoalsPage:
        """The page of the person's goals; made when it is first wanted."""
        page = GoalsPage(self._services.appearance)
        page.saved.connect(self._save_goal)
        page.rated.connect(self._save_rating)
        page.left.connect(self.show_curves)
        self._pages.addWidget(page)
        return page

    @cached_property
    def pain(self) -> PainCorrectionPage:
        """The page to correct the pain of a session; made when it is first wanted."""
        page = PainCorrectionPage(self._services.appearance)
        page.corrected.connect(self._correct_pain)
        page.left.connect(self.show_details)
        self._pages.addWidget(page)
        return page

    @cached_property
    def safety(self) -> SafetyPage:
        """The safety questions after pain was corrected to much of it; made when first wanted."""
        page = SafetyPage(self._services.appearance)
        page.stopped.connect(self._leave_safety)
        self._pages.addWidget(page)
        return page

    def _to_events(self) -> QPushButton:
        """Return a button that leads to events."""
        made = button(tr("Events"))
        made.setToolTip(tr("Injection, flare, therapy, medicine, camera"))
        made.clicked.connect(self.show_events)
        self._side_buttons.append(made)
        return made

    # -- the history ----------------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.reload()
        self._go_on()

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Show this person's history from now on, the same page of it for the same person."""
        before, self._person = self._person, person
        if before is not None and person is not None and before.id == person.id:
            if self.isVisible():
                self.reload()
            return
        self._history = None
        self.whose.hide()
        for side_button in self._side_buttons:
            side_button.setEnabled(person is not None)
        self.show_curves()
        if self.isVisible():
            self.reload()
            self._go_on()

    @property
    def entered(self) -> EventEntries | GoalEntries | None:
        """What is entered and not saved on the page that is shown, an event or a goal."""
        shown = self._pages.currentWidget()
        if isinstance(shown, EventsPage | GoalsPage):
            return shown.entered
        return self._resumed

    def resume(self, entered: EventEntries | GoalEntries) -> None:
        """Show the events or goals with what was entered there, once this page is shown."""
        self._resumed = entered
        if self.isVisible():
            self._go_on()

    def _go_on(self) -> None:
        """Go on with what was entered in another window."""
        entered, person = self._resumed, self._person
        if entered is None or person is None:
            return
        self._resumed = None
        if person.id != entered.person_id:
            return
        if isinstance(entered, EventEntries):
            self._show_events(None, entered)
        else:
            self._show_goals(entered)

    @Slot()
    def reload(self) -> None:
        """Look the history up anew."""
        person, services = self._person, self._services
        if person is None:
            self.show_history(None)
            services.records.run(
                lambda: services.keeper.store.people(), self._offer_people, self.message_raised.emit
            )
            return
        today = services.today()

        def look_up() -> tuple[History, Progress]:
            history = services.keeper.store.history(person.id)
            return history, progress_of(history, today)

        services.records.run(
            look_up, lambda answer: self.show_history(*answer), self.message_raised.emit
        )

    def _offer_people(self, people: list[Person]) -> None:
        """Offer everybody whose progress can be shown, made-up people too."""
        names = {person.id: listed_name(person) for person in people}
        asked = tr("Whose progress?")
        self.whose.offer(["", *names], lambda key: names[key] if key else asked)
        self.whose.setVisible(bool(names) and self._person is None)

    @Slot(object)
    def _choose_person(self, person_id: str) -> None:
        if person_id:
            self.person_chosen.emit(person_id)

    def show_history(self, history: History | None, progress: Progress | None = None) -> None:
        """Show a history and what can be said about it, or what will stand here."""
        self._history = history
        sessions = history is not None and bool(history.sessions)
        self.to_days.setVisible(sessions)
        if history is not None and sessions:
            self.details.show_history(history)
        if history is None or not history.measurements:
            entering = isinstance(self._pages.currentWidget(), EventsPage | GoalsPage)
            charts = self._pages.currentIndex() == _CURVES
            if charts or not (sessions or (history is not None and entering)):
                self._pages.setCurrentIndex(_EMPTY)
            return
        self.overview.show_history(history, progress, self._services.today())
        if self._pages.currentIndex() == _EMPTY:
            self._pages.setCurrentIndex(_CURVES)

    @Slot()
    def show_curves(self) -> None:
        """Show the curves, or what will stand here where there are none yet."""
        measured = self._history is not None and bool(self._history.measurements)
        self._pages.setCurrentIndex(_CURVES if measured else _EMPTY)
        back_to_top(self.overview)

    @Slot()
    def show_details(self) -> None:
        self._pages.setCurrentIndex(_DETAILS)
        self.details.list.setFocus()

    @Slot(object)
    def _open_record(self, record: MeasurementRecord) -> None:
        self.details.show_record(record)
        self.show_details()

    @Slot(object, str, object)
    def _show_correction(
        self, session: SessionRecord, when: str, records: list[MeasurementRecord]
    ) -> None:
        self._pages.setCurrentWidget(self.pain)
        self.pain.show_session(session, when, records)

    @Slot()
    def show_events(self) -> None:
        """Show what happened between sessions, to be added to."""
        self._show_events(None)

    def _show_events(self, saved: Event | None, entered: EventEntries | None = None) -> None:
        """Show them with the one that was saved just now, if any, and what was entered."""
        person, keeper, today = self._person, self._services.keeper, self._services.today()
        if person is None:
            return

        def show(history: History) -> None:
            self._pages.setCurrentWidget(self.events)
            self.events.show_events(history, today)
            if entered is not None:
                self.events.resume(entered)
            if saved is not None:
                self.events.tell_saved(saved)

        self._services.records.run(
            lambda: keeper.store.history(person.id), show, self.message_raised.emit
        )

    @Slot()
    def show_goals(self) -> None:
        """Show the person's goals, to be rated or changed."""
        self._show_goals(None)

    def _show_goals(self, entered: GoalEntries | None) -> None:
        """Show them with what was entered of one, if anything."""
        person, keeper, today = self._person, self._services.keeper, self._services.today()
        if person is None:
            return

        def show(history: History) -> None:
            self._pages.setCurrentWidget(self.goals)
            self.goals.show_goals(history, today)
            if entered is not None:
                self.goals.resume(entered)

        self._services.records.run(
            lambda: keeper.store.history(person.id), show, self.message_raised.emit
        )

    # -- changes to the record --------------------------------------------------------------------

    @Slot(object)
    def _save_event(self, event: Event) -> None:
        store = self._services.keeper.store
        self._change(lambda: store.save_event(event), lambda: self._show_events(event))

    @Slot(object)
    def _drop_event(self, event: Event) -> None:
        """Delete an event; it can be put back."""
        services = self._services
        words = tr(
            "This event is deleted: {event}. You can undo this until Thawline is closed."
        ).format(event=event_words(event).rstrip("."))

        def deleted() -> None:
            services.undo.offer(words, lambda: services.keeper.store.save_event(event))
            self.show_events()

        self._change(lambda: services.keeper.store.delete_event(event.id), deleted)

    @Slot()
    def _put_back(self) -> None:
        """Show what was put back, where it would be seen."""
        shown = self._pages.currentWidget()
        if shown is self.__dict__.get("events"):
            self.show_events()
        elif shown in (self.__dict__.get("pain"), self.__dict__.get("safety")):
            self.show_details()

    @Slot(object)
    def _save_goal(self, goal: Goal) -> None:
        self._change(lambda: self._services.keeper.store.goals.save(goal))
        self.show_goals()

    @Slot(object)
    def _save_rating(self, rating: GoalRating) -> None:
        self._change(lambda: self._services.keeper.store.goals.save_rating(rating))
        self.show_goals()

    @Slot(object, object)
    def _correct_pain(self, session: SessionRecord, ratings: PainRatings) -> None:
        """Save the pain of a session as it is to be; this can be undone."""
        services = self._services
        words = tr(
            "The pain rated on {day} has been corrected. "
            "You can undo this until Thawline is closed."
        ).format(day=day_words(session))

        def saved(correction: PainCorrection) -> None:
            services.undo.offer(words, lambda: services.keeper.undo_correction(correction))
            self.pain_corrected.emit()
            self.reload()
            pain = corrected_pain_requires_screening(correction.former, ratings)
            if pain is not None and session.started.day == services.today():
                self._ask_safety(ratings, pain)
            else:
                self.show_details()

        services.records.run(
            lambda: services.keeper.correct_pain(session.id, ratings, tr),
            saved,
            self.message_raised.emit,
        )

    def _ask_safety(self, ratings: PainRatings, pain: int) -> None:
        """Ask what measuring asks after much pain."""
        if self._person is not None:
            self._services.unanswered_pain.ask(self._person.id, pain)
        start = ratings.before.rest
        rose = not pain_requires_screening(pain, None)
        self.safety.pain_rose_from = start if rose else None
        self.safety.sides = self._person.affected if self._person is not None else ()
        clinic = self._services.settings.mode is SessionMode.CLINIC
        self._pages.setCurrentWidget(self.safety)
        self.safety.ask(ScreeningOccasion.AFTER_PAIN, pain, clinic=clinic)
        self.safety.keep_focus()

    @Slot()
    def _leave_safety(self) -> None:
        """Save how the safety questions were answered, and show the session again."""
        person, keeper = self._person, self._services.keeper
        if person is not None:
            self._services.unanswered_pain.answer(person.id, self._services.today())
            after, outcome = ScreeningOccasion.AFTER_PAIN, self.safety.screening.outcome
            self._change(lambda: keeper.save_screening(person.id, after, outcome))
        self.show_details()

    @Slot(object)
    def _drop_session(self, session: SessionRecord) -> None:
        """Delete a session that was a mistake, or another person's; it can be put back."""
        services = self._services
        words = tr(
            "The session of {day} is deleted. You can undo this until Thawline is closed."
        ).format(day=day_words(session))

        def deleted(history: History) -> None:
            services.undo.offer(words, lambda: services.keeper.put_back(history))
            self.session_deleted.emit(session.id)
            self.reload()

        services.records.run(
            lambda: services.keeper.delete_session(session), deleted, self.message_raised.emit
        )

    def _change(self, work: Callable[[], None], then: Callable[[], None] | None = None) -> None:
        """Change the record; the page is looked up anew when that is done."""

        def changed(_nothing: None) -> None:
            self.reload()
            if then is not None:
                then()

        self._services.records.run(work, changed, self.message_raised.emit)
