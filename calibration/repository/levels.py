"""The roll of each camera as last measured, and when that is too old to use.

A laptop's lid moves with every opening, so a level holds for the day it was measured on unless
the camera is fixed to something.
"""

import datetime as dt
import math
from dataclasses import dataclass

from calibration.repository.shelf import JsonRepository
from measure.domain.acquisition import LARGEST_ROLL_DEG, check_name, check_roll
from measure.errors import InputError


@dataclass(frozen=True, slots=True, kw_only=True)
class CameraLevel:
    """The roll of one camera.

    Attributes
    ----------
    roll_deg, half_deg
        Turned clockwise about its axis, and half of the 95 % interval.
    day
        Local day it was measured.
    fixed
        True when somebody said that the camera is fixed to something.
    """

    camera_name: str
    roll_deg: float
    half_deg: float
    day: dt.date
    fixed: bool = False

    def holds_on(self, day: dt.date) -> bool:
        """Tell whether the level may be used on a day."""
        return self.fixed or self.day == day


def check_level(level: CameraLevel) -> None:
    """Raise InputError unless the level can be."""
    check_name(level.camera_name)
    check_roll(level.roll_deg)
    if not (math.isfinite(level.half_deg) and 0 <= level.half_deg <= LARGEST_ROLL_DEG):
        raise InputError("the interval of the roll cannot be")


LEVELS: JsonRepository[CameraLevel] = JsonRepository(
    "levels", CameraLevel, key=lambda level: level.camera_name, check=check_level, most=100
)
