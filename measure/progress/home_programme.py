"""The home programme: its stretches, how much of a plan was done, how much testing to ask for.

A clinician chooses the plan; nothing here adds to it or urges anybody on. Adherence is a
number beside the curves, no more.
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


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchFacts:
    """What is shown about a stretch.

    Attributes
    ----------
    name
        The trade's name.
    how
        One sentence.
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
    """How easily a shoulder is upset, in the three bands of the trade."""

    HIGH = "high"
    MODERATE = "moderate"
    LOW = "low"


@dataclass(frozen=True, slots=True, kw_only=True)
class AssessmentDose:
    """How much testing to ask for in a session.

    Attributes
    ----------
    trials
        Scored trials of a movement, after one practice.
    left_out
        Movements not to ask for.
    sentence
        What to tell the person, in plain words; empty when nothing is left out.
    """

    trials: int
    left_out: tuple[Movement, ...] = ()
    sentence: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WeekDone:
    """What was planned and done in a week.

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
    """Return the band that the worst of the pain ratings falls into; None when none was given.

    7 and more is high, 4 to 6 moderate, 3 and less low: the usual bands of the trade (Kelley,
    McClure & Leggin 2009, J Orthop Sports Phys Ther 39:135). Taking the worst rating alone,
    without asking for night rest and disability, is ours and errs on the careful side.
    """
    given = [
        rating
        for rating in (pain.rest, pain.night, pain.worst_24h, pain_during)
        if rating is not None
    ]
    if not given:
        return None
    if max(given) >= 7:
        return Irritability.HIGH
    return Irritability.MODERATE if max(given) >= 4 else Irritability.LOW


def assessment_dose(band: Irritability | None) -> AssessmentDose:
    """Return how much testing to ask for. Ours.

    High: two trials and no reach behind the back. Otherwise, and where nothing is known, three.
    """
    if band is Irritability.HIGH:
        return AssessmentDose(
            trials=2,
            left_out=(Movement.HAND_BEHIND_BACK,),
            sentence="The shoulder is easily upset today, so two trials of each movement are "
            "enough and the reach behind the back is left out. Stop where pain begins.",
        )
    return AssessmentDose(trials=3)


def plan_on(plans: Sequence[Plan], day: dt.date) -> Plan | None:
    """Return the plan that holds on a day: the latest begun, the last entered among equals.

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
    """Return planned and done for every week that touches the days first..last, both included.

    A stretch counts for the local day on which it was tapped. Days outside first..last count
    neither as planned nor as done, so the week that is still going on is judged by its days
    so far.
    """
    taps = Counter((log.done.day, log.stretch) for log in logs)
    weeks = []
    monday = first - dt.timedelta(days=first.weekday())
    while monday <= last:
        planned = done = 0
        day = max(monday, first)
        while day <= min(monday + _WEEK - _DAY, last):
            plan = plan_on(plans, day)
            for each in plan.stretches if plan else ():
                planned += each.times_a_day
                done += min(taps[day, each.stretch], each.times_a_day)
            day += _DAY
        weeks.append(WeekDone(monday=monday, planned=planned, done=done))
        monday += _WEEK
    return weeks
