"""Facts about a session beside its measurements: the shoulder's state, a clinician's own values."""

from dataclasses import dataclass
from enum import StrEnum

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.errors import InputError
from measure.message import TranslatableMessage

#: Smallest and largest angle that a clinician can enter, degrees: a full turn is none, and a
#: shoulder that falls short of its zero is a little below it. [technical]
LOWEST_DEG, HIGHEST_DEG = -90.0, 200.0


class ExerciseTiming(StrEnum):
    """Whether a session was before or after the day's exercises."""

    BEFORE = "before"
    AFTER = "after"


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionState:
    """State of the shoulder in a session; what was neither stated nor derived is None.

    Attributes
    ----------
    timing
        Before or after the exercises. Sessions after them are a series of their own.
    pain_relief
        Whether pain relief was taken in the four hours before.
    """

    timing: ExerciseTiming | None = None
    pain_relief: bool | None = None


class ClinicianMethod(StrEnum):
    """How a clinician took a value: passive range by eye or hand, or with a goniometer."""

    PASSIVE = "passive"
    GONIOMETER = "goniometer"


@dataclass(frozen=True, slots=True, kw_only=True)
class ClinicianValue:
    """An angle that a clinician typed in beside the camera's; it enters no statistics.

    Attributes
    ----------
    value_deg
        Degrees, positive in the movement's direction, -90..200.
    """

    movement: Movement
    side: Side
    method: ClinicianMethod
    value_deg: float

    def __post_init__(self) -> None:
        if MOVEMENTS[self.movement].unit is not Unit.DEGREES:
            raise InputError(
                TranslatableMessage(
                    "Only angles can be entered by hand, not a reach behind the back."
                )
            )
        if not LOWEST_DEG <= self.value_deg <= HIGHEST_DEG:
            raise InputError(
                TranslatableMessage(
                    "An angle must be between {lowest} and {highest} degrees, not {value}.",
                    {
                        "lowest": f"{LOWEST_DEG:g}",
                        "highest": f"{HIGHEST_DEG:g}",
                        "value": f"{self.value_deg:g}",
                    },
                )
            )
        object.__setattr__(self, "value_deg", float(self.value_deg))

    @property
    def key(self) -> tuple[Movement, Side, ClinicianMethod]:
        """What there can be one value of in a session."""
        return self.movement, self.side, self.method
