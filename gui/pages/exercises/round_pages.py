"""Pages of one round: it is led, stopped where it hurts, and rated at its end."""

from collections.abc import Collection, Sequence

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QStackedWidget, QWidget

from gui.pages.exercises.hurt_page import HurtPage
from gui.pages.exercises.rating_page import RatingPage, RatingRow
from gui.pages.exercises.round_page import RoundPage
from gui.pages.exercises.round_recorder import RoundRecorder
from gui.pages.measuring.screening import SafetyPage
from gui.protocol.exercise_round import ExerciseRound, tasks_of
from gui.protocol.red_flags import HIGH_PAIN
from gui.session.services import Services
from gui.text.wording import tr
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import PlannedExercise
from measure.domain.records import Person
from measure.domain.screening_records import ScreeningOccasion


class RoundPages(QStackedWidget):
    """Leads from the first exercise to how it went; what is done is saved on the way."""

    message_raised = Signal(str)
    #: Whether a round is led has changed.
    leading_changed = Signal()
    #: Something new is in the store, or on its way there.
    saved = Signal()
    #: Nothing more is asked.
    left = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._recorder: RoundRecorder | None = None
        self._due: Sequence[PlannedExercise] = ()
        self._limit = 0
        #: Much pain of today, 0..10, or None.
        self._high_pain: int | None = None
        #: Pain that was stated during the round, 0..10.
        self._pains: dict[Exercise, int] = {}
        self._done_before: Collection[Exercise] = ()
        appearance = services.appearance
        self.round = RoundPage(services)
        self.hurt = HurtPage(appearance)
        self.rating = RatingPage(appearance)
        self.safety = SafetyPage(appearance)
        for page in (self.round, self.hurt, self.rating, self.safety):
            self.addWidget(page)
        self.round.progressed.connect(self._save_results)
        self.round.hurts.connect(self._ask_how_much)
        self.round.ended.connect(self._ask_how_it_went)
        self.hurt.stopped.connect(self._stop_for_pain)
        self.hurt.next_wanted.connect(self._next_after_pain)
        self.hurt.back_wanted.connect(self._back_to_round)
        self.rating.rated.connect(self._rated)
        self.safety.cleared.connect(self._begin_after_questions)
        self.safety.stopped.connect(self._leave_safety)
        self.safety.left.connect(self.left)

    @property
    def leading(self) -> bool:
        """Whether a round is under way, or has just been stopped because it hurts."""
        return self.currentWidget() in (self.round, self.hurt)

    def begin(
        self,
        person: Person,
        due: Sequence[PlannedExercise],
        limit: int,
        done_before: Collection[Exercise],
        *,
        pain: int | None = None,
        asking: bool = False,
    ) -> None:
        """Lead a round, with a caution after much pain.

        Parameters
        ----------
        limit
            Pain rating, 1..10, at which the programme says to stop.
        done_before
            Exercises that the person has done before.
        pain
            Much pain of today, 0..10, or None.
        asking
            Whether that pain brings the safety questions first.
        """
        self._services.cues.warm_up()
        self._recorder = RoundRecorder(self._services, person.id, self)
        self._recorder.failed.connect(self.message_raised)
        self._pains, self._limit, self._done_before = {}, limit, done_before
        self._due, self._high_pain, self.safety.sides = due, pain, person.affected
        if asking:
            self._services.unanswered_pain.ask(person.id, pain)
            self._ask_safety(ScreeningOccasion.BEFORE, pain)
        else:
            self._lead()

    def _lead(self) -> None:
        guided = ExerciseRound(tasks_of(self._due), self._services.monotonic_s())
        self._show(self.round)
        self.round.lead(guided, self._limit)
        if self._high_pain is not None:
            words = tr(
                "Pain reached {pain} of 10 today. Let the shoulder rest; carry on another day."
            )
            self.message_raised.emit(words.format(pain=self._high_pain))

    def step_aside(self) -> None:
        """Pause while another page of the window is shown."""
        self.round.step_aside()

    @Slot()
    def _save_results(self) -> None:
        if self._recorder is not None and self.round.guided is not None:
            self._recorder.save(self.round.guided.results)

    @Slot()
    def _ask_how_much(self) -> None:
        guided = self.round.guided
        if guided is not None:
            exercise = guided.task.planned.exercise
            following = guided.tasks[guided.position[0] :]
            more = any(task.planned.exercise != exercise for task in following)
            self._show(self.hurt)
            self.hurt.ask(self._limit, guided.task.side, more=more)

    def _note_pain(self, pain: int | None) -> None:
        """Save the pain of the exercise that was stopped."""
        guided, recorder = self.round.guided, self._recorder
        if guided is not None and recorder is not None and pain is not None:
            exercise = guided.task.planned.exercise
            self._pains[exercise] = pain
            recorder.rate(exercise, pain, None)

    @Slot(object)
    def _next_after_pain(self, pain: int | None) -> None:
        self._note_pain(pain)
        self._show(self.round)
        self.round.go_on_after_pain()

    @Slot(object)
    def _back_to_round(self, pain: int | None) -> None:
        """Show the exercise again, which waits until somebody goes on."""
        self._note_pain(pain)
        self._show(self.round)
        self.round.pause.setFocus()

    @Slot(object)
    def _stop_for_pain(self, pain: int | None) -> None:
        self._note_pain(pain)
        self.round.finish()
        if pain is not None and pain >= HIGH_PAIN:
            self.saved.emit()
            self._ask_safety(ScreeningOccasion.AFTER_PAIN)
        else:
            self._ask_how_it_went()

    @Slot()
    def _ask_how_it_went(self) -> None:
        """Ask about what was done, unless all of it has been said."""
        results = self.round.guided.results if self.round.guided else ()
        self.saved.emit()
        unsaid = {result.exercise for result in results} - self._pains.keys()
        if unsaid or any(result.exercise in self._done_before for result in results):
            self._show(self.rating)
            self.rating.ask(results, self._pains, self._limit, self._done_before)
        else:
            self.left.emit()

    @Slot(object)
    def _rated(self, rows: tuple[RatingRow, ...]) -> None:
        for rating in rows:
            if self._recorder is not None:
                self._recorder.rate(rating.exercise, rating.pain.value, rating.compared.value)
        self.saved.emit()
        if max((rating.pain.value or 0 for rating in rows), default=0) >= HIGH_PAIN:
            self._ask_safety(ScreeningOccasion.AFTER_PAIN)
        else:
            self.left.emit()

    def _ask_safety(self, occasion: ScreeningOccasion, pain: int | None = None) -> None:
        """Ask the safety questions that measuring asks because of much pain."""
        self.safety.ask(occasion, pain)
        self._show(self.safety)
        self.safety.keep_focus()

    @Slot()
    def _begin_after_questions(self) -> None:
        self._save_answers()
        self._lead()

    @Slot()
    def _leave_safety(self) -> None:
        self._save_answers()
        self.left.emit()

    def _save_answers(self) -> None:
        """Save how the safety questions were answered."""
        screening = self.safety.screening
        if self._recorder is not None:
            self._recorder.save_screening(screening.check, screening.outcome)

    def _show(self, page: QWidget) -> None:
        self.setCurrentWidget(page)
        self.leading_changed.emit()
