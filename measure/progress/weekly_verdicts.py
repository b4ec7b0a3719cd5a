"""Weekly checks of a series: what the days before each show. Pure statistics.

A series is checked on fixed days: the first day of a segment and every seventh after it. A check
uses nothing measured on its day or later, so what is said of a week does not depend on when a page
is opened. What the checks add up to is decided in :mod:`measure.progress.current_verdict`.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import MOVEMENTS
from measure.progress.series import Series
from measure.trend.broken_line import Bend, fit_bends
from measure.trend.trend_line import Slope, evidence_of, fit_slopes

#: Fewest weeks of data, and fewest days with a measurement, before anything is said about a
#: trend: both must have passed. [project]
LEAST_WEEKS = 4.0
LEAST_DAYS = 8
#: The trend line is drawn through the latest days only, days: recovery is quick at first. [project]
WINDOW_DAY = 112
#: Most weekly checks that are gone through; a verdict on older ones has lapsed. [project]
MOST_CHECKS = 40

_Part = tuple[FloatArray, FloatArray]


class Verdict(StrEnum):
    TOO_EARLY = "too-early"
    NO_CLEAR_CHANGE = "no-clear-change"
    LIKELY_GAINING = "likely-gaining"
    GAINING = "gaining"
    LIKELY_LOSING = "likely-losing"
    LOSING = "losing"
    LEVEL = "level"
    STALLED = "stalled"
    NO_RECENT = "no-recent-readings"


@dataclass(frozen=True, slots=True, kw_only=True)
class WeeklyCheck:
    """Result of one weekly check: what the days before it show.

    Attributes
    ----------
    day
        Day of the check; data of this day and later are not used.
    week
        Number of the check, counted from the first session of the segment.
    weeks
        From the first to the last day used, plus the day itself, in weeks.
    slope
        Line through the window or, after a turn, through what lies after it; None while it is
        too early.
    bend
        Broken line through the window since the latest turn; None where that is too short.
    """

    day: dt.date
    week: int
    weeks: float
    slope: Slope | None
    bend: Bend | None

    @property
    def evidence(self) -> float:
        """Evidence of a rise (above 0) or fall, in standard deviations; 0 while too early."""
        return self.slope.evidence if self.slope else 0.0

    @property
    def bend_evidence(self) -> float:
        """Evidence of a bend upwards (above 0) or downwards; 0 where none can be asked for."""
        return self.bend.evidence if self.bend else 0.0

    @property
    def upper_per_month(self) -> float | None:
        """One-sided 95 % upper bound of the slope, a month; None while it is too early."""
        # The upper end of a two-sided 90 % interval is the one-sided 95 % bound.
        return self.slope.interval_per_month(0.90)[1] if self.slope else None

    def evidence_below(self, per_month: float) -> float:
        """Return the evidence that the slope lies below so much a month; 0 while too early."""
        if self.slope is None:
            return 0.0
        away = (per_month - self.slope.per_month) / (self.slope.error_per_month)
        return evidence_of(away, self.slope.degrees_of_freedom)

    def allowing_for(self, related: float) -> "WeeklyCheck":
        """Return the same check, its errors widened for an autocorrelation known from elsewhere."""
        return WeeklyCheck(
            day=self.day,
            week=self.week,
            weeks=self.weeks,
            slope=self.slope and self.slope.allowing_for(related),
            bend=self.bend and self.bend.allowing_for(related),
        )


def weekly_checks(
    series: Series,
    today: dt.date,
    most: int = MOST_CHECKS,
    *,
    turned: float | None = None,
    joined: bool = True,
) -> tuple[WeeklyCheck, ...]:
    """Return the latest weekly checks of a series' latest segment, the earliest first.

    A check before which nothing new was measured is left out: the same data are not used twice.
    Sessions of practice count for the days of the checks and for nothing else.

    Parameters
    ----------
    today
        Checks up to this day count.
    most
        How many of the latest to return.
    turned
        Day on which the series is known to have turned: slopes are those after it. Only checks
        after it are then meant.
    joined
        False where it fell suddenly on that day, so that the lines before and after do not meet.
    """
    if not len(series):
        return ()
    segment = series.latest_segment()
    counted = segment.counted()
    spread = MOVEMENTS[series.movement].usual_spread
    # The week of a reading, counted from the segment's first day, ends at the check after it.
    weeks = np.unique((segment.day - segment.day[0]) // 7).astype(int) + 1
    days = segment.day[0] + 7 * weeks
    chosen = days <= today.toordinal()
    weeks, days = weeks[chosen][-most:], days[chosen][-most:]
    windows = [_window(counted, at, WINDOW_DAY) for at in days]
    since = windows
    if turned is not None:
        since = [(day[day >= turned], value[day >= turned]) for day, value in windows]
    lines = fit_slopes(since, spread)
    slopes = [line if _long_enough(part) else None for part, line in zip(since, lines, strict=True)]
    if turned is not None and joined:
        slopes = _slopes_after(turned, windows, since, slopes, spread)
    bends = fit_bends(since, lines, spread)
    return tuple(
        WeeklyCheck(
            day=dt.date.fromordinal(round(float(at))),
            week=int(week),
            weeks=float(at - day[0]) / 7 if len(day) else 0.0,
            slope=slope,
            bend=bend,
        )
        for at, week, (day, _), slope, bend in zip(days, weeks, since, slopes, bends, strict=True)
    )


def _window(segment: Series, at: float, length_day: float) -> _Part:
    """Return the `length_day` days before a check that have a value, and their values."""
    used = (segment.day < at) & (segment.day >= at - length_day)
    return segment.day[used], segment.value[used]


def _long_enough(part: _Part) -> bool:
    """Return whether a line may be drawn through days and values; it may be too early."""
    day, _ = part
    return len(day) >= LEAST_DAYS and bool(day[-1] - day[0] >= 7 * (LEAST_WEEKS - 1))


def _slopes_after(
    turned: float,
    windows: Sequence[_Part],
    since: Sequence[_Part],
    alone: Sequence[Slope | None],
    spread: float,
) -> list[Slope | None]:
    """Return the slopes after a turn: of lines that meet there, else of what lies after it."""
    bends = fit_bends(windows, fit_slopes(windows, spread), spread, at=turned)
    return [
        bend.slope_after(day) if bend else line
        for bend, line, (day, _) in zip(bends, alone, since, strict=True)
    ]
