"""What exercises do for the hour after them: which sessions count as after, and by how much."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

import pytest

from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Event, EventKind, History, SessionRecord
from measure.domain.session_facts import ExerciseTiming, SessionState
from measure.domain.session_timing import timing_of
from measure.progress.series import all_series, series_by_timing
from measure.progress.warm_up import LEAST_PAIRS, warm_up_effects
from measure.system.clock import Timestamp
from tests.support.progress_histories import day, history
from tests.support.record_samples import person, some_id

LEFT = (Movement.FLEXION, Side.LEFT)


def _done(session: SessionRecord, minutes_before: float) -> ExerciseLog:
    return ExerciseLog(
        id=some_id(f"{session.id} {minutes_before}"),
        person_id=session.person_id,
        exercise=Exercise(listed=ListedExercise.PENDULUM),
        done=Timestamp(utc=session.started.utc - dt.timedelta(minutes=minutes_before)),
    )


def _with_timing(found: History, after: Sequence[int]) -> History:
    """Say of the sessions on these days that they were after exercises, of others before."""
    days = {day(number) for number in after}
    return replace(
        found,
        sessions=tuple(
            replace(
                session,
                state=SessionState(
                    timing=(
                        ExerciseTiming.AFTER
                        if session.started.day in days
                        else ExerciseTiming.BEFORE
                    )
                ),
            )
            for session in found.sessions
        ),
    )


@pytest.mark.parametrize(
    ("minutes", "expected"),
    [(0, ExerciseTiming.AFTER), (60, ExerciseTiming.AFTER), (61, None), (-1, None)],
)
def test_the_log_says_what_the_session_does_not(minutes: float, expected: object) -> None:
    (session,) = history({LEFT: [(0, 100.0)]}).sessions
    log = _done(session, minutes)
    assert timing_of(session, [log]) is expected
    stated = replace(session, state=SessionState(timing=ExerciseTiming.BEFORE))
    assert timing_of(stated, [log]) is ExerciseTiming.BEFORE


def test_sessions_after_exercises_are_a_series_of_their_own() -> None:
    found = history({LEFT: [(0, 100.0), (1, 110.0), (2, 101.0), (4, 102.0)]})
    logged = replace(found, exercises_done=(_done(found.sessions[1], 20),))
    before, after = series_by_timing(logged)
    assert (before.after_exercises, after.after_exercises) == (False, True)
    assert list(after.value) == [110.0]
    (verdicts,) = all_series(logged)
    assert list(verdicts.value) == [100.0, 101.0, 102.0]


def test_who_mostly_measures_after_exercises_is_judged_by_that() -> None:
    found = _with_timing(history({LEFT: [(k, 100.0 + k) for k in range(6)]}), [1, 2, 3, 4])
    (verdicts,) = all_series(found)
    assert verdicts.after_exercises
    assert list(verdicts.value) == [101.0, 102.0, 103.0, 104.0]


def _alternating(gain: float, pairs: int) -> History:
    """A level shoulder, every second session after exercises and so much higher."""
    wobble = (1.0, -1.0, 0.5, -0.5)
    values = [
        (2 * k + after, 100.0 + wobble[(k + after) % 4] + after * gain)
        for k in range(pairs + 2)
        for after in (0, 1)
    ]
    return _with_timing(history({LEFT: values}), [2 * k + 1 for k in range(pairs + 2)])


def test_the_effect_is_that_of_pairs_with_its_interval() -> None:
    (effect,) = warm_up_effects(_alternating(6.0, 10))
    assert effect.pairs == 10  # the first two sessions are practice
    assert effect.low < 6.0 < effect.high
    assert effect.value == pytest.approx(6.0, abs=0.5)
    assert effect.clear
    (none,) = warm_up_effects(_alternating(0.0, 10))
    assert not none.clear


def test_few_or_distant_pairs_give_no_effect() -> None:
    assert warm_up_effects(_alternating(6.0, LEAST_PAIRS - 1)) == ()
    values = [(5 * k, 100.0 + 5 * (k % 2)) for k in range(30)]
    distant = _with_timing(history({LEFT: values}), [5 * k for k in range(1, 30, 2)])
    assert warm_up_effects(distant) == ()


def test_no_pair_spans_an_event() -> None:
    found = _alternating(6.0, LEAST_PAIRS)
    who = person()
    flares = tuple(
        Event(id=some_id(f"flare {k}"), person_id=who.id, day=day(k), kind=EventKind.FLARE)
        for k in range(2 * (LEAST_PAIRS + 2))
    )
    assert warm_up_effects(found)
    assert warm_up_effects(replace(found, events=flares)) == ()
