"""Exercises page: leads from today's exercises through the round to how it went."""

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QStackedWidget, QWidget

from gui.pages.exercises.handout_dialogs import HandoutDialogs
from gui.pages.exercises.programme import HomeProgrammePage
from gui.pages.exercises.round_pages import RoundPages
from gui.pages.exercises.today import TodayPage
from gui.protocol.red_flags import todays_high_pain
from gui.session.services import Services
from gui.text.exercise_wording import log_words
from gui.text.wording import exercise_name, tr
from gui.widgets.layouts import column
from measure.domain.exercise_rounds import DayOfExercises, day_of_exercises, unanswered_day
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan
from measure.domain.records import History, Person
from measure.domain.screening_records import ScreeningRecord
from measure.progress.home_programme import pain_while_moving, plan_on
from measure.storage.store import Store
from measure.system.clock import new_id


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shown:
    """What was looked up of a person: the plan in force, today, and a morning to ask about."""

    plan: Plan | None
    day: DayOfExercises
    history: History
    screenings: tuple[ScreeningRecord, ...]
    unanswered: dt.date | None
    today: dt.date
    done_before: frozenset[Exercise]


def _read_day(store: Store, person: Person) -> _Shown:
    now = store.now()
    logs = store.exercises_done(person.id)
    plan = plan_on(store.plans(person.id), now.day)
    return _Shown(
        plan=plan,
        day=day_of_exercises(plan, logs, now),
        history=store.history(person.id),
        screenings=tuple(store.screenings(person.id)),
        unanswered=unanswered_day(logs, store.next_mornings(person.id), now.day),
        today=now.day,
        done_before=frozenset(log.exercise for log in logs),
    )


def _removed_words(logs: Sequence[ExerciseLog], plan: Plan | None) -> str:
    """Return which entries are deleted, and that they can be put back."""
    if len(logs) == 1:
        return tr(
            "This entry is deleted: {entry}. You can undo this until Thawline is closed."
        ).format(entry=log_words(logs[0], plan))
    return tr(
        "These entries are deleted: {entries}. You can undo this until Thawline is closed."
    ).format(entries=", ".join(exercise_name(log.exercise) for log in logs))


class ExercisesPage(QWidget):
    """Holds the pages of the exercises; everything is saved at once in the store's thread."""

    message_raised = Signal(str)
    #: Whether a round is led, so that the rest of the window steps back.
    leading_changed = Signal(bool)
    #: Something was logged or the programme changed; the history has something new.
    changed = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._person: Person | None = None
        self._shown: _Shown | None = None
        #: Whether the keyboard goes to what comes first once today is shown.
        self._focus_due = False
        #: Person and day of exercises for which the question waits until the next start.
        self._later: tuple[str, dt.date] | None = None
        appearance = services.appearance
        self.today = TodayPage(appearance, services.settings)
        self.rounds = RoundPages(services)
        self.handout = HandoutDialogs(self)
        self._pages = QStackedWidget()
        self._pages.addWidget(self.today)
        self._pages.addWidget(self.rounds)
        column(self._pages, on=self)
        self._connect()
        self.show_person(None)

    def _connect(self) -> None:
        self.today.started.connect(self.begin_round)
        self.today.done_elsewhere.connect(self._log)
        self.today.removed.connect(self._remove)
        self.today.morning_answered.connect(self._answer_morning)
        self.today.edited.connect(self.show_programme)
        self.today.page_wanted.connect(self._write_page)
        self.today.preview_wanted.connect(self._preview_page)
        self.handout.message_raised.connect(self.message_raised)
        self.rounds.leading_changed.connect(self._tell_leading)
        self.rounds.message_raised.connect(self.message_raised)
        self.rounds.saved.connect(self._changed)
        self.rounds.left.connect(self.show_today)

    @cached_property
    def programme(self) -> HomeProgrammePage:
        """The page of the programme; made when it is first wanted."""
        page = HomeProgrammePage(self._services.appearance)
        page.chosen.connect(self._save_plan)
        page.left.connect(self.show_today)
        self._pages.addWidget(page)
        return page

    # -- today --------------------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._focus_due = self._pages.currentWidget() is self.today
        self.reload()

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Show this person's exercises from now on."""
        self._person, self._shown = person, None
        self.today.show_tapped(())
        empty = DayOfExercises(due=(), begun=False, logged=())
        self.today.show_day(person, None, empty)
        if person is not None:
            self.today.show_waiting()
        self.today.ask_about(None, dt.date.min)
        shown = self._pages.currentWidget()
        entering = isinstance(shown, HomeProgrammePage) and shown.keeps_entries_of(person)
        if not (self.leading or entering):
            self.show_today()

    @Slot()
    def reload(self) -> None:
        """Look up what is planned and logged."""
        person, keeper = self._person, self._services.keeper
        if person is not None:
            self._run(lambda: _read_day(keeper.store, person), self._show_day)

    def _show_day(self, shown: _Shown) -> None:
        person = self._person
        if person is None or person.id != shown.history.person.id:
            return
        self._shown = shown
        measured_pain = pain_while_moving(shown.history, shown.today)
        self.today.show_day(person, shown.plan, shown.day, measured_pain)
        asked = shown.unanswered
        if person.demo or (asked is not None and self._later == (person.id, asked)):
            asked = None
        self.today.ask_about(asked, shown.today)
        if self._focus_due and self.today.isVisible():
            self._focus_due = False
            self.today.keep_focus()

    @Slot()
    def show_today(self) -> None:
        self._show(self.today)
        if self.isVisible():
            self._focus_due = True
            self.reload()

    @Slot(object)
    def _log(self, exercises: tuple[Exercise, ...]) -> None:
        person, keeper = self._person, self._services.keeper
        if person is None or person.demo:
            return

        def log() -> tuple[ExerciseLog, ...]:
            return tuple(keeper.store.log_exercise(person.id, item) for item in exercises)

        self._run(log, self._logged)

    def _logged(self, logs: tuple[ExerciseLog, ...]) -> None:
        self.today.show_tapped(logs)
        self._changed()

    @Slot(object)
    def _remove(self, log_ids: tuple[str, ...]) -> None:
        """Delete what was logged by mistake; it can be put back."""
        person, services = self._person, self._services
        if person is None:
            return
        plan = self._shown.plan if self._shown else None

        def remove() -> list[ExerciseLog]:
            store = services.keeper.store
            logs = [log for log in store.exercises_done(person.id) if log.id in log_ids]
            for log in logs:
                store.delete_exercise_log(log.id)
            return logs

        def removed(logs: list[ExerciseLog]) -> None:
            def put_back() -> None:
                for log in logs:
                    services.keeper.store.save_exercise_log(log)

            if logs:
                services.undo.offer(_removed_words(logs, plan), put_back)
            self._changed()

        self.today.show_tapped(())
        self._run(remove, removed)

    @Slot(object)
    def _answer_morning(self, eased: bool | None) -> None:
        person, shown, keeper = self._person, self._shown, self._services.keeper
        if person is None or shown is None or shown.unanswered is None:
            return
        # The answers go; the keyboard must not end on what stands next, which logs a whole round.
        self._focus_due = True
        if eased is None:
            self._later = (person.id, shown.unanswered)
            self._show_day(shown)
            return
        answer = NextMorning(id=new_id(), person_id=person.id, day=shown.unanswered, eased=eased)
        self._run(lambda: keeper.store.save_next_morning(answer), lambda _: self._changed())

    # -- the round ----------------------------------------------------------------------------

    @property
    def leading(self) -> bool:
        """Whether a round is led, so that the rest of the window steps back."""
        return self._pages.currentWidget() is self.rounds and self.rounds.leading

    @Slot()
    def begin_round(self) -> None:
        """Begin the round of what is due; what asks before measuring asks before a round too."""
        person, shown = self._person, self._shown
        if person is None or person.demo or shown is None or shown.plan is None:
            return
        if shown.day.due:
            self.today.show_tapped(())
            self._show(self.rounds)
            unanswered = self._services.unanswered_pain
            asking = unanswered.at_beginning(shown.history, shown.screenings, shown.today)
            self.rounds.begin(
                person,
                shown.day.due,
                shown.plan.pain_limit,
                shown.done_before,
                pain=asking or todays_high_pain(shown.history, shown.today),
                asking=asking is not None,
            )

    @Slot()
    def _tell_leading(self) -> None:
        self.leading_changed.emit(self.leading)

    def step_aside(self) -> None:
        """Pause while another page of the window is shown."""
        self.rounds.step_aside()

    # -- the programme --------------------------------------------------------------------------

    @property
    def keeps_entries(self) -> bool:
        """Whether a programme was entered and not saved."""
        made = "programme" in self.__dict__
        return made and self.programme.keeps_entries_of(self._person)

    def give_up_entries(self) -> None:
        """Keep nothing of a programme that was entered and not saved."""
        self.programme.give_up()

    @Slot()
    def show_programme(self) -> None:
        """Show the programme, to be entered or changed."""
        person, keeper, today = self._person, self._services.keeper, self._services.today()
        if person is None:
            return
        if self.programme.keeps_entries_of(person):
            self._show(self.programme)
            return

        def show(plans: list[Plan]) -> None:
            self._show(self.programme)
            self.programme.show_plan(person, plan_on(plans, today), today)

        self._run(lambda: keeper.store.plans(person.id), show)

    @Slot(object)
    def _save_plan(self, plan: Plan) -> None:
        keeper = self._services.keeper
        self._run(lambda: keeper.store.save_plan(plan), lambda _: self._changed())
        self.show_today()

    @Slot(str)
    def _write_page(self, language: str) -> None:
        person, plan = self._person, self._shown.plan if self._shown else None
        if person is not None and plan is not None:
            self.handout.write(person, plan, language, self._services.today())

    @Slot(str)
    def _preview_page(self, language: str) -> None:
        person, plan = self._person, self._shown.plan if self._shown else None
        if person is not None and plan is not None:
            self.handout.preview(person, plan, language)

    # -- common ---------------------------------------------------------------------------------

    @Slot()
    def _changed(self) -> None:
        self.changed.emit()
        self.reload()

    def _run(self, work: Callable[[], object], done: Callable[..., None]) -> None:
        self._services.records.run(work, done, self.message_raised.emit)

    def _show(self, page: QWidget) -> None:
        self._pages.setCurrentWidget(page)
        self._tell_leading()
