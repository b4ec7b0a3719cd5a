"""Bland-Altman bias and limits of agreement of two instruments, with repeated measurements.

Differences are camera minus goniometer. A *unit* is what is independent of the others: a person,
or a shoulder. Sources: Bland & Altman 1986
(doi:10.1016/S0140-6736(86)90837-8), Bland & Altman 1999 section 5
(doi:10.1177/096228029900800204) and 2007 (doi:10.1080/10543400701329422) for repeats; the
intervals of the limits after Zou 2013 (doi:10.1177/0962280211402548).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from scipy import stats

from calibration.statistics.estimate import TAIL, Estimate
from calibration.statistics.icc import Z95
from calibration.statistics.pooled_variance import pooled_variance
from measure.domain.landmarks import FloatArray

#: Fewest units of a study; two give an interval too wide to print. [project]
FEWEST_UNITS = 3


class Pairing(StrEnum):
    """Pairing of the repeats of camera and goniometer.

    SAME_MOVE: both read the same held position, so each pair has its own difference and the
    true angle may change from pair to pair. SEPARATE: each took its own repeats of a position
    that stayed the same, so only their means can be compared.
    """

    SAME_MOVE = "same-move"
    SEPARATE = "separate"


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitsOfAgreement:
    """Bias and 95 % limits of agreement of single readings, camera minus goniometer.

    Attributes
    ----------
    bias
        Mean over units of each unit's mean difference.
    sd
        Standard deviation of a single difference, between and within units together.
    between_sd
        Standard deviation of the units' mean differences.
    within_sd
        Standard deviation of differences within a unit, NaN without repeats.
    lower, upper
        bias -/+ 1.96 sd: where 95 % of further differences are expected.
    units, pairs
        Number of units, and of differences (SAME_MOVE) or of readings of the instrument with
        fewer (SEPARATE).
    """

    bias: Estimate
    sd: Estimate
    between_sd: float
    within_sd: float
    lower: Estimate
    upper: Estimate
    units: int
    pairs: int


@dataclass(frozen=True, slots=True)
class _VarianceComponent:
    """A weighted mean square of the total variance and its degrees of freedom."""

    variance: float
    degrees: int


def bland_altman(
    camera: Sequence[FloatArray],
    goniometer: Sequence[FloatArray],
    pairing: Pairing = Pairing.SAME_MOVE,
) -> LimitsOfAgreement:
    """Return bias and limits from one array of readings for each unit and instrument.

    Every unit counts the same, however many repeats it has. The variance of one difference is
    that of the units' means plus (1 - mean of 1/m) times the variance within, m repeats each;
    without repeats this is the plain standard deviation of the differences.

    Parameters
    ----------
    camera, goniometer
        For each unit, an array of at least one finite reading; with SAME_MOVE the two arrays
        of a unit have the same length and order.

    Raises
    ------
    ValueError
        For fewer than three units, empty or unequal arrays, or readings that are not finite.
    """
    _check(camera, goniometer, pairing)
    units = len(camera)
    means = np.array([c.mean() - g.mean() for c, g in zip(camera, goniometer, strict=True)])
    if pairing is Pairing.SAME_MOVE:
        repeats = [[c - g for c, g in zip(camera, goniometer, strict=True)]]
    else:
        repeats = [list(camera), list(goniometer)]
    between = float(means.var(ddof=1))
    parts = [_VarianceComponent(between, units - 1)]
    within = 0.0
    for groups in repeats:
        square, degrees = pooled_variance(groups)
        if degrees > 0:
            share = 1 - float(np.mean([1 / len(group) for group in groups]))
            parts.append(_VarianceComponent(share * square, degrees))
            within += square
    has_repeats = len(parts) > 1
    sd = _sd(parts)
    half = float(stats.t.isf(TAIL, units - 1)) * math.sqrt(between / units)
    bias = float(means.mean())
    return LimitsOfAgreement(
        bias=Estimate(value=bias, low=bias - half, high=bias + half),
        sd=sd,
        between_sd=math.sqrt(between),
        within_sd=math.sqrt(within) if has_repeats else math.nan,
        lower=_limit(bias, half, sd, sign=-1),
        upper=_limit(bias, half, sd, sign=+1),
        units=units,
        pairs=min(sum(map(len, camera)), sum(map(len, goniometer))),
    )


def _check(camera: Sequence[FloatArray], goniometer: Sequence[FloatArray], how: Pairing) -> None:
    if len(camera) != len(goniometer) or len(camera) < FEWEST_UNITS:
        raise ValueError(f"{len(camera)} and {len(goniometer)} units are too few or unequal")
    for c, g in zip(camera, goniometer, strict=True):
        if len(c) == 0 or len(g) == 0 or (how is Pairing.SAME_MOVE and len(c) != len(g)):
            raise ValueError("a unit has no readings, or unequal numbers of them")
        if not (np.isfinite(c).all() and np.isfinite(g).all()):
            raise ValueError("a reading is missing")


def _sd(parts: Sequence[_VarianceComponent]) -> Estimate:
    """Return the root of a sum of mean squares with its interval.

    Each mean square has a chi-square interval; their distances from the estimates add up in
    squares (Zou 2013). With one part this is the usual chi-square interval.
    """
    total = sum(part.variance for part in parts)
    down = sum(
        (part.variance * (1 - part.degrees / float(stats.chi2.isf(TAIL, part.degrees)))) ** 2
        for part in parts
    )
    up = sum(
        (part.variance * (part.degrees / float(stats.chi2.ppf(TAIL, part.degrees)) - 1)) ** 2
        for part in parts
    )
    return Estimate(
        value=math.sqrt(total),
        low=math.sqrt(max(0.0, total - math.sqrt(down))),
        high=math.sqrt(total + math.sqrt(up)),
    )


def _limit(bias: float, half: float, sd: Estimate, *, sign: int) -> Estimate:
    """Return bias + sign * 1.96 sd; its interval joins those of bias and sd (Zou 2013)."""
    value = bias + sign * Z95 * sd.value
    outward = math.hypot(half, Z95 * (sd.high - sd.value))
    inward = math.hypot(half, Z95 * (sd.value - sd.low))
    if sign > 0:
        return Estimate(value=value, low=value - inward, high=value + outward)
    return Estimate(value=value, low=value - outward, high=value + inward)
