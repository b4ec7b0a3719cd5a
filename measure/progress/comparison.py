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
from measure.trend.trend_line import mean_variance

#: Fewest and most days of the baseline, the first days of a series. [project]
BASELINE_DAYS = (3, 5)
#: Days beyond the fewest belong to the baseline only within this many days. [project]
BASELINE_WITHIN_DAY = 21
#: Fewest and most days of the recent block, the latest days of a series. [project]
RECENT_DAYS = (3, 5)
#: Days within which the fewest and the most days of the recent block must lie; the longer span
#: is for a side that is measured less often. [project]
RECENT_WITHIN_DAY = (42, 21)
#: Factor by which a median of three or more days scatters more than their mean. [project]
_MEDIAN_TO_MEAN = 1.2
#: Degrees of freedom of a spread that is taken as exact: as good as normal. [technical]
_FREEDOM_OF_USUAL = 1000.0
#: Standard deviations by which the other shoulder's move must be clear. Chosen by simulation and
#: low: a doubt about the set-up costs a week or two of waiting, a false gain costs trust. [project]
DRIFT_CLEAR = 1.5
#: Least move of the other shoulder as a share of the move in question. [project]
DRIFT_SHARE = 0.5
#: Fewest days of the other shoulder, before and after together, for the comparison. [project]
DRIFT_LEAST_DAYS = 4
#: Fewest days on each side of the place where a series is parted. [project]
_LEAST_PART = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Scatter:
    """How far one day scatters about the trend.

    Attributes
    ----------
    spread
        Standard deviation of one day, in the movement's unit.
    related
        Autocorrelation of neighbouring days.
    degrees_of_freedom
        With which the spread is known.
    """

    spread: float
    related: float = 0.0
    degrees_of_freedom: float = _FREEDOM_OF_USUAL


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Some days of a series summarised by one value and its intervals.

    Attributes
    ----------
    value, low, high
        Medians of the days' values and of the ends of their 95 % intervals, in the movement's
        unit. Many days do not make this interval narrower: most of it is shared by all.
    half_width
        Half of the 95 % interval for comparing the block with another one of the same person,
        measured in the same way: here only the scatter from day to day counts, with its t value and
        the autocorrelation of the days.
    days
        Number of days with a measurement.
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
    """Difference of a later block from an earlier one, with its 95 % interval."""

    value: float
    low: float
    high: float


def baseline_block(series: Series, scatter: Scatter) -> Block:
    """Return the first block of a series that is not empty."""
    within = int((series.day < series.day[0] + BASELINE_WITHIN_DAY).sum())
    least, most = BASELINE_DAYS
    return block_of(_part(series, slice(0, min(max(within, least), most))), scatter)


def recent_block(series: Series, scatter: Scatter) -> Block:
    """Return the latest block of a series that is not empty."""
    long, short = (
        int((series.day > series.day[-1] - within).sum()) for within in RECENT_WITHIN_DAY
    )
    least, most = RECENT_DAYS
    days = max(min(short, most), min(long, least))
    return block_of(_part(series, slice(len(series) - days, None)), scatter)


def change_between(before: Block, after: Block) -> Change | None:
    """Return the change between two blocks, or None where they share a day."""
    if after.first <= before.last:
        return None
    half = float(np.hypot(before.half_width, after.half_width))
    change = after.value - before.value
    return Change(value=change, low=change - half, high=change + half)


def block_of(series: Series, scatter: Scatter) -> Block:
    """Return all days of a series that is not empty as one block."""
    from scipy import special  # loaded when first needed: the window starts without it

    days = len(series)
    reach = float(special.stdtrit(scatter.degrees_of_freedom, 0.975))
    error = _widening(days) * math.sqrt(mean_variance(days, scatter.related))
    return Block(
        value=float(np.median(series.value)),
        low=float(np.median(series.low)),
        high=float(np.median(series.high)),
        half_width=reach * error * scatter.spread,
        days=days,
        first=series.date(0),
        last=series.date(-1),
    )


def _part(series: Series, chosen: slice) -> Series:
    days = np.zeros(len(series), dtype=bool)
    days[chosen] = True
    return series.where(days)


def shared_drift(series: Series, twin: Series, check: WeeklyCheck) -> float | None:
    """Return how far the other shoulder moved together with a series, or None where it did not.

    Parameters
    ----------
    twin
        The other shoulder's days, measured in the same way.
    check
        The weekly check whose change is in question; only data from before its day are used.
    """
    if check.slope is None:
        return None
    at = check.day.toordinal()
    segment = series.latest_segment()
    used = (segment.day < at) & (segment.day >= at - WINDOW_DAY)
    day, value = segment.day[used], segment.value[used]
    if len(day) < 2 * _LEAST_PART:
        return None
    part = _parting(value)
    border = (day[part - 1] + day[part]) / 2
    before = twin.value[(twin.day >= day[0]) & (twin.day < border)]
    after = twin.value[(twin.day > border) & (twin.day < at)]
    if not len(before) or not len(after) or len(before) + len(after) < DRIFT_LEAST_DAYS:
        return None
    move = float(np.median(value[part:]) - np.median(value[:part]))
    twin_move = float(np.median(after) - np.median(before))
    if twin_move * move <= 0 or abs(twin_move) < DRIFT_SHARE * abs(move):
        return None
    error = check.slope.spread * math.hypot(_error(before), _error(after))
    return twin_move if abs(twin_move) > DRIFT_CLEAR * error else None


def _parting(value: FloatArray) -> int:
    """Return the number of first days at which parting leaves both parts most level."""
    count = np.arange(1, len(value))
    total = np.cumsum(value)
    # Leaving as little scatter as possible means as much between the parts as possible.
    between = (total[:-1] - count * value.mean()) ** 2 / (count * (len(value) - count))
    return int(np.argmax(between[_LEAST_PART - 1 : len(value) - _LEAST_PART])) + _LEAST_PART


def _error(values: FloatArray) -> float:
    """Return the standard error of a median, in standard deviations of one day."""
    return _widening(len(values)) / math.sqrt(len(values))


def _widening(days: int) -> float:
    """Return how much wider a median scatters than a mean; that of two days is their mean."""
    return _MEDIAN_TO_MEAN if days > 2 else 1.0
