"""The guided round of exercises as a state machine: phases, repetitions, what was done.

No Qt and no clock of its own: whoever runs it says what time it is.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import MOST_REPETITIONS, PlannedExercise
from measure.domain.landmarks import Side

#: Time to get ready for an exercise, and before it goes on after a pause, seconds. [project]
READY_S, READY_AGAIN_S = 12.0, 4.0
#: How slowly the arm moves into a stretch, and back out of it, seconds. [project]
MOVE_S = 4.0
#: Rest between two repetitions, seconds. [project]
REST_S = 3.0
#: One swing of an exercise that is not held, seconds. [project]
SWING_S = 3.0
#: Longest step of the clock that is believed; the computer slept through a longer one. [technical]
LONGEST_STEP_S = 5.0


class RoundPhase(StrEnum):
    """Phase of a round."""

    READY = "ready"
    MOVE = "move"
    HOLD = "hold"
    BACK = "back"
    REST = "rest"
    SWING = "swing"
    OVER = "over"


class CueKind(StrEnum):
    """What has just happened in a round."""

    PHASE = "phase"
    SECOND = "second"
    REPETITION_DONE = "repetition-done"
    EXERCISE_DONE = "exercise-done"


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundCue:
    """Something to be heard or saved.

    Attributes
    ----------
    phase
        The phase that begins, or in which it happened.
    number
        Repetition that begins or is done, from 1; seconds left of a hold for a second.
    """

    kind: CueKind
    phase: RoundPhase
    number: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundTask:
    """One exercise with one side; `side` is None where it is not stated."""

    planned: PlannedExercise
    side: Side | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseResult:
    """What was done of an exercise so far.

    Attributes
    ----------
    repetitions
        Repetitions done, of both sides on average; as many as planned for a whole exercise alone.
    planned
        Repetitions planned, or None.
    """

    exercise: Exercise
    repetitions: int
    planned: int | None = None


def tasks_of(exercises: Sequence[PlannedExercise]) -> tuple[RoundTask, ...]:
    """Return the tasks of a round in the plan's order; with both sides one after the other."""
    return tuple(
        RoundTask(planned=planned, side=side)
        for planned in exercises
        for side in (planned.sides or (None,))
    )


def duration_s(tasks: Sequence[RoundTask]) -> float:
    """Return how long tasks take without a pause, seconds; one without a count counts as one."""
    seconds = 0.0
    for task in tasks:
        planned = task.planned
        repetitions = planned.repetitions or 1
        if planned.exercise.swinging:
            seconds += READY_S + repetitions * SWING_S
        else:
            seconds += READY_S + repetitions * (2 * MOVE_S + planned.hold_s + REST_S) - REST_S
    return seconds


class ExerciseRound:
    """Leads through the tasks of a round, one phase after the other.

    Parameters
    ----------
    tasks
        At least one.
    now_s
        The time at which it begins, seconds from any zero.
    """

    def __init__(self, tasks: Sequence[RoundTask], now_s: float) -> None:
        if not tasks:
            raise ValueError("A round has at least one exercise.")
        self.tasks = tuple(tasks)
        self.phase = RoundPhase.READY
        self.paused = False
        self._done = [0] * len(self.tasks)
        self._place = 0
        self._now_s = now_s
        self._length_s = READY_S
        self._gone_s = 0.0

    # -- where it stands ---------------------------------------------------------------------

    @property
    def task(self) -> RoundTask:
        return self.tasks[self._place]

    @property
    def position(self) -> tuple[int, int]:
        """Number of the task, from 1, and how many there are."""
        return self._place + 1, len(self.tasks)

    @property
    def upcoming(self) -> RoundTask | None:
        """The task after this one."""
        following = self._place + 1
        return self.tasks[following] if following < len(self.tasks) else None

    @property
    def open_ended(self) -> bool:
        """Whether the task was begun and has no number of repetitions: the person ends it."""
        begun = self.done > 0 or self.phase is not RoundPhase.READY
        return begun and self.task.planned.repetitions is None

    @property
    def over(self) -> bool:
        return self.phase is RoundPhase.OVER

    @property
    def done(self) -> int:
        """Repetitions done of the present task."""
        return self._done[self._place]

    @property
    def repetition(self) -> int:
        """The repetition under way or to come, from 1; the last one after the end."""
        planned = self.task.planned.repetitions
        return self.done + 1 if planned is None else min(self.done + 1, planned)

    @property
    def left_s(self) -> float:
        """Seconds left of the phase."""
        return max(0.0, self._length_s - self._gone_s)

    @property
    def gone_s(self) -> float:
        """Seconds of the phase that are over."""
        return self._gone_s

    @property
    def share(self) -> float:
        """How much of the phase is over, 0..1."""
        return min(1.0, self._gone_s / self._length_s) if self._length_s else 1.0

    @property
    def results(self) -> tuple[ExerciseResult, ...]:
        """What was done of each exercise that was begun, in the round's order."""
        exercises = dict.fromkeys(task.planned.exercise for task in self.tasks)
        results = (self._result(exercise) for exercise in exercises)
        return tuple(result for result in results if result is not None)

    def _result(self, exercise: Exercise) -> ExerciseResult | None:
        places = [k for k, task in enumerate(self.tasks) if task.planned.exercise == exercise]
        done = sum(self._done[place] for place in places)
        planned = self.tasks[places[0]].planned.repetitions
        if not done:
            return None
        repetitions = max(1, done // len(places))
        if planned is not None and done < planned * len(places):
            repetitions = min(repetitions, planned - 1)
        return ExerciseResult(exercise=exercise, repetitions=repetitions, planned=planned)

    # -- time --------------------------------------------------------------------------------

    def advance(self, now_s: float) -> list[RoundCue]:
        """Go on to a time; return what happened on the way, the earliest first.

        After a longer step than LONGEST_STEP_S it pauses: the computer slept, and nobody was led.
        """
        step_s, self._now_s = now_s - self._now_s, now_s
        if self.paused or self.over or step_s <= 0:
            return []
        if step_s > LONGEST_STEP_S:
            self.pause()
            return []
        cues: list[RoundCue] = []
        while not self.over:
            left_s = self._length_s - self._gone_s
            if step_s < left_s:
                cues += self._pass(step_s)
                break
            cues += self._pass(left_s)
            step_s -= left_s
            cues += self._next_phase()
        return cues

    def _pass(self, step_s: float) -> list[RoundCue]:
        """Let time pass within a phase; a hold tells its full seconds."""
        before, self._gone_s = self._gone_s, self._gone_s + step_s
        if self.phase is not RoundPhase.HOLD:
            return []
        return [
            RoundCue(kind=CueKind.SECOND, phase=self.phase, number=left)
            for left in range(round(self._length_s) - 1, 0, -1)
            if before < self._length_s - left <= self._gone_s
        ]

    def _next_phase(self) -> list[RoundCue]:
        planned = self.task.planned
        if self.phase is RoundPhase.MOVE and planned.hold_s:
            return self._enter(RoundPhase.HOLD, float(planned.hold_s))
        if self.phase in (RoundPhase.MOVE, RoundPhase.HOLD):
            return self._enter(RoundPhase.BACK, MOVE_S)
        if self.phase in (RoundPhase.BACK, RoundPhase.SWING):
            return self._end_repetition()
        return self._begin_repetition()

    def _begin_repetition(self) -> list[RoundCue]:
        if self.task.planned.exercise.swinging:
            return self._enter(RoundPhase.SWING, SWING_S)
        return self._enter(RoundPhase.MOVE, MOVE_S)

    def _end_repetition(self) -> list[RoundCue]:
        """Count a repetition; what follows is a rest, the next swing, or the next task."""
        self._done[self._place] += 1
        cue = RoundCue(kind=CueKind.REPETITION_DONE, phase=self.phase, number=self.done)
        if self.done >= (self.task.planned.repetitions or MOST_REPETITIONS):
            return [cue, *self._next_task()]
        if self.phase is RoundPhase.SWING:
            return [cue, *self._begin_repetition()]
        return [cue, *self._enter(RoundPhase.REST, REST_S)]

    def _next_task(self) -> list[RoundCue]:
        cue = RoundCue(kind=CueKind.EXERCISE_DONE, phase=self.phase, number=self.done)
        if self.upcoming is None:
            return [cue, *self._enter(RoundPhase.OVER, 0.0)]
        self._place += 1
        return [cue, *self._enter(RoundPhase.READY, READY_S)]

    def _enter(self, phase: RoundPhase, length_s: float) -> list[RoundCue]:
        self.phase, self._length_s, self._gone_s = phase, length_s, 0.0
        return [RoundCue(kind=CueKind.PHASE, phase=phase, number=self.repetition)]

    # -- what the person does ----------------------------------------------------------------

    def pause(self) -> None:
        """Stop the clock. The arm comes to rest, so the repetition begins anew afterwards."""
        if self.over or self.paused:
            return
        self.paused = True
        if self.phase is not RoundPhase.READY:
            self.phase, self._length_s = RoundPhase.READY, READY_AGAIN_S
        self._gone_s = 0.0

    def go_on(self) -> list[RoundCue]:
        """Go on after a pause, or begin at once instead of getting ready."""
        if self.paused:
            self.paused = False
            return [RoundCue(kind=CueKind.PHASE, phase=self.phase, number=self.repetition)]
        return self._begin_repetition() if self.phase is RoundPhase.READY else []

    def next_exercise(self) -> list[RoundCue]:
        """Leave the present task as it is, done in part or not at all, and go on to the next.

        Without a number of repetitions it was done once as soon as one is under way.
        """
        if self.over:
            return []
        self.paused = False
        if self.done or not self.open_ended:
            return self._next_task()
        self._done[self._place] = 1
        cue = RoundCue(kind=CueKind.REPETITION_DONE, phase=self.phase, number=1)
        return [cue, *self._next_task()]

    def leave_exercise(self) -> list[RoundCue]:
        """Leave the present exercise with both sides, as after pain."""
        cues: list[RoundCue] = []
        exercise = self.task.planned.exercise
        while not self.over and self.task.planned.exercise == exercise:
            cues += self.next_exercise()
        return cues[-2:]

    def stop(self) -> None:
        """End the round; what was done stays."""
        self.paused = False
        self._enter(RoundPhase.OVER, 0.0)
