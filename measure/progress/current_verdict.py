"""Verdict on a series: what its weekly checks add up to, since when, and until when it holds.

Every check asks three things: does the line rise or fall, has it bent, and do the latest sessions
lie far below the weeks before? A bend or a sudden loss ends a verdict and begins another one; a
confirmed verdict is otherwise withdrawn only when the line no longer leans its way. How often these
rules are wrong was found by simulation: ``make bench-progress``, table in measure/docs/verdicts.md.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from measure.domain.movements import MOVEMENTS
from measure.progress.person_evidence import PersonEvidence
from measure.progress.series import Series
from measure.progress.weekly_verdicts import Verdict, WeeklyCheck, weekly_checks
from measure.trend.broken_line import Bend
from measure.trend.evidence_limits import (
    likely_limit,
    review_limit,
    reviews_passed,
    turn_limits,
    weekly_limit,
)
from measure.trend.sudden_loss import SuddenLoss, sudden_loss
from measure.trend.trend_line import DAYS_A_MONTH, Slope

#: Days after the latest session for which a verdict, a slope or a prompt is today's. [project]
EXPIRES_DAY = 21
#: Evidence that the latest check must still show where only the one before had enough, and below
#: which, at two checks running, a confirmed verdict no longer stands. [project]
_LEANING = 1.28
#: Evidence of a bend against a gain or loss that, at two checks running, leaves it in doubt, unless
#: what lies after the bend still leans that way by _LEANING. [project]
_DOUBT = 2.4
#: A sudden loss has more evidence than a bend at the same check by this factor. [project]
_SUDDEN = 1.2
#: Evidence of the slope before a turn that names it. [project]
_BEFORE_CLEAR = 1.96
#: A part after a turn is level where its slope lies between these with 90 %, degrees a month, for
#: movements in degrees; others by usual spreads. [project]
LEVEL_SPREADS = 1.0
#: Days after a verdict was first told in which its slope is shown shrunk. [project]
SHRUNK_DAY = 13


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """Day on which a series turned: gained until about then, say, and no longer since.

    Attributes
    ----------
    day, low, high
        When, and its 95 % interval.
    before
        What it did until then: GAINING, LOSING, or NO_CLEAR_CHANGE.
    shown_on
        Day of the weekly check that first showed it.
    sudden
        True for a sudden loss, whose first low session is `day`.
    by
        Size of a sudden loss, below 0, in the movement's unit; 0 for a bend.
    """

    day: dt.date
    low: dt.date
    high: dt.date
    before: Verdict
    shown_on: dt.date
    sudden: bool = False
    by: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ShownSlope:
    """Change a month as it is shown, with its 95 % interval, in the movement's unit.

    Attributes
    ----------
    shrunk
        True in the first two weeks of a verdict: who tells a gain as soon as it is clear tells it
        too large on average, so the slope is drawn towards 0.
    """

    per_month: float
    low: float
    high: float
    shrunk: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CurrentVerdict:
    """What holds of a series today.

    Attributes
    ----------
    verdict
        Today's; NO_RECENT where the latest session is older than EXPIRES_DAY.
    since
        Day of the check from which on it was the same without a break, or None without checks.
    as_of
        Day of the latest check; nothing measured on it or later counts.
    expires
        Last day on which it is today's, or None for an empty series.
    lapsed
        The old verdict where today's is NO_RECENT, otherwise None.
    turn
        The latest turn of the segment among its checks, or None.
    shown
        Slope to show, or None while it is too early.
    checks
        The weekly checks, the earliest first; from the latest turn on, of what lies after it.
    said
        Verdict after each of them.
    """

    verdict: Verdict
    since: dt.date | None
    as_of: dt.date | None
    expires: dt.date | None
    lapsed: Verdict | None
    turn: Turn | None
    shown: ShownSlope | None
    checks: tuple[WeeklyCheck, ...]
    said: tuple[Verdict, ...]


def current_verdict(
    series: Series, today: dt.date, person: PersonEvidence | None = None
) -> CurrentVerdict:
    """Return the verdict on a series' latest segment, stalls and the other shoulder left aside.

    Parameters
    ----------
    person
        Evidence of all series of the person; without it the series stands alone, as a primary one.
    """
    if not len(series):
        return CurrentVerdict(
            verdict=Verdict.TOO_EARLY,
            since=None,
            as_of=None,
            expires=None,
            lapsed=None,
            turn=None,
            shown=None,
            checks=(),
            said=(),
        )
    course = _Course(
        series, today, person or PersonEvidence.of((series,), today, (series.movement,))
    )
    course.follow()
    expires = series.date(-1) + dt.timedelta(days=EXPIRES_DAY)
    lapsed = course.verdict if today > expires else None
    return CurrentVerdict(
        verdict=course.verdict if lapsed is None else Verdict.NO_RECENT,
        since=course.since,
        as_of=course.checks[-1].day if course.checks else None,
        expires=expires,
        lapsed=lapsed,
        turn=course.turn,
        shown=course.shown(),
        checks=tuple(course.checks),
        said=tuple(course.said),
    )


class _Course:
    """The checks of a series one after the other, and what is said at each."""

    def __init__(self, series: Series, today: dt.date, person: PersonEvidence) -> None:
        self.series, self.today, self.person = series, today, person
        self.key = (series.movement, series.conduct, series.side)
        self.primary = series.movement in person.primary
        self.segment = series.latest_segment()
        self.counted = self.segment.counted()
        self.usual_spread = MOVEMENTS[series.movement].usual_spread
        self.checks: list[WeeklyCheck] = []
        self.said: list[Verdict] = []
        self.turn: Turn | None = None
        self.verdict = Verdict.TOO_EARLY
        self.since: dt.date | None = None
        self.confirmed: Verdict | None = None
        # Week from which reviews are counted.
        self.start_week = 0

    def follow(self) -> None:
        """Go through the checks; after a turn they are made anew, for what lies after it."""
        raw = self.person.checks.get(self.key)
        if raw is None:
            raw = weekly_checks(self.series, self.today)
        pending = self._allowing(raw)
        while pending:
            check = pending.pop(0)
            turn = self._turn_at(check)
            if turn is not None:
                self.turn, self.confirmed = turn, None
                self.start_week = check.week
                day = float(turn.day.toordinal())
                later = weekly_checks(self.series, self.today, turned=day, joined=not turn.sudden)
                pending = self._allowing([item for item in later if item.day >= check.day])
                check = pending.pop(0)
            self._judge(check)
            self.checks.append(check)
            self.said.append(self.verdict)

    def _allowing(self, checks: Sequence[WeeklyCheck]) -> list[WeeklyCheck]:
        return [check.allowing_for(self.person.related(check.day)) for check in checks]

    def _turn_at(self, check: WeeklyCheck) -> Turn | None:
        """Return the turn that a check is the first to show, or None."""
        loss = self._loss_before(check.day)
        # A fast bend may seem sudden as well; what explains the days better is meant.
        if loss is not None and loss.confirmed and loss.evidence < _SUDDEN * check.bend_evidence:
            return Turn(
                day=loss.first_day,
                low=loss.first_day,
                high=loss.first_day,
                before=self.confirmed or Verdict.NO_CLEAR_CHANGE,
                shown_on=check.day,
                sudden=True,
                by=loss.by,
            )
        previous = self.checks[-1] if self.checks else None
        if check.bend is None or previous is None or previous.bend is None:
            return None
        if not self._bent(check, previous):
            return None
        return Turn(
            day=_date(check.bend.day),
            low=_date(check.bend.low),
            high=_date(check.bend.high),
            before=self._before(check.bend),
            shown_on=check.day,
        )

    def _bent(self, check: WeeklyCheck, previous: WeeklyCheck) -> bool:
        now, before = check.bend_evidence, previous.bend_evidence
        if now * before <= 0:
            return False
        _, backing = self.person.backing(self.key, check.day)
        limit, limit_before = turn_limits(
            backing * (1 if now > 0 else -1) if self.turn is None else 0.0, self.primary
        )
        return abs(now) > limit and abs(before) > limit_before

    def _before(self, bend: Bend) -> Verdict:
        if bend.before_evidence > _BEFORE_CLEAR:
            return Verdict.GAINING
        if bend.before_evidence < -_BEFORE_CLEAR:
            return Verdict.LOSING
        return Verdict.NO_CLEAR_CHANGE

    def _loss_before(self, day: dt.date) -> SuddenLoss | None:
        """Return the sudden loss that the sessions before a check show, since the latest turn."""
        at = day.toordinal()
        used = self.counted.day < at
        if self.turn is not None:
            used &= self.counted.day >= self.turn.day.toordinal()
        return sudden_loss(
            self.counted.day[used],
            self.counted.value[used],
            self.usual_spread,
            self.person.related(day),
        )

    def _judge(self, check: WeeklyCheck) -> None:
        """Set the verdict after a check."""
        verdict = self._verdict(check)
        if verdict is not self.verdict or self.since is None:
            self.since = check.day
        self.verdict = verdict

    def _verdict(self, check: WeeklyCheck) -> Verdict:
        if check.slope is None:
            self.confirmed = None
            return Verdict.TOO_EARLY
        now = check.evidence
        before = self.checks[-1].evidence if self.checks else 0.0
        sense = 1 if now > 0 else -1
        if self._doubted(check):
            self.confirmed = None
            return Verdict.NO_CLEAR_CHANGE
        if self.checks and self._shown(check, abs(now), before * sense):
            self.confirmed = Verdict.GAINING if now > 0 else Verdict.LOSING
        elif self.confirmed is not None:
            sense = 1 if self.confirmed is Verdict.GAINING else -1
            if max(sense * now, sense * before) < _LEANING:
                self.confirmed = None
        if self.confirmed is not None:
            return self.confirmed
        if abs(now) > likely_limit(check.weeks, self.primary):
            return Verdict.LIKELY_GAINING if now > 0 else Verdict.LIKELY_LOSING
        return Verdict.LEVEL if self._level(check.slope) else Verdict.NO_CLEAR_CHANGE

    def _doubted(self, check: WeeklyCheck) -> bool:
        """Return whether this check and the one before hold a bend against the line's direction."""
        pair = (*self.checks[-1:], check)
        return len(pair) == 2 and all(_bends_away(item) for item in pair)

    def _shown(self, check: WeeklyCheck, now: float, before: float) -> bool:
        """Return whether a check confirms a change; evidence is above 0 in its direction."""
        sense = 1 if check.evidence > 0 else -1
        if before > 0 and now > self._limit(check, sense):
            return True
        previous = self.checks[-1]
        return before > weekly_limit(previous.weeks, self.primary) and now > _LEANING

    def _limit(self, check: WeeklyCheck, sense: int) -> float:
        """Return the evidence that a check needs."""
        weeks, turned = check.weeks, self.turn is not None
        backing = 0.0 if turned else sense * self.person.backing(self.key, check.day)[0]
        limit = weekly_limit(weeks, self.primary, backing=backing, turned=turned)
        review = reviews_passed(check.week - self.start_week)
        if review > reviews_passed(max(self.checks[-1].week - self.start_week, 0)):
            alone = not self.person.others(self.key)
            return min(limit, review_limit(review, self.primary, alone))
        return limit

    def _level(self, slope: Slope) -> bool:
        """Return whether the part after a turn is shown to be level."""
        if self.turn is None:
            return False
        low, high = slope.interval_per_month(0.90)
        return -LEVEL_SPREADS * self.usual_spread < low and high < LEVEL_SPREADS * self.usual_spread

    def shown(self) -> ShownSlope | None:
        """Return the slope of the latest check as it is shown."""
        slope = self.checks[-1].slope if self.checks else None
        if slope is None:
            return None
        begun = self.since if self.verdict in (Verdict.GAINING, Verdict.LOSING) else None
        if begun is not None and (self.checks[-1].day - begun).days <= SHRUNK_DAY:
            per_day, error = slope.shrunk(self.usual_spread)
            low, high = slope.interval_around(per_day, error)
            return ShownSlope(per_month=per_day * DAYS_A_MONTH, low=low, high=high, shrunk=True)
        low, high = slope.interval_per_month()
        return ShownSlope(per_month=slope.per_month, low=low, high=high, shrunk=False)


def _bends_away(check: WeeklyCheck) -> bool:
    """Return whether a line may have bent away from its direction."""
    if check.bend is None:
        return False
    sense = 1 if check.evidence > 0 else -1
    return sense * check.bend_evidence < -_DOUBT and sense * check.bend.after_evidence < _LEANING


def _date(day: float) -> dt.date:
    return dt.date.fromordinal(round(day))
