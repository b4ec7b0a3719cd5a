"""Measuring page: leads from the choice of movements to the summary."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.pages.measuring.session_pages import SessionPages
from gui.protocol.plan import HOME_MOVEMENTS, MovementTask, NextAction, SessionMode, SessionStep
from gui.protocol.red_flags import pain_requires_screening, screening_due
from gui.session.beginning import (
    SessionOutline,
    first_words,
    new_session,
    only_exercises_due,
    record_pain,
    tasks_of,
)
from gui.session.measurement_session import MeasurementSession
from gui.session.person_selection import PersonSelection
from gui.session.services import Services
from gui.text.wording import tr
from measure.domain.records import History, LimitingFactor, Pain, Person
from measure.domain.screening_records import ScreeningOccasion, ScreeningRecord
from measure.domain.session_facts import ClinicianValue, SessionState
from measure.progress.measuring_plan import measuring_plan
from measure.progress.wording import UNASKED_NAME
from measure.system.clock import new_id


class MeasurePage(SessionPages):
    """Home and clinic mode on one reading path."""

    #: A message, in words.
    message_raised = Signal(str)
    #: A session ended; the history has something new.
    session_ended = Signal()
    #: Progress is wanted, the session being finished.
    progress_wanted = Signal()
    #: The report is wanted; leaving it leads back to the results.
    report_wanted = Signal()
    #: Nothing is due to be measured, and the exercises of today are.
    exercises_wanted = Signal()
    #: The measured person, or None.
    people_changed = Signal(object)

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(services, parent)
        self.people = PersonSelection(services, self)
        self._tasks: tuple[MovementTask, ...] = ()
        self._mode = SessionMode.HOME
        self._checking: ScreeningOccasion | None = None
        #: What was said before measuring, while the questions come first.
        self._pain_told: tuple[Pain, SessionState] | None = None
        #: Who was chosen when the people were listed last.
        self._listed_id: str | None = None
        self.history = History(person=Person(id=new_id(), pseudonym=UNASKED_NAME))
        self._earlier = self.history
        self._after_exercises = False
        #: Whether today's exercises may be shown by themselves: at the start, and once a session
        #: has ended.
        self._may_offer_exercises = True
        self._connect()
        self.people.load()

    def _connect(self) -> None:
        self.people.listed.connect(self._show_people)
        self.people.added.connect(self._person_added)
        self.people.refused.connect(self._person_refused)
        self.people.pain_limit_read.connect(self.take_pain_limit)
        self.people.screenings_read.connect(self._take_screenings)
        self.people.history_read.connect(self._take_history)
        self.people.message_raised.connect(self.message_raised)
        self.start.home.connect(self._begin_home)
        self.start.clinic.connect(self._begin_clinic)
        self.start.first_wanted.connect(self._begin_first)
        self.start.guest_wanted.connect(self._choose_guest)
        self.start.person_chosen.connect(self.choose_person)
        self.start.in_clinic.what.back.connect(self._leave_what)
        self.start.person_wanted.connect(self._add_person)
        self.start.at_home.pain_wanted.connect(self._ask_pain_alone)
        self.start.person_edited.connect(self.people.save)
        self.safety.cleared.connect(self._safety_cleared)
        self.safety.stopped.connect(self._safety_stopped)
        self.safety.left.connect(self._safety_left)
        self.safety.other_movement.connect(self._other_movement)
        self.before.answered.connect(self._take_pain)
        self.before.noted.connect(self._note_pain)
        self.before.back.connect(self.show_start)
        self.pain.answered.connect(self._pain_answered)
        self.summary.finished.connect(self._finish)
        self.summary.typed.edited.connect(self.keep_entered)
        self.summary.task_wanted.connect(self._measure)
        self.summary.another.connect(self.show_start)
        self.summary.progress_wanted.connect(self._leave_for_progress)
        self.summary.report_wanted.connect(self._show_report)

    # -- people -------------------------------------------------------------------------------

    @Slot(object)
    def _show_people(self, people: tuple[Person, ...]) -> None:
        person = self.people.person
        self._leave_deleted({listed.id for listed in people})
        self.start.show_people(people, person.id if person else None)
        self.people_changed.emit(person)
        self.people.read_history()

    def _leave_deleted(self, saved: set[str]) -> None:
        """Go back to the start from what is shown of someone who has been deleted."""
        before, person = self._listed_id, self.people.person
        self._listed_id = person.id if person is not None else None
        measuring = self.measuring
        if measuring is not None:
            if measuring.log.saving and measuring.log.person_id not in saved:
                self._abandon(measuring)
        elif before is not None and before not in saved:
            self._checking = None
            self.show_start()
        elif before not in (None, self._listed_id):
            # What was begun before somebody else was chosen is not theirs.
            self._tasks = ()
            if self.shown in (self.safety, self.before):
                self._safety_left()

    @Slot(str)
    def leave_session(self, session_id: str) -> None:
        """Go back to the start if this session, which has been deleted, is shown."""
        if self.measuring is not None and self.measuring.log.of_session(session_id):
            self._abandon(self.measuring)

    def _abandon(self, measuring: MeasurementSession) -> None:
        """End a session without saving anything more of it."""
        self.measuring = self._checking = None
        self._services.feed.leave()
        measuring.abandon()
        self.live.release()
        self.summary.forget()
        self.show_start()

    @Slot(object)
    def _take_history(self, history: History | None) -> None:
        """Show what is due; where nobody is known yet, for the first person."""
        self.history = history or History(
            person=Person(
                id=new_id(), pseudonym=UNASKED_NAME, affected=self.start.affected.value or ()
            )
        )
        today = self._services.today()
        plan = measuring_plan(self.history, HOME_MOVEMENTS, today)
        self.start.show_plan(plan)
        self.start.at_home.show_day(self.history, today)
        offering, self._may_offer_exercises = self._may_offer_exercises, False
        at_home = self.start.mode is SessionMode.HOME and self.start.isVisible()
        if offering and at_home and only_exercises_due(self.history, plan, today):
            self.exercises_wanted.emit()

    @Slot(str)
    def choose_person(self, person_id: str) -> None:
        """Measure and show this person from now on; a session of another one is finished first."""
        measuring = self.measuring
        if measuring is not None and measuring.log.person_id != person_id:
            if self.under_way:
                self.message_raised.emit(tr("Finish this session first."))
                return
            self._end(measuring, *self.summary.entered)
            self.summary.forget()
            self.show_start()
        elif person_id != self.history.person.id and self.shown in (self.safety, self.before):
            self._safety_left()
        self.people.choose(person_id)

    @Slot()
    def _leave_what(self) -> None:
        """Go back from what to measure: to a session that goes on, or to who is measured."""
        if self.measuring is not None:
            self._follow()
            return
        self.start.in_clinic.ask_who()
        if self.people.guest:
            self.people.leave_guest()

    @Slot()
    def _choose_guest(self) -> None:
        self.people.choose_guest()
        assert self.people.person is not None
        self.start.show_guest(self.people.person)
        self.people_changed.emit(None)
        self.people.read_history()

    @Slot(str)
    def _add_person(self, pseudonym: str) -> None:
        self.people.add(pseudonym, self.start.affected.value or ())

    @Slot(str)
    def _person_refused(self, _why: str) -> None:
        self._tasks = ()

    @Slot(object)
    def _person_added(self, _person: Person) -> None:
        if self._tasks:
            self.people.read_screenings()

    # -- beginning ----------------------------------------------------------------------------

    @Slot()
    def _begin_first(self) -> None:
        """Begin the very first session at home for the stiff shoulder."""
        if self.people.person is None:
            self._take_history(None)
        self.start.at_home.start.click()

    def begin(self) -> None:
        """Begin today's session at home; elsewhere something has to be chosen first."""
        if self.shown is self.start and self.start.shows_today:
            self.start.at_home.start.click()

    @Slot(object)
    def _begin_home(self, tasks: tuple[MovementTask, ...]) -> None:
        self._tasks, self._mode = tasks, SessionMode.HOME
        self._need_person()

    @Slot(object)
    def _begin_clinic(self, tasks: tuple[MovementTask, ...]) -> None:
        if self.measuring is not None and self.measuring.mode is SessionMode.CLINIC:
            self.measuring.add(*tasks)
            return
        self._tasks, self._mode = tasks, SessionMode.CLINIC
        self._need_person()

    def _need_person(self) -> None:
        self._services.cues.warm_up()
        person = self.people.person
        if person is None:
            self._add_person(UNASKED_NAME)
        elif person.demo:
            self._tasks = ()
            self.message_raised.emit(
                tr("{name} is a made-up person. Choose or add the person to be measured.").format(
                    name=person.pseudonym
                )
            )
        else:
            self.people.read_screenings()

    @Slot(object, bool)
    def _take_screenings(
        self, screenings: tuple[ScreeningRecord, ...], after_exercises: bool
    ) -> None:
        if not self._tasks or self._checking is not None:
            return
        self._after_exercises = after_exercises
        today = self._services.today()
        unanswered = self._services.unanswered_pain
        pain = unanswered.at_beginning(self.history, screenings, today)
        if pain is not None or screening_due(screenings, today):
            self._ask_safety(ScreeningOccasion.BEFORE, pain)
        else:
            self._after_check()

    def _ask_safety(
        self, occasion: ScreeningOccasion, pain: int | None = None, *, another: bool = False
    ) -> None:
        self._checking = occasion
        self._services.unanswered_pain.ask(self.history.person.id, pain)
        if occasion is ScreeningOccasion.BEFORE:
            self.safety.sides = self.history.person.affected
        self.safety.ask(occasion, pain, another=another, clinic=self._mode is SessionMode.CLINIC)
        self.show_page(self.safety)
        self.safety.keep_focus()

    def _after_check(self) -> None:
        """Ask how the shoulder feels, but at home only, and not before the very first session."""
        if not self._tasks:
            self.show_start(same_person=True)
        elif self._pain_told is not None:
            self._begin_measuring(*self._pain_told)
        elif self._mode is SessionMode.HOME and self.history.measurements:
            plan = measuring_plan(self.history, HOME_MOVEMENTS, self._services.today())
            tasks = tasks_of(self._outline(Pain(), SessionState()), self._services)
            minutes, whose = plan.minutes(len(tasks)), self.history.person.id
            self.before.ask(tasks, minutes, after_exercises=self._after_exercises, whose=whose)
            self.show_page(self.before)
        else:
            clinic = self._mode is SessionMode.CLINIC
            state = self.start.in_clinic.what.state.state if clinic else SessionState()
            self._begin_measuring(Pain(), state)

    @Slot()
    def _ask_pain_alone(self) -> None:
        person = self.people.person
        if person is not None:
            self.before.ask_alone(person.id)
            self.show_page(self.before)

    @Slot(object, object)
    def _note_pain(self, pain: Pain, state: SessionState) -> None:
        """Save today's pain though nothing is measured; much of it calls for the questions."""
        if self.people.person is None:
            return
        self._tasks, self._mode = (), SessionMode.HOME
        self._keep_pain(pain, state)
        if pain_requires_screening(pain.rest, None):
            self._ask_safety(ScreeningOccasion.BEFORE, pain.rest)
        else:
            self.show_start(same_person=True)

    def _keep_pain(self, pain: Pain, state: SessionState) -> None:
        """Save pain that no session is measured after."""
        log = record_pain(self._outline(pain, state), self._services, self)
        log.failed.connect(self.message_raised)
        self.message_raised.emit(tr("Today's pain is saved."))
        self.session_ended.emit()
        self.people.load()

    def _outline(self, pain: Pain, state: SessionState) -> SessionOutline:
        """Return what a session of the chosen person would be, as things stand."""
        person = self.people.person
        assert person is not None
        return SessionOutline(
            *(person.id, self.history, self._tasks, self._mode, self.start.conduct, pain, state),
            saving=not self.people.guest,
        )

    @Slot(object, object)
    def _take_pain(self, pain: Pain, state: SessionState) -> None:
        """Begin, or ask first where there is much pain at rest."""
        services = self._services
        asking = services.unanswered_pain.when_told(pain.rest, self.history, services.today())
        if asking is None:
            self._begin_measuring(pain, state)
        else:
            self._pain_told = (pain, state)
            self._ask_safety(ScreeningOccasion.BEFORE, asking)

    def _begin_measuring(self, pain: Pain, state: SessionState) -> None:
        services = self._services
        if self.people.person is None or not self._tasks:
            return
        outline = self._outline(pain, state)
        self._tasks, self._pain_told = (), None
        self._earlier = self.history
        self.measuring = measuring = new_session(outline, services, self)
        measuring.log.failed.connect(self.message_raised)
        self.say_person(self.people.name, saving=outline.saving)
        measuring.stepped.connect(self._follow)
        measuring.messages.raised.connect(self.message_raised)
        measuring.framed.connect(self.pain.take_frame)
        self.live.show_measuring(measuring, mirrored=services.mirrored)
        self.people.read_pain_limit()
        measuring.begin()
        if words := first_words(outline, services):
            self.message_raised.emit(words)

    # -- on the way ---------------------------------------------------------------------------

    @Slot()
    def _follow(self) -> None:
        """Show the page of the session's step."""
        measuring = self.measuring
        if measuring is None:
            return
        step = measuring.guide.step
        if step is SessionStep.MEASURING:
            self.live.refresh()
            self.show_page(self.live)
            self.live.keep_focus()
        elif step is SessionStep.PAIN:
            self.show_page(self.pain)
            self.pain.ask(measuring)
        elif step is SessionStep.NEXT:
            self.show_page(self.next)
            self.next.show_next(measuring, mirrored=self._services.mirrored)
        else:
            self._services.feed.leave()
            self.show_page(self.summary)
            name, today = self.people.name, self._services.today()
            self.summary.show_session(measuring, name, self._earlier, today)

    @Slot(object, object, object)
    def _pain_answered(
        self, pain: int | None, stopped_by: LimitingFactor | None, after: NextAction
    ) -> None:
        measuring = self.measuring
        if measuring is None:
            return
        measuring.answer(pain, stopped_by, after)
        if measuring.asks_for_check:
            another = measuring.mode is SessionMode.CLINIC or measuring.guide.has_other_movement
            self.safety.sides = (measuring.guide.task.side,)
            self.safety.pain_rose_from = measuring.pain_rose_from
            self._ask_safety(ScreeningOccasion.AFTER_PAIN, pain, another=another)

    @Slot()
    def _other_movement(self) -> None:
        """Leave the movement that hurt; the next one waits, or one is chosen."""
        self._save_check()
        measuring = self.measuring
        if measuring is None:
            return
        if not measuring.guide.has_other_movement:
            self.show_start()
        else:
            measuring.guide.leave_out_movement()
            self._follow()

    @Slot()
    def _safety_cleared(self) -> None:
        self._save_check()
        self._after_check()

    @Slot()
    def _safety_stopped(self) -> None:
        """Measure nothing now; what there is stays saved."""
        self._save_check()
        if self.measuring is not None:
            self._tasks = ()
            self.measuring.end_session()
        else:
            self._keep_told()
            self.show_start()

    @Slot()
    def _safety_left(self) -> None:
        """Go back before anything was answered: nothing is saved of the questions."""
        self._checking = None
        self._keep_told()
        self.show_start(same_person=True)

    def _keep_told(self) -> None:
        """Save the pain that was told before a session that does not come."""
        if self._pain_told is not None:
            self._keep_pain(*self._pain_told)

    def _save_check(self) -> None:
        """Save how the questions that were asked last were answered."""
        asked, self._checking = self._checking, None
        if asked is not None:
            self._services.unanswered_pain.answer(self.history.person.id, self._services.today())
            self.people.save_screening(asked, self.safety.screening.outcome)

    @Slot(object)
    def _measure(self, task: MovementTask) -> None:
        """Measure what was not planned: the other side, or once more what gave no reading."""
        if self.measuring is not None:
            self.start.prefer(task.movement, task.side)
            self.measuring.add(task)

    @Slot(str, object)
    def _finish(self, note: str, typed_in: tuple[ClinicianValue, ...]) -> None:
        if self.measuring is not None:
            self._end(self.measuring, note, typed_in)
            self.people.leave_guest()
            self.show_start()

    def _end(
        self, measuring: MeasurementSession, note: str, typed_in: tuple[ClinicianValue, ...]
    ) -> None:
        measuring.finish(note, typed_in)
        self.live.release()
        self.measuring = self._checking = None
        self.session_ended.emit()
        self._may_offer_exercises = True

    @Slot()
    def keep_entered(self) -> None:
        """Save what is entered beside the results by now; the session may go on."""
        if self.measuring is not None:
            self.measuring.log.finish(*self.summary.entered)

    def close_session(self) -> None:
        """Finish a session whose results are shown, or that waits; keep pain that was told."""
        if self.measuring is not None and not self.under_way:
            self.measuring.finish(*self.summary.entered)
        elif self._pain_told is not None:
            self._safety_left()

    @Slot()
    def _leave_for_progress(self) -> None:
        """Finish the session, then let the window show the progress."""
        self.summary.finish.click()
        if self.measuring is None:
            self.progress_wanted.emit()

    @Slot()
    def _show_report(self) -> None:
        """Save what is entered by now for the report; the results page stays as it is."""
        self.keep_entered()
        self.report_wanted.emit()

    @Slot()
    def show_start(self, *, same_person: bool = False) -> None:
        """Go back to choosing; a clinic's session goes on."""
        self._tasks, self._pain_told = (), None
        self.start.ask_again(same_person=same_person or self.measuring is not None)
        self.show_page(self.start)
        self.start.keep_focus()

    def step_aside(self) -> None:
        """Pause while another page is shown."""
        measuring = self.measuring
        if measuring is not None and not measuring.guide.paused:
            measuring.toggle_pause()
