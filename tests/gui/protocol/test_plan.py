"""The order of a session, told by events alone."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gui.protocol.plan import (
    CLINIC_TRIALS,
    HOME_MOVEMENTS,
    AttemptState,
    MovementTask,
    SessionPlan,
    SessionStep,
    baseline_tasks,
    faces_away_from_screen,
    home_tasks,
)
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance, Trial
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.domain.records import LimitingFactor
from measure.live.events import LiveEvent, LiveEventKind
from measure.trials.aggregation import aggregate_trials

ONE = MovementTask(movement=Movement.FLEXION, side=Side.RIGHT, trials=2, practice=1)
TWO = replace(ONE, side=Side.LEFT)


def trial(value: float = 120.0, *, refused_for: tuple[Reason, ...] = ()) -> Trial:
    known = None if refused_for else value
    return Trial(
        value=known,
        low=None if refused_for else value - 5,
        high=None if refused_for else value + 5,
        start_s=0,
        end_s=4,
        hold_start_s=2,
        hold_end_s=3,
        refused_for=refused_for,
    )


def measurement(*trials: Trial) -> Measurement:
    return aggregate_trials(
        trials,
        MeasurementTask(Movement.FLEXION, Side.RIGHT, View.SIDE),
        Provenance(model="heavy"),
    )


def event(kind: LiveEventKind, number: int = 0, **more: object) -> LiveEvent:
    return LiveEvent(kind=kind, trial_id=number, **more)  # type: ignore[arg-type]


def take_trials(guide: SessionPlan, *, count: int = 2) -> None:
    """Practise once and score some trials."""
    guide.take(event(LiveEventKind.TRIAL_CAPTURED, 1, practice=True))
    guide.take(event(LiveEventKind.TRIAL_REFINED, 1, practice=True, trial=trial()))
    for number in range(2, 2 + count):
        guide.take(event(LiveEventKind.TRIAL_CAPTURED, number, value=119.0))
        guide.take(event(LiveEventKind.TRIAL_REFINED, number, trial=trial()))


def done(guide: SessionPlan) -> None:
    guide.take(event(LiveEventKind.MEASUREMENT_DONE, measurement=measurement(trial(), trial())))


def test_a_session_goes_from_practice_to_the_next_movement() -> None:
    guide = SessionPlan([ONE, TWO])
    assert (guide.step, guide.practice_left, guide.counted) == (SessionStep.MEASURING, 1, 0)
    take_trials(guide)
    assert (guide.practice_left, guide.counted) == (0, 2)
    done(guide)
    assert guide.step is SessionStep.PAIN
    outcome = guide.answer(3, LimitingFactor.STIFFNESS)
    assert (outcome.pain, outcome.stopped_by) == (3, LimitingFactor.STIFFNESS)
    assert outcome.measurement is not None
    assert (guide.step, guide.upcoming, guide.task_position) == (SessionStep.NEXT, TWO, (1, 2))
    assert guide.go_on() == TWO
    assert (guide.step, guide.attempts, guide.measurement) == (SessionStep.MEASURING, (), None)
    take_trials(guide)
    done(guide)
    guide.answer(None, None)
    assert guide.step is SessionStep.FINISHED
    assert [each.task for each in guide.outcomes] == [ONE, TWO]


def test_a_captured_trial_is_settling_until_it_is_settled() -> None:
    guide = SessionPlan([ONE])
    guide.take(event(LiveEventKind.TRIAL_CAPTURED, 7, value=118.0))
    assert guide.attempts[-1].state is AttemptState.REFINING
    assert guide.attempts[-1].guide_value == 118.0
    guide.take(event(LiveEventKind.TRIAL_REFINED, 7, trial=trial(121.0)))
    assert [each.state for each in guide.attempts] == [AttemptState.SCORED]
    assert guide.attempts[0].trial == trial(121.0)


def test_a_refused_trial_is_told_and_not_counted() -> None:
    guide = SessionPlan([ONE])
    guide.take(event(LiveEventKind.TRIAL_CAPTURED, 1))
    refused = trial(refused_for=(Reason.ELBOW_BENT,))
    guide.take(event(LiveEventKind.TRIAL_REFUSED, 1, trial=refused))
    assert guide.counted == 0
    assert guide.last_refusal == refused
    guide.take(event(LiveEventKind.TRIAL_CAPTURED, 2))
    assert guide.last_refusal is None


def test_a_discarded_trial_is_gone() -> None:
    guide = SessionPlan([ONE])
    take_trials(guide)
    assert guide.can_discard
    guide.take(event(LiveEventKind.TRIAL_DISCARDED, 3))
    assert guide.counted == 1
    assert [each.trial_id for each in guide.attempts] == [1, 2]


def test_a_discarded_trial_comes_back_to_its_place() -> None:
    guide = SessionPlan([ONE])
    take_trials(guide)
    before = [(each.trial_id, each.state) for each in guide.attempts]
    guide.take(event(LiveEventKind.TRIAL_DISCARDED, 2))
    guide.take(
        event(LiveEventKind.TRIAL_RESTORED, 2, trial=trial(), measurement=measurement(trial()))
    )
    assert [(each.trial_id, each.state) for each in guide.attempts] == before
    assert guide.measurement == measurement(trial())
    guide.take(event(LiveEventKind.TRIAL_DISCARDED, 3))
    guide.take(event(LiveEventKind.TRIAL_RESTORED, 3))
    assert guide.attempts[-1].state is AttemptState.REFINING


def test_stopping_with_nothing_captured_asks_no_pain() -> None:
    guide = SessionPlan([ONE, TWO])
    guide.end_movement()
    guide.take(event(LiveEventKind.MEASUREMENT_DONE))
    assert guide.step is SessionStep.NEXT
    assert guide.outcomes[0].measurement is None


def test_stopping_after_a_trial_keeps_it_and_asks_pain() -> None:
    guide = SessionPlan([ONE])
    take_trials(guide, count=1)
    guide.end_movement()
    guide.take(event(LiveEventKind.MEASUREMENT_DONE, measurement=measurement(trial())))
    assert guide.step is SessionStep.PAIN
    assert guide.outcomes[0].measurement is not None


def test_pause_and_resume_are_noted_at_any_step() -> None:
    guide = SessionPlan([ONE])
    guide.take(event(LiveEventKind.PAUSED))
    assert guide.paused
    guide.take(event(LiveEventKind.RESUMED))
    assert not guide.paused


def test_ending_a_session_leaves_out_what_has_not_begun() -> None:
    guide = SessionPlan([ONE, TWO])
    take_trials(guide)
    done(guide)
    guide.answer(0, None)
    guide.end_session()
    assert guide.step is SessionStep.FINISHED
    assert len(guide.outcomes) == 1


def test_a_movement_can_be_measured_again_and_others_added() -> None:
    guide = SessionPlan([ONE, TWO])
    take_trials(guide)
    done(guide)
    guide.answer(0, None)
    assert guide.again() == ONE
    assert guide.task_position == (2, 3)
    done(guide)
    guide.answer(0, None)
    assert guide.add(TWO) == TWO
    assert guide.task_position == (3, 3)


@pytest.mark.parametrize(
    ("call", "part"),
    [
        (lambda guide: guide.answer(1, None), "after a movement"),
        (lambda guide: guide.go_on(), "no next task"),
        (lambda guide: guide.again(), "still going on"),
    ],
)
def test_steps_out_of_order_are_wrong_use(call: object, part: str) -> None:
    with pytest.raises(ValueError, match=part):
        call(SessionPlan([ONE]))  # type: ignore[operator]


def test_a_session_without_tasks_is_wrong_use() -> None:
    with pytest.raises(ValueError, match="at least one"):
        SessionPlan([])


def test_events_that_do_not_belong_to_the_step_change_nothing() -> None:
    guide = SessionPlan([ONE])
    take_trials(guide)
    done(guide)
    before = guide.attempts
    guide.take(event(LiveEventKind.TRIAL_CAPTURED, 9))
    assert guide.attempts == before


def test_at_home_the_good_shoulder_comes_first() -> None:
    tasks = home_tasks(HOME_MOVEMENTS, Side.LEFT)
    assert [each.side for each in tasks] == [Side.RIGHT, Side.LEFT] * 4
    assert [each.movement for each in tasks[::2]] == list(HOME_MOVEMENTS)
    assert home_tasks(HOME_MOVEMENTS, Side.RIGHT)[0].side is Side.LEFT


@given(st.sets(st.sampled_from(Movement)), st.sets(st.sampled_from(Side)))
def test_part_of_the_baseline_keeps_its_order(movements: set[Movement], sides: set[Side]) -> None:
    for affected in ((), (Side.LEFT,), (Side.RIGHT,), tuple(Side)):
        whole = baseline_tasks(affected)
        assert len(set(whole)) == 10
        assert {(each.trials, each.practice) for each in whole} == {(CLINIC_TRIALS, 0)}
        part = baseline_tasks(affected, movements, sides)
        kept = (each for each in whole if each.movement in movements and each.side in sides)
        assert part == tuple(kept)


def test_a_sore_day_asks_for_less() -> None:
    tasks = home_tasks(HOME_MOVEMENTS, None, sore_day=True)
    assert {each.trials for each in tasks} == {2}
    assert Movement.HAND_BEHIND_BACK not in {each.movement for each in tasks}


def test_a_movement_that_hurt_much_leaves_less_to_be_asked_for() -> None:
    guide = SessionPlan(home_tasks((Movement.ABDUCTION, Movement.HAND_BEHIND_BACK), Side.LEFT))
    take_trials(guide)
    done(guide)
    guide.answer(6, None)
    assert (guide.task_position[1], guide.upcoming) == (
        4,
        MovementTask(movement=Movement.ABDUCTION, side=Side.LEFT),
    )
    guide.go_on()
    take_trials(guide)
    done(guide)
    guide.answer(7, LimitingFactor.PAIN)
    # Nothing but the reach behind the back was left, and that is not asked for any more.
    assert guide.step is SessionStep.FINISHED


def test_after_much_pain_two_trials_of_the_rest_are_enough() -> None:
    guide = SessionPlan([ONE, TWO])
    take_trials(guide)
    done(guide)
    guide.answer(8, None)
    assert guide.upcoming == replace(TWO, trials=2)


def test_the_screen_is_out_of_sight_only_with_the_back_turned() -> None:
    assert [each for each in Movement if faces_away_from_screen(each)] == [
        Movement.HAND_BEHIND_BACK
    ]


@settings(deadline=None)
@given(
    st.lists(
        st.tuples(st.sampled_from(list(LiveEventKind)), st.integers(1, 4), st.booleans()),
        max_size=30,
    )
)
def test_no_order_of_events_breaks_the_guide(
    happened: list[tuple[LiveEventKind, int, bool]],
) -> None:
    guide = SessionPlan([ONE, TWO])
    for kind, number, practice in happened:
        refused = kind is LiveEventKind.TRIAL_REFUSED
        found = trial(refused_for=(Reason.NO_HOLD,)) if refused else trial()
        whole = measurement(found) if kind is LiveEventKind.MEASUREMENT_DONE else None
        guide.take(event(kind, number, practice=practice, trial=found, measurement=whole))
        assert guide.counted >= 0
        assert 0 <= guide.practice_left <= 1
        assert guide.task_position[0] <= guide.task_position[1]
        if guide.step is SessionStep.PAIN:
            guide.answer(None, None)
