"""What no rule can do better: the power of somebody who knows all but the slope.

They know which sessions read low and leave those out, the spread, and how far neighbouring
sessions are alike; they look once, at the end, and so spend the whole allowed share of false
alarms there. The rule in use knows none of that and looks every week.
"""

import numpy as np
from scipy import stats

from measure.trend.trend_line import DAYS_A_MONTH
from tests.bench.progress_people import Course, planned_days


def best_power(course: Course, people: int, seed: int, false_alarms: float) -> float:
    """Return the share of people of a steadily changing course that could be told of it.

    Parameters
    ----------
    false_alarms
        Share of people without a change that may be told of one, in either direction.
    """
    random = np.random.default_rng(seed)
    day = planned_days(course)
    number = np.arange(len(day))
    covariance = course.spread**2 * course.related ** np.abs(number[:, None] - number)
    limit = stats.norm.isf(false_alarms / 2)
    power = []
    for _ in range(people):
        used = (random.random(len(day)) >= course.missed) & (random.random(len(day)) >= course.odd)
        error = _error_a_day(day[used], covariance[np.ix_(used, used)]) * DAYS_A_MONTH
        power.append(stats.norm.sf(limit - abs(course.a_month) / error))
    return float(np.mean(power))


def _error_a_day(day: np.ndarray, covariance: np.ndarray) -> float:
    """Return the standard error of a slope by generalised least squares (Aitken 1936)."""
    design = np.column_stack([np.ones(len(day)), day])
    information = design.T @ np.linalg.solve(covariance, design)
    return float(np.sqrt(np.linalg.inv(information)[1, 1]))
