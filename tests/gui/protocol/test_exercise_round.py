"""The guided round as a state machine, with a clock of the tests' own."""

import pytest

from gui.protocol.exercise_round import (
    LONGEST_STEP_S,
    MOVE_S,
    READY_AGAIN_S,
    READY_S,
    REST_S,
    SWING_S,
    CueKind,
    ExerciseResult,
    ExerciseRound,
    RoundCue,
    RoundPhase,
    RoundTask,
    duration_s,
    tasks_of,
)
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import PlannedExercise
from measure.domain.landmarks import Side

WALL = Exercise(listed=ListedExercise.WALL_WALK)
PENDULUM = Exercise(listed=ListedExercise.PENDULUM)
OWN = Exercise(own_name="Door lean")
TICK_S = 0.1


def planned(
    exercise: Exercise = WALL,
    repetitions: int | None = 2,
    hold_s: int = 5,
    sides: tuple[Side, ...] = (Side.LEFT,),
) -> PlannedExercise:
    return PlannedExercise(
        exercise=exercise, repetitions=repetitions, hold_s=hold_s, times_a_day=2, sides=sides
    )


class Led:
    """A round with its clock, and all that happened in it."""

    def __init__(self, *exercises: PlannedExercise) -> None:
        self.now_s = 100.0
        self.guided = ExerciseRound(tasks_of(exercises), self.now_s)
        self.cues: list[RoundCue] = []

    def run(self, seconds: float, tick_s: float = TICK_S) -> list[RoundCue]:
        happened = []
        for _ in range(round(seconds / tick_s)):
            self.now_s += tick_s
            happened += self.guided.advance(self.now_s)
        self.cues += happened
        return happened

    def until(self, phase: RoundPhase) -> None:
        for _ in range(100_000):
            if self.guided.phase is phase:
                return
            self.run(TICK_S)
        raise AssertionError(f"{phase} did not come")


def phases(cues: list[RoundCue]) -> list[RoundPhase]:
    return [cue.phase for cue in cues if cue.kind is CueKind.PHASE]


def test_phases_of_a_held_exercise_come_in_their_order_and_length() -> None:
    led = Led(planned())
    guided = led.guided
    assert guided.phase is RoundPhase.READY
    assert guided.left_s == READY_S
    led.run(READY_S - 0.5)
    assert guided.phase is RoundPhase.READY
    led.run(1.0)
    assert guided.phase is RoundPhase.MOVE
    led.run(MOVE_S)
    assert guided.phase is RoundPhase.HOLD
    assert guided.left_s == pytest.approx(4.5, abs=0.01)
    led.run(5.0)
    assert guided.phase is RoundPhase.BACK
    assert guided.done == 0
    led.run(MOVE_S)
    assert guided.phase is RoundPhase.REST
    assert (guided.done, guided.repetition) == (1, 2)
    led.run(REST_S)
    assert guided.phase is RoundPhase.MOVE
    led.run(20)
    assert guided.over
    assert phases(led.cues) == [
        *(RoundPhase.MOVE, RoundPhase.HOLD, RoundPhase.BACK, RoundPhase.REST),
        *(RoundPhase.MOVE, RoundPhase.HOLD, RoundPhase.BACK, RoundPhase.OVER),
    ]
    assert guided.results == (ExerciseResult(exercise=WALL, repetitions=2, planned=2),)


def test_a_hold_counts_its_seconds_down_once_each() -> None:
    led = Led(planned(repetitions=1, hold_s=7))
    led.until(RoundPhase.OVER)
    counted = [cue.number for cue in led.cues if cue.kind is CueKind.SECOND]
    assert counted == [6, 5, 4, 3, 2, 1]


@pytest.mark.parametrize("tick_s", [0.01, 0.1, 0.33, 1.7, LONGEST_STEP_S])
def test_nothing_is_lost_however_seldom_it_is_led_on(tick_s: float) -> None:
    led = Led(planned(repetitions=3), planned(PENDULUM, repetitions=4, hold_s=0))
    led.run(200, tick_s)
    assert led.guided.over
    done = [cue.number for cue in led.cues if cue.kind is CueKind.REPETITION_DONE]
    assert done == [1, 2, 3, 1, 2, 3, 4]
    assert sum(cue.kind is CueKind.SECOND for cue in led.cues) == 3 * 4


def test_a_round_takes_as_long_as_was_said() -> None:
    exercises = (planned(repetitions=3), planned(PENDULUM, repetitions=4, hold_s=0))
    led = Led(*exercises)
    led.until(RoundPhase.OVER)
    assert led.now_s - 100.0 == pytest.approx(duration_s(tasks_of(exercises)), abs=0.2)


def test_swings_are_counted_without_hold_or_rest() -> None:
    led = Led(planned(PENDULUM, repetitions=3, hold_s=0))
    led.run(READY_S + 3 * SWING_S + 0.5)
    assert phases(led.cues) == [*(3 * [RoundPhase.SWING]), RoundPhase.OVER]


def test_an_exercise_without_a_hold_goes_straight_back() -> None:
    led = Led(planned(repetitions=1, hold_s=0))
    led.until(RoundPhase.OVER)
    assert phases(led.cues) == [RoundPhase.MOVE, RoundPhase.BACK, RoundPhase.OVER]


def test_both_sides_come_one_after_the_other() -> None:
    led = Led(planned(sides=(Side.RIGHT, Side.LEFT), repetitions=1))
    sides = [task.side for task in led.guided.tasks]
    assert sides == [Side.LEFT, Side.RIGHT]
    assert tasks_of([planned(sides=())]) == (RoundTask(planned=planned(sides=())),)
    led.until(RoundPhase.BACK)
    led.until(RoundPhase.READY)
    assert led.guided.task.side is Side.RIGHT
    # The left side alone is not yet the exercise.
    assert led.guided.results == (ExerciseResult(exercise=WALL, repetitions=0, planned=1),)
    led.until(RoundPhase.OVER)
    assert led.guided.results == (ExerciseResult(exercise=WALL, repetitions=1, planned=1),)


def test_a_pause_stops_the_clock_and_the_repetition_begins_anew() -> None:
    led = Led(planned())
    led.until(RoundPhase.HOLD)
    led.run(3)
    led.guided.pause()
    assert led.run(600) == []
    assert led.guided.done == 0
    led.guided.go_on()
    assert (led.guided.phase, led.guided.left_s) == (RoundPhase.READY, READY_AGAIN_S)
    led.run(READY_AGAIN_S + 0.2)
    assert led.guided.phase is RoundPhase.MOVE
    assert led.guided.repetition == 1


def test_getting_ready_can_be_cut_short() -> None:
    led = Led(planned())
    assert phases(led.guided.go_on()) == [RoundPhase.MOVE]
    assert led.guided.go_on() == []


def test_a_computer_that_slept_pauses_the_round() -> None:
    led = Led(planned())
    led.until(RoundPhase.HOLD)
    led.run(3600, tick_s=3600)
    assert led.guided.paused
    assert led.guided.done == 0


def test_a_clock_that_runs_backwards_changes_nothing() -> None:
    led = Led(planned())
    led.run(2)
    left_s = led.guided.left_s
    assert led.guided.advance(led.now_s - 50) == []
    assert led.guided.left_s == left_s


def test_an_exercise_left_early_is_kept_as_done_in_part() -> None:
    led = Led(planned(repetitions=10), planned(OWN), planned(PENDULUM))
    led.until(RoundPhase.REST)
    led.run(REST_S + 1)
    led.guided.next_exercise()
    assert led.guided.task.planned.exercise == OWN
    assert led.guided.left_s == READY_S
    led.guided.next_exercise()  # not begun: nothing is kept of it
    led.guided.stop()
    assert led.guided.over
    assert led.guided.results == (ExerciseResult(exercise=WALL, repetitions=1, planned=10),)


def test_after_pain_the_other_side_of_the_exercise_is_left_out_too() -> None:
    led = Led(planned(sides=(Side.LEFT, Side.RIGHT)), planned(OWN))
    led.until(RoundPhase.HOLD)
    led.guided.pause()
    assert phases(led.guided.leave_exercise()) == [RoundPhase.READY]
    assert not led.guided.paused
    assert led.guided.task.planned.exercise == OWN
    assert phases(led.guided.leave_exercise()) == [RoundPhase.OVER]
    assert led.guided.results == ()


def test_without_a_planned_number_repetitions_go_on_until_the_next_exercise() -> None:
    led = Led(planned(repetitions=None, hold_s=0))
    led.run(READY_S + 5 * (2 * MOVE_S + REST_S) + 1)
    assert not led.guided.over
    assert (led.guided.done, led.guided.repetition) == (5, 6)
    led.guided.next_exercise()
    # How many would have been all of them is not known, so it is not called a part.
    assert led.guided.results == (ExerciseResult(exercise=WALL, repetitions=5),)


def test_a_round_of_twenty_minutes_never_goes_beyond_its_plan() -> None:
    exercises = (
        planned(repetitions=10, hold_s=30, sides=(Side.LEFT, Side.RIGHT)),
        planned(OWN, repetitions=12, hold_s=15),
        planned(PENDULUM, repetitions=30, hold_s=0),
    )
    assert duration_s(tasks_of(exercises)) > 20 * 60
    led = Led(*exercises)
    for minute in range(40):
        led.run(60)
        if minute % 4 == 1:
            led.guided.pause()
            led.run(20)
            led.guided.go_on()
        guided = led.guided
        assert 0 <= guided.share <= 1
        assert guided.done <= (guided.task.planned.repetitions or 50)
        assert 1 <= guided.repetition <= (guided.task.planned.repetitions or 50)
        if guided.over:
            break
    assert led.guided.over
    numbers = [cue.number for cue in led.cues if cue.kind is CueKind.REPETITION_DONE]
    assert numbers == [*range(1, 11), *range(1, 11), *range(1, 13), *range(1, 31)]
    assert [result.repetitions for result in led.guided.results] == [10, 12, 30]
    assert led.run(600) == []


def test_a_round_needs_an_exercise() -> None:
    with pytest.raises(ValueError, match="at least one"):
        ExerciseRound((), 0.0)


def test_without_a_number_the_person_ends_it_and_the_first_one_counts() -> None:
    led = Led(planned(PENDULUM, None), planned(OWN, None, hold_s=0))
    assert not led.guided.open_ended  # nothing was begun: it is skipped
    led.until(RoundPhase.SWING)
    led.run(SWING_S * 0.5)
    assert led.guided.open_ended
    kinds = [cue.kind for cue in led.guided.next_exercise()]
    assert kinds == [CueKind.REPETITION_DONE, CueKind.EXERCISE_DONE, CueKind.PHASE]
    led.guided.next_exercise()
    assert led.guided.over
    assert led.guided.results == (ExerciseResult(exercise=PENDULUM, repetitions=1),)
