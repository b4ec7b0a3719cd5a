"""Records of a home programme: the plan, the exercises done, and how the next morning was."""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.exercises import Exercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.record_checks import check_note, check_rating
from measure.errors import InputError
from measure.message import TranslatableMessage
from measure.system.clock import Timestamp, check_id

#: Most repetitions, longest hold in seconds and most times a day that can be planned. [technical]
MOST_REPETITIONS, LONGEST_HOLD_S, MOST_TIMES_A_DAY = 50, 120, 12
#: Least pain rating at which an exercise can stop: 0 is no pain at all. [technical]
LEAST_PAIN_LIMIT = 1
#: Most primary movements of a plan: more of them, and chance shows a change in one. [project]
MOST_PRIMARY = 3


class ComparedWithLast(StrEnum):
    """How an exercise went, compared with the last time."""

    EASIER = "easier"
    SAME = "same"
    HARDER = "harder"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedExercise:
    """One exercise of a plan.

    Attributes
    ----------
    times_a_day
        1..12.
    hold_s
        How long each repetition is held, 0..120 seconds; 0 for one that is not held.
    repetitions
        1..50, or None where the clinician set none.
    sides
        The sides it is done with; empty where not stated.
    note
        What the clinician adds in words; for one of their own, the sentence that describes it.
    """

    exercise: Exercise
    times_a_day: int
    hold_s: int
    repetitions: int | None = None
    sides: tuple[Side, ...] = ()
    note: str = ""

    def __post_init__(self) -> None:
        if not 1 <= self.times_a_day <= MOST_TIMES_A_DAY:
            raise InputError(TranslatableMessage("An exercise can be planned 1 to 12 times a day."))
        if not 0 <= self.hold_s <= LONGEST_HOLD_S:
            raise InputError(TranslatableMessage("A hold can last 0 to 120 seconds."))
        if self.repetitions is not None and not 1 <= self.repetitions <= MOST_REPETITIONS:
            raise InputError(TranslatableMessage("An exercise can have 1 to 50 repetitions."))
        object.__setattr__(self, "sides", tuple(sorted(set(self.sides))))
        check_note(self.note)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A home programme chosen by a clinician, valid until the person's next plan begins.

    Attributes
    ----------
    first_day
        The local day it begins.
    exercises
        Each exercise at most once; empty to end a programme.
    pain_limit
        Numeric rating 1..10 at which to stop; 0 without exercises. A 0 with exercises, which
        earlier versions took, becomes 1: stop at the first pain.
    chosen_by
        Role of the person who chose it, such as "physiotherapist"; no name is needed.
    review
        The local day on which the clinician wants to look at it again, or None.
    primary
        Movements on which the verdicts shall rest, at most three; empty for the usual ones.
    """

    id: str
    person_id: str
    first_day: dt.date
    exercises: tuple[PlannedExercise, ...]
    pain_limit: int
    chosen_by: str = ""
    review: dt.date | None = None
    primary: tuple[Movement, ...] = ()

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id)
        check_rating(self.pain_limit)
        if self.exercises and self.pain_limit == 0:
            object.__setattr__(self, "pain_limit", LEAST_PAIN_LIMIT)
        check_note(self.chosen_by)
        if len({planned.exercise for planned in self.exercises}) != len(self.exercises):
            raise InputError(
                TranslatableMessage(
                    "Each exercise can be in a programme only once. Change how many times a day "
                    "instead."
                )
            )
        if self.review is not None and self.review < self.first_day:
            raise InputError(
                TranslatableMessage("The review cannot be before the first day of the programme.")
            )
        if len(self.primary) > MOST_PRIMARY or len(set(self.primary)) != len(self.primary):
            raise InputError(
                TranslatableMessage(
                    "Choose at most {most} main movements, each only once.",
                    {"most": str(MOST_PRIMARY)},
                )
            )

    def planned(self, exercise: Exercise) -> PlannedExercise | None:
        """Return what is planned of an exercise, or None."""
        return next((item for item in self.exercises if item.exercise == exercise), None)

    def prescribes_the_same_as(self, other: "Plan") -> bool:
        """Return whether both have the same exercises with the same doses and pain limit.

        Who chose it, the review and the primary movements change nothing for the shoulder.
        """
        same_doses = set(self.exercises) == set(other.exercises)
        return same_doses and self.pain_limit == other.pain_limit


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseLog:
    """One exercise that was done; what was not stated is None.

    Attributes
    ----------
    pain
        The worst pain reached, 0..10.
    compared
        How it went, compared with the last time.
    repetitions
        Repetitions done, 0..50, where they were counted: a guided round counts them, and whoever
        logs an exercise done elsewhere may say so for one done in part.
    """

    id: str
    person_id: str
    exercise: Exercise
    done: Timestamp
    pain: int | None = None
    compared: ComparedWithLast | None = None
    repetitions: int | None = None

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id)
        check_rating(self.pain)
        if self.repetitions is not None and not 0 <= self.repetitions <= MOST_REPETITIONS:
            raise InputError(
                TranslatableMessage("The number of repetitions done must be from 0 to 50.")
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class NextMorning:
    """Whether the shoulder had settled by the morning after a day of exercises.

    Attributes
    ----------
    day
        The local day of the exercises. Of several answers for one day the last holds.
    """

    id: str
    person_id: str
    day: dt.date
    eased: bool

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id)
