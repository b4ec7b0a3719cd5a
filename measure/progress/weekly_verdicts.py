"""Weekly checks of a series, and the verdict that they add up to. Pure statistics.

A series is checked on fixed days: the first day of a segment and every seventh after it. A check
uses nothing measured on its day or later, so the verdict of a week does not depend on when a page
is opened. How often these rules are wrong was found by simulation; the table stands in
gui/help/progress.md and can be made again with ``make bench-progress``.

A shoulder that lost until an injection and gains since has two phases, never one line through both.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.series import Series
from measure.progress.trend_line import Slope, fit_slopes

#: Fewest weeks of data, and fewest days with a measurement, before anything is said about a
#: trend: both must have passed. [project]
LEAST_WEEKS = 4.0
LEAST_DAYS = 8
#: The trend line is drawn through the latest days only, days: recovery is quick at first. [project]
WINDOW_DAY = 112
#: A stall is judged by this many days. [project]
STALL_WINDOW_DAY = 42
#: Fewest days with a measurement by which to judge a stall. [project]
STALL_LEAST_DAYS = 8
#: Gain in degrees a month that must be ruled out with one-sided 95 % before a stall. [project]
STALL_BELOW_DEG = 5.0
#: A side short of the other by more than this is still short, degrees. [project]
STALL_SHORT_DEG = 15.0
#: A side short of the other by more than this share of its level is still short. [project]
STALL_SHORT_SHARE = 0.2
#: The movements for which a stall is reported.
STALLING = (Movement.FLEXION, Movement.EXTERNAL_ROTATION)

#: Evidence that a change needs, in standard deviations, by weeks of data. Chosen by simulation, so
#: that all checks together raise few false alarms: strict while the data are few, least strict at
#: seven and twelve weeks, on which most of the chance of error is spent, and strict for as long
#: as measuring goes on. [project]
_WEEKS = (4, 5, 6, 7, 8, 10, 11, 12, 13, 14)
_CLEAR = (5.7, 4.7, 3.8, 3.0, 3.2, 3.2, 3.0, 2.3, 2.9, 3.3)
#: A likely change needs less evidence by this many standard deviations. [project]
_LIKELY_LESS = 0.35
#: Evidence that the latest check must still show where only the one before had enough, standard
#: deviations. [project]
_LEANING = 1.28

#: Days and values of a window too short for a line.
_NOTHING: tuple[FloatArray, FloatArray] = (np.empty(0), np.empty(0))


class Verdict(StrEnum):
    TOO_EARLY = "too-early"
    NO_CLEAR_CHANGE = "no-clear-change"
    LIKELY_GAINING = "likely-gaining"
    GAINING = "gaining"
    LIKELY_LOSING = "likely-losing"
    LOSING = "losing"
    STALLED = "stalled"


@dataclass(frozen=True, slots=True, kw_only=True)
class WeeklyCheck:
    """Result of one weekly check: what the days before it show.

    Attributes
    ----------
    day
        Day of the check; data of this day and later are not used.
    weeks
        From the first to the last day used, plus the day itself, in weeks.
    slope
        Line through the window, or None while it is too early.
    evidence
        Of a rise (above 0) or fall, in standard deviations; 0 while it is too early.
    clear
        Evidence that a change needs at this check.
    upper_per_month
        One-sided 95 % upper bound of the slope over STALL_WINDOW_DAY, a month; None where they
        hold too few days, and at all checks but the latest two.
    """

    day: dt.date
    weeks: float
    slope: Slope | None
    evidence: float
    clear: float
    upper_per_month: float | None


def needed_evidence(weeks: float) -> float:
    """Return the evidence that a change needs after `weeks` of data, in standard deviations."""
    return float(np.interp(weeks, _WEEKS, _CLEAR))


def weekly_checks(series: Series, today: dt.date, most: int = 14) -> tuple[WeeklyCheck, ...]:
    """Return the latest weekly checks of a series' latest segment, the earliest first.

    A check before which nothing new was measured is left out: the same data are not used twice.

    Parameters
    ----------
    today
        Checks up to this day count.
    most
        How many of the latest to return.
    """
    if not len(series):
        return ()
    segment = series.latest_segment()
    spread = MOVEMENTS[series.movement].usual_spread
    # The week of a reading, counted from the segment's first day, ends at the check after it.
    weeks = np.unique((segment.day - segment.day[0]) // 7).astype(int) + 1
    days = segment.day[0] + 7 * weeks
    days = days[days <= today.toordinal()][-most:]
    windows = [_window(segment, at, WINDOW_DAY) for at in days]
    weeks_used = [float(at - day[0]) / 7 for at, (day, _) in zip(days, windows, strict=True)]
    trend_windows = [
        window if weeks >= LEAST_WEEKS and len(window[0]) >= LEAST_DAYS else _NOTHING
        for weeks, window in zip(weeks_used, windows, strict=True)
    ]
    # A stall is judged at the latest two checks only.
    stall_windows = [
        _stall_window(segment, at, weeks) if at in days[-2:] else _NOTHING
        for at, weeks in zip(days, weeks_used, strict=True)
    ]
    fitted = fit_slopes([*trend_windows, *stall_windows], spread)
    return tuple(
        WeeklyCheck(
            day=dt.date.fromordinal(round(float(at))),
            weeks=weeks,
            slope=slope,
            evidence=slope.evidence if slope else 0.0,
            clear=needed_evidence(weeks),
            # The upper end of a two-sided 90 % interval is the one-sided 95 % bound.
            upper_per_month=recent.interval_per_month(0.90)[1] if recent else None,
        )
        for at, weeks, slope, recent in zip(
            days, weeks_used, fitted[: len(days)], fitted[len(days) :], strict=True
        )
    )


def _window(segment: Series, at: float, length_day: float) -> tuple[FloatArray, FloatArray]:
    """Return the `length_day` days before a check that have a value, and their values."""
    used = (segment.day < at) & (segment.day >= at - length_day)
    return segment.day[used], segment.value[used]


def _stall_window(segment: Series, at: float, weeks: float) -> tuple[FloatArray, FloatArray]:
    """Return the days by which a stall is judged, and their values; none while too few."""
    if weeks < STALL_WINDOW_DAY / 7:
        return _NOTHING
    window = _window(segment, at, STALL_WINDOW_DAY)
    return window if len(window[0]) >= STALL_LEAST_DAYS else _NOTHING


def trend(checks: tuple[WeeklyCheck, ...]) -> Verdict:
    """Return the verdict on the trend alone, stalls left aside.

    Likely: the latest check has enough evidence, or nearly. Confirmed: it takes two checks in
    the same direction, and one of them has enough. Where that was the one before, the latest
    must still lean that way.
    """
    if not checks or checks[-1].slope is None:
        return Verdict.TOO_EARLY
    last = checks[-1]
    rising = last.evidence > 0
    now = abs(last.evidence)
    if len(checks) > 1:
        # Above 0 where both checks show the same direction.
        before = checks[-2].evidence * (1 if rising else -1)
        fresh = now > last.clear and before > 0
        kept = before > checks[-2].clear and now > _LEANING
        if fresh or kept:
            return Verdict.GAINING if rising else Verdict.LOSING
    if now > last.clear - _LIKELY_LESS:
        return Verdict.LIKELY_GAINING if rising else Verdict.LIKELY_LOSING
    return Verdict.NO_CLEAR_CHANGE


def stalled(
    checks: tuple[WeeklyCheck, ...], movement: Movement, short_by: float, other: float
) -> bool:
    """Return whether a gain worth having is ruled out while the side is still short.

    By the latest check; while the longer trend is a gain, by the latest two, so that a chance
    flat stretch does not hide it.

    Parameters
    ----------
    short_by
        Other side minus this one, in degrees.
    other
        Level of the other side, in degrees.
    """
    if movement not in STALLING:
        return False
    if not (short_by > STALL_SHORT_DEG or short_by > STALL_SHORT_SHARE * other):
        return False
    gaining = trend(checks) in (Verdict.GAINING, Verdict.LIKELY_GAINING)
    bounds = [check.upper_per_month for check in (checks[-2:] if gaining else checks[-1:])]
    return bool(bounds) and all(bound is not None and bound < STALL_BELOW_DEG for bound in bounds)


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
        checks = weekly_checks(part, last + dt.timedelta(days=7), most=2)
        phases.append(
            SeriesPhase(
                first=first,
                last=last,
                ended=between[0].day,
                ended_by=" and ".join(dict.fromkeys(item.why for item in between)),
                verdict=trend(checks),
                slope=checks[-1].slope if checks else None,
            )
        )
    return tuple(phases)
