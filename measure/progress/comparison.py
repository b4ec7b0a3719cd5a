"""Blocks of days and the change between two of them. Pure statistics.

A single reading carries the error of its day; a block of some days is what one compares.
"""

import datetime as dt
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.progress.series import Series

#: A baseline is the first three days, and up to five of the first three weeks. Ours.
BASELINE_DAYS = (3, 5)
BASELINE_WITHIN_DAY = 21
#: The recent block: up to five days of the last three weeks with readings; three where so many
#: lie within six weeks, as on a side that is measured less often. Ours.
RECENT_DAYS = (3, 5)
RECENT_WITHIN_DAY = (42, 21)
#: A median of three to five scatters this many times more than their mean would.
_MEDIAN_TO_MEAN = 1.2
_NORMAL_95 = 1.96


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
