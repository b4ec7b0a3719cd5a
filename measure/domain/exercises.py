"""Exercises of a home programme: the usual ones with their names, and a clinician's own."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.record_checks import checked_name
from measure.errors import InputError
from measure.message import TranslatableMessage


class ListedExercise(StrEnum):
    """Exercises of the usual home programme, by their names in physiotherapy."""

    TABLE_SLIDE_FORWARD = "table-slide-forward"
    TABLE_SLIDE_SIDEWAYS = "table-slide-sideways"
    PENDULUM = "pendulum"
    WALL_WALK = "wall-walk"
    EXTERNAL_ROTATION = "external-rotation-at-handle"
    INTERNAL_ROTATION = "internal-rotation-at-handle"
    EXTENSION = "extension-at-handle"
    BEHIND_BACK = "behind-back-at-handle"
    CROSS_BODY = "cross-body"
    TOWEL = "towel"


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseFacts:
    """Name and description of an exercise, as shown to the person.

    Attributes
    ----------
    name
        Its name in physiotherapy.
    how
        Description, one sentence.
    swinging
        True for one that is not held.
    """

    name: str
    how: str
    swinging: bool = False


EXERCISE_FACTS: Mapping[ListedExercise, ExerciseFacts] = {
    ListedExercise.TABLE_SLIDE_FORWARD: ExerciseFacts(
        name="Table slide forwards",
        how="Sit at a table, hand on a cloth, and let it slide away from you as you lean forwards.",
    ),
    ListedExercise.TABLE_SLIDE_SIDEWAYS: ExerciseFacts(
        name="Table slide sideways",
        how="Sit side-on to a table, hand on a cloth, and let it slide away from your side.",
    ),
    ListedExercise.PENDULUM: ExerciseFacts(
        name="Pendulum",
        how="Lean on the other hand, let the arm hang and let it swing in small circles.",
        swinging=True,
    ),
    ListedExercise.WALL_WALK: ExerciseFacts(
        name="Wall walk",
        how="Face a wall and walk your fingers up it, with your arm resting against the wall.",
    ),
    ListedExercise.EXTERNAL_ROTATION: ExerciseFacts(
        name="External rotation at a fixed handle",
        how="Elbow bent at your side, hold a fixed handle and turn your body away from the hand.",
    ),
    ListedExercise.INTERNAL_ROTATION: ExerciseFacts(
        name="Internal rotation at a fixed handle",
        how="Elbow bent at your side, hold a fixed handle and turn your body towards the hand.",
    ),
    ListedExercise.EXTENSION: ExerciseFacts(
        name="Front of the shoulder at a fixed handle",
        how="Hold a fixed handle at elbow height and walk away from it, "
        "so that the arm stays behind you.",
    ),
    ListedExercise.BEHIND_BACK: ExerciseFacts(
        name="Arm behind the back at a fixed handle",
        how="Hold a fixed handle and turn your body away from it, "
        "so that the arm goes behind your back.",
    ),
    ListedExercise.CROSS_BODY: ExerciseFacts(
        name="Cross-body stretch",
        how="With your other hand, hold the elbow and draw the arm across your chest.",
    ),
    ListedExercise.TOWEL: ExerciseFacts(
        name="Towel stretch",
        how=(
            "Hang a towel over the other shoulder and hold it behind your back with both hands. "
            "Draw it gently upwards."
        ),
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """An exercise: one of the list, or one of a clinician's own with a name.

    Attributes
    ----------
    listed
        The exercise of the list, or None for a clinician's own.
    own_name
        Name of a clinician's own, 1 to 60 printable characters; "" for one of the list.
    """

    listed: ListedExercise | None = None
    own_name: str = ""

    def __post_init__(self) -> None:
        if self.listed is None:
            name = checked_name(self.own_name, TranslatableMessage("The name of an exercise"))
            object.__setattr__(self, "own_name", name)
        elif self.own_name:
            raise InputError(TranslatableMessage("An exercise from the list keeps its own name."))

    @property
    def name(self) -> str:
        """The name in English, or as the clinician gave it."""
        return self.own_name if self.listed is None else EXERCISE_FACTS[self.listed].name

    @property
    def swinging(self) -> bool:
        """True for one that is not held."""
        return self.listed is not None and EXERCISE_FACTS[self.listed].swinging
