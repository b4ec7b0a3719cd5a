"""Sudden loss: the latest sessions lie far below the weeks before them. Pure statistics.

One low session asks for another measurement on another day; how many low sessions running make a
loss depends on how often single ones of this person read low.
"""

import datetime as dt
import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray
from measure.trend.trend_line import Slope, fit_slope, mean_variance, widening

#: Days before the low sessions with which they are compared, and fewest sessions in them. [project]
BEFORE_DAY, LEAST_BEFORE = 84.0, 8
#: Spreads below the weeks before from which a session is low, and from which a single one asks for
#: another measurement. [project]
LOW_SPREADS, ASK_SPREADS = 2.0, 2.6
#: Usual spreads that a sudden loss measures at least: less can come from a bend. [project]
LEAST_SPREADS = 2.0
#: The sessions just before a sudden loss lie on the line still: so many of them, on average, at
#: most by this share of the loss below it. [project]
_JUST_BEFORE, _JUST_BEFORE_SHARE = 3, 0.35
#: Standard errors by which the mean of the low sessions must lie below. [project]
CLEAR_ERRORS = 3.7
#: Most low sessions taken together, and most days over which they lie. [project]
MOST_SESSIONS, MOST_DAY = 10, 21.0
#: Chance that as many single sessions running read low without a loss, at most. [project]
CHANCE_OF_RUN = 1e-4
#: Low single sessions, of so many, that are assumed beside a person's own. [project]
_PRIOR_LOW, _PRIOR_SESSIONS = 0.35, 8.0
#: Probability to be a usual session below which a session counts as one that read low. [project]
_ODD_WEIGHT = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class SuddenLoss:
    """Latest sessions of a series that lie far below the weeks before.

    Attributes
    ----------
    first_day
        Day of the first low session.
    by
        Mean of the low sessions minus what the weeks before led to expect, below 0, in the
        series' unit.
    sessions
        Number of low sessions running, up to the latest.
    evidence
        Mean of the low sessions over its standard error, below 0.
    confirmed
        False while they are too few to rule out single sessions that read low: measuring again on
        another day will tell.
    """

    first_day: dt.date
    by: float
    sessions: int
    evidence: float
    confirmed: bool


def sudden_loss(
    day: FloatArray, value: FloatArray, usual_spread: float, related: float = 0.0
) -> SuddenLoss | None:
    """Return the sudden loss that the latest sessions show, or None.

    Parameters
    ----------
    day, value
        Shape (n,): sessions since the last break, those of practice left out.
    usual_spread
        As for a trend line.
    related
        Autocorrelation from session to session.
    """
    if len(day) <= LEAST_BEFORE or not _may_be_low(day, value, usual_spread):
        return None
    loss: SuddenLoss | None = None
    for sessions in range(1, min(MOST_SESSIONS, len(day) - LEAST_BEFORE) + 1):
        first = len(day) - sessions
        if day[-1] - day[first] > MOST_DAY:
            break
        before = (day < day[first]) & (day >= day[first] - BEFORE_DAY)
        line = fit_slope(day[before], value[before], usual_spread)
        if int(before.sum()) < LEAST_BEFORE or line is None:
            break
        line = line.allowing_for(related)
        expected, error = _expected(day, before, value, first, line, usual_spread)
        below = value[first:] - expected[first:]
        just_before = float(np.mean((value - expected)[first - _JUST_BEFORE : first]))
        if below.max() > -LOW_SPREADS * line.spread:
            break
        error = math.hypot(error, line.spread * math.sqrt(mean_variance(sessions, related)))
        enough = sessions >= _sessions_needed(value[before], line)
        confirmed = (
            enough
            and below.mean() < -max(CLEAR_ERRORS * error, LEAST_SPREADS * usual_spread)
            and just_before > _JUST_BEFORE_SHARE * below.mean()
        )
        if confirmed or below[-1] < -ASK_SPREADS * line.spread:
            loss = SuddenLoss(
                first_day=dt.date.fromordinal(round(float(day[first]))),
                by=float(below.mean()),
                sessions=sessions,
                evidence=float(below.mean()) / error,
                confirmed=bool(confirmed),
            )
    return loss


def _may_be_low(day: FloatArray, value: FloatArray, usual_spread: float) -> bool:
    """Return whether the latest session is low enough to be held against the weeks before."""
    lately = (day >= day[-1] - MOST_DAY * 2) & (day < day[-1])
    return bool(lately.any()) and float(value[-1]) < float(np.median(value[lately]))


def _expected(
    day: FloatArray,
    before: NDArray[np.bool_],
    value: FloatArray,
    first: int,
    line: Slope,
    usual_spread: float,
) -> tuple[FloatArray, float]:
    """Return what the weeks before lead to expect of each day, shape (n,).

    Their shrunk slope is taken to go on. Beside it the standard error for the low sessions.
    """
    weight = line.inlier_weight
    total = float(weight.sum())
    level = float(weight @ value[before]) / total
    ahead = day - float(weight @ day[before]) / total
    per_day, slope_error = line.shrunk(2 * usual_spread)
    level_error = line.spread * math.sqrt(widening(line.related) / total)
    return level + per_day * ahead, math.hypot(
        level_error, slope_error * float(ahead[first:].mean())
    )


def _sessions_needed(value: FloatArray, line: Slope) -> int:
    """Return how many low sessions running are no mere run of single ones."""
    odd = float((line.inlier_weight < _ODD_WEIGHT).sum())
    share = (odd + _PRIOR_LOW) / (len(value) + _PRIOR_SESSIONS)
    return max(2, math.ceil(math.log(CHANCE_OF_RUN) / math.log(share)))
