"""Weekly looks at a series, and the verdict that they add up to. Pure statistics.

A series is looked at on fixed days: the first day of a segment and every seventh after it. A
look uses nothing measured on its day or later, so the verdict of a week does not depend on
when somebody opens a page. How often these rules are wrong was found by simulation; the table
stands in gui/help/progress.md and can be made again with ``make bench-progress``.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.series import Series
from measure.progress.trend_line import Slope, fit_slopes

#: Before these, nothing is said about a trend: both must have passed.
LEAST_WEEKS = 4.0
LEAST_DAYS = 8
#: A line is drawn through the latest weeks only: recovery is quick at first. Ours.
WINDOW_DAY = 112
#: What is looked at to tell a stall: days, least number of them with a reading, and the gain
#: a month that must be ruled out with one-sided 95 %. Ours.
STALL_WINDOW_DAY = 42
STALL_LEAST_DAYS = 8
STALL_BELOW_DEG = 5.0
#: Short of the other side by more than either of these is still short. Ours.
STALL_SHORT_DEG = 15.0
STALL_SHORT_SHARE = 0.2
#: The movements that a stall is told of. Ours.
STALLING = (Movement.FLEXION, Movement.EXTERNAL_ROTATION)

#: How much evidence a change needs, by weeks of data, in standard deviations. Chosen by
#: simulation, so that all looks together raise few false alarms: strict while the data are
#: few, least strict at seven and twelve weeks, on which most of the chance of error is spent,
#: and strict for as long as somebody goes on measuring. Ours.
_WEEKS = (4, 5, 6, 7, 8, 10, 11, 12, 13, 14)
_CLEAR = (5.7, 4.7, 3.8, 3.0, 3.2, 3.2, 3.0, 2.3, 2.9, 3.3)
#: A likely change needs this much less. Ours.
_LIKELY_LESS = 0.35
#: What the latest look must still show where only the one before had enough. Ours.
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
    """What the days before one weekly look show.

    Attributes
    ----------
    day
        Day of the look; data of this day and later are not used.
    weeks
        From the first to the last day used, plus the day itself, in weeks.
    slope
        Line through the window, or None while it is too early.
    evidence
        Of a rise (above 0) or fall, in standard deviations; 0 while it is too early.
    clear
        How much evidence a change needs at this look.
    upper_per_month
        One-sided 95 % upper bound of the slope over the weeks that a stall is told by, a
        month; None where they hold too few days, and at all looks but the latest two.
    """

    day: dt.date
    weeks: float
    slope: Slope | None
    evidence: float
    clear: float
    upper_per_month: float | None


def needed_evidence(weeks: float) -> float:
    """Return how much evidence a change needs after so many weeks, in standard deviations."""
    return float(np.interp(weeks, _WEEKS, _CLEAR))


def weekly_checks(series: Series, today: dt.date, most: int = 14) -> tuple[WeeklyCheck, ...]:
    """Return the latest looks at a series' latest segment, the earliest first.

    A look before which nothing new was measured is left out: the same data are not asked twice.

    Parameters
    ----------
    today
        Looks up to this day count.
    most
        How many of the latest to return.
    """
    if not len(series):
        return ()
    segment = series.latest_segment()
    spread = MOVEMENTS[series.movement].usual_spread
    # The week of a reading, counted from the segment's first day, ends at the look after it.
    weeks = np.unique((segment.day - segment.day[0]) // 7).astype(int) + 1
    days = segment.day[0] + 7 * weeks
    days = days[days <= today.toordinal()][-most:]
    windows = [_window(segment, at, WINDOW_DAY) for at in days]
    weeks_used = [float(at - day[0]) / 7 for at, (day, _) in zip(days, windows, strict=True)]
    told = [
        each if weeks >= LEAST_WEEKS and len(each[0]) >= LEAST_DAYS else _NOTHING
        for weeks, each in zip(weeks_used, windows, strict=True)
    ]
    # Lines through the weeks that a stall is told by, at the latest two looks only.
    late = [
        _stall_window(segment, at, weeks) if at in days[-2:] else _NOTHING
        for at, weeks in zip(days, weeks_used, strict=True)
    ]
    fitted = fit_slopes([*told, *late], spread)
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
            days, weeks_used, fitted[: len(told)], fitted[len(told) :], strict=True
        )
    )


def _window(segment: Series, at: float, length_day: float) -> tuple[FloatArray, FloatArray]:
    """Return the days before a look, as far back as they count, and their values."""
    used = (segment.day < at) & (segment.day >= at - length_day)
    return segment.day[used], segment.value[used]


def _stall_window(segment: Series, at: float, weeks: float) -> tuple[FloatArray, FloatArray]:
    """Return the days that a stall is told by; none while they are too few."""
    if weeks < STALL_WINDOW_DAY / 7:
        return _NOTHING
    found = _window(segment, at, STALL_WINDOW_DAY)
    return found if len(found[0]) >= STALL_LEAST_DAYS else _NOTHING


def trend(seen: tuple[WeeklyCheck, ...]) -> Verdict:
    """Return what the looks say about the trend alone.

    Likely: the latest look has enough evidence, or nearly. Confirmed: it takes two looks in
    the same direction, and one of them has enough. Where that was the one before, the latest
    must still lean that way.
    """
    if not seen or seen[-1].slope is None:
        return Verdict.TOO_EARLY
    last = seen[-1]
    rising = last.evidence > 0
    now = abs(last.evidence)
    if len(seen) > 1:
        # Above 0 where both looks show the same direction.
        before = seen[-2].evidence * (1 if rising else -1)
        fresh = now > last.clear and before > 0
        kept = before > seen[-2].clear and now > _LEANING
        if fresh or kept:
            return Verdict.GAINING if rising else Verdict.LOSING
    if now > last.clear - _LIKELY_LESS:
        return Verdict.LIKELY_GAINING if rising else Verdict.LIKELY_LOSING
    return Verdict.NO_CLEAR_CHANGE


def stalled(
    seen: tuple[WeeklyCheck, ...], movement: Movement, short_by: float, other: float
) -> bool:
    """Tell whether a gain worth having is ruled out while the side is still short.

    By the latest look; while the longer trend is a gain, by the latest two, so that a chance
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
    gaining = trend(seen) in (Verdict.GAINING, Verdict.LIKELY_GAINING)
    asked = seen[-2:] if gaining else seen[-1:]
    bounds = [check.upper_per_month for check in asked]
    return bool(bounds) and all(bound is not None and bound < STALL_BELOW_DEG for bound in bounds)


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
