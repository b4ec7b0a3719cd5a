"""Records of a person's own goals: what they want to do again, and how well it goes."""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from measure.domain.record_checks import checked_name
from measure.errors import InputError
from measure.message import TranslatableMessage
from measure.system.clock import check_id

#: Most goals that are open at one time: more of them, and none is looked at. [project]
MOST_GOALS = 3
#: Days after which a goal is offered for rating again: once a month. [project]
RATE_AGAIN_DAY = 28


@dataclass(frozen=True, slots=True, kw_only=True)
class Goal:
    """Something that a person wants to do again, in their own words.

    Attributes
    ----------
    words
        1 to 60 printable characters, such as "put on a jacket".
    first_day
        The local day on which it was named.
    last_day
        The local day from which on it is no goal any more, or None while it is open.
    """

    id: str
    person_id: str
    words: str
    first_day: dt.date
    last_day: dt.date | None = None

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id)
        object.__setattr__(self, "words", checked_name(self.words, TranslatableMessage("A goal")))
        if self.last_day is not None and self.last_day < self.first_day:
            raise InputError(
                TranslatableMessage("A goal cannot end before the day on which it was added.")
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalRating:
    """How well something goes that a person wants to do again.

    Attributes
    ----------
    day
        The local day of the rating.
    rating
        0 (not possible at all) to 10 (as well as before).
    """

    id: str
    person_id: str
    goal_id: str
    day: dt.date
    rating: int

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id, self.goal_id)
        if not 0 <= self.rating <= 10:
            raise InputError(
                TranslatableMessage(
                    "A goal is rated from 0 (not possible at all) to 10 (as well as before), not "
                    "{rating}.",
                    {"rating": str(self.rating)},
                )
            )


def open_goals(goals: Iterable[Goal]) -> tuple[Goal, ...]:
    """Return the goals that have not ended, the earliest first."""
    return tuple(goal for goal in goals if goal.last_day is None)


def ratings_of(goal: Goal, ratings: Iterable[GoalRating]) -> tuple[GoalRating, ...]:
    """Return the ratings of a goal, the earliest first."""
    return tuple(rating for rating in ratings if rating.goal_id == goal.id)


def rate_from(ratings: Sequence[GoalRating]) -> dt.date | None:
    """Return the day from which a goal is offered for rating again; None where it never was rated.

    Parameters
    ----------
    ratings
        Those of one goal, the earliest first.
    """
    return ratings[-1].day + dt.timedelta(days=RATE_AGAIN_DAY) if ratings else None
