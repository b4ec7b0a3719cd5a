"""Session plan: the order of movements, trials and questions about pain. No Qt, no clock.

The window tells the guide what happened and shows where it stands; it decides nothing itself.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.records import LimitingFactor, Pain
from measure.live.events import LiveEvent, LiveEventKind
from measure.progress.home_programme import (
    USUAL_PAIN_LIMIT,
    AssessmentDose,
    Irritability,
    assessment_dose,
    irritability,
)


class SessionMode(StrEnum):
    HOME = "home"
    CLINIC = "clinic"


class SessionStep(StrEnum):
    MEASURING = "measuring"
    PAIN = "pain"
    NEXT = "next"
    FINISHED = "finished"


class NextAction(StrEnum):
    """What is wanted after a movement."""

    GO_ON = "go-on"
    AGAIN = "again"
    STOP = "stop"


class AttemptState(StrEnum):
    """A captured trial on its way to a reading."""

    REFINING = "refining"
    SCORED = "scored"
    PRACTICE = "practice"
    REFUSED = "refused"


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementTask:
    """One movement on one side, and how often."""

    movement: Movement
    side: Side
    trials: int = 3
    practice: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """One captured trial; `guide_value` is what the quick pass saw in its hold."""

    trial_id: int
    state: AttemptState
    guide_value: float | None = None
    trial: Trial | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TaskResult:
    """What one task gave. `measurement` is None when nothing was captured."""

    task: MovementTask
    measurement: Measurement | None = None
    pain: int | None = None
    stopped_by: LimitingFactor | None = None

    @property
    def captured(self) -> bool:
        """Whether any trial was captured, counted or refused."""
        return self.measurement is not None and bool(self.measurement.trials)


#: A session at home; extension is left out unless chosen, as it says least about a stiff shoulder.
HOME_MOVEMENTS = (
    Movement.FLEXION,
    Movement.ABDUCTION,
    Movement.EXTERNAL_ROTATION,
    Movement.HAND_BEHIND_BACK,
)


#: Trials of a movement at the clinic's pace, without practice. [project]
CLINIC_TRIALS = 2
#: Movements for which the person stands sideways: a turn of the body for each side.
_FROM_A_SIDE = tuple(movement for movement in Movement if MOVEMENTS[movement].views[0] is View.SIDE)


def home_tasks(
    movements: Sequence[Movement], affected: Side | None, *, sore_day: bool = False
) -> tuple[MovementTask, ...]:
    """Return the tasks of a session at home, the good shoulder first each time.

    Parameters
    ----------
    affected
        The stiff shoulder; None measures the right one first.
    sore_day
        As little as is asked of a shoulder that is easily upset.
    """
    second = affected or Side.LEFT
    sides = (second.other, second)
    chosen = [(movement, side) for movement in movements for side in sides]
    return planned_tasks(chosen, sore_day=sore_day)


def planned_tasks(
    planned: Sequence[tuple[Movement, Side]], *, sore_day: bool = False
) -> tuple[MovementTask, ...]:
    """Return the tasks of a session at home as the measuring plan names them.

    Parameters
    ----------
    sore_day
        As little as is asked of a shoulder that is easily upset.
    """
    tasks = tuple(MovementTask(movement=movement, side=side) for movement, side in planned)
    return limit_to_dose(tasks, assessment_dose(Irritability.HIGH)) if sore_day else tasks


def baseline_tasks(
    affected: Sequence[Side],
    movements: Collection[Movement] = tuple(Movement),
    sides: Collection[Side] = tuple(Side),
) -> tuple[MovementTask, ...]:
    """Return movements at the clinic's pace, in a fixed order: all five on both sides, or fewer.

    The order asks for few turns: both movements seen from one side, then those from the other,
    then facing the camera, then turned away. The less affected side goes first.
    """
    second = affected[0] if len(affected) == 1 else Side.LEFT
    in_turn = (second.other, second)
    seen_from_a_side = [(movement, side) for side in in_turn for movement in _FROM_A_SIDE]
    others = [
        (movement, side)
        for movement in Movement
        if movement not in _FROM_A_SIDE
        for side in in_turn
    ]
    return tuple(
        MovementTask(movement=movement, side=side, trials=CLINIC_TRIALS, practice=0)
        for movement, side in (*seen_from_a_side, *others)
        if movement in movements and side in sides
    )


def limit_to_dose(tasks: Sequence[MovementTask], asked: AssessmentDose) -> tuple[MovementTask, ...]:
    """Return the tasks with no more trials and movements than may be asked for."""
    return tuple(
        replace(task, trials=min(task.trials, asked.trials))
        for task in tasks
        if task.movement not in asked.left_out
    )


def without_practice(tasks: Sequence[MovementTask]) -> tuple[MovementTask, ...]:
    """Return the tasks without practice, as for clips: what they show counts, as in replay."""
    return tuple(replace(task, practice=0) for task in tasks)


def faces_away_from_screen(movement: Movement) -> bool:
    """Return whether the person cannot see the screen during this movement."""
    return MOVEMENTS[movement].views[0] is View.BACK


class SessionPlan:
    """Where a session stands."""

    def __init__(self, tasks: Sequence[MovementTask]) -> None:
        if not tasks:
            raise ValueError("a session needs at least one task")
        self._tasks = tuple(tasks)
        #: Pain rating, 0..10, from which the next movement waits for a choice.
        self.pain_limit = USUAL_PAIN_LIMIT
        self._index = 0
        self._attempts: list[Attempt] = []
        self._outcomes: list[TaskResult] = []
        self._measurement: Measurement | None = None
        self._ending = False
        self._asking = False
        self.step = SessionStep.MEASURING
        self.paused = False

    @property
    def task(self) -> MovementTask:
        """The task at hand, or the last one when all is finished."""
        return self._tasks[min(self._index, len(self._tasks) - 1)]

    @property
    def upcoming(self) -> MovementTask | None:
        """The task after this one, or None."""
        following = self._index + 1
        return self._tasks[following] if following < len(self._tasks) else None

    @property
    def task_position(self) -> tuple[int, int]:
        """Number of the task at hand, from 1, and how many there are."""
        return min(self._index + 1, len(self._tasks)), len(self._tasks)

    @property
    def changes_arm(self) -> bool:
        """Whether the task at hand follows one of the other arm."""
        return self._index > 0 and self._tasks[self._index - 1].side is not self.task.side

    @property
    def attempts(self) -> tuple[Attempt, ...]:
        return tuple(self._attempts)

    @property
    def outcomes(self) -> tuple[TaskResult, ...]:
        return tuple(self._outcomes)

    @property
    def measurement(self) -> Measurement | None:
        """What the task at hand gave so far."""
        return self._measurement

    @property
    def practice_left(self) -> int:
        done = sum(attempt.state is AttemptState.PRACTICE for attempt in self._attempts)
        return max(0, self.task.practice - done)

    @property
    def counted(self) -> int:
        """Scored trials and those still being refined."""
        return sum(
            attempt.state in (AttemptState.SCORED, AttemptState.REFINING)
            for attempt in self._attempts
        )

    @property
    def is_ending(self) -> bool:
        """Whether the movement was stopped and its captured trials are still being refined."""
        return self._ending and self.step is SessionStep.MEASURING

    @property
    def stopped_for_pain(self) -> bool:
        """Whether the person stopped this movement because it hurt."""
        return self._asking

    @property
    def can_stop_for_pain(self) -> bool:
        """Whether the person can say that it hurts; also while the trials are being refined."""
        return self.step is SessionStep.MEASURING and not self._asking

    @property
    def gave_nothing(self) -> TaskResult | None:
        """The last movement if no trial of it was captured; None otherwise."""
        last = self._outcomes[-1] if self._outcomes else None
        return last if last is not None and not last.captured else None

    @property
    def pain_at_limit(self) -> int | None:
        """Pain of the last movement if it reached the limit, 0..10; None otherwise."""
        pain = self._outcomes[-1].pain if self._outcomes else None
        return pain if pain is not None and pain >= self.pain_limit else None

    @property
    def has_other_movement(self) -> bool:
        """Whether something is still to come that is not the movement of this arm."""
        return any(not self._same_movement(task) for task in self._tasks[self._index + 1 :])

    @property
    def can_discard(self) -> bool:
        return self.step is SessionStep.MEASURING and self.counted > 0

    @property
    def last_refusal(self) -> Trial | None:
        """The latest trial if it was refused, to say why; None otherwise."""
        last = self._attempts[-1] if self._attempts else None
        return last.trial if last and last.state is AttemptState.REFUSED else None

    def take(self, event: LiveEvent) -> None:
        """Note what the engine reports; what does not belong to the step is passed over."""
        if event.kind is LiveEventKind.PAUSED:
            self.paused = True
        elif event.kind is LiveEventKind.RESUMED:
            self.paused = False
        elif self.step is SessionStep.MEASURING:
            self._take_measuring(event)

    def end_movement(self, *, hurts: bool = False) -> None:
        """The movement ends with what there is.

        Parameters
        ----------
        hurts
            Whether pain stopped it, so that the pain is asked even where nothing was captured.
            Of a movement that is ending already it may still be said; it is not taken back.
        """
        self._ending, self._asking = True, self._asking or hurts

    def finish_here(self) -> None:
        """The person ends the session in the middle of a movement.

        Trials that count are still refined, and their pain is asked; with none, it is over now.
        """
        self.end_session()
        self.end_movement()
        if all(attempt.state is AttemptState.PRACTICE for attempt in self._attempts):
            self._finish(None)

    def leave_out_movement(self) -> None:
        """Leave out what is still to come of this movement of this arm, because it hurt."""
        following = self._index + 1
        others = (task for task in self._tasks[following:] if not self._same_movement(task))
        self._tasks = (*self._tasks[:following], *others)
        if self.step is SessionStep.NEXT and self.upcoming is None:
            self.step = SessionStep.FINISHED

    def end_session(self) -> None:
        """Leave out the tasks that have not begun."""
        self._tasks = self._tasks[: self._index + 1]
        if self.step is SessionStep.NEXT:
            self.step = SessionStep.FINISHED

    def answer(self, pain: int | None, stopped_by: LimitingFactor | None) -> TaskResult:
        """Note pain and what ended the movement; the next step follows.

        A movement that hurt much leaves less to be asked for in what is still to come.
        """
        if self.step is not SessionStep.PAIN:
            raise ValueError("pain is asked after a movement")
        outcome = replace(self._outcomes[-1], pain=pain, stopped_by=stopped_by)
        self._outcomes[-1] = outcome
        following = self._index + 1
        still_to_come = limit_to_dose(
            self._tasks[following:], assessment_dose(irritability(Pain(), pain))
        )
        self._tasks = (*self._tasks[:following], *still_to_come)
        self.step = SessionStep.NEXT if self.upcoming else SessionStep.FINISHED
        return outcome

    def go_on(self) -> MovementTask:
        """Begin the next task and return it."""
        if self.step is not SessionStep.NEXT:
            raise ValueError("there is no next task to begin")
        self._begin(self._index + 1)
        return self.task

    def again(self) -> MovementTask:
        """Measure the last task once more, as a task of its own, and return it."""
        if self.step is SessionStep.MEASURING:
            raise ValueError("the task is still going on")
        self._tasks = (
            *self._tasks[: self._index + 1],
            self.task,
            *self._tasks[self._index + 1 :],
        )
        self._begin(self._index + 1)
        return self.task

    def add(self, *tasks: MovementTask) -> MovementTask:
        """Begin tasks that were not planned, as in a clinic, and return the first."""
        self._tasks = (*self._tasks[: self._index + 1], *tasks)
        self._begin(self._index + 1)
        return self.task

    def _same_movement(self, task: MovementTask) -> bool:
        return (task.movement, task.side) == (self.task.movement, self.task.side)

    def _begin(self, index: int) -> None:
        self._index = index
        self._attempts = []
        self._measurement = None
        self._ending = self._asking = False
        self.step = SessionStep.MEASURING

    def _take_measuring(self, event: LiveEvent) -> None:
        if event.kind is LiveEventKind.TRIAL_CAPTURED:
            state = AttemptState.PRACTICE if event.practice else AttemptState.REFINING
            attempt = Attempt(trial_id=event.trial_id, state=state, guide_value=event.value)
            self._attempts.append(attempt)
        elif event.kind is LiveEventKind.TRIAL_REFINED:
            refined = AttemptState.PRACTICE if event.practice else AttemptState.SCORED
            self._replace_attempt(event, refined)
            self._measurement = event.measurement or self._measurement
        elif event.kind is LiveEventKind.TRIAL_REFUSED:
            self._replace_attempt(event, AttemptState.REFUSED)
            self._measurement = event.measurement or self._measurement
        elif event.kind is LiveEventKind.TRIAL_DISCARDED:
            self._attempts = [
                attempt for attempt in self._attempts if attempt.trial_id != event.trial_id
            ]
            self._measurement = event.measurement
        elif event.kind is LiveEventKind.TRIAL_RESTORED:
            self._take_restored(event)
        elif event.kind is LiveEventKind.MEASUREMENT_DONE:
            self._finish(event.measurement)

    def _take_restored(self, event: LiveEvent) -> None:
        """Put a discarded trial back in its place; refined meanwhile or not."""
        trial = event.trial
        state = AttemptState.REFINING
        if trial is not None:
            state = AttemptState.SCORED if trial.scored else AttemptState.REFUSED
        restored = Attempt(trial_id=event.trial_id, state=state, trial=trial)
        self._attempts = sorted([*self._attempts, restored], key=lambda attempt: attempt.trial_id)
        self._measurement = event.measurement

    def _replace_attempt(self, event: LiveEvent, state: AttemptState) -> None:
        refined = Attempt(trial_id=event.trial_id, state=state, trial=event.trial)
        for place, attempt in enumerate(self._attempts):
            if attempt.trial_id == event.trial_id:
                self._attempts[place] = refined
                return
        self._attempts.append(refined)

    def _finish(self, measurement: Measurement | None) -> None:
        self._measurement = measurement
        outcome = TaskResult(task=self.task, measurement=measurement)
        self._outcomes.append(outcome)
        if self._ending and not self._asking and not outcome.captured:
            self.step = SessionStep.NEXT if self.upcoming else SessionStep.FINISHED
        else:
            self.step = SessionStep.PAIN
