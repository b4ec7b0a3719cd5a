"""Content of the history chart: both sides' readings and ribbons, pain, events.

No Qt and no statistics.
"""

import datetime as dt
from collections import defaultdict
from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field, replace

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, Event, History, MeasurementRecord
from measure.domain.session_facts import ExerciseTiming
from measure.domain.session_timing import timing_of
from measure.progress.home_programme import events_with_plans
from measure.progress.series import Series, series_by_timing
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import Verdict
from measure.trend.local_trend import Ribbon
from measure.trend.pain_course import pain_ribbons


@dataclass(frozen=True, slots=True, kw_only=True)
class CurvePoint:
    """One measurement; value and interval are None for a refusal.

    Attributes
    ----------
    day
        The local day on which it was taken.
    practice
        True where it is shown and not counted.
    apart
        True for a session after exercises where the course is that of the others, or the other way
        round: a series of its own.
    """

    day: dt.date
    side: Side
    value: float | None
    low: float | None
    high: float | None
    pain: int | None
    practice: bool
    apart: bool
    record: MeasurementRecord


@dataclass(frozen=True, slots=True, kw_only=True)
class SideCurve:
    """Measurements of one movement on one side under one condition, the earliest first.

    Attributes
    ----------
    affected
        True for an affected side, and where nothing was stated.
    ribbons
        The likely course, in stretches.
    apart_ribbons
        That of the sessions after exercises where `ribbons` is that of the others, or the other
        way round.
    """

    side: Side
    affected: bool
    points: tuple[CurvePoint, ...]
    ribbons: tuple[Ribbon, ...] = ()
    apart_ribbons: tuple[Ribbon, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartContent:
    """All that one chart shows.

    Attributes
    ----------
    curves
        The left side's before the right one's; without those that have no measurement.
    pain
        The likely course of pain during the movement, affected sides only.
    turns
        Sides and the days on which their course turned.
    exercise_days
        Local days on which an exercise was logged.
    lines_after
        Whether the lines are those of the sessions after exercises; None where that differs between
        the sides.
    today
        The last day of the chart.
    """

    movement: Movement
    today: dt.date
    curves: tuple[SideCurve, ...] = ()
    pain: tuple[Ribbon, ...] = ()
    events: tuple[Event, ...] = ()
    turns: tuple[tuple[Side, dt.date], ...] = ()
    exercise_days: AbstractSet[dt.date] = field(default_factory=frozenset)
    lines_after: bool | None = False

    @property
    def points(self) -> list[CurvePoint]:
        """Every measurement, the earliest first, left before right on one day."""
        points = [point for curve in self.curves for point in curve.points]
        return sorted(points, key=lambda point: (point.day, point.record.taken.utc, point.side))


def without_asides(content: ChartContent) -> ChartContent:
    """Return a content with its courses, pain and events alone.

    Left out are sessions on the other side of the exercises, measurements without a result, and
    the days of exercises; where nothing but those was measured, all of it stays.
    """
    curves = tuple(
        replace(
            curve,
            apart_ribbons=(),
            points=tuple(p for p in curve.points if p.value is not None and not p.apart),
        )
        for curve in content.curves
    )
    curves = tuple(curve for curve in curves if curve.points)
    if not curves:
        return content
    return replace(content, curves=curves, exercise_days=frozenset())


def movements_of(history: History) -> tuple[Movement, ...]:
    """Return the movements that were ever measured, in the table's order."""
    measured = {record.measurement.movement for record in history.measurements}
    return tuple(movement for movement in Movement if movement in measured)


def conducts_of(history: History, movement: Movement) -> tuple[AssessmentCondition, ...]:
    """Return the conditions under which a movement was measured, the most frequent first."""
    counts: dict[AssessmentCondition, int] = defaultdict(int)
    for record in history.measurements:
        if record.measurement.movement is movement:
            counts[record.conduct] += 1
    return tuple(sorted(counts, key=lambda conduct: -counts[conduct]))


def chart_content(
    history: History,
    movement: Movement,
    conduct: AssessmentCondition,
    sides: Sequence[SideProgress],
    today: dt.date,
) -> ChartContent:
    """Return what the chart of one movement shows, done in one way.

    Parameters
    ----------
    sides
        Progress of this movement and condition; a side without a reading has none.
    """
    records: dict[Side, list[MeasurementRecord]] = defaultdict(list)
    for record in history.measurements:
        if record.measurement.movement is movement and record.conduct == conduct:
            records[record.measurement.side].append(record)
    after = {
        session.id
        for session in history.sessions
        if timing_of(session, history.exercises_done) is ExerciseTiming.AFTER
    }
    measured = tuple(record for side in Side for record in records[side])
    timed = series_by_timing(replace(history, measurements=measured))
    affected = history.person.affected
    # A course drawn while nothing can be said yet would say it.
    early = any(
        side.affected and side.verdict is Verdict.TOO_EARLY and not side.series.breaks
        for side in sides
    )
    of_side = {side.side: side for side in sides}
    curves = tuple(
        SideCurve(
            side=side,
            affected=not affected or side in affected,
            points=_points(records[side], of_side.get(side), after),
            ribbons=of_side[side].ribbons() if side in of_side and not early else (),
            apart_ribbons=_apart_ribbons(of_side.get(side), timed),
        )
        for side in Side
        if records[side]
    )
    worst: dict[int, int] = defaultdict(int)
    for point in (point for curve in curves if curve.affected for point in curve.points):
        if point.pain is not None:
            day = point.day.toordinal()
            worst[day] = max(worst[day], point.pain)
    after_exercises = {side.series.after_exercises for side in sides} or {False}
    return ChartContent(
        movement=movement,
        today=today,
        curves=curves,
        pain=pain_ribbons(worst),
        events=tuple(events_with_plans(history)),
        turns=tuple((side.side, side.current.turn.day) for side in sides if side.current.turn),
        exercise_days=frozenset(log.done.day for log in history.exercises_done),
        lines_after=next(iter(after_exercises)) if len(after_exercises) == 1 else None,
    )


def _apart_ribbons(progress: SideProgress | None, timed: Sequence[Series]) -> tuple[Ribbon, ...]:
    """Return the course of a side's sessions that its line leaves out: after exercises or before.

    Parameters
    ----------
    timed
        The series of the movement, those after exercises and the others.
    """
    if progress is None:
        return ()
    own = progress.series
    return tuple(
        ribbon
        for series in timed
        if series.side is own.side and series.after_exercises is not own.after_exercises
        for ribbon in progress.ribbons_of(series)
    )


def _points(
    records: Sequence[MeasurementRecord],
    progress: SideProgress | None,
    after_exercises: AbstractSet[str],
) -> tuple[CurvePoint, ...]:
    practice: set[dt.date] = set()
    after = False
    if progress is not None:
        series = progress.series
        after = series.after_exercises
        practice = {series.date(k) for k in range(len(series)) if series.practice[k]}
    points = []
    for record in sorted(records, key=lambda record: record.taken.utc):
        measurement, day = record.measurement, record.taken.day
        is_reading = measurement.status is Status.READING
        apart = (record.session_id in after_exercises) is not after
        points.append(
            CurvePoint(
                day=day,
                side=measurement.side,
                value=measurement.value if is_reading else None,
                low=measurement.low if is_reading else None,
                high=measurement.high if is_reading else None,
                pain=record.pain_during,
                practice=is_reading and not apart and day in practice,
                apart=apart,
                record=record,
            )
        )
    return tuple(points)
