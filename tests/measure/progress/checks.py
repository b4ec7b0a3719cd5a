"""Weekly checks of chosen evidence, for tests of what they add up to."""

import datetime as dt

import numpy as np

from measure.progress.weekly_verdicts import WeeklyCheck
from measure.trend.broken_line import Bend
from measure.trend.trend_line import DAYS_A_MONTH, Slope
from tests.bench.progress_people import FIRST_DAY

#: So many degrees of freedom that t values are as good as normal ones.
_MANY = 1e6


def date(day: float) -> dt.date:
    """Return the day so many days after the first of the made-up series."""
    return dt.date.fromordinal(FIRST_DAY + round(day))


def check_of(
    per_month: float,
    *,
    error_per_month: float = 1.0,
    week: int = 12,
    weeks: float | None = None,
    bend: float | None = None,
    after: float = 0.0,
) -> WeeklyCheck:
    """Return a check whose slope has the evidence per_month / error_per_month.

    Parameters
    ----------
    bend, after
        Evidence of a bend, and of the slope after it; None for no bend.
    """
    slope = Slope(
        per_day=per_month / DAYS_A_MONTH,
        error_per_day=error_per_month / DAYS_A_MONTH,
        degrees_of_freedom=_MANY,
        days=36,
        first_day=FIRST_DAY,
        last_day=FIRST_DAY + 7.0 * week,
        level=90.0,
        spread=5.0,
        related=0.0,
        judged_by=5.0,
        inlier_weight=np.ones(36),
    )
    return WeeklyCheck(
        day=date(7 * week),
        week=week,
        weeks=float(week) if weeks is None else weeks,
        slope=slope,
        bend=None if bend is None else bend_of(bend, after, FIRST_DAY + 7.0 * (week - 4)),
    )


def bend_of(evidence: float, after: float, day: float) -> Bend:
    """Return a bend of chosen evidence, all errors 1 a day."""
    return Bend(
        day=day,
        low=day - 7,
        high=day + 7,
        before_per_day=after - evidence,
        after_per_day=after,
        before_error=1.0,
        after_error=1.0,
        change_error=1.0,
        degrees_of_freedom=_MANY,
        spread=5.0,
        related=0.0,
        judged_by=5.0,
        level=90.0,
        inlier_weight=np.ones(36),
    )
