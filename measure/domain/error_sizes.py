"""Sizes of errors that are known beforehand: from an agreement study, and from a person's trials.

They make intervals, never values. The `check_*` functions bound values that come from a file: they
raise InputError with the end of a sentence.
"""

import math
from dataclasses import dataclass

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.errors import InputError

#: Fewest pairs and people of a study whose errors replace the allowance for real people. [project]
ENOUGH_PAIRS, ENOUGH_PEOPLE = 30, 10
#: Largest error that a study may give, degrees: beyond it something is wrong with it. [project]
LARGEST_ERROR_DEG = 90.0
#: Half-width of a two-sided 95 % interval in standard deviations. [source: normal distribution]
_NORMAL_95 = 1.96


@dataclass(frozen=True, slots=True, kw_only=True)
class StudyError:
    """How far one camera was off in an agreement study of one movement.

    Attributes
    ----------
    sd_deg
        Standard deviation of a single difference from the goniometer, without the goniometer's
        own error where repeats tell that.
    bias_deg, bias_half_deg
        Mean difference, camera minus goniometer, and half of its 95 % interval.
    pairs, people
        What it rests on.
    study
        Its name.
    """

    sd_deg: float
    bias_deg: float
    bias_half_deg: float
    pairs: int
    people: int
    study: str

    def half_width_deg(self, *, corrected: bool) -> float:
        """Return the half-width of the 95 % interval that the study calls for.

        Parameters
        ----------
        corrected
            Whether the bias is taken off; otherwise the interval has to reach over it.
        """
        left = 0.0 if corrected else abs(self.bias_deg)
        return _NORMAL_95 * self.sd_deg + self.bias_half_deg + left


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementStudy:
    """A study's errors, and the movement that they hold for."""

    movement: Movement
    error: StudyError


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementTrialSd:
    """Standard deviation of a person's trials within a session, in the movement's unit."""

    movement: Movement
    sd: float


def check_study(movement: Movement, error: StudyError) -> None:
    """Raise InputError unless a study's errors can be and rest on enough pairs and people."""
    if MOVEMENTS[movement].unit is not Unit.DEGREES:
        raise InputError("only angles are studied with a goniometer")
    numbers = (error.sd_deg, error.bias_deg, error.bias_half_deg)
    if not all(map(math.isfinite, numbers)) or min(error.sd_deg, error.bias_half_deg) < 0:
        raise InputError("a number of the study cannot be")
    if max(map(abs, numbers)) > LARGEST_ERROR_DEG:
        raise InputError("the study's errors are larger than any camera's")
    if error.pairs < ENOUGH_PAIRS or error.people < ENOUGH_PEOPLE:
        raise InputError(f"a study needs {ENOUGH_PAIRS} pairs of {ENOUGH_PEOPLE} people")


def check_trial_sd(item: MovementTrialSd) -> None:
    """Raise InputError unless a person's trials can scatter like that."""
    low, high = MOVEMENTS[item.movement].possible
    if not (math.isfinite(item.sd) and 0 < item.sd <= high - low):
        raise InputError("the scatter of the trials cannot be")
