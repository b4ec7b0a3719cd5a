"""Estimate with its 95 % confidence interval."""

import math
from dataclasses import dataclass

from scipy import stats

#: Confidence level of every interval: share of repeated studies whose interval holds the truth.
#: [project]
CONFIDENCE = 0.95
#: Probability beyond each end of an interval. [technical]
TAIL = (1 - CONFIDENCE) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """An estimate and its two-sided 95 % confidence interval, all in the same unit.

    Attributes
    ----------
    value
        The estimate itself.
    low, high
        Ends of the interval; low <= value <= high but for a figure at its natural limit.
    """

    value: float
    low: float
    high: float

    def holds(self, number: float) -> bool:
        """Return whether the interval contains a number."""
        return self.low <= number <= self.high

    @property
    def half_width(self) -> float:
        """Half the length of the interval."""
        return (self.high - self.low) / 2


def sd_with_interval(variance: float, degrees: int) -> Estimate:
    """Return a standard deviation with its chi-square interval.

    Parameters
    ----------
    variance
        A mean square, 0 or more.
    degrees
        Its degrees of freedom, 1 or more.
    """
    return Estimate(
        value=math.sqrt(variance),
        low=math.sqrt(variance * degrees / float(stats.chi2.isf(TAIL, degrees))),
        high=math.sqrt(variance * degrees / float(stats.chi2.ppf(TAIL, degrees))),
    )
