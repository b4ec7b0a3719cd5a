"""Measuring from choosing to the summary: which page is shown, and what leads to the next."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QPushButton, QStackedWidget, QVBoxLayout, QWidget

from gui.pages.measuring.live import LivePage
from gui.pages.measuring.next_task import NextTaskPage
from gui.pages.measuring.pain import PainPage
from gui.pages.measuring.pain_before import PainBeforePage
from gui.pages.measuring.screening import SafetyPage
from gui.pages.measuring.start import StartPage
from gui.pages.measuring.summary import SummaryPage
from gui.protocol.plan import (
    MovementTask,
    NextAction,
    SessionMode,
    SessionStep,
    limit_to_dose,
    without_practice,
)
from gui.protocol.red_flags import ScreeningKind, screening_due
from gui.session.log import SessionRecorder
from gui.session.measurement_session import MeasurementSession
from gui.session.services import Services
from gui.text.wording import message_text, tr
from measure.domain.records import LimitingFactor, Pain, Person
from measure.progress.home_programme import assessment_dose, irritability


class MeasurePage(QWidget):
    """Home and clinic pace on one reading path."""

    #: Whether a session is under way, so that the rest of the window steps back.
    measuring_changed = Signal(bool)
    #: Something to be told, in words.
    message_raised = Signal(str)
    #: A session ended; the history has something new.
    session_ended = Signal()
    people_changed = Signal(object)

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        appearance = services.appearance
        self.start = StartPage(appearance, services.settings)
        self.safety = SafetyPage(appearance)
        self.before = PainBeforePage(appearance)
        self.live = LivePage(appearance)
        self.pain = PainPage(appearance)
        self.next = NextTaskPage(appearance)
        self.summary = SummaryPage(appearance)
        self.measuring: MeasurementSession | None = None
        self._person: Person | None = None
        self._tasks: tuple[MovementTask, ...] = ()
        self._pace = SessionMode.HOME
        self._checking: ScreeningKind | None = None
        self._adding = False
        self._stack = QStackedWidget()
        for page in (
            self.start,
            self.safety,
            self.before,
            self.live,
            self.pain,
            self.next,
            self.summary,
        ):
            self._stack.addWidget(page)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._stack)
        self._connect()
        self._bind_keys()
        self.load_people()

    def _connect(self) -> None:
        self.start.home.connect(self._begin_home)
        self.start.clinic.connect(self._begin_clinic)
        self.start.person_chosen.connect(self._choose_person)
        self.start.person_wanted.connect(self._add_person)
        self.safety.cleared.connect(self._safety_cleared)
        self.safety.stopped.connect(self._safety_stopped)
        self.before.answered.connect(self._begin_measuring)
        self.before.back.connect(self.show_start)
        self.pain.answered.connect(self._pain_answered)
        self.next.begin.connect(self._go_on)
        self.next.again.connect(self._again)
        self.next.end.connect(self._end_session)
        self.summary.finished.connect(self._finish)
        self.summary.other_side.connect(self._other_side)
        self.summary.another.connect(self.show_start)

    def _bind_keys(self) -> None:
        """Give every way its key. A key works on its own page only, and beats a focused button."""
        return_keys = ("Return", "Enter")
        self._keys(self.start, self.start.home_button, "H")
        self._keys(self.start, self.start.clinic_button, "C")
        self._keys(self.before, self.before.go, *return_keys)
        self._keys(self.before, self.before.leave, "Escape")
        self._keys(self.live, self.live.pause, "Space")
        self._keys(self.live, self.live.discard, "Backspace", "Delete")
        self._keys(self.live, self.live.stop, "Escape")
        self._keys(self.live, self.live.retry, "R")
        self._keys(self.pain, self.pain.finish, "Escape")
        self._keys(self.pain, self.pain.repeat, "A")
        self._keys(self.next, self.next.go, *return_keys)
        self._keys(self.next, self.next.repeat, "A")
        self._keys(self.next, self.next.finish, "Escape")
        self._keys(self.summary, self.summary.next_side, "O")
        self._keys(self.summary, self.summary.next_movement, "M")
        self._keys(self.summary, self.summary.finish, *return_keys)

    @staticmethod
    def _keys(page: QWidget, one: QPushButton, *keys: str) -> None:
        for key in keys:
            shortcut = QShortcut(QKeySequence(key), page)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.setAutoRepeat(False)
            shortcut.activated.connect(one.click)

    # -- people -------------------------------------------------------------------------------

    @property
    def person(self) -> Person | None:
        """Who is measured."""
        return self._person

    def load_people(self) -> None:
        """Look up who is in the store."""
        services = self._services
        services.records.run(services.keeper.people, self._show_people, self.message_raised.emit)

    def _show_people(self, people: tuple[Person, ...]) -> None:
        wanted = self._services.settings.person_id
        found = [person for person in people if person.id == wanted] or list(people)
        self._person = found[0] if found else None
        self.start.show_people(people, self._person.id if self._person else None)
        self.people_changed.emit(self._person)

    @Slot(str)
    def _choose_person(self, person_id: str) -> None:
        self._services.settings.person_id = person_id
        self.load_people()

    @Slot(str)
    def _add_person(self, pseudonym: str) -> None:
        services, affected = self._services, self.start.affected.value
        if self._adding:
            return  # the button was pressed twice
        self._adding = True
        services.records.run(
            lambda: services.keeper.add_person(pseudonym, affected),
            self._person_added,
            self._person_refused,
        )

    def _person_refused(self, why: str) -> None:
        self._adding = False
        self._tasks = ()
        self.message_raised.emit(why)

    def _person_added(self, person: Person) -> None:
        self._adding = False
        self._person = person
        self._services.settings.person_id = person.id
        self.load_people()
        if self._tasks:
            self._check_first()

    # -- beginning ----------------------------------------------------------------------------

    @Slot(object)
    def _begin_home(self, tasks: tuple[MovementTask, ...]) -> None:
        self._tasks, self._pace = tasks, SessionMode.HOME
        self._need_person()

    @Slot(object)
    def _begin_clinic(self, task: MovementTask) -> None:
        if self.measuring is not None and self.measuring.pace is SessionMode.CLINIC:
            self.measuring.add(task)
            return
        self._tasks, self._pace = (task,), SessionMode.CLINIC
        self._need_person()

    def _need_person(self) -> None:
        self._services.cues.warm_up()
        if self._person is None:
            self._add_person(tr("Me"))
        else:
            self._check_first()

    def _check_first(self) -> None:
        """Ask the safety questions that are due, then go on."""
        person = self._person
        if person is None:
            return
        last = self._services.settings.last_check(person.id)
        self._checking = screening_due(last, self._services.today())
        if self._checking is None:
            self._after_check()
        else:
            self.safety.ask(self._checking)
            self._show(self.safety)
            self.safety.keep_focus()

    def _after_check(self) -> None:
        if self._pace is SessionMode.HOME:
            self.before.ask()
            self._show(self.before)
        else:
            self._begin_measuring(Pain())

    @Slot(object)
    def _begin_measuring(self, pain: Pain) -> None:
        person, services = self._person, self._services
        if person is None:
            return
        asked = assessment_dose(irritability(pain))
        tasks = limit_to_dose(self._tasks, asked) or self._tasks
        if services.clips:
            tasks = without_practice(tasks)
        log = SessionRecorder(
            services.keeper,
            services.records,
            person.id,
            self.start.conduct,
            pain,
            self,
        )
        log.failed.connect(self.message_raised)
        measuring = MeasurementSession(
            services.feed,
            services.cues,
            log,
            tasks,
            self._pace,
            services.next_source,
            self,
            place=services.placement_monitor,
        )
        self._tasks = ()
        self.measuring = measuring
        measuring.stepped.connect(self._follow)
        measuring.messages_received.connect(self.message_raised)
        measuring.framed.connect(self.pain.take_frame)
        self.live.show_measuring(measuring, mirrored=services.mirrored)
        measuring.begin()
        said = [tr(asked.sentence)] if asked.sentence else []
        said += map(message_text, services.known.take_messages())
        if said:
            self.message_raised.emit(" ".join(said))

    # -- on the way ---------------------------------------------------------------------------

    @Slot()
    def _follow(self) -> None:
        """Show the page of the guide's step."""
        measuring = self.measuring
        if measuring is None:
            return
        step = measuring.guide.step
        if step is SessionStep.MEASURING:
            self.live.refresh()
            self._show(self.live)
            self.live.keep_focus()
        elif step is SessionStep.PAIN:
            self._show(self.pain)
            self.pain.ask(measuring)
        elif step is SessionStep.NEXT:
            self._show(self.next)
            self.next.show_next(measuring, mirrored=self._services.mirrored)
        else:
            self._services.feed.leave()
            self._show(self.summary)
            self.summary.show_session(measuring)

    @Slot(object, object, object)
    def _pain_answered(
        self, pain: int | None, stopped_by: LimitingFactor | None, after: NextAction
    ) -> None:
        measuring = self.measuring
        if measuring is None:
            return
        measuring.answer(pain, stopped_by, after)
        if measuring.asks_for_check:
            self._checking = ScreeningKind.PAIN
            self.safety.ask(ScreeningKind.PAIN)
            self._show(self.safety)
            self.safety.keep_focus()

    @Slot()
    def _safety_cleared(self) -> None:
        if self._checking is ScreeningKind.PAIN:
            self._checking = None
            self._follow()
            return
        if self._person is not None:
            self._services.settings.set_last_check(self._person.id, self._services.today())
        self._checking = None
        self._after_check()

    @Slot()
    def _safety_stopped(self) -> None:
        """No measuring now; what there is stays kept."""
        if self._person is not None and self._checking is not ScreeningKind.PAIN:
            self._services.settings.set_last_check(self._person.id, None)
        self._checking = None
        if self.measuring is not None:
            self._end_session()
        else:
            self.show_start()

    @Slot()
    def _go_on(self) -> None:
        if self.measuring is not None:
            self.measuring.go_on()

    @Slot()
    def _again(self) -> None:
        if self.measuring is not None:
            self.measuring.again()

    @Slot()
    def _other_side(self) -> None:
        if self.measuring is not None:
            task = self.measuring.guide.task
            self.start.prefer(task.movement, task.side.other)
            self.measuring.add(
                MovementTask(
                    movement=task.movement,
                    side=task.side.other,
                    trials=task.trials,
                    practice=task.practice,
                )
            )

    @Slot()
    def _end_session(self) -> None:
        if self.measuring is not None:
            self.measuring.end_session()

    @Slot(str)
    def _finish(self, note: str) -> None:
        measuring = self.measuring
        if measuring is None:
            return
        measuring.finish(note)
        self.live.release()
        self.measuring = None
        self.session_ended.emit()
        self.show_start()

    @Slot()
    def show_start(self) -> None:
        """Go back to choosing; a clinic's session goes on."""
        self._tasks = ()
        self._show(self.start)

    def _show(self, page: QWidget) -> None:
        self._stack.setCurrentWidget(page)
        self.measuring_changed.emit(page in (self.live, self.pain, self.next))

    @property
    def under_way(self) -> bool:
        """Whether a session is under way."""
        return self._stack.currentWidget() in (self.live, self.pain, self.next)

    def step_aside(self) -> None:
        """Pause while another page is looked at."""
        measuring = self.measuring
        if measuring is not None and not measuring.guide.paused:
            measuring.toggle_pause()
