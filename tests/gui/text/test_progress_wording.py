"""Wording of a movement's progress for the window."""

from dataclasses import replace

import numpy as np
import pytest

from gui.text.progress_wording import rate_line, verdict_line
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.progress.current_verdict import ShownSlope
from measure.progress.overview import progress_of
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import MINUS
from tests.support.progress_histories import day, history

LEFT = (Movement.FLEXION, Side.LEFT)
NOISE = np.random.default_rng(4).normal(0, 2, 100)


def unclear(per_month: float, low: float, high: float) -> SideProgress:
    """Return an affected shoulder without a clear change, and this change a month."""
    days = {LEFT: [(number, 90 + NOISE[number]) for number in range(0, 100, 2)]}
    found = progress_of(history(days), day(100)).of(*LEFT)
    assert found is not None
    shown = ShownSlope(per_month=per_month, low=low, high=high, shrunk=False)
    verdict = Verdict.NO_CLEAR_CHANGE
    current = replace(found.current, verdict=verdict, shown=shown)
    return replace(found, verdict=verdict, current=current, affected=True)


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (
            (12.0, 5.0, 18.0),
            "+12° (+5 to +18) a month, not certain enough to call it a change.",
        ),
        (
            (-9.0, -14.0, -4.0),
            f"{MINUS}9° ({MINUS}14 to {MINUS}4) a month, not certain enough to call it a change.",
        ),
        ((1.0, -4.0, 6.0), f"It could be more movement or less: +1° ({MINUS}4 to +6) a month."),
    ],
)
def test_a_change_that_is_not_clear_is_put_plainly(
    change: tuple[float, float, float], said: str
) -> None:
    side = unclear(*change)
    assert rate_line(side) == f"Left: {said[:1].lower()}{said[1:]}"
    assert verdict_line(side).endswith(f". {said}")


def test_nothing_is_said_of_the_shoulder_that_is_well() -> None:
    side = replace(unclear(12.0, 5.0, 18.0), affected=False)
    assert rate_line(side) == ""
    assert "a month" not in verdict_line(side)
