"""Intraclass correlation of raters or instruments, with the standard error of measurement.

A table of n shoulders times k raters, one reading each. Forms and names after Shrout & Fleiss
1979 (doi:10.1037/0033-2909.86.2.420) and McGraw & Wong 1996 (doi:10.1037/1082-989X.1.1.30);
intervals from F distributions as the latter give them in their table 7.
"""

import math
from dataclasses import dataclass

import numpy as np
from scipy import stats

from calibration.statistics.estimate import TAIL, Estimate, sd_with_interval
from measure.domain.landmarks import FloatArray

#: Two-sided normal quantiles behind the minimal detectable change at 90 and 95 %.
Z90 = float(stats.norm.ppf(0.95))
Z95 = float(stats.norm.ppf(0.975))

#: Fewest shoulders for an interval worth printing. [project]
FEWEST_SHOULDERS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class MeanSquares:
    """Two-way analysis of variance without replicates: shoulders, raters, residual."""

    shoulders: float
    raters: float
    residual: float
    n: int
    k: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Reliability:
    """Reliability of k raters on n shoulders, and their error of measurement.

    Attributes
    ----------
    icc_2_1
        Two-way random, absolute agreement, one reading: may another rater replace this one?
    icc_3_1
        Two-way mixed, consistency, one reading: the same without a constant offset.
    icc_a_k
        Absolute agreement of the mean of all k raters; Shrout & Fleiss call it ICC(2,k).
    sem_agreement
        Standard error of measurement with the raters' offsets, in the readings' unit.
    sem_consistency
        The same without the offsets, with its chi-square interval.
    shoulders, raters
        n and k.
    """

    icc_2_1: Estimate
    icc_3_1: Estimate
    icc_a_k: Estimate
    sem_agreement: float
    sem_consistency: Estimate
    shoulders: int
    raters: int

    @property
    def mdc90(self) -> float:
        """Change beyond error (90 %) when raters may be exchanged between two occasions."""
        return minimal_detectable_change(self.sem_agreement, z=Z90)

    @property
    def mdc95(self) -> float:
        """Change beyond error (95 %) when raters may be exchanged between two occasions."""
        return minimal_detectable_change(self.sem_agreement, z=Z95)


def minimal_detectable_change(sem: float, *, z: float) -> float:
    """Return z times the square root of 2 times the standard error of measurement.

    Weir 2005 (doi:10.1519/15184.1). The root of 2: two readings, each with its own error.
    """
    return z * math.sqrt(2) * sem


def mean_squares(table: FloatArray) -> MeanSquares:
    """Return the mean squares of a complete table of shape (shoulders, raters)."""
    n, k = table.shape
    centre = table.mean()
    by_row = table.mean(axis=1, keepdims=True)
    by_column = table.mean(axis=0, keepdims=True)
    residual = table - by_row - by_column + centre
    return MeanSquares(
        shoulders=float(k * np.sum((by_row - centre) ** 2) / (n - 1)),
        raters=float(n * np.sum((by_column - centre) ** 2) / (k - 1)),
        residual=float(np.sum(residual**2) / ((n - 1) * (k - 1))),
        n=n,
        k=k,
    )


def intraclass_correlation(table: FloatArray) -> Reliability | None:
    """Return the coefficients of a table, shape (shoulders, raters), without missing cells.

    None where all shoulders are alike for every rater, so that nothing can be told apart.

    Raises
    ------
    ValueError
        For fewer than three shoulders, fewer than two raters, or readings that are not finite.
    """
    if table.ndim != 2 or table.shape[0] < FEWEST_SHOULDERS or table.shape[1] < 2:
        raise ValueError(f"a table of shape {table.shape} has too few shoulders or raters")
    if not np.isfinite(table).all():
        raise ValueError("a reading is missing")
    squares = mean_squares(table)
    # Rounding leaves a remainder where the exact mean squares are zero.
    remainder = 1e-20 * max(1.0, float(np.max(np.abs(table)))) ** 2
    if squares.shoulders <= remainder and squares.residual <= remainder:
        return None
    degrees = (squares.n - 1) * (squares.k - 1)
    raters_variance = max(0.0, (squares.raters - squares.residual) / squares.n)
    return Reliability(
        icc_2_1=_agreement(squares, mean_of=1),
        icc_3_1=_consistency(squares),
        icc_a_k=_agreement(squares, mean_of=squares.k),
        sem_agreement=math.sqrt(raters_variance + squares.residual),
        sem_consistency=sd_with_interval(squares.residual, degrees),
        shoulders=squares.n,
        raters=squares.k,
    )


def _consistency(squares: MeanSquares) -> Estimate:
    """Return ICC(3,1) = ICC(C,1) with the exact F interval."""
    n, k = squares.n, squares.k
    between, error = squares.shoulders, squares.residual
    first, second = n - 1, (n - 1) * (k - 1)
    shrunk = between / float(stats.f.isf(TAIL, first, second))
    stretched = between * float(stats.f.isf(TAIL, second, first))

    def coefficient(level: float) -> float:
        return (level - error) / (level + (k - 1) * error)

    return Estimate(
        value=coefficient(between), low=coefficient(shrunk), high=coefficient(stretched)
    )


def _agreement(squares: MeanSquares, *, mean_of: int) -> Estimate:
    """Return ICC(A,1) or ICC(A,k), with Satterthwaite's degrees of freedom in the F interval."""
    n, k = squares.n, squares.k
    between, raters, error = squares.shoulders, squares.raters, squares.residual
    single = (between - error) / (between + (k - 1) * error + k * (raters - error) / n)
    degrees = _satterthwaite(squares, single)
    upper = float(stats.f.isf(TAIL, n - 1, degrees))
    lower = float(stats.f.isf(TAIL, degrees, n - 1))
    shared = k * raters + (k * n - k - n) * error
    ends = (
        n * (between - upper * error) / (upper * shared + n * between),
        single,
        n * (lower * between - error) / (shared + n * lower * between),
    )
    low, value, high = (k_mean(end, mean_of) for end in ends)
    return Estimate(value=value, low=low, high=high)


def _satterthwaite(squares: MeanSquares, icc: float) -> float:
    """Return the degrees of freedom of the mean squares compared with the shoulders' own."""
    n, k = squares.n, squares.k
    if icc >= 1:  # no error at all: any degrees of freedom give the same ends
        return float((n - 1) * (k - 1))
    icc = max(0.0, icc)  # a negative estimate would give the raters a negative weight
    a = k * icc / (n * (1 - icc))
    b = 1 + k * icc * (n - 1) / (n * (1 - icc))
    raters, error = a * squares.raters, b * squares.residual
    below = raters**2 / (k - 1) + error**2 / ((n - 1) * (k - 1))
    if below <= 0:
        return float((n - 1) * (k - 1))
    return float((raters + error) ** 2 / below)


def k_mean(single: float, k: int) -> float:
    """Return the reliability of a mean of k readings from that of one (Spearman-Brown)."""
    below = 1 + (k - 1) * single
    return k * single / below if below > 0 else -math.inf
