"""Whether a change may come from the set-up: the other shoulder, which has no reason to, moved too.

A camera that was moved shows both shoulders a step higher or lower. So the days of a changing
series are parted where its height changes most, and the other shoulder is asked at that very
place. Pure statistics.
"""

import math

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.progress.series import Series
from measure.progress.weekly_verdicts import WINDOW_DAY, WeeklyCheck

#: The other shoulder's move must be clear by so many standard deviations. Little: a doubt about
#: the set-up costs a week or two of waiting, a false gain costs trust. Ours, by simulation.
DRIFT_CLEAR = 1.5
#: And it must be at least this share of the move in question. Ours.
DRIFT_SHARE = 0.5
#: Fewest days of the other shoulder on which to ask, of which so many on each side. Ours.
DRIFT_LEAST_DAYS = 4
#: Fewest days on each side of the place where a series is parted. Ours.
_LEAST_PART = 3
#: A median of three or more days scatters this many times more than their mean would.
_MEDIAN_TO_MEAN = 1.2


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
