"""Interval of a ratio of two estimates, such as one shoulder's range over the other's. Pure."""

import math

#: A ratio is given only where the half-width of what it is of is at most this share of its value:
#: beyond, its interval says next to nothing, and at 1 it has no ends any more. [project]
MOST_UNCERTAIN = 0.5


def ratio_interval(
    value: float, half: float, of_value: float, of_half: float
) -> tuple[float, float, float] | None:
    """Return the ratio `value / of_value` and the ends of its 95 % interval.

    Fieller 1954, J R Stat Soc B 16:175: all ratios q for which `value - q * of_value` does not
    differ from 0. None where `of_value` is below 0 or too uncertain for a ratio.

    Parameters
    ----------
    half, of_half
        Half of the 95 % interval of each estimate; their errors are independent.
    """
    if of_value <= 0 or of_half > MOST_UNCERTAIN * of_value:
        return None
    square = of_value**2 - of_half**2
    middle = value * of_value / square
    half_width = math.sqrt(middle**2 - (value**2 - half**2) / square)
    return value / of_value, middle - half_width, middle + half_width
