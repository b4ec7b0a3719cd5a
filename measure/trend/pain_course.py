"""Course of pain over sessions: whether it is high, and whether it rose. Pure statistics."""

import datetime as dt
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import median

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.records import SessionRecord
from measure.trend.local_trend import Ribbon, local_trend

#: Median rating of pain at rest or at night from which on it is reported, of 10. [project]
HIGH_PAIN = 7
#: Days over which pain ratings are taken together. [project]
PAIN_DAY = 14
#: Fewest ratings that are taken together. [project]
PAIN_LEAST = 3
#: Least days between the first and the last of them. [project]
PAIN_LEAST_SPAN_DAY = 7
#: Days before with whose ratings the latest are compared, and fewest of them. [project]
PAIN_BEFORE_DAY, PAIN_BEFORE_LEAST = 42, 6
#: Points by which pain must be higher than in the weeks before; the smallest change that matters
#: is 2.17 points (Michener 2011). [project]
MORE_PAIN = 2.0
#: Standard errors by which it must be higher; the trade-off is shown in measure/docs/verdicts.md.
#: [project]
MORE_PAIN_ERRORS = 3.3
#: Autocorrelation of ratings from one session to the next. [project]
PAIN_RELATED = 0.5
#: Standard deviation of the ratings of a person whose pain is stable, points, and its weight beside
#: the person's own, in ratings. [project]
USUAL_PAIN_SD, USUAL_PAIN_RATINGS = 1.5, 8


#: Standard deviation of one day's rating during a movement about its course, points. [project]
_DAY_SPREAD = 1.2


def pain_ribbons(worst: Mapping[int, int]) -> tuple[Ribbon, ...]:
    """Return the likely course of ratings 0..10 for a chart.

    Parameters
    ----------
    worst
        The worst rating of each day, days as :meth:`datetime.date.toordinal` counts them.
    """
    days = np.array(sorted(worst), dtype=np.float64)
    ratings = np.array([worst[int(day)] for day in days], dtype=np.float64)
    return tuple(
        Ribbon(
            day=ribbon.day,
            value=ribbon.value.clip(0, 10),
            low=ribbon.low.clip(0, 10),
            high=ribbon.high.clip(0, 10),
        )
        for ribbon in local_trend(days, ratings, spread=_DAY_SPREAD)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class HighPain:
    """Median rating at rest or at night of the latest sessions, and their number."""

    rating: float
    sessions: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MorePain:
    """Typical worst pain in 24 hours of the latest sessions, and of the weeks before."""

    now: float
    before: float


def high_pain(sessions: Sequence[SessionRecord], today: dt.date) -> HighPain | None:
    """Return the pain at rest or at night of the last two weeks where it is high, or None."""
    nightly = [
        (ago, max(ratings))
        for ago, session in _until(sessions, today)
        if ago < PAIN_DAY
        if (ratings := [r for r in (session.pain.rest, session.pain.night) if r is not None])
    ]
    if not _enough(nightly):
        return None
    middle = median(rating for _, rating in nightly)
    return HighPain(rating=middle, sessions=len(nightly)) if middle >= HIGH_PAIN else None


def more_pain(sessions: Sequence[SessionRecord], today: dt.date) -> MorePain | None:
    """Return how the worst pain in 24 hours rose in the last two weeks, or None.

    It must have risen by what matters, and beyond what the person's own ratings scatter.
    """
    worst = [
        (ago, session.pain.worst_24h)
        for ago, session in sorted(_until(sessions, today), key=lambda pair: -pair[0])
        if session.pain.worst_24h is not None and ago < PAIN_DAY + PAIN_BEFORE_DAY
    ]
    lately = [(ago, rating) for ago, rating in worst if ago < PAIN_DAY]
    if not _enough(lately) or len(worst) - len(lately) < PAIN_BEFORE_LEAST:
        return None
    rise, error, before = step(np.array([float(rating) for _, rating in worst]), len(lately))
    if rise < MORE_PAIN or rise < MORE_PAIN_ERRORS * error:
        return None
    return MorePain(now=before + rise, before=before)


def step(ratings: FloatArray, lately: int) -> tuple[float, float, float]:
    """Return the step to the latest ratings, its standard error, and the level before it.

    Generalised least squares for ratings of which neighbours are alike (Cochrane & Orcutt 1949,
    J Am Stat Assoc 44:32): a lasting rise then stands out by its first rating, too.

    Parameters
    ----------
    ratings
        Shape (n,), the earliest first.
    lately
        How many of them are the latest.
    """
    number = len(ratings)
    after = (np.arange(number) >= number - lately).astype(np.float64)
    design = np.column_stack([np.ones(number), after])
    whitened, ratings = _whitened(design), _whitened(ratings)
    covariance = np.linalg.inv(whitened.T @ whitened)
    before, rise = covariance @ whitened.T @ ratings
    left = ratings - whitened @ np.array([before, rise])
    usual = USUAL_PAIN_SD**2 * (1 - PAIN_RELATED**2)
    variance = (float(left @ left) + USUAL_PAIN_RATINGS * usual) / (number - 2 + USUAL_PAIN_RATINGS)
    return float(rise), math.sqrt(variance * covariance[1, 1]), float(before)


def _whitened(values: FloatArray) -> FloatArray:
    """Return what is new in each value, shape (n, ...): neighbours' likeness is taken off."""
    first = math.sqrt(1 - PAIN_RELATED**2) * values[:1]
    return np.concatenate([first, values[1:] - PAIN_RELATED * values[:-1]])


def _until(sessions: Sequence[SessionRecord], today: dt.date) -> list[tuple[int, SessionRecord]]:
    """Return the sessions up to a day, with how many days ago they were."""
    ago = [((today - session.started.day).days, session) for session in sessions]
    return [(days, session) for days, session in ago if days >= 0]


def _enough(ratings: Sequence[tuple[int, int]]) -> bool:
    """Return whether there are enough ratings, over enough days; each is (days ago, rating)."""
    if len(ratings) < PAIN_LEAST:
        return False
    days_ago = [ago for ago, _ in ratings]
    return max(days_ago) - min(days_ago) >= PAIN_LEAST_SPAN_DAY
