"""Home programme: what was done of a plan, when it changed, and the dose of testing.

A clinician chooses the plan; nothing here adds to it or urges a person on. Adherence is a number
beside the curves, no more.
"""

import datetime as dt
from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from measure.domain.home_programme_records import (
    ExerciseLog,
    NextMorning,
    Plan,
    PlannedExercise,
)
from measure.domain.movements import Movement
from measure.domain.records import Event, EventKind, History, Pain

#: Words for the parts of a dose; of one, and of several.
REPETITIONS = ("1 repetition", "{count} repetitions")
TIMES_A_DAY = ("once a day", "{count} times a day")
HELD = "held for {count} s"
BOTH_SIDES = "both sides"

#: Weeks of the home programme that are summed up, the present one included. [technical]
RECENT_WEEKS = 4

_WEEK = dt.timedelta(days=7)
_DAY = dt.timedelta(days=1)

#: Pain ratings from which irritability is moderate and high, of 10.
#: [source: Kelley, McClure & Leggin 2009, J Orthop Sports Phys Ther 39:135]
MODERATE_PAIN, HIGH_PAIN = 4, 7
#: Pain rating at which to stop where no clinician has set one, 0..10. [project]
USUAL_PAIN_LIMIT = 4
#: Scored trials of a movement, usually and for a highly irritable shoulder. [project]
USUAL_TRIALS, IRRITABLE_TRIALS = 3, 2


class Irritability(StrEnum):
    """How easily a shoulder is upset, in the three bands of physiotherapy."""

    HIGH = "high"
    MODERATE = "moderate"
    LOW = "low"


@dataclass(frozen=True, slots=True, kw_only=True)
class AssessmentDose:
    """Dose of testing in one session.

    Attributes
    ----------
    trials
        Scored trials of a movement, after one practice.
    left_out
        Movements that are left out.
    sentence
        Explanation for the person, in plain words; empty when nothing is left out.
    """

    trials: int
    left_out: tuple[Movement, ...] = ()
    sentence: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekDone:
    """Planned and done exercises of one week.

    Attributes
    ----------
    monday
        Its first day.
    planned, done
        Times over all exercises; `done` counts no exercise beyond its plan for a day, so that
        much on one day does not hide nothing on another.
    in_part
        How many of `done` had fewer repetitions than planned; whole ones count first.
    days
        Days on which any exercise was logged.
    """

    monday: dt.date
    planned: int
    done: int
    in_part: int = 0
    days: int = 0

    @property
    def share(self) -> float | None:
        """Done over planned, 0..1; None for a week without a plan."""
        return self.done / self.planned if self.planned else None


def irritability(pain: Pain, pain_during: int | None = None) -> Irritability | None:
    """Return the band of the worst of the pain ratings; None when none was given.

    The bands are those of Kelley, McClure & Leggin 2009. Taking the worst rating alone, without
    asking for night rest and disability, is a choice of the project that errs on the safe side.
    """
    ratings = (pain.rest, pain.night, pain.worst_24h, pain_during)
    worst = max((rating for rating in ratings if rating is not None), default=None)
    if worst is None:
        return None
    if worst >= HIGH_PAIN:
        return Irritability.HIGH
    return Irritability.MODERATE if worst >= MODERATE_PAIN else Irritability.LOW


def assessment_dose(band: Irritability | None) -> AssessmentDose:
    """Return the dose of testing for an irritability; None is treated as low.

    High: fewer trials and no reach behind the back.
    """
    if band is Irritability.HIGH:
        return AssessmentDose(
            trials=IRRITABLE_TRIALS,
            left_out=(Movement.HAND_BEHIND_BACK,),
            sentence=(
                "The shoulder is easily irritated today, so two trials of each movement are "
                "enough and the reach behind the back is left out. Stop where pain begins."
            ),
        )
    return AssessmentDose(trials=USUAL_TRIALS)


def pain_limit(plans: Sequence[Plan], day: dt.date) -> int:
    """Return the pain rating, 0..10, at which to stop on a local day: the plan's, or the usual."""
    plan = plan_on(plans, day)
    return USUAL_PAIN_LIMIT if plan is None or not plan.exercises else plan.pain_limit


def plan_on(plans: Sequence[Plan], day: dt.date) -> Plan | None:
    """Return the plan in force on a day: the latest begun, the last entered among equals.

    Parameters
    ----------
    plans
        In the store's order.
    """
    begun = [plan for plan in plans if plan.first_day <= day]
    # max() keeps the first among equals, and the last entered is wanted.
    return max(reversed(begun), key=lambda plan: plan.first_day, default=None)


def dose_words(planned: PlannedExercise, tr: Callable[[str], str] = str) -> str:
    """Return the dose of an exercise: "10 repetitions, held for 15 s, 3 times a day, left".

    What the clinician did not set is left out.
    """
    side = planned.sides[0].value if len(planned.sides) == 1 else BOTH_SIDES
    parts = [
        "" if planned.repetitions is None else _counted(planned.repetitions, REPETITIONS, tr),
        tr(HELD).format(count=planned.hold_s) if planned.hold_s else "",
        _counted(planned.times_a_day, TIMES_A_DAY, tr),
        tr(side) if planned.sides else "",
    ]
    return ", ".join(part for part in parts if part)


def _counted(count: int, words: tuple[str, str], tr: Callable[[str], str]) -> str:
    return tr(words[count != 1]).format(count=count)


def eased_on(mornings: Iterable[NextMorning], day: dt.date) -> bool | None:
    """Return whether a day of exercises had settled by the next morning; None if not answered."""
    answers = [morning.eased for morning in mornings if morning.day == day]
    return answers[-1] if answers else None


def events_with_plans(history: History) -> tuple[Event, ...]:
    """Return the noted events and the changes of the home programme, the earliest first.

    A programme is a change if it prescribes something else than the one before. It is never
    saved, it follows from the plans; on a day for which a change was noted by hand, none is added.
    """
    noted = {event.day for event in history.events if event.kind is EventKind.PROGRAMME_CHANGED}
    by_day = {plan.first_day: plan for plan in history.plans}
    plans = [by_day[day] for day in sorted(by_day)]
    changes = [
        Event(
            id=plan.id,
            person_id=history.person.id,
            day=plan.first_day,
            kind=EventKind.PROGRAMME_CHANGED,
        )
        for before, plan in pairwise(plans)
        if plan.first_day not in noted and not plan.prescribes_the_same_as(before)
    ]
    return tuple(sorted((*history.events, *changes), key=lambda event: event.day))


def done_in_part(log: ExerciseLog, plan: Plan | None) -> bool:
    """Return whether an exercise was done with fewer repetitions than the plan has."""
    planned = plan.planned(log.exercise) if plan else None
    return (
        planned is not None
        and planned.repetitions is not None
        and log.repetitions is not None
        and log.repetitions < planned.repetitions
    )


def recent_weeks(
    plans: Sequence[Plan], logs: Iterable[ExerciseLog], today: dt.date
) -> tuple[WeekDone, ...]:
    """Return the latest weeks up to today, the present one included, that had a plan."""
    first = today - dt.timedelta(days=today.weekday()) - (RECENT_WEEKS - 1) * _WEEK
    return tuple(week for week in weeks_done(plans, logs, first, today) if week.planned)


def weeks_done(
    plans: Sequence[Plan], logs: Iterable[ExerciseLog], first: dt.date, last: dt.date
) -> list[WeekDone]:
    """Return planned and done exercises of every week that overlaps first..last, both included.

    An exercise counts for the local day on which it was logged. Days outside first..last count
    neither as planned nor as done, so an unfinished week is judged by its days so far.
    """
    by_day: dict[dt.date, list[ExerciseLog]] = defaultdict(list)
    for log in logs:
        by_day[log.done.day].append(log)
    weeks = []
    monday = first - dt.timedelta(days=first.weekday())
    while monday <= last:
        planned = done = in_part = days = 0
        day = max(monday, first)
        while day <= min(monday + _WEEK - _DAY, last):
            plan = plan_on(plans, day)
            days += day in by_day
            for item in plan.exercises if plan else ():
                logged = [log for log in by_day.get(day, ()) if log.exercise == item.exercise]
                partial = sum(done_in_part(log, plan) for log in logged)
                counted = min(len(logged), item.times_a_day)
                planned += item.times_a_day
                done += counted
                in_part += max(0, counted - (len(logged) - partial))
            day += _DAY
        weeks.append(
            WeekDone(monday=monday, planned=planned, done=done, in_part=in_part, days=days)
        )
        monday += _WEEK
    return weeks
