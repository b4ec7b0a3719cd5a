"""Warm-up effect: how much further the arm goes after exercises than before them.

From pairs: a day measured after exercises and the nearest other day, a few days away at most, so
that weeks of change do not enter. The mean of their differences gets a t interval; the pairs count
as independent. It says what exercises do for the hour after them, not what they do over weeks.
"""

import bisect
import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import special

from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History
from measure.progress.series import Series, event_breaks, series_by_timing

#: Most days between the two sessions of a pair. [project]
PAIR_WITHIN_DAY = 3
#: Fewest pairs from which an effect is given. [project]
LEAST_PAIRS = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class WarmUpEffect:
    """Mean difference, after minus before exercises, with its 95 % interval.

    In the movement's unit: degrees, or the fraction of a reach.

    Attributes
    ----------
    pairs
        Number of pairs it rests on.
    """

    movement: Movement
    side: Side
    conduct: AssessmentCondition
    value: float
    low: float
    high: float
    pairs: int

    @property
    def clear(self) -> bool:
        """Whether the interval leaves out zero."""
        return self.low > 0 or self.high < 0


def warm_up_effects(history: History) -> tuple[WarmUpEffect, ...]:
    """Return the warm-up effect of every movement and side with enough pairs."""
    series = series_by_timing(history)
    before = {_key(item): item for item in series if not item.after_exercises}
    effects = []
    for after in series:
        if not after.after_exercises or _key(after) not in before:
            continue
        breaks = sorted(item.day.toordinal() for item in event_breaks(history.events, after.side))
        differences = _differences(before[_key(after)].counted(), after.counted(), breaks)
        if len(differences) >= LEAST_PAIRS:
            effects.append(_effect(after, differences))
    return tuple(effects)


def _key(series: Series) -> tuple[Movement, Side, AssessmentCondition]:
    return series.movement, series.side, series.conduct


def _differences(before: Series, after: Series, breaks: Sequence[int]) -> FloatArray:
    """Return the differences of the pairs, shape (n,).

    Each day belongs to one pair at most; pairs share an instrument, and no event lies between.
    """
    unused = set(range(len(before)))
    differences = []
    for day, value, instrument in zip(after.day, after.value, after.instrument, strict=True):
        near = [
            k
            for k in unused
            if abs(before.day[k] - day) <= PAIR_WITHIN_DAY
            and before.instrument[k] == instrument
            and bisect.bisect_right(breaks, before.day[k]) == bisect.bisect_right(breaks, day)
        ]
        if near:
            nearest = min(near, key=lambda k: (abs(before.day[k] - day), before.day[k]))
            unused.remove(nearest)
            differences.append(value - before.value[nearest])
    return np.array(differences, dtype=np.float64)


def _effect(after: Series, differences: FloatArray) -> WarmUpEffect:
    pairs = len(differences)
    mean = float(differences.mean())
    error = float(differences.std(ddof=1)) / math.sqrt(pairs)
    half = float(special.stdtrit(pairs - 1, 0.975)) * error
    return WarmUpEffect(
        movement=after.movement,
        side=after.side,
        conduct=after.conduct,
        value=mean,
        low=mean - half,
        high=mean + half,
        pairs=pairs,
    )
