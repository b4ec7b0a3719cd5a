"""Display scale of a movement: the axis its readings lie on and the shade of their intervals.

The same on the screen and on paper, so that a reading sits at the same place on both.
"""

from collections.abc import Iterable

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.vertebral_levels import height_of

#: Ends of the scale of the reach, fraction of mid-hip to C7; the usual reach lies within.
#: [technical]
_REACH_SCALE = (-0.15, 0.85)
#: Levels that are named on the scale of the reach, with their heights. [technical]
LEVEL_TICKS = tuple((height_of(level), level) for level in ("buttock", "S2", "L3", "T12", "T7"))
#: No arm goes beyond straight up, and no hand behind the back beyond the base of the neck: degrees,
#: and fraction of mid-hip to C7. [project]
_FARTHEST = {Unit.DEGREES: 180.0, Unit.FRACTION: 1.0}
#: Usual ranges that end above this need the long scale, degrees. [technical]
_SHORT_SCALE_END_DEG = 100.0
#: Half-widths at which an interval is drawn strongest and palest, degrees. [technical]
_NARROW_DEG, _WIDE_DEG = 4.0, 16.0
#: Degrees that an interval of the whole reach counts for when it is shaded. [technical]
_DEG_PER_REACH = 80.0


def scale_of(movement: Movement) -> tuple[float, float]:
    """Return the lower and upper end of a movement's scale, in the movement's unit."""
    facts = MOVEMENTS[movement]
    if facts.unit is Unit.FRACTION:
        return _REACH_SCALE
    return (0.0, 180.0) if facts.usual[1] > _SHORT_SCALE_END_DEG else (0.0, 90.0)


def exceeds_range(movement: Movement, value: float | None) -> bool:
    """Return whether a rough value lies where no arm can be; None does not."""
    return value is not None and value > _FARTHEST[MOVEMENTS[movement].unit]


def scale_holding(movement: Movement, values: Iterable[float]) -> tuple[float, float]:
    """Return the ends of a movement's scale, moved outwards where values lie beyond them."""
    beyond = tuple(values)
    low, high = scale_of(movement)
    return min((low, *beyond)), max((high, *beyond))


def share_of_scale(value: float, movement: Movement) -> float:
    """Return where a value lies on its movement's scale, 0 to 1; values beyond are cut off."""
    low, high = scale_of(movement)
    return min(1.0, max(0.0, (value - low) / (high - low)))


def paleness(low: float, high: float, unit: Unit) -> float:
    """Return how pale an interval is drawn: 0 for a narrow one, 1 for a wide one."""
    half = (high - low) / 2 * (1 if unit is Unit.DEGREES else _DEG_PER_REACH)
    return min(1.0, max(0.0, (half - _NARROW_DEG) / (_WIDE_DEG - _NARROW_DEG)))
