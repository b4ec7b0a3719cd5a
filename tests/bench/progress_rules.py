"""The rules that the bench and the tests hold against known truth.

Each gives, for a series, the first week in which something is said of it, or infinity.
"""

import datetime as dt
import math
from collections.abc import Callable, Collection
from dataclasses import replace

import numpy as np

from measure.progress.comparison import shared_drift
from measure.progress.current_verdict import CurrentVerdict, current_verdict
from measure.progress.series import Series
from measure.progress.stall import stalled
from measure.progress.weekly_verdicts import Verdict

CHANGED = (Verdict.GAINING, Verdict.LOSING)
LIKELY = (*CHANGED, Verdict.LIKELY_GAINING, Verdict.LIKELY_LOSING)


def followed(series: Series) -> CurrentVerdict:
    """Return the verdict after a series' last session, with all of its checks."""
    return current_verdict(series, _date(series.day[-1] + 7))


def first_verdict(series: Series) -> tuple[float, float]:
    """Return when the rule in use first tells a change, and a change or a likely one."""
    course = followed(series)
    return _first(series, course, CHANGED), _first(series, course, LIKELY)


def _first(series: Series, course: CurrentVerdict, wanted: Collection[Verdict]) -> float:
    for check, verdict in zip(course.checks, course.said, strict=True):
        if verdict in wanted:
            return (check.day.toordinal() - float(series.day[0])) / 7
    return math.inf


def first_stall(other: float) -> Callable[[Series], tuple[float]]:
    """Return the rule for a stall of a shoulder whose other side reaches `other` degrees."""

    def said(series: Series) -> tuple[float]:
        course = followed(series)
        for check, verdict in zip(course.checks, course.said, strict=True):
            known = series.value[series.day < check.day.toordinal()]
            short_by = other - float(np.median(known[-5:]))
            if stalled(check, verdict, series.movement, short_by, other):
                return ((check.day.toordinal() - float(series.day[0])) / 7,)
        return (math.inf,)

    return said


def first_beside(series: Series, twin: Series) -> tuple[float, float]:
    """Return when a change is first told with a look at the other shoulder, and without."""
    course = followed(series)
    doubted = [
        Verdict.NO_CLEAR_CHANGE
        if verdict in CHANGED and shared_drift(series, twin, check) is not None
        else verdict
        for check, verdict in zip(course.checks, course.said, strict=True)
    ]
    return (
        _first(series, replace(course, said=tuple(doubted)), CHANGED),
        _first(series, course, CHANGED),
    )


def _date(day: float) -> dt.date:
    return dt.date.fromordinal(round(float(day)))
