"""Effect of an event such as an injection: a series before and after it, as an n-of-1. Pure.

Two straight lines that meet at the event, with a step between them. Step and slopes are shrunk
towards a weak assumption until there are data, so something can be said from the first session
after the event on, with an interval that says how little that is. What else happened at the same
time cannot be told apart from the event.
"""

import math
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import Unit
from measure.trend.trend_line import (
    DAYS_A_MONTH,
    LEAST_FOR_OWN_SPREAD,
    PRIOR_DAYS,
    chance_usual,
    theil_sen,
)

#: Fewest days with a measurement before the event, and after it. [project]
LEAST_BEFORE, LEAST_AFTER = 3, 1
#: The lines before and after an event use at most so many days on either side: recovery bends
#: over longer times. [project]
LONGEST_SIDE_DAY = 112
#: Assumption that holds until there are data: slope in degrees a month, mean and standard
#: deviation, before the event and after it. [project]
PRIOR_SLOPE_DEG = (2.0, 6.0)
#: The same for the step at the event, degrees; its mean is 0. [project]
PRIOR_STEP_SD_DEG = 10.0
#: Height of a reach, as a fraction of the back, that counts like a degree. [project]
FRACTION_OF_A_DEGREE = 0.01
#: Lag-1 autocorrelation that is assumed beside the person's own, and its weight in days.
#: [project]
PRIOR_RELATED, PRIOR_RELATED_DAYS = 0.3, 30.0
#: Largest autocorrelation that is reckoned with. [project]
_RELATED_TO = 0.8
#: Share of the assumption left in an estimate from which on it is called mostly an assumption.
#: [project]
MOSTLY_ASSUMED = 0.5
#: Least share of the information of a day that is left when it is doubtful. [project]
_LEAST_INFORMATION = 0.3
#: Variance of the level before the event, which is left free, in squares of the spread.
#: [technical]
_FREE = 1e6
#: Rounds of expectation-maximisation; more change no digit that is shown. [technical]
_ROUNDS = 12

_STEP, _BEFORE, _AFTER = 1, 2, 3


@dataclass(frozen=True, slots=True, kw_only=True)
class EffectPrior:
    """What is assumed of an event until there are data, in the movement's unit and months."""

    slope_mean: float
    slope_sd: float
    step_sd: float

    @classmethod
    def of(cls, unit: Unit) -> "EffectPrior":
        """Return the assumption of this project for movements of a unit."""
        size = FRACTION_OF_A_DEGREE if unit is Unit.FRACTION else 1.0
        mean, sd = PRIOR_SLOPE_DEG
        return cls(slope_mean=mean * size, slope_sd=sd * size, step_sd=PRIOR_STEP_SD_DEG * size)


@dataclass(frozen=True, slots=True, kw_only=True)
class EffectEstimate:
    """One quantity with its 95 % interval.

    Attributes
    ----------
    assumed
        0..1: share of the variance of the assumption that the data left; 1 without any data.
    """

    value: float
    low: float
    high: float
    assumed: float

    @property
    def mostly_assumed(self) -> bool:
        """True where the data say less than the assumption does."""
        return self.assumed > MOSTLY_ASSUMED


@dataclass(frozen=True, slots=True, kw_only=True)
class EventEffect:
    """A series before and after an event, in the movement's unit.

    Attributes
    ----------
    step
        Height by which the line after the event begins above the line before it.
    slope_before, slope_after
        Change a month.
    change_since
        From the level just before the event to the level on the last day with a measurement.
    days_before, days_after
        Days with a measurement that were used.
    last_day
        The last of them, days after the event.
    related
        Autocorrelation of neighbouring days that the intervals allow for.
    """

    step: EffectEstimate
    slope_before: EffectEstimate
    slope_after: EffectEstimate
    change_since: EffectEstimate
    days_before: int
    days_after: int
    last_day: float
    related: float


def event_effect(
    day: FloatArray, value: FloatArray, event_day: float, usual_spread: float, prior: EffectPrior
) -> EventEffect | None:
    """Return the effect of an event, or None where too few days lie before or after it.

    Two straight lines and a step, by generalised least squares with the assumption as a further
    observation (ridge estimate; Theil & Goldberger 1961, Int Econ Rev 2:65). Days out of line
    count little, by the chance that they are usual ones, as in
    :func:`measure.trend.trend_line.fit_slope`. Neighbouring days are related as in an
    autoregression of first order over the gaps between them.

    Parameters
    ----------
    day
        Shape (n,), strictly increasing, days.
    value
        Shape (n,), finite, in the movement's unit.
    event_day
        The first day that counts as after the event.
    usual_spread
        Standard deviation of one day about the line that people usually show.
    """
    from scipy import special  # loaded when first needed: the window starts without it

    near = np.abs(day - event_day) <= LONGEST_SIDE_DAY
    when, value = day[near] - event_day, value[near]
    after = when >= 0
    if after.sum() < LEAST_AFTER or (~after).sum() < LEAST_BEFORE:
        return None
    months = when / DAYS_A_MONTH
    design = np.column_stack(
        [np.ones(len(when)), after, np.minimum(months, 0.0), np.maximum(months, 0.0)]
    ).astype(np.float64)
    fit = _Fit(when=when, value=value, design=design, usual_spread=usual_spread, prior=prior)
    weight, variance = fit.inlier_weights()
    related = fit.related(weight)
    mean, covariance, freedom = fit.solved(weight, variance, related)
    reach = float(special.stdtrit(freedom, 0.975))
    until = float(months[-1])
    assumed = {
        _STEP: prior.step_sd**2,
        _BEFORE: prior.slope_sd**2,
        _AFTER: prior.slope_sd**2,
    }

    def estimate(parts: dict[int, float]) -> EffectEstimate:
        share = np.zeros(4)
        share[list(parts)] = list(parts.values())
        at, spread = float(share @ mean), float(share @ covariance @ share)
        before = sum(size**2 * assumed[k] for k, size in parts.items())
        half = reach * math.sqrt(spread)
        return EffectEstimate(
            value=at, low=at - half, high=at + half, assumed=min(1.0, spread / before)
        )

    return EventEffect(
        step=estimate({_STEP: 1.0}),
        slope_before=estimate({_BEFORE: 1.0}),
        slope_after=estimate({_AFTER: 1.0}),
        change_since=estimate({_STEP: 1.0, _AFTER: until}),
        days_before=int((~after).sum()),
        days_after=int(after.sum()),
        last_day=float(when[-1]),
        related=related,
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Fit:
    """The two lines of one event.

    Attributes
    ----------
    when, value
        Shape (n,): days from the event on, values.
    design
        Shape (n, 4): level, step, slope before, slope after.
    """

    when: FloatArray
    value: FloatArray
    design: FloatArray
    usual_spread: float
    prior: EffectPrior

    def inlier_weights(self) -> tuple[FloatArray, float]:
        """Return the chance of each day to be a usual one, shape (n,), and a usual day's variance.

        By expectation-maximisation from the residuals about a robust line on either side.
        """
        left = self._robust_residuals()
        variance = self._variance(np.ones(len(left)), left, start=True)
        weight = self._chance_usual(left, variance)
        for _ in range(_ROUNDS):
            mean, _ = self._ridge(weight, variance, np.zeros(len(left)))
            left = self.value - self.design @ mean
            variance = self._variance(weight, left)
            weight = self._chance_usual(left, variance)
        return weight, variance

    def related(self, weight: FloatArray) -> float:
        """Return the autocorrelation of days one usual gap apart, 0..0.8, shrunk while few."""
        mean, _ = self._ridge(weight, self.usual_spread**2, np.zeros(len(weight)))
        left = weight * (self.value - self.design @ mean)
        gap = np.diff(self.when)
        near = gap <= 2 * np.median(gap)
        squares = float(left @ left)
        pairs = int(near.sum())
        if not pairs or squares < 1e-9 * self.usual_spread**2:
            return PRIOR_RELATED
        raw = float((left[:-1] * left[1:])[near].sum()) / pairs / (squares / len(left))
        # Each of the two lines takes away about (2 + 4 r) / n of its own days.
        own = raw + (4 + 8 * raw) / len(left)
        blended = (PRIOR_RELATED_DAYS * PRIOR_RELATED + pairs * own) / (PRIOR_RELATED_DAYS + pairs)
        return float(np.clip(blended, 0.0, _RELATED_TO))

    def solved(
        self, weight: FloatArray, variance: float, related: float
    ) -> tuple[FloatArray, FloatArray, float]:
        """Return the estimates, shape (4,), their covariance, (4, 4), and degrees of freedom."""
        usual_gap = float(np.median(np.diff(self.when)))
        link = related ** (np.diff(self.when, prepend=np.nan) / usual_gap)
        link[0] = 0.0
        left = self.value - self.design @ self._ridge(weight, variance, link)[0]
        variance = self._variance(weight, left)
        doubt = weight * (1 - weight) * left**2 / variance
        certain = np.maximum(weight - doubt, _LEAST_INFORMATION * weight)
        mean, _ = self._ridge(weight, variance, link)
        _, covariance = self._ridge(certain, variance, link)
        return mean, covariance, PRIOR_DAYS + max(float(weight.sum()) - 4.0, 0.0)

    def _ridge(
        self, weight: FloatArray, variance: float, link: FloatArray
    ) -> tuple[FloatArray, FloatArray]:
        """Return estimates and covariance; `link` is each day's correlation with the one before."""
        root = np.sqrt(weight / variance)
        rows = np.column_stack([self.design, self.value]) * root[:, None]
        rows[1:] -= link[1:, None] * rows[:-1]
        rows /= np.sqrt(1 - link**2)[:, None]
        prior = self.prior
        free = 1 / (_FREE * self.usual_spread**2)
        precision = np.array([free, prior.step_sd**-2, prior.slope_sd**-2, prior.slope_sd**-2])
        centre = np.array([self.value[0], 0.0, prior.slope_mean, prior.slope_mean])
        information = rows[:, :4].T @ rows[:, :4] + np.diag(precision)
        covariance = np.linalg.inv(information).astype(np.float64)
        mean: FloatArray = covariance @ (rows[:, :4].T @ rows[:, 4] + precision * centre)
        return mean, covariance

    def _robust_residuals(self) -> FloatArray:
        left = np.empty(len(self.value))
        for side in (self.when < 0, self.when >= 0):
            day, value = self.when[side], self.value[side]
            if len(day) > LEAST_FOR_OWN_SPREAD:
                value = value - theil_sen(day, value) * day
            left[side] = value - np.median(value)
        return left

    def _variance(self, weight: FloatArray, left: FloatArray, *, start: bool = False) -> float:
        """Return a usual day's variance: the person's own, blended with the usual one."""
        usual = self.usual_spread**2
        if len(left) < LEAST_FOR_OWN_SPREAD:
            return usual
        freedom = max(float(weight.sum()) - 4.0, 1.0)
        squares = np.median(left**2) * 2.2 * freedom if start else weight @ left**2
        return float((PRIOR_DAYS * usual + squares) / (PRIOR_DAYS + freedom))

    def _chance_usual(self, left: FloatArray, variance: float) -> FloatArray:
        spread = max(self.usual_spread, math.sqrt(variance))
        return chance_usual(left, np.array(variance), np.array(spread))
