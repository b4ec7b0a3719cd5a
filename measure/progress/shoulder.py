"""Progress of one movement on one side: level, trend, verdict. Pure."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.records import AssessmentCondition
from measure.domain.setup_changes import SetupChange
from measure.progress.before_after import BeforeAfter, ChangeSince
from measure.progress.comparison import (
    Block,
    Change,
    Scatter,
    baseline_block,
    change_between,
    recent_block,
    shared_drift,
)
from measure.progress.current_verdict import CurrentVerdict, current_verdict
from measure.progress.detectable_gain import TimeToKnow
from measure.progress.milestones import Milestone, milestones
from measure.progress.person_evidence import PersonEvidence
from measure.progress.phases import SeriesPhase, earlier_phases
from measure.progress.series import Series
from measure.progress.side_deficit import Deficit, SideDeficit, monthly_deficits
from measure.progress.stall import stalled
from measure.progress.weekly_verdicts import WINDOW_DAY, Verdict, WeeklyCheck
from measure.trend.local_trend import Ribbon, local_trend
from measure.trend.sudden_loss import SuddenLoss, sudden_loss
from measure.trend.trend_line import LEAST_FOR_OWN_SPREAD, fit_slope

#: Verdicts that a moved camera may imitate.
_CHANGING = (
    Verdict.GAINING,
    Verdict.LIKELY_GAINING,
    Verdict.LOSING,
    Verdict.LIKELY_LOSING,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SideProgress:
    """Progress of one movement on one side under one condition.

    Attributes
    ----------
    series
        Its days.
    usual
        True for the condition under which this movement is done most often.
    affected
        True for an affected side, and where nothing was stated.
    primary
        True for one of the person's primary movements; others are also seen, by stricter limits.
    verdict
        The verdict of today; that of `current`, unless the other shoulder says otherwise.
    current
        The verdict on the trend alone: since when, until when, and the latest turn.
    sudden_loss
        A sudden loss that the latest sessions show, confirmed or to be measured again; None where
        they do not, and after EXPIRES_DAY.
    scatter
        How far one day scatters about the trend: the person's own after eight days with a
        measurement, until then the usual one.
    own_spread
        True when it is the person's own.
    baseline, recent
        The first block of days and the latest one; the same days where there are few.
    change
        From baseline to recent; None where they are not comparable or not apart.
    other
        The other shoulder's latest block, where it can serve as the reference.
    short_by
        Other side minus this one, in the movement's unit; None without a reference.
    drifted_by
        How far the other shoulder moved together with this one, in the movement's unit, where
        the set-up may be the cause, so that no trend is reported; otherwise None.
    deficit
        What the affected side lacks of the other one, with intervals; None for the other side, and
        where both are affected, none was named, or they cannot be compared.
    milestones
        Everyday tasks that go with this movement.
    earlier
        The phases before each break of the series.
    events
        The series before and after the latest events.
    since_visit
        Change since the latest clinic visit.
    time_to_know
        When gains would show, while nothing is known of one.
    setup_change
        How the person now stands otherwise than at first, where that lasts.
    """

    series: Series
    usual: bool
    affected: bool
    primary: bool
    verdict: Verdict
    current: CurrentVerdict
    sudden_loss: SuddenLoss | None
    scatter: Scatter
    own_spread: bool
    baseline: Block
    recent: Block
    change: Change | None
    other: Block | None
    short_by: float | None
    drifted_by: float | None
    deficit: SideDeficit | None
    milestones: tuple[Milestone, ...]
    earlier: tuple[SeriesPhase, ...]
    events: tuple[BeforeAfter, ...] = ()
    since_visit: ChangeSince | None = None
    time_to_know: TimeToKnow | None = None
    setup_change: SetupChange | None = None

    @property
    def spread(self) -> float:
        """Standard deviation of one day about the trend, in the movement's unit."""
        return self.scatter.spread

    @property
    def weekly_checks(self) -> tuple[WeeklyCheck, ...]:
        """The latest weekly checks, the earliest first."""
        return self.current.checks

    @property
    def movement(self) -> Movement:
        return self.series.movement

    @property
    def side(self) -> Side:
        return self.series.side

    @property
    def conduct(self) -> AssessmentCondition:
        return self.series.conduct

    def ribbons(self) -> tuple[Ribbon, ...]:
        """Return the likely course for a chart; nothing is drawn across a break of the series.

        Days of practice are left out. The band shows the scatter from day to day; what all days of
        an instrument share, such as a camera that stands askew, it cannot show.
        """
        return self.ribbons_of(self.series)

    def ribbons_of(self, series: Series) -> tuple[Ribbon, ...]:
        """Return the likely course of a series of this movement and side, with its own scatter."""
        counted, scatter = series.counted(), self.scatter
        ribbons: list[Ribbon] = []
        for number in np.unique(counted.segment):
            part = counted.where(counted.segment == number)
            ribbons += local_trend(
                part.day,
                part.value,
                spread=scatter.spread,
                related=scatter.related,
                degrees_of_freedom=scatter.degrees_of_freedom,
            )
        return tuple(ribbons)


def side_progress(
    series: Series,
    all_series: Sequence[Series],
    affected: tuple[Side, ...],
    usual: AssessmentCondition,
    person: PersonEvidence,
    today: dt.date,
) -> SideProgress:
    """Return the progress that a series shows; it must not be empty.

    Parameters
    ----------
    all_series
        All series of the person, the other shoulder's among them.
    affected
        The affected sides; empty where not stated.
    usual
        The condition under which this movement is done most often.
    person
        Evidence of all series of the person.
    """
    twin = None if len(affected) == 2 else _twin(series, all_series)
    current = current_verdict(series, today, person)
    checks = current.checks
    scatter, own = _scatter(series, person.related(today))
    comparable = series.latest_instrument()
    counted = _without_practice(comparable)
    baseline, recent = baseline_block(counted, scatter), recent_block(counted, scatter)
    other, short_by, deficit = None, None, None
    if twin is not None:
        other_scatter, _ = _scatter(twin, person.related(today))
        other = recent_block(_without_practice(_comparable(twin, series)), other_scatter)
        short_by = other.value - recent.value
        if affected == (series.side,):
            deficit = SideDeficit(
                now=Deficit.between(recent, other),
                months=monthly_deficits(series, twin, scatter, other_scatter),
            )
    verdict = current.verdict
    drifted_by = None
    if twin is not None and verdict in _CHANGING:
        drifted_by = shared_drift(series, _comparable(twin, series), checks[-1])
        verdict = verdict if drifted_by is None else Verdict.NO_CLEAR_CHANGE
    if (
        current.lapsed is None
        and checks
        and other is not None
        and short_by is not None
        and stalled(checks[-1], verdict, series.movement, short_by, other.value)
    ):
        verdict = Verdict.STALLED
    return SideProgress(
        series=series,
        usual=series.conduct == usual,
        affected=not affected or series.side in affected,
        primary=series.movement in person.primary,
        verdict=verdict,
        current=current,
        sudden_loss=_sudden_loss(series, current, person, today),
        scatter=scatter,
        own_spread=own,
        baseline=baseline,
        recent=recent,
        change=change_between(baseline, recent),
        other=other,
        short_by=short_by,
        drifted_by=drifted_by,
        deficit=deficit,
        milestones=milestones(series.movement, recent),
        earlier=earlier_phases(series),
    )


def _twin(series: Series, all_series: Sequence[Series]) -> Series | None:
    """Return the other shoulder's series, where recent days of it are comparable with this one."""
    wanted = (series.movement, series.conduct, series.side.other, series.after_exercises)
    for twin in all_series:
        if (twin.movement, twin.conduct, twin.side, twin.after_exercises) == wanted:
            return twin if len(_comparable(twin, series)) else None
    return None


def _without_practice(series: Series) -> Series:
    """Return the days that count, or all of them where there is nothing but practice yet."""
    return series if series.practice.all() else series.counted()


def _comparable(twin: Series, series: Series) -> Series:
    """Return the days of the other shoulder that are comparable with a series' last one."""
    recent = twin.day > series.day[-1] - WINDOW_DAY
    return twin.where(recent & (twin.instrument == series.instrument[-1]))


def _scatter(series: Series, related: float) -> tuple[Scatter, bool]:
    """Return the scatter of one day about the trend, and whether it is the person's own."""
    segment = series.latest_segment().counted()
    usual = MOVEMENTS[series.movement].usual_spread
    if len(segment):
        lately = segment.where(segment.day > segment.day[-1] - WINDOW_DAY)
        slope = fit_slope(lately.day, lately.value, usual)
        if slope is not None and slope.days >= LEAST_FOR_OWN_SPREAD:
            freedom = slope.degrees_of_freedom
            return Scatter(spread=slope.spread, related=related, degrees_of_freedom=freedom), True
    return Scatter(spread=usual, related=related), False


def _sudden_loss(
    series: Series, current: CurrentVerdict, person: PersonEvidence, today: dt.date
) -> SuddenLoss | None:
    """Return the sudden loss that the latest sessions show, since the latest bend."""
    if current.lapsed is not None:
        return None
    segment = series.latest_segment().counted()
    if current.turn is not None and not current.turn.sudden:
        segment = segment.where(segment.day >= current.turn.day.toordinal())
    usual = MOVEMENTS[series.movement].usual_spread
    return sudden_loss(segment.day, segment.value, usual, person.related(today))
