"""What a series showed before each of its breaks: the trend at the end of every earlier part.

A shoulder that lost until an injection and gains since is told as two chapters, never as one
line through both. Pure.
"""

import datetime as dt
from dataclasses import dataclass

import numpy as np

from measure.progress.series import Series
from measure.progress.trend_line import Slope
from measure.progress.weekly_verdicts import Verdict, trend, weekly_checks


@dataclass(frozen=True, slots=True, kw_only=True)
class SeriesPhase:
    """The days between two breaks of a series, or before its first.

    Attributes
    ----------
    first, last
        Its first and last day with a reading.
    ended, ended_by
        The day on which the next one begins, and what broke the series, in words.
    verdict
        What its last look said about the trend.
    slope
        The line of that look, or None where it was too early.
    """

    first: dt.date
    last: dt.date
    ended: dt.date
    ended_by: str
    verdict: Verdict
    slope: Slope | None


def earlier_phases(series: Series) -> tuple[SeriesPhase, ...]:
    """Return the chapters before the latest one, the earliest first."""
    found = []
    for number in np.unique(series.segment)[:-1]:
        part = series.where(series.segment == number)
        later = series.day[series.segment > number]
        first, last = part.date(0), part.date(-1)
        between = [
            each for each in series.breaks if last.toordinal() < each.day.toordinal() <= later[0]
        ]
        # A look uses only what was measured before its day, and comes at most a week later.
        seen = weekly_checks(part, last + dt.timedelta(days=7), most=2)
        found.append(
            SeriesPhase(
                first=first,
                last=last,
                ended=between[0].day,
                ended_by=" and ".join(dict.fromkeys(each.why for each in between)),
                verdict=trend(seen),
                slope=seen[-1].slope if seen else None,
            )
        )
    return tuple(found)
