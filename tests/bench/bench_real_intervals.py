"""How wide the intervals of elevations must be on real people, and what they hold of others.

Split conformal prediction (Lei 2018, doi:10.1080/01621459.2017.1307116) over |error| / difficulty.
Whole groups are left out, and each group counts as one witness however many arms it has.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.measurements import IntervalBasis
from measure.kinematics.uncertainty import difficulty, interval_basis, with_allowance
from tests.bench.bench_real_figures import Figure, mean_figure
from tests.bench.bench_real_readings import ArmReading

#: What an interval is to hold, and a range that counts as raised, degrees.
SHARE, RAISED_DEG = 0.95, 30.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """Intervals whose width was taken from all other groups.

    Attributes
    ----------
    width
        The half-width at difficulty 1 that all groups together call for, degrees.
    held, held_raised
        Share of the marked angles inside the intervals of groups left out; None where no arm is
        raised.
    half
        Mean half-width of those, degrees.
    """

    width: float
    held: Figure
    held_raised: Figure | None
    half: float


def resting_on_real_people(readings: Sequence[ArmReading]) -> list[ArmReading]:
    """Return the accepted readings whose interval rests on real people."""
    return [
        one
        for one in readings
        if one.accepted
        and interval_basis(one.arm.task.movement, one.arm.task.known_view)
        is IntervalBasis.REAL_PEOPLE
    ]


def group_conformal(scores: FloatArray, groups: Sequence[str]) -> float:
    """Return the conformal quantile of scores in which each group weighs the same.

    The largest score where the groups are too few for the share.
    """
    sizes = Counter(groups)
    weights = np.array([1.0 / sizes[group] for group in groups])
    order = np.argsort(scores)
    reached = np.cumsum(weights[order]) / (len(sizes) + 1)
    enough = np.flatnonzero(reached >= SHARE - 1e-9)
    return float(scores[order[enough[0] if len(enough) else -1]])


def left_out(readings: Sequence[ArmReading]) -> LeftOut:
    """Return what intervals hold whose width comes from the other groups alone."""
    groups = np.array([one.arm.group for one in readings])
    sizes = np.abs([one.error_deg for one in readings])
    hardness = np.array([_difficulty(one) for one in readings])
    scores = sizes / hardness
    halves = np.zeros(len(readings))
    for group in np.unique(groups):
        out = groups == group
        width = group_conformal(scores[~out], list(groups[~out]))
        for place in np.flatnonzero(out):
            movement = readings[place].arm.task.movement
            halves[place] = with_allowance(movement, width * hardness[place])
    inside = (sizes <= halves).astype(np.float64)
    raised = np.array([one.arm.marked_deg >= RAISED_DEG for one in readings])
    return LeftOut(
        width=group_conformal(scores, list(groups)),
        held=mean_figure(inside, list(groups)),
        held_raised=mean_figure(inside[raised], list(groups[raised])) if raised.any() else None,
        half=float(np.mean(halves)),
    )


def _difficulty(one: ArmReading) -> float:
    assert one.value_deg is not None
    task = one.arm.task
    return difficulty(task.movement, task.known_view, one.value_deg, one.spread_deg, one.notes)
