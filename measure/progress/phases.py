"""Phases of a series: what it did between its breaks. Pure statistics.

A shoulder that lost until an injection and gains since has two phases, never one line through both.
"""

import datetime as dt
from dataclasses import dataclass

import numpy as np

from measure.progress.current_verdict import current_verdict
from measure.progress.series import Series
from measure.progress.weekly_verdicts import Verdict
from measure.trend.trend_line import Slope


@dataclass(frozen=True, slots=True, kw_only=True)
class SeriesPhase:
    """The days of a series between two of its breaks, or before the first.

    Attributes
    ----------
    first, last
        Its first and last day with a reading.
    ended, ended_by
        The day on which the next one begins, and what broke the series, in words.
    verdict
        Verdict of its last check on the trend.
    slope
        The line of that check, or None where it was too early.
    """

    first: dt.date
    last: dt.date
    ended: dt.date
    ended_by: str
    verdict: Verdict
    slope: Slope | None


def earlier_phases(series: Series) -> tuple[SeriesPhase, ...]:
    """Return the phases before the latest one, the earliest first."""
    phases = []
    for number in np.unique(series.segment)[:-1]:
        part = series.where(series.segment == number)
        later = series.day[series.segment > number]
        first, last = part.date(0), part.date(-1)
        between = [
            item for item in series.breaks if last.toordinal() < item.day.toordinal() <= later[0]
        ]
        # A check uses only what was measured before its day, and comes at most a week later.
        ended = current_verdict(part, last + dt.timedelta(days=7))
        phases.append(
            SeriesPhase(
                first=first,
                last=last,
                ended=between[0].day,
                ended_by=" and ".join(dict.fromkeys(item.why for item in between)),
                verdict=ended.verdict,
                slope=ended.checks[-1].slope if ended.checks else None,
            )
        )
    return tuple(phases)
