"""Trend line: the slope of a series and its uncertainty, by one robust straight line.

Pure statistics. Which data belong to a line, when it is fitted, and what is called a gain are
decided in :mod:`measure.progress.weekly_verdicts`.
"""

import functools
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from measure.domain.landmarks import FloatArray, IntArray

DAYS_A_MONTH = 365.25 / 12

#: Below this many days the usual spread stands in for the person's own. [project]
LEAST_FOR_OWN_SPREAD = 8
#: Weight of the usual spread beside the person's own, in days of evidence. [project]
PRIOR_DAYS = 8.0
#: Standard deviation of the slopes of shoulders, in usual spreads a month: 6 degrees. [project]
PRIOR_SLOPE = 1.2
#: Share of days assumed to be out of line (bad light, a hurried session, a painful day). [project]
OUTLIER_SHARE = 0.2
#: Width over which days out of line are taken to scatter evenly, in usual spreads. [project]
ODD_WIDTH = 16.0
#: Lag-1 autocorrelation from which neighbouring days count as related, and its cap. [project]
RELATED_FROM, RELATED_TO = 0.1, 0.8
#: Days further apart than this say nothing about how neighbours are related. [project]
LONGEST_GAP_DAY = 14.0
#: A person whose days scatter this many times more than usual is judged by that alone. [project]
UNUSUAL_SPREAD = 1.5
#: Standard deviation of a normal distribution over its median absolute deviation.
#: [source: Hampel 1974, J Am Stat Assoc 69:383]
_MAD_TO_SD = 1.4826
#: Least share of the information left after doubtful days are discounted. [project]
LEAST_INFORMATION = 0.3
#: Degrees of freedom where the usual spread is taken as exact: as good as normal. [technical]
_FREEDOM_OF_USUAL = 1000.0
#: A fitted line takes about (2 + 4 r) / n from the autocorrelation r of n days about it. Found by
#: simulation; a mean takes (1 + 3 r) / n (Kendall 1954, Biometrika 41:403). [project]
TAKEN_BY_LINE = (2.0, 4.0)
#: With few days no more than this share is taken to be left. [project]
_LEAST_LEFT = 0.5
#: Autocorrelations between which is interpolated. [technical]
_RELATED_GRID = np.linspace(0.0, RELATED_TO, 17)
#: Rounds of expectation-maximisation; more change no digit that is shown. [technical]
_ROUNDS = 12


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Slope:
    """Straight line through a series, with the uncertainty of its slope.

    Attributes
    ----------
    per_day
        Slope, in the series' unit a day.
    error_per_day
        Its standard error, widened where neighbouring days are related.
    degrees_of_freedom
        Of the t distribution that the error belongs to.
    days
        Number of days with a value.
    first_day, last_day
        The first and last of them, as days of the series.
    level
        Value of the line on the last day.
    spread
        Standard deviation of a usual day about the line, in the series' unit.
    related
        Lag-1 autocorrelation of the days about the line, after correction for their number.
    judged_by
        Usual spread that stood beside the person's own, in the series' unit.
    inlier_weight
        Shape (days,), 0..1: probability that a day is not out of line.
    """

    per_day: float
    error_per_day: float
    degrees_of_freedom: float
    days: int
    first_day: float
    last_day: float
    level: float
    spread: float
    related: float
    judged_by: float
    inlier_weight: FloatArray

    @property
    def span_day(self) -> float:
        """First to last day, days."""
        return self.last_day - self.first_day

    def allowing_for(self, related: float) -> "Slope":
        """Return the same line, its error widened for an autocorrelation known from elsewhere."""
        change = math.sqrt(widening(related) / widening(self.related))
        return replace(self, related=related, error_per_day=self.error_per_day * change)

    def shrunk(self, usual_spread: float) -> tuple[float, float]:
        """Return slope and standard error a day, drawn towards 0 by what slopes usually are.

        Usual ones scatter about 0 by PRIOR_SLOPE usual spreads a month (James & Stein 1961).
        """
        prior = (PRIOR_SLOPE * usual_spread / DAYS_A_MONTH) ** 2
        share = prior / (prior + self.error_per_day**2)
        return share * self.per_day, math.sqrt(share) * self.error_per_day

    @property
    def per_month(self) -> float:
        return self.per_day * DAYS_A_MONTH

    @property
    def error_per_month(self) -> float:
        return self.error_per_day * DAYS_A_MONTH

    def interval_per_month(self, confidence: float = 0.95) -> tuple[float, float]:
        """Return the two-sided interval of the slope, a month."""
        return self.interval_around(self.per_day, self.error_per_day, confidence)

    def interval_around(
        self, per_day: float, error: float, confidence: float = 0.95
    ) -> tuple[float, float]:
        """Return the interval of another estimate of the same slope, a month."""
        from scipy import special  # loaded when first needed: the window starts without it

        reach = float(special.stdtrit(self.degrees_of_freedom, 0.5 + confidence / 2))
        half = reach * error
        return (per_day - half) * DAYS_A_MONTH, (per_day + half) * DAYS_A_MONTH

    @property
    def evidence(self) -> float:
        """Signed distance of the slope from 0, in standard deviations of a normal distribution.

        The t value converted to the normal one of equal probability, so that the same limits hold
        for few days and for many.
        """
        return evidence_of(self.per_day / self.error_per_day, self.degrees_of_freedom)


def evidence_of(t_value: float, degrees_of_freedom: float) -> float:
    """Return the value of a normal distribution that is as unlikely as a t value, its sign kept."""
    from scipy import special  # loaded when first needed: the window starts without it

    tail = special.stdtr(degrees_of_freedom, -abs(t_value))
    return float(np.sign(t_value) * -special.ndtri(max(tail, 1e-300)))


def widening(related: float) -> float:
    """Return by how much days that are alike raise the variance of a mean or slope."""
    return (1 + related) / (1 - related) if related > RELATED_FROM else 1.0


def mean_variance(number: int, related: float) -> float:
    """Return the variance of a mean of neighbouring days, in variances of one day.

    Of n days whose autocorrelation falls as the powers of r: (1 + 2 sum (1 - j/n) r^j) / n.
    """
    if related <= 0:
        return 1 / number
    lag = np.arange(1, number)
    return float(1 + 2 * ((1 - lag / number) @ related**lag)) / number


def fit_slope(day: FloatArray, value: FloatArray, usual_spread: float) -> Slope | None:
    """Return the line through a series, or None when fewer than three days have a value.

    Starts at the Theil-Sen line, then weighs each day by the chance that it is a usual one:
    days scatter about the line either normally, or, with a chance of OUTLIER_SHARE, evenly over a
    wide range. Expectation-maximisation (Dempster, Laird & Rubin 1977, J R Stat Soc B 39:1).
    The information left is Louis' (1982, J R Stat Soc B 44:226), so days of doubtful standing
    widen the interval. The error is multiplied by sqrt((1 + r) / (1 - r)) where the lag-1
    autocorrelation r exceeds RELATED_FROM.

    Parameters
    ----------
    day
        Shape (n,), increasing, days.
    value
        Shape (n,), finite.
    usual_spread
        Standard deviation of one day about the line that people usually show; stands in for
        the person's own below LEAST_FOR_OWN_SPREAD days and weighs PRIOR_DAYS days after.
    """
    return fit_slopes([(day, value)], usual_spread)[0]


def fit_slopes(
    parts: Sequence[tuple[FloatArray, FloatArray]], usual_spread: float
) -> list[Slope | None]:
    """Return the result of :func:`fit_slope` for several series, in a fifth of the time.

    The rounds of all series are computed together, in arrays of shape (series, days) padded with
    days of weight 0.
    """
    long_enough = [len(day) >= 3 and bool(day[-1] > day[0]) for day, _ in parts]
    starts = [
        _Start.of(day, value, usual_spread)
        for (day, value), enough in zip(parts, long_enough, strict=True)
        if enough
    ]
    if not starts:
        return [None] * len(parts)
    weights = _converged_weights(starts)
    slopes = iter([start.finished(weights[k, : len(start.when)]) for k, start in enumerate(starts)])
    return [next(slopes) if enough else None for enough in long_enough]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Start:
    """Starting point of one series: its Theil-Sen line, before the days are weighed.

    Attributes
    ----------
    day, when, value, left
        Shape (n,): days, days relative to the last one, values, residuals.
    spread
        Usual spread by which this series is judged.
    variance
        First estimate of the variance of a usual day about the line.
    """

    day: FloatArray
    when: FloatArray
    value: FloatArray
    left: FloatArray
    spread: float
    variance: float

    @property
    def own(self) -> bool:
        """True where there are days enough for a spread of the person's own."""
        return len(self.day) >= LEAST_FOR_OWN_SPREAD

    @classmethod
    def of(cls, day: FloatArray, value: FloatArray, usual_spread: float) -> "_Start":
        # Centred on the last day: large day numbers would cost digits.
        when = day - day[-1]
        left = value - theil_sen(when, value) * when
        left = left - _median(left)
        deviation = _MAD_TO_SD * _median(np.abs(left))
        own = len(day) >= LEAST_FOR_OWN_SPREAD
        spread = usual_spread
        if own and deviation > UNUSUAL_SPREAD * usual_spread:
            spread = deviation
        return cls(
            day=day,
            when=when,
            value=value,
            left=left,
            spread=spread,
            variance=blend(spread, deviation**2, len(day) if own else 0),
        )

    def finished(self, inlier_weight: FloatArray) -> Slope:
        """Return the line for the converged weights of the days, shape (n,)."""
        total = float(inlier_weight.sum())
        off = self.when - inlier_weight @ self.when / total
        information = float(inlier_weight @ off**2)
        slope = float(inlier_weight * off @ self.value) / information
        left = self.value - inlier_weight @ self.value / total - slope * off
        freedom = max(total - 2.0, 1.0)
        own_variance = float(inlier_weight @ left**2) / freedom
        variance = blend(self.spread, own_variance, freedom if self.own else 0.0)
        doubt = inlier_weight * (1 - inlier_weight) * left**2 / variance
        information = max(float((inlier_weight - doubt) @ off**2), LEAST_INFORMATION * information)
        related = autocorrelation(self.day, left, inlier_weight, variance)
        return Slope(
            per_day=slope,
            error_per_day=math.sqrt(variance / information * widening(related)),
            degrees_of_freedom=PRIOR_DAYS + freedom if self.own else _FREEDOM_OF_USUAL,
            days=len(self.day),
            first_day=float(self.day[0]),
            last_day=float(self.day[-1]),
            level=float(inlier_weight @ self.value / total + slope * off[-1]),
            spread=math.sqrt(variance),
            related=related,
            judged_by=self.spread,
            inlier_weight=inlier_weight,
        )


def _converged_weights(starts: Sequence[_Start]) -> FloatArray:
    """Return the inlier weight of each day after all rounds, shape (series, days)."""
    days = max(len(start.when) for start in starts)
    when, value, left, inside = np.zeros((4, len(starts), days))
    for k, start in enumerate(starts):
        n = len(start.when)
        when[k, :n], value[k, :n], left[k, :n] = start.when, start.value, start.left
        inside[k, :n] = 1.0
    # One row each, so that they meet the rows of days.
    spread = np.array([[start.spread] for start in starts])
    variance = np.array([[start.variance] for start in starts])
    own = np.array([[float(start.own)] for start in starts])
    inlier_weight = inside * chance_usual(left, variance, spread)
    for _ in range(_ROUNDS - 1):
        total = inlier_weight.sum(axis=1, keepdims=True)
        off = when - (inlier_weight * when).sum(axis=1, keepdims=True) / total
        weighed = inlier_weight * off
        information = (weighed * off).sum(axis=1, keepdims=True)
        slope = (weighed * value).sum(axis=1, keepdims=True) / information
        level = (inlier_weight * value).sum(axis=1, keepdims=True) / total
        left = value - level - slope * off
        freedom = np.maximum(total - 2.0, 1.0)
        own_variance = (inlier_weight * left**2).sum(axis=1, keepdims=True) / freedom
        weight = freedom * own
        variance = (PRIOR_DAYS * spread**2 + weight * own_variance) / (PRIOR_DAYS + weight)
        inlier_weight = inside * chance_usual(left, variance, spread)
    return inlier_weight


def theil_sen(day: FloatArray, value: FloatArray) -> float:
    """Return the median of the slopes between all pairs of days.

    After Sen 1968, J Am Stat Assoc 63:1379. `scipy.stats.theilslopes` gives the same, with an
    interval that is not needed here and at ten times the cost, which thousands of weekly checks
    would feel.
    """
    first, second = _pairs(len(day))
    return _median((value[second] - value[first]) / (day[second] - day[first]))


@functools.lru_cache(maxsize=256)
def _pairs(days: int) -> tuple[IntArray, IntArray]:
    """Return the numbers of the earlier and the later day of every pair, read-only."""
    first, second = np.triu_indices(days, 1)
    first.setflags(write=False)
    second.setflags(write=False)
    return first, second


def _median(value: FloatArray) -> float:
    """Return the median; `numpy.median` spends most of its time on cases that do not occur here."""
    middle = len(value) // 2
    ordered = np.partition(value, (middle, (len(value) - 1) // 2))
    return float(ordered[middle] + ordered[(len(value) - 1) // 2]) / 2


def blend(usual_spread: float, own_variance: float, days: float) -> float:
    return (PRIOR_DAYS * usual_spread**2 + days * own_variance) / (PRIOR_DAYS + days)


def chance_usual(left: FloatArray, variance: FloatArray, usual_spread: FloatArray) -> FloatArray:
    """Return the probability of each day to be a usual one, 0..1, shape (series, days)."""
    odd = OUTLIER_SHARE / (ODD_WIDTH * usual_spread)
    height = (1 - OUTLIER_SHARE) / np.sqrt(2 * math.pi * variance)
    normal = height * np.exp(left**2 * (-0.5 / variance))
    chance: FloatArray = normal / (normal + odd)
    return chance


def autocorrelation(
    day: FloatArray,
    left: FloatArray,
    inlier_weight: FloatArray,
    variance: float,
    given_back: tuple[float, float] = TAKEN_BY_LINE,
) -> float:
    """Return the autocorrelation of residuals over the usual gap, corrected for few days.

    The products of days that follow each other without a long gap, odd days counting little, are
    held against r to the power of gap over usual gap: days further apart than usual are less
    alike. What a fitted line takes away is given back.

    Parameters
    ----------
    day, left, inlier_weight
        Shape (n,): days, residuals, weights.
    variance
        Of a usual day about the line.
    given_back
        (a, b): the fit takes (a + b r) / n from the autocorrelation of n days.
    """
    n = len(day)
    gap = np.diff(day)
    near = gap <= LONGEST_GAP_DAY
    squares = float(inlier_weight @ left**2)
    # Rounding errors about a perfect line say nothing either.
    if not near.any() or squares < 1e-9 * variance:
        return 0.0
    weighed = inlier_weight * left
    pairs = int(near.sum())
    neighbours = float((weighed[:-1] * weighed[1:])[near].sum()) * (n - 1) / pairs / squares
    constant, proportional = given_back
    neighbours = (neighbours + constant / n) / max(1 - proportional / n, _LEAST_LEFT)
    if neighbours <= 0:
        return max(neighbours, -RELATED_TO)
    power = np.unique(gap[near] / _median(gap[near]), return_counts=True)
    expected = (_RELATED_GRID[:, None] ** power[0]) @ power[1] / pairs
    return float(np.interp(neighbours, expected, _RELATED_GRID))
