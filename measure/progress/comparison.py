"""Comparison of a series with its own past and with the other shoulder. Pure statistics.

A single measurement carries the error of its day, so blocks of some days are compared. A camera
that was moved shows both shoulders a step higher or lower; to tell that from a change of one
shoulder, a changing series is parted where its height changes most, and the other shoulder's
days are compared at that very place.
"""

import datetime as dt
import math
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.progress.series import Series
from measure.progress.weekly_verdicts import WINDOW_DAY, WeeklyCheck

#: A baseline is the first three days, and up to five of the first three weeks. Ours.
BASELINE_DAYS = (3, 5)
BASELINE_WITHIN_DAY = 21
#: The recent block: up to five days of the last three weeks with readings; three where so many
#: lie within six weeks, as on a side that is measured less often. Ours.
RECENT_DAYS = (3, 5)
RECENT_WITHIN_DAY = (42, 21)
#: A median of three or more days scatters this many times more than their mean would.
_MEDIAN_TO_MEAN = 1.2
_NORMAL_95 = 1.96
#: The other shoulder's move must be clear by so many standard deviations. Little: a doubt about
#: the set-up costs a week or two of waiting, a false gain costs trust. Ours, by simulation.
DRIFT_CLEAR = 1.5
#: And it must be at least this share of the move in question. Ours.
DRIFT_SHARE = 0.5
#: Fewest days of the other shoulder on which to ask, of which so many on each side. Ours.
DRIFT_LEAST_DAYS = 4
#: Fewest days on each side of the place where a series is parted. Ours.
_LEAST_PART = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Some days of a series taken together.

    Attributes
    ----------
    value, low, high
        Medians of the days' values and of the ends of their 95 % intervals, in the movement's
        unit. Many days do not make this interval narrower: most of it is shared by all.
    half_width
        Half of the 95 % interval for comparing the block with another one of the same person,
        measured in the same way: here only the scatter from day to day counts.
    days
        How many days with a reading.
    first, last
        The first and last of them.
    """

    value: float
    low: float
    high: float
    half_width: float
    days: int
    first: dt.date
    last: dt.date


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """From one block to a later one: difference and its 95 % interval."""

    value: float
    low: float
    high: float


def baseline_block(series: Series, spread: float) -> Block:
    """Return the first block of a series that is not empty.

    Parameters
    ----------
    spread
        Standard deviation of one day about the trend, in the movement's unit.
    """
    within = int((series.day < series.day[0] + BASELINE_WITHIN_DAY).sum())
    least, most = BASELINE_DAYS
    return _block(series, slice(0, min(max(within, least), most)), spread)


def recent_block(series: Series, spread: float) -> Block:
    """Return the latest block of a series that is not empty."""
    long, short = (
        int((series.day > series.day[-1] - within).sum()) for within in RECENT_WITHIN_DAY
    )
    least, most = RECENT_DAYS
    days = max(min(short, most), min(long, least))
    return _block(series, slice(len(series) - days, None), spread)


def change_between(before: Block, after: Block) -> Change | None:
    """Return the change between two blocks, or None where they share a day."""
    if after.first <= before.last:
        return None
    half = float(np.hypot(before.half_width, after.half_width))
    change = after.value - before.value
    return Change(value=change, low=change - half, high=change + half)


def _block(series: Series, chosen: slice, spread: float) -> Block:
    days = series.day[chosen]

    def middle(numbers: FloatArray) -> float:
        return float(np.median(numbers[chosen]))

    wider = _MEDIAN_TO_MEAN if len(days) > 2 else 1.0
    return Block(
        value=middle(series.value),
        low=middle(series.low),
        high=middle(series.high),
        half_width=float(_NORMAL_95 * wider * spread / np.sqrt(len(days))),
        days=len(days),
        first=dt.date.fromordinal(round(float(days[0]))),
        last=dt.date.fromordinal(round(float(days[-1]))),
    )


def shared_drift(series: Series, twin: Series, look: WeeklyCheck) -> float | None:
    """Return how far the other shoulder moved together with a series, or None where it did not.

    Parameters
    ----------
    twin
        The other shoulder's days, measured as the series is.
    look
        The look whose change is in question; only what it could see is used.
    """
    if look.slope is None:
        return None
    at = look.day.toordinal()
    segment = series.latest_segment()
    used = (segment.day < at) & (segment.day >= at - WINDOW_DAY)
    day, value = segment.day[used], segment.value[used]
    if len(day) < 2 * _LEAST_PART:
        return None
    part = _parting(value)
    border = (day[part - 1] + day[part]) / 2
    known = (twin.day < at) & (twin.day >= day[0])
    before, after = twin.value[known & (twin.day < border)], twin.value[known & (twin.day > border)]
    if not len(before) or not len(after) or len(before) + len(after) < DRIFT_LEAST_DAYS:
        return None
    moved = float(np.median(value[part:]) - np.median(value[:part]))
    together = float(np.median(after) - np.median(before))
    if together * moved <= 0 or abs(together) < DRIFT_SHARE * abs(moved):
        return None
    error = look.slope.spread * math.hypot(_error(before), _error(after))
    return together if abs(together) > DRIFT_CLEAR * error else None


def _parting(value: FloatArray) -> int:
    """Return how many of the first days to part from the rest, so that both are most level."""
    count = np.arange(1, len(value))
    total = np.cumsum(value)
    # Leaving as little scatter as possible means as much between the parts as possible.
    between = (total[:-1] - count * value.mean()) ** 2 / (count * (len(value) - count))
    return int(np.argmax(between[_LEAST_PART - 1 : len(value) - _LEAST_PART])) + _LEAST_PART


def _error(values: FloatArray) -> float:
    """Return the standard error of a median, in standard deviations of one day."""
    return (_MEDIAN_TO_MEAN if len(values) > 2 else 1.0) / math.sqrt(len(values))
