"""A stall: no gain worth having, while a side is still short of the other."""

import numpy as np
import pytest

from measure.domain.movements import Movement
from measure.progress.stall import STALL_LEAST_WEEKS, stalled
from measure.progress.weekly_verdicts import Verdict, WeeklyCheck
from tests.measure.progress.checks import check_of

#: Level for twelve weeks, with an error of half a degree a month.
FLAT = check_of(0.0, error_per_month=0.5)


@pytest.mark.parametrize(
    ("check", "verdict", "movement", "short_by", "expected"),
    [
        (FLAT, Verdict.NO_CLEAR_CHANGE, Movement.FLEXION, 40.0, True),
        (FLAT, Verdict.LIKELY_GAINING, Movement.EXTERNAL_ROTATION, 40.0, True),
        (FLAT, Verdict.LEVEL, Movement.FLEXION, 16.0, True),
        (FLAT, Verdict.LEVEL, Movement.FLEXION, 15.0, False),
        (FLAT, Verdict.LEVEL, Movement.FLEXION, -40.0, False),
        (FLAT, Verdict.LEVEL, Movement.ABDUCTION, 40.0, False),
        (FLAT, Verdict.GAINING, Movement.FLEXION, 40.0, False),
        (FLAT, Verdict.LOSING, Movement.FLEXION, 40.0, False),
        (
            check_of(4.9, error_per_month=0.5),
            Verdict.NO_CLEAR_CHANGE,
            Movement.FLEXION,
            40.0,
            False,
        ),
        (
            check_of(0.0, error_per_month=9.0),
            Verdict.NO_CLEAR_CHANGE,
            Movement.FLEXION,
            40.0,
            False,
        ),
        (
            check_of(0.0, error_per_month=0.5, weeks=STALL_LEAST_WEEKS - 1),
            Verdict.NO_CLEAR_CHANGE,
            Movement.FLEXION,
            40.0,
            False,
        ),
    ],
)
def test_stalled(
    check: WeeklyCheck, verdict: Verdict, movement: Movement, short_by: float, expected: bool
) -> None:
    assert stalled(check, verdict, movement, short_by, 160.0) is expected


def test_a_fifth_short_is_short_where_degrees_are_few() -> None:
    assert stalled(FLAT, Verdict.LEVEL, Movement.EXTERNAL_ROTATION, 13.0, 60.0)
    assert not stalled(FLAT, Verdict.LEVEL, Movement.EXTERNAL_ROTATION, 11.0, 60.0)


def test_evidence_below_is_that_of_the_line_against_a_gain() -> None:
    # 5 - 2 degrees a month at an error of 1.5: two standard errors, with many days.
    check = check_of(2.0, error_per_month=1.5)
    assert check.evidence_below(5.0) == pytest.approx(2.0, abs=0.01)
    assert np.isclose(check.evidence_below(2.0), 0.0)
