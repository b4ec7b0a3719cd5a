"""When could I know? Weeks until a steady gain of a given size would show. Pure.

From the person's own scatter and rhythm: what a line through the days measured so far and those
to come is expected to show, held against the evidence that a verdict needs.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.progress.weekly_verdicts import LEAST_DAYS, LEAST_WEEKS, WINDOW_DAY
from measure.trend.evidence_limits import review_limit, reviews_passed, weekly_limit
from measure.trend.trend_line import DAYS_A_MONTH, PRIOR_DAYS, evidence_of

#: Gains that are asked about, degrees a month: slow, worth having, quick. [project]
GAINS_DEG = (2.0, 5.0, 10.0)
#: Chance with which a gain has shown by the week that is told. [project]
POWER = 0.8
#: The same in standard deviations. [source: normal distribution]
_POWER_SD = 0.84
#: Weeks ahead after which the answer is "not within half a year". [project]
LONGEST_AHEAD_WEEKS = 26
#: Days over which the present rhythm is counted. [project]
_RHYTHM_DAY = 28
#: Fewest days with a measurement that show a rhythm. [project]
_LEAST_FOR_RHYTHM = 3
#: Rhythms with which the person's own is compared, sessions a week. No more: measuring often
#: irritates a shoulder. [project]
RHYTHMS = (1, 2, 3)

#: Evidence that a verdict needs at a weekly check, in standard deviations, by the number of the
#: check, the weeks of data and the days with a measurement; infinity while nothing is said.
Limit = Callable[[int, float, int], float]


def verdict_limit(primary: bool, *, alone: bool) -> Limit:
    """Return the limit that a gain of a movement needs where no other movement backs it.

    Parameters
    ----------
    alone
        True where no other primary movement of the side is measured.
    """

    def limit(week: int, weeks: float, days: int) -> float:
        if weeks < LEAST_WEEKS or days < LEAST_DAYS:
            return np.inf
        weekly, review = weekly_limit(weeks, primary), reviews_passed(week)
        if review == reviews_passed(week - 1):
            return weekly
        return min(weekly, review_limit(review, primary, alone))

    return limit


@dataclass(frozen=True, slots=True, kw_only=True)
class DetectableGain:
    """One gain and when it would show.

    Attributes
    ----------
    per_month
        The gain, in the movement's unit a month.
    weeks
        Weeks from today until it would show with a chance of POWER: 0 where it would have shown
        by now, None where it would not within LONGEST_AHEAD_WEEKS.
    """

    per_month: float
    weeks: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeToKnow:
    """When gains would show.

    Attributes
    ----------
    sessions_a_week
        The person's rhythm of late.
    gains
        At that rhythm, the slowest first.
    other_rhythms
        Sessions a week, and the weeks for the middle gain at that rhythm from today on; only
        rhythms that are quicker than the person's own and shorten it.
    """

    sessions_a_week: float
    gains: tuple[DetectableGain, ...]
    other_rhythms: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outlook:
    """What is measured so far, and by what a gain is judged.

    Attributes
    ----------
    day
        Shape (n,), increasing: days that count since the last break or turn.
    first_day
        Day from which the weekly checks are counted.
    spread
        Standard deviation of a day about the line, widened where neighbouring days are alike, in
        the movement's unit.
    limit
        Evidence that a check needs.
    """

    day: FloatArray
    first_day: float
    spread: float
    limit: Limit

    def weeks_to_show(self, per_month: float, gap_day: float) -> int | None:
        """Return in how many weeks a steady gain would show; None where not within half a year.

        A line through n days has the error spread / sqrt(sum of (day - mean day)^2), so a gain is
        expected to show the evidence of gain over error; it shows with a chance of 80 % where
        this exceeds what the check needs by 0.84. Sessions to come follow each other by `gap_day`.
        """
        now = int((self.day[-1] - self.first_day) // 7) + 1
        ahead = np.arange(1, 7 * LONGEST_AHEAD_WEEKS / gap_day + 1) * gap_day
        every_day = np.concatenate([self.day, self.day[-1] + ahead])
        for weeks in range(LONGEST_AHEAD_WEEKS + 1):
            at = self.first_day + 7 * (now + weeks)
            days = every_day[(every_day < at) & (every_day >= at - WINDOW_DAY)]
            # Sessions far apart leave the window empty between them.
            if not len(days):
                continue
            needed = self.limit(now + weeks, float(at - days[0]) / 7, len(days))
            if not np.isfinite(needed):
                continue
            root = float(np.sqrt(((days - days.mean()) ** 2).sum()))
            t_value = per_month / DAYS_A_MONTH * root / self.spread
            if evidence_of(t_value, PRIOR_DAYS + len(days) - 2) >= needed + _POWER_SD:
                return weeks
        return None

    def time_to_know(self, gains: Sequence[float]) -> TimeToKnow | None:
        """Return when gains would show, or None while three days have not shown a rhythm.

        Parameters
        ----------
        gains
            In the movement's unit a month, increasing; an odd number of them.
        """
        if len(self.day) < _LEAST_FOR_RHYTHM:
            return None
        lately = self.day[self.day > self.day[-1] - _RHYTHM_DAY]
        lately = lately if len(lately) >= _LEAST_FOR_RHYTHM else self.day[-_LEAST_FOR_RHYTHM:]
        gap = float(lately[-1] - lately[0]) / (len(lately) - 1)
        middle = gains[len(gains) // 2]
        own = self.weeks_to_show(middle, gap)
        others = [
            (rhythm, weeks)
            for rhythm in RHYTHMS
            if 7 / rhythm < gap - 0.5
            and (weeks := self.weeks_to_show(middle, 7 / rhythm)) is not None
            and (own is None or weeks < own)
        ]
        return TimeToKnow(
            sessions_a_week=7 / gap,
            gains=tuple(
                DetectableGain(per_month=gain, weeks=self.weeks_to_show(gain, gap))
                for gain in gains
            ),
            other_rhythms=tuple(others),
        )
