"""Phases of a series: what it did before each break."""

import numpy as np

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Event, EventKind
from measure.progress.overview import progress_of
from measure.progress.phases import SeriesPhase
from measure.progress.weekly_verdicts import Verdict
from tests.support.progress_histories import day, history
from tests.support.record_samples import event, person, some_id

LEFT = (Movement.FLEXION, Side.LEFT)
#: Every second day of ten weeks down by 0.3 degrees a day, then of ten weeks up again.
COURSE_DAYS = np.arange(0, 140, 2)
COURSE_VALUES = 120 - 0.3 * np.minimum(COURSE_DAYS, 70) + 0.4 * np.maximum(COURSE_DAYS - 70, 0)
COURSE = list(zip(COURSE_DAYS.tolist(), COURSE_VALUES.tolist(), strict=True))


def earlier_phases(*events: Event, today: int = 140) -> tuple[SeriesPhase, ...]:
    found = progress_of(history({LEFT: COURSE}, events=events), day(today))
    side = found.of(*LEFT)
    assert side is not None
    return side.earlier


def injection(number: int) -> Event:
    return event(
        person(),
        id=some_id(f"injection {number}"),
        kind=EventKind.INJECTION,
        day=day(number),
        side=Side.LEFT,
    )


def test_without_a_break_there_is_no_earlier_phase() -> None:
    assert earlier_phases() == ()


def test_a_loss_before_an_injection_is_told_though_it_gains_since() -> None:
    (before,) = earlier_phases(injection(70))
    assert (before.first, before.last, before.ended) == (day(0), day(70), day(71))
    assert before.ended_by == "injection"
    assert before.verdict is Verdict.LOSING
    assert before.slope is not None
    assert round(before.slope.per_day, 2) == -0.3


def test_a_short_phase_is_too_early_to_say() -> None:
    first, second = earlier_phases(injection(14), injection(70))
    assert first.verdict is Verdict.TOO_EARLY
    assert first.slope is None
    assert second.verdict is Verdict.LOSING


def test_two_breaks_without_a_reading_between_end_one_phase() -> None:
    flare = event(person(), id=some_id("flare"), kind=EventKind.FLARE, day=day(72), side=Side.LEFT)
    (before,) = earlier_phases(injection(70), flare)
    assert before.ended_by == "injection and flare"


def test_a_break_still_to_come_ends_nothing() -> None:
    assert earlier_phases(injection(70), today=69) == ()
