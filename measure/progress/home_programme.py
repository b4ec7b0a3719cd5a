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

from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import (
    ExerciseLog,
    NextMorning,
    Plan,
    PlannedExercise,
)
from measure.domain.movements import Movement
from measure.domain.records import Event, EventKind, History, Pain
from measure.progress.dates import date_words

#: Words for the parts of a dose; of one, and of several.
REPETITIONS = ("1 repetition", "{count} repetitions")
TIMES_A_DAY = ("once a day", "{count} times a day")
HELD = "held for {count} s"
BOTH_SIDES = "both sides"
#: Words for what was done of a programme, and for how long the end of range was held.
DONE_SINCE = "Exercises since {day}: {exercises}."
DONE_OF = "{exercise} {done} of {planned} planned"
HELD_MINUTES, HELD_BRIEFLY = "{minutes} min at end range", "under 1 min at end range"
IN_PART = "{count} partly done"
UNCOUNTED = ("1 logged without repetitions", "{count} logged without repetitions")
IN_BRACKETS = "{words} ({more})"
HELD_CAUTION = (
    "Minutes at end range are the repetitions logged times the planned hold, on each side. "
    "Where no repetitions were logged, no minutes are counted."
)
#: All of these, for the extractor of texts to translate.
DONE_WORDS = (
    DONE_SINCE,
    DONE_OF,
    HELD_MINUTES,
    HELD_BRIEFLY,
    IN_PART,
    *UNCOUNTED,
    IN_BRACKETS,
    HELD_CAUTION,
)

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


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseDone:
    """What was done of one exercise over some days.

    Attributes
    ----------
    planned, done, in_part
        Times, counted as in :class:`WeekDone`, without those of which no repetition was done.
    held_s
        Seconds at the end of range on each side: repetitions logged times the hold of that day's
        plan, of every log. None where nothing of it can be known, as for an exercise that is not
        held.
    uncounted
        Logs of a held exercise that have no repetitions, and so no part in `held_s`.
    """

    exercise: Exercise
    planned: int
    done: int
    in_part: int = 0
    held_s: int | None = None
    uncounted: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class ProgrammeDone:
    """What was done of each planned exercise since a day, that day included."""

    since: dt.date
    exercises: tuple[ExerciseDone, ...]


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


def assessment_dose(band: Irritability | None, *, leaves_out: bool = True) -> AssessmentDose:
    """Return the dose of testing for an irritability; None is treated as low.

    High: fewer trials and no reach behind the back.

    Parameters
    ----------
    leaves_out
        Whether movements may be left out; not where someone chose nothing else.
    """
    if band is Irritability.HIGH and not leaves_out:
        return AssessmentDose(
            trials=IRRITABLE_TRIALS,
            sentence=(
                "The shoulder is easily irritated today, so two trials are enough. "
                "Stop where pain begins."
            ),
        )
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


def pain_while_moving(history: History, day: dt.date) -> int | None:
    """Return the highest pain of the movements and exercises of a local day, 0..10, or None."""
    ratings = [
        *(record.pain_during for record in history.measurements if record.taken.day == day),
        *(log.pain for log in history.exercises_done if log.done.day == day),
    ]
    return max((rating for rating in ratings if rating is not None), default=None)


def irritability_on(history: History, day: dt.date, now: Pain | None = None) -> Irritability | None:
    """Return how easily the shoulder was upset on a local day, by all that was said of it.

    Parameters
    ----------
    now
        What is said just now, and is not in the history yet.
    """
    said = [session.pain for session in history.sessions if session.started.day == day]
    ratings = [
        rating
        for pain in (*said, now or Pain())
        for rating in (pain.rest, pain.night, pain.worst_24h)
        if rating is not None
    ]
    return irritability(Pain(worst_24h=max(ratings, default=None)), pain_while_moving(history, day))


def pain_to_rest_from(history: History, day: dt.date) -> int | None:
    """Return the highest pain of a day's movements if it reached the limit, 0..10, or None.

    Who stopped for that pain is not to be asked for more on the same day as if nothing had been.
    """
    pain = pain_while_moving(history, day)
    return pain if pain is not None and pain >= pain_limit(history.plans, day) else None


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


def dose_words(
    planned: PlannedExercise, tr: Callable[[str], str] = str, *, with_side: bool = True
) -> str:
    """Return the dose of an exercise: "10 repetitions, held for 15 s, 3 times a day, left".

    What the clinician did not set is left out, and the side unless it is wanted.
    """
    side = planned.sides[0].value if len(planned.sides) == 1 else BOTH_SIDES
    parts = [
        "" if planned.repetitions is None else _counted(planned.repetitions, REPETITIONS, tr),
        tr(HELD).format(count=planned.hold_s) if planned.hold_s else "",
        _counted(planned.times_a_day, TIMES_A_DAY, tr),
        tr(side) if planned.sides and with_side else "",
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


def programme_done(
    plans: Sequence[Plan], logs: Iterable[ExerciseLog], visit: dt.date | None, today: dt.date
) -> ProgrammeDone | None:
    """Return what was done of each exercise since a visit, or in the latest weeks without one.

    Returns
    -------
    programme_done
        From the day after the visit up to today; None where nothing was planned.
    """
    first = _first_recent_day(today) if visit is None else visit + _DAY
    planned_days = [plan.first_day for plan in plans if plan.exercises]
    first = max(first, min(planned_days, default=first))
    exercises = exercises_done(plans, logs, first, today)
    return ProgrammeDone(since=first, exercises=exercises) if exercises else None


def exercises_done(
    plans: Sequence[Plan], logs: Iterable[ExerciseLog], first: dt.date, last: dt.date
) -> tuple[ExerciseDone, ...]:
    """Return what was done of every exercise planned in first..last, in the plans' order."""
    by_day = _by_day(logs)
    exercises: dict[Exercise, ExerciseDone] = {}
    day = first
    while day <= last:
        plan = plan_on(plans, day)
        for item in plan.exercises if plan else ():
            logged = [
                log
                for log in by_day.get(day, ())
                if log.exercise == item.exercise and log.repetitions != 0
            ]
            partial = sum(done_in_part(log, plan) for log in logged)
            before = exercises.get(item.exercise)
            exercises[item.exercise] = _with_day(before, item, logged, partial)
        day += _DAY
    return tuple(exercises.values())


def _with_day(
    before: ExerciseDone | None,
    item: PlannedExercise,
    logged: Sequence[ExerciseLog],
    partial: int,
) -> ExerciseDone:
    """Return what was done of an exercise up to and with a day that it was planned for.

    Parameters
    ----------
    partial
        How many of the day's logs had fewer repetitions than planned.
    """
    so_far = before or ExerciseDone(exercise=item.exercise, planned=0, done=0)
    counted = [log.repetitions for log in logged if log.repetitions is not None]
    done = min(len(logged), item.times_a_day)
    held_s, uncounted = so_far.held_s, so_far.uncounted
    if item.hold_s:
        uncounted += len(logged) - len(counted)
        if counted:
            held_s = (held_s or 0) + item.hold_s * sum(counted)
    return ExerciseDone(
        exercise=item.exercise,
        planned=so_far.planned + item.times_a_day,
        done=so_far.done + done,
        in_part=so_far.in_part + max(0, done - (len(logged) - partial)),
        held_s=held_s,
        uncounted=uncounted,
    )


def programme_done_sentences(
    done: ProgrammeDone | None, tr: Callable[[str], str] = str
) -> tuple[str, ...]:
    """Return what was done of each exercise, and what the minutes mean where any were planned."""
    if done is None:
        return ()
    words = "; ".join(_done_words(item, tr) for item in done.exercises)
    sentence = tr(DONE_SINCE).format(day=date_words(done.since, tr), exercises=words)
    held = any(item.held_s is not None or item.uncounted for item in done.exercises)
    return (sentence, tr(HELD_CAUTION)) if held else (sentence,)


def _done_words(item: ExerciseDone, tr: Callable[[str], str]) -> str:
    """Return for example "Wall walk 9 of 14 planned (12 min at end range)"."""
    words = tr(DONE_OF).format(
        exercise=tr(item.exercise.name), done=item.done, planned=item.planned
    )
    more = [tr(IN_PART).format(count=item.in_part)] if item.in_part else []
    if item.held_s is not None:
        minutes = round(item.held_s / 60)
        more.append(tr(HELD_MINUTES).format(minutes=minutes) if minutes else tr(HELD_BRIEFLY))
    if item.uncounted:
        more.append(_counted(item.uncounted, UNCOUNTED, tr))
    return tr(IN_BRACKETS).format(words=words, more=", ".join(more)) if more else words


def recent_weeks(
    plans: Sequence[Plan], logs: Iterable[ExerciseLog], today: dt.date
) -> tuple[WeekDone, ...]:
    """Return the latest weeks up to today, the present one included, that had a plan."""
    first = _first_recent_day(today)
    return tuple(week for week in weeks_done(plans, logs, first, today) if week.planned)


def _first_recent_day(today: dt.date) -> dt.date:
    return today - dt.timedelta(days=today.weekday()) - (RECENT_WEEKS - 1) * _WEEK


def weeks_done(
    plans: Sequence[Plan], logs: Iterable[ExerciseLog], first: dt.date, last: dt.date
) -> list[WeekDone]:
    """Return planned and done exercises of every week that overlaps first..last, both included.

    An exercise counts for the local day on which it was logged. Days outside first..last count
    neither as planned nor as done, so an unfinished week is judged by its days so far.
    """
    by_day = _by_day(logs)
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


def _by_day(logs: Iterable[ExerciseLog]) -> dict[dt.date, list[ExerciseLog]]:
    """Return logs by the local day on which they were made."""
    by_day: dict[dt.date, list[ExerciseLog]] = defaultdict(list)
    for log in logs:
        by_day[log.done.day].append(log)
    return by_day
