"""Measuring plan: which movements are due today, and about how many minutes they take.

The primary movements of the affected side every other day, everything on both sides once a week:
enough for a verdict within weeks, and few raises for a sore arm. A clinician's or a person's own
choice stands above it.
"""

import datetime as dt
import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History, Person
from measure.progress.home_programme import plan_on
from measure.progress.person_evidence import PRIMARY_MOVEMENTS

#: Days from one measurement of the primary movements to the next: three times a week. [project]
PRIMARY_EVERY_DAYS = 2
#: Days from one measurement of everything on both sides to the next. [project]
WHOLE_EVERY_DAYS = 7
#: Minutes that a movement of an arm takes, three trials and the question about pain included,
#: where nobody's sessions say it. [project]
USUAL_MIN = 1.0
#: Trials of a movement at home. [project]
_TRIALS_A_TASK = 3
#: Movements whose times say how long one takes, and how few say it. [project]
_LATEST_MOVEMENTS, _FEWEST_MOVEMENTS = 12, 3
#: Minutes from the end of one movement to the end of the next; more means a break. [project]
_BREAK_MIN = 5.0
#: Sessions whose times of day say which one is usual, and how few say it. [project]
_LATEST_TIMES, _FEWEST_TIMES = 9, 3
#: Minutes around the usual time of day within which most of those sessions began. [project]
_USUAL_WITHIN_MIN = 90
#: Minutes to which the usual time of day is rounded. [project]
_ROUNDED_MIN = 30
_DAY_MIN = 24 * 60

Task = tuple[Movement, Side]


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuringPlan:
    """What to measure next.

    Attributes
    ----------
    tasks
        Movements and sides in order; of both sides the less affected one first.
    whole
        Whether these are all movements on both sides, as once a week.
    due
        Whether they are due today; measuring earlier is no harm.
    next_day
        The day on which they are due, today or later.
    minutes_a_task
        How long one of them takes.
    first
        Whether nothing has been measured before.
    usual_time
        The local time of day, to the half hour, at which most of the latest sessions began; None
        where they were too few or too far apart.
    """

    tasks: tuple[Task, ...]
    whole: bool
    due: bool
    next_day: dt.date
    minutes_a_task: float
    first: bool
    usual_time: dt.time | None = None

    def minutes(self, tasks: int) -> int:
        """Return about how many whole minutes a number of tasks takes, at least one."""
        return max(1, math.ceil(tasks * self.minutes_a_task))


def measuring_plan(
    history: History, everything: Sequence[Movement], today: dt.date
) -> MeasuringPlan:
    """Return what a person is to measure next.

    Parameters
    ----------
    everything
        The movements of the weekly session.
    """
    plan = plan_on(history.plans, today)
    chosen = plan.primary if plan is not None and plan.primary else PRIMARY_MOVEMENTS
    primary = [movement for movement in Movement if movement in chosen]
    days = _days_of_tasks(history)
    whole_tasks = both_sides(everything, history.person)
    last_day = max((max(measured) for measured in days.values()), default=None)
    first = last_day is None
    whole_last = min((max(days[task]) if task in days else dt.date.min) for task in whole_tasks)
    whole = not first and (
        whole_last == dt.date.min or (today - whole_last).days >= WHOLE_EVERY_DAYS
    )
    affected = history.person.affected
    if len(affected) == 1:
        usual = tuple((movement, affected[0]) for movement in primary)
    else:
        usual = both_sides(primary, history.person)
    left = _left_of_first(usual, days, today)
    tasks = left or (whole_tasks if whole else usual)
    every = 1 if whole else PRIMARY_EVERY_DAYS
    next_day = today if last_day is None else max(today, last_day + dt.timedelta(days=every))
    return MeasuringPlan(
        tasks=tasks,
        whole=whole and not left,
        due=bool(left) or next_day == today,
        next_day=today if left else next_day,
        minutes_a_task=_minutes_a_task(history),
        first=first,
        usual_time=_usual_time(history),
    )


def _left_of_first(
    usual: tuple[Task, ...], days: dict[Task, set[dt.date]], today: dt.date
) -> tuple[Task, ...]:
    """Return what today's first session left out, if it was broken off; else nothing."""
    all_days = {day for measured in days.values() for day in measured}
    broken_off = all_days == {today} and set(days) < set(usual)
    return tuple(task for task in usual if task not in days) if broken_off else ()


def both_sides(movements: Sequence[Movement], person: Person) -> tuple[Task, ...]:
    """Return movements on both sides, each time the side first that is not the affected one."""
    second = person.affected[0] if len(person.affected) == 1 else Side.LEFT
    return tuple((movement, side) for movement in movements for side in (second.other, second))


def _days_of_tasks(history: History) -> dict[Task, set[dt.date]]:
    """Return the days on which a movement of a side was measured, refusals included."""
    days: dict[Task, set[dt.date]] = {}
    for record in history.measurements:
        task = record.measurement.movement, record.measurement.side
        days.setdefault(task, set()).add(record.taken.day)
    return days


def _minutes_a_task(history: History) -> float:
    """Return how long a movement of an arm takes at home by the latest ones, or usually.

    From the end of one movement, the answer about pain included, to that of the next in the same
    session; a longer time than `_BREAK_MIN` is a break and says nothing. How long a session was
    open says nothing either. What counts is the time of a trial that was scored: in a clinic a
    movement has fewer of them.
    """
    lasted = []
    for before, record in pairwise(sorted(history.measurements, key=lambda done: done.taken.utc)):
        minutes = (record.taken.utc - before.taken.utc).total_seconds() / 60
        scored = sum(trial.scored for trial in record.measurement.trials)
        if before.session_id == record.session_id and scored and 0 < minutes <= _BREAK_MIN:
            lasted.append(minutes / scored)
    if len(lasted) < _FEWEST_MOVEMENTS:
        return USUAL_MIN
    return statistics.median(lasted[-_LATEST_MOVEMENTS:]) * _TRIALS_A_TASK


def _usual_time(history: History) -> dt.time | None:
    """Return the time of day that is nearest to those of the latest sessions."""
    measured = {record.session_id for record in history.measurements}
    sessions = [session for session in history.sessions if session.id in measured]
    starts = [session.started.local for session in sessions[-_LATEST_TIMES:]]
    minutes = [start.hour * 60 + start.minute for start in starts]
    if len(minutes) < _FEWEST_TIMES:
        return None
    usual = min(minutes, key=lambda minute: sum(_apart_min(minute, other) for other in minutes))
    near = sum(_apart_min(usual, minute) <= _USUAL_WITHIN_MIN for minute in minutes)
    if 2 * near <= len(minutes):
        return None
    hour, minute = divmod(round(usual / _ROUNDED_MIN) * _ROUNDED_MIN % _DAY_MIN, 60)
    return dt.time(hour, minute)


def _apart_min(minute: int, other: int) -> int:
    """Return how far two times of day are apart, minutes, over midnight where that is nearer."""
    apart = abs(minute - other)
    return min(apart, _DAY_MIN - apart)
