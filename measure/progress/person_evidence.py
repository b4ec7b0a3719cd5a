"""What a person's series tell of each other: how far days are alike, and evidence that backs.

One series of some weeks says little about how far neighbouring days are alike; all of a person's
together say more. And a shoulder that stiffens or loosens does so in all directions: a movement
leans on the evidence of the other primary movements of its side. Pure statistics.
"""

import bisect
import datetime as dt
import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from measure.progress.series import Series
from measure.progress.weekly_verdicts import WeeklyCheck, weekly_checks
from measure.trend.trend_line import RELATED_TO

#: The autocorrelation that days usually have, and its weight beside that of series. [project]
USUAL_RELATED, USUAL_RELATED_SERIES = 0.15, 2.0
#: Evidence of other movements counts when their check is at most so many days older. [project]
BACKING_WITHIN_DAY = 7
#: A series says something of the autocorrelation for so many days after its latest check. [project]
RELATED_WITHIN_DAY = 42
#: The primary movements where nobody chose others. [project]
PRIMARY_MOVEMENTS = (Movement.EXTERNAL_ROTATION, Movement.FLEXION, Movement.HAND_BEHIND_BACK)

_Key = tuple[Movement, AssessmentCondition, Side]


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonEvidence:
    """Weekly checks of all series of a person, as if none had turned.

    Attributes
    ----------
    checks
        By movement, condition and side.
    primary
        The primary movements.
    """

    checks: Mapping[_Key, tuple[WeeklyCheck, ...]]
    primary: tuple[Movement, ...] = PRIMARY_MOVEMENTS

    @classmethod
    def of(
        cls,
        all_series: Sequence[Series],
        today: dt.date,
        primary: Collection[Movement] = PRIMARY_MOVEMENTS,
    ) -> "PersonEvidence":
        """Return the evidence of a person's series up to a day."""
        checks = {
            (series.movement, series.conduct, series.side): weekly_checks(series, today)
            for series in all_series
        }
        return cls(checks=checks, primary=tuple(primary))

    def related(self, day: dt.date) -> float:
        """Return the autocorrelation of the days by all series up to a check on `day`."""
        total, weight = USUAL_RELATED * USUAL_RELATED_SERIES, USUAL_RELATED_SERIES
        for checks in self.checks.values():
            check = _latest(checks, day, RELATED_WITHIN_DAY)
            if check is None or check.slope is None:
                continue
            # About a broken line: a turn would seem like days that are alike.
            total += check.bend.related if check.bend else check.slope.related
            weight += 1
        return min(max(total / weight, 0.0), RELATED_TO)

    def backing(self, key: _Key, day: dt.date) -> tuple[float, float]:
        """Return the evidence of the side's other primary movements: of a slope, and of a bend.

        Sums over the root of their number, in standard deviations; 0 where there are none.
        """
        related = self.related(day)
        others = [
            check.allowing_for(related)
            for checks in self.others(key)
            if (check := _latest(checks, day, BACKING_WITHIN_DAY)) is not None
        ]
        share = 1 / math.sqrt(max(len(others), 1))
        return (
            share * sum(check.evidence for check in others),
            share * sum(check.bend_evidence for check in others),
        )

    def others(self, key: _Key) -> list[tuple[WeeklyCheck, ...]]:
        """Return the checks of the other primary movements of the same side."""
        movement, _, side = key
        return [
            checks
            for (other, conduct, of_side), checks in self.checks.items()
            if other is not movement and other in self.primary and of_side is side
            if conduct == self._usual(other, side)
        ]

    def _usual(self, movement: Movement, side: Side) -> AssessmentCondition | None:
        """Return the condition under which a movement was checked most often."""
        mine = {key[1]: len(c) for key, c in self.checks.items() if key[0::2] == (movement, side)}
        return max(mine, key=lambda conduct: mine[conduct], default=None)


def _latest(checks: Sequence[WeeklyCheck], day: dt.date, within_day: int) -> WeeklyCheck | None:
    """Return the latest check up to a day, unless it is older than `within_day`."""
    number = bisect.bisect_right(checks, day, key=lambda check: check.day)
    if not number or (day - checks[number - 1].day).days > within_day:
        return None
    return checks[number - 1]
