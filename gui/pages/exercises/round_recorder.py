"""Recorder of a guided round: every repetition is in the store before the next one begins."""

from dataclasses import replace
from functools import partial

from PySide6.QtCore import QObject, Signal

from gui.protocol.exercise_round import ExerciseResult
from gui.session.services import Services
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ComparedWithLast, ExerciseLog
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from measure.system.clock import new_id


class RoundRecorder(QObject):
    """Saves what was done of each exercise of a round, and how it went.

    An exercise has one record, written after its first repetition and written again after every
    other one: a program that is killed leaves it as done in part. So does pain that stops it
    before its first repetition is over: what was stated is never lost.
    """

    #: Why something was not saved, in words.
    failed = Signal(str)

    def __init__(self, services: Services, person_id: str, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._person_id = person_id
        self._results: dict[Exercise, ExerciseResult] = {}
        #: Belongs to the thread of the records.
        self._logs: dict[Exercise, ExerciseLog] = {}

    def save(self, results: tuple[ExerciseResult, ...]) -> None:
        """Save what is new in the results so far."""
        for result in results:
            if self._results.get(result.exercise) != result:
                self._results[result.exercise] = result
                self._services.records.run(partial(self._save, result), failed=self._fail)

    def rate(self, exercise: Exercise, pain: int | None, compared: ComparedWithLast | None) -> None:
        """Save the pain reached, 0..10, and how it compared with the last time."""
        self._services.records.run(lambda: self._rate(exercise, pain, compared), failed=self._fail)

    def save_screening(self, occasion: ScreeningOccasion, outcome: ScreeningOutcome) -> None:
        """Save how the safety questions were answered."""
        keeper, person_id = self._services.keeper, self._person_id
        self._services.unanswered_pain.answer(person_id, self._services.today())
        self._services.records.run(
            lambda: keeper.save_screening(person_id, occasion, outcome), failed=self._fail
        )

    def _save(self, result: ExerciseResult) -> None:
        store, before = self._services.keeper.store, self._logs.get(result.exercise)
        log = ExerciseLog(
            id=before.id if before else new_id(),
            person_id=self._person_id,
            exercise=result.exercise,
            done=store.now(),
            pain=before.pain if before else None,
            repetitions=result.repetitions,
        )
        store.save_exercise_log(log)
        self._logs[result.exercise] = log

    def _rate(
        self, exercise: Exercise, pain: int | None, compared: ComparedWithLast | None
    ) -> None:
        store, log = self._services.keeper.store, self._logs.get(exercise)
        if log is None:
            if pain is None:
                return
            log = ExerciseLog(
                id=new_id(),
                person_id=self._person_id,
                exercise=exercise,
                done=store.now(),
                repetitions=0,
            )
        self._logs[exercise] = rated = replace(log, pain=pain, compared=compared)
        store.save_exercise_log(rated)

    def _fail(self, why: str) -> None:
        self.failed.emit(why)
