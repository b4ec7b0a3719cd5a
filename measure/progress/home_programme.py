"""Home programme: facts of its stretches, what was done of a plan, and the dose of testing.

A clinician chooses the plan; nothing here adds to it or urges a person on. Adherence is a number
beside the curves, no more.
"""

import datetime as dt
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.movements import Movement
from measure.domain.records import Pain, Plan, Stretch, StretchLog

_WEEK = dt.timedelta(days=7)
_DAY = dt.timedelta(days=1)

#: Pain ratings from which irritability is moderate and high, of 10.
#: [source: Kelley, McClure & Leggin 2009, J Orthop Sports Phys Ther 39:135]
MODERATE_PAIN, HIGH_PAIN = 4, 7
#: Pain rating at which to stop where no clinician has set one, 0..10. [project]
USUAL_PAIN_LIMIT = 4
#: Scored trials of a movement, usually and for a highly irritable shoulder. [project]
USUAL_TRIALS, IRRITABLE_TRIALS = 3, 2


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchFacts:
    """Name and instruction of a stretch, as shown to the person.

    Attributes
    ----------
    name
        Its name in physiotherapy.
    how
        Instruction, one sentence.
    swinging
        True for one that is not held.
    """

    name: str
    how: str
    swinging: bool = False


STRETCHES: Mapping[Stretch, StretchFacts] = {
    Stretch.TABLE_SLIDE_FORWARD: StretchFacts(
        name="Table slide forwards",
        how="Sit at a table, hand on a cloth, and let it slide away from you as you bow forwards.",
    ),
    Stretch.TABLE_SLIDE_SIDEWAYS: StretchFacts(
        name="Table slide sideways",
        how="Sit side-on to a table, hand on a cloth, and let it slide away from your side.",
    ),
    Stretch.PENDULUM: StretchFacts(
        name="Pendulum",
        how="Lean on the other hand, let the arm hang and let it swing in small circles.",
        swinging=True,
    ),
    Stretch.WALL_WALK: StretchFacts(
        name="Wall walk",
        how="Face a wall and let the fingers walk up it, the arm resting against the wall.",
    ),
    Stretch.EXTERNAL_ROTATION: StretchFacts(
        name="External rotation at a fixed handle",
        how="Elbow bent at your side, hold a fixed handle and turn your body away from the hand.",
    ),
    Stretch.INTERNAL_ROTATION: StretchFacts(
        name="Internal rotation at a fixed handle",
        how="Elbow bent at your side, hold a fixed handle and turn your body towards the hand.",
    ),
    Stretch.CROSS_BODY: StretchFacts(
        name="Cross-body stretch",
        how="With the other hand, draw the arm across the chest by its elbow.",
    ),
    Stretch.TOWEL: StretchFacts(
        name="Towel stretch",
        how="A towel over the other shoulder, held behind the back by both hands: "
        "draw it gently upwards.",
    ),
}


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
    """Planned and done stretches of one week.

    Attributes
    ----------
    monday
        Its first day.
    planned, done
        Times over all stretches; `done` counts no stretch beyond its plan for a day, so that
        much on one day does not hide nothing on another.
    """

    monday: dt.date
    planned: int
    done: int

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
            sentence="The shoulder is easily upset today, so two trials of each movement are "
            "enough and the reach behind the back is left out. Stop where pain begins.",
        )
    return AssessmentDose(trials=USUAL_TRIALS)


def pain_limit(plans: Sequence[Plan], day: dt.date) -> int:
    """Return the pain rating, 0..10, at which to stop on a local day: the plan's, or the usual."""
    plan = plan_on(plans, day)
    return USUAL_PAIN_LIMIT if plan is None or not plan.stretches else plan.pain_limit


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


def weeks_done(
    plans: Sequence[Plan], logs: Iterable[StretchLog], first: dt.date, last: dt.date
) -> list[WeekDone]:
    """Return planned and done stretches of every week that overlaps first..last, both included.

    A stretch counts for the local day on which it was logged. Days outside first..last count
    neither as planned nor as done, so an unfinished week is judged by its days so far.
    """
    logged = Counter((log.done.day, log.stretch) for log in logs)
    weeks = []
    monday = first - dt.timedelta(days=first.weekday())
    while monday <= last:
        planned = done = 0
        day = max(monday, first)
        while day <= min(monday + _WEEK - _DAY, last):
            plan = plan_on(plans, day)
            for planned_stretch in plan.stretches if plan else ():
                planned += planned_stretch.times_a_day
                done += min(logged[day, planned_stretch.stretch], planned_stretch.times_a_day)
            day += _DAY
        weeks.append(WeekDone(monday=monday, planned=planned, done=done))
        monday += _WEEK
    return weeks
