"""Broken line: whether and when a series has bent, by two straight lines that meet.

Pure statistics. Hinkley 1969, Biometrika 56:495. The days are weighed and neighbours allowed for
as in :mod:`measure.trend.trend_line`. What is said of a bend is decided in
:mod:`measure.progress.current_verdict`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray
from measure.trend.trend_line import (
    LEAST_FOR_OWN_SPREAD,
    LEAST_INFORMATION,
    PRIOR_DAYS,
    Slope,
    autocorrelation,
    chance_usual,
    evidence_of,
    widening,
)

#: Fewest days with a reading before and after a bend. [project]
LEAST_BEFORE, LEAST_AFTER = 8, 4
#: Shortest time before and after a bend, days. [project]
LEAST_BEFORE_DAY, LEAST_AFTER_DAY = 28.0, 10.0
#: A broken line takes about (4 + 8 r) / n from the autocorrelation r of n days about it. Found by
#: simulation. [project]
TAKEN_BY_BEND = (4.0, 8.0)
#: Twice the drop of the log likelihood at the ends of a 95 % interval.
#: [source: chi-square distribution, one degree of freedom]
_PROFILE_95 = 3.84
#: Rounds of expectation-maximisation, from the weights about the straight line. [technical]
_ROUNDS = 5

_Part = tuple[FloatArray, FloatArray]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bend:
    """Two straight lines that meet, fitted to a series.

    Attributes
    ----------
    day, low, high
        Where they meet and its 95 % interval by profile likelihood, as days of the series.
    before_per_day, after_per_day
        Slopes, in the series' unit a day.
    before_error, after_error, change_error
        Standard errors of the slopes and of their difference for that day of the bend.
    degrees_of_freedom
        Of the t distribution that the errors belong to.
    spread
        Standard deviation of a usual day about the lines.
    related
        Autocorrelation of the days about them over the usual gap.
    judged_by
        Usual spread that stood beside the person's own, in the series' unit.
    level
        Value of the second line on the last day.
    inlier_weight
        Shape (days,), 0..1: probability that a day is not out of line.
    """

    day: float
    low: float
    high: float
    before_per_day: float
    after_per_day: float
    before_error: float
    after_error: float
    change_error: float
    degrees_of_freedom: float
    spread: float
    related: float
    judged_by: float
    level: float
    inlier_weight: FloatArray

    @property
    def evidence(self) -> float:
        """Signed evidence of the change of slope, in standard deviations; below 0 downwards.

        Of the day that shows most, so a limit must allow for the choice among days.
        """
        change = self.after_per_day - self.before_per_day
        return evidence_of(change / self.change_error, self.degrees_of_freedom)

    @property
    def before_evidence(self) -> float:
        """Signed evidence of the slope before the bend, in standard deviations."""
        return evidence_of(self.before_per_day / self.before_error, self.degrees_of_freedom)

    @property
    def after_evidence(self) -> float:
        """Signed evidence of the slope after the bend, in standard deviations."""
        return evidence_of(self.after_per_day / self.after_error, self.degrees_of_freedom)

    def allowing_for(self, related: float) -> "Bend":
        """Return the same lines, errors widened for an autocorrelation known from elsewhere."""
        change = math.sqrt(widening(related) / widening(self.related))
        return replace(
            self,
            related=related,
            before_error=self.before_error * change,
            after_error=self.after_error * change,
            change_error=self.change_error * change,
        )

    def slope_after(self, day: FloatArray) -> Slope:
        """Return the second line as a slope; `day` are the days after the bend, shape (n,)."""
        return Slope(
            per_day=self.after_per_day,
            error_per_day=self.after_error,
            degrees_of_freedom=self.degrees_of_freedom,
            days=len(day),
            first_day=float(day[0]),
            last_day=float(day[-1]),
            level=self.level,
            spread=self.spread,
            related=self.related,
            judged_by=self.judged_by,
            inlier_weight=self.inlier_weight[-len(day) :],
        )


def fit_bends(
    parts: Sequence[_Part],
    lines: Sequence[Slope | None],
    usual_spread: float,
    at: float | None = None,
) -> list[Bend | None]:
    """Return the broken line through each of several series, None where it is too short.

    The day of the bend is the one that leaves least squares. Days are weighed anew about the
    broken line, since those after a bend are out of line about a straight one.

    Parameters
    ----------
    parts
        Days and values of each series, shapes (n,).
    lines
        Their straight lines, from whose weights the search begins.
    at
        Day of a known bend; otherwise it is searched for.
    """
    able = [
        np.zeros(0, dtype=bool) if line is None else _second_starts(day, at)
        for (day, _), line in zip(parts, lines, strict=True)
    ]
    chosen = [k for k, starts in enumerate(able) if starts.any()]
    bends: list[Bend | None] = [None] * len(parts)
    if not chosen:
        return bends
    kept = [line for k in chosen if (line := lines[k]) is not None]
    starts = [able[k] for k in chosen]
    fit = _BrokenLines([parts[k] for k in chosen], kept, usual_spread, starts, at)
    fit.converge()
    for row, k in enumerate(chosen):
        bends[k] = fit.bend(row)
    return bends


def _second_starts(day: FloatArray, at: float | None) -> NDArray[np.bool_]:
    """Return at which days, shape (n,), the part after a bend may begin."""
    n = len(day)
    number = np.arange(n)
    able = (number >= LEAST_BEFORE) & (n - number >= LEAST_AFTER)
    if not able.any():
        return able
    able &= (day - day[0] >= LEAST_BEFORE_DAY) & (day[-1] - day >= LEAST_AFTER_DAY)
    if at is not None:
        able &= number == np.searchsorted(day, at)
    starts: NDArray[np.bool_] = able
    return starts


class _BrokenLines:
    """Broken lines of several series at once, in arrays of shape (series, days)."""

    def __init__(
        self,
        parts: Sequence[_Part],
        lines: Sequence[Slope],
        usual_spread: float,
        able: Sequence[NDArray[np.bool_]],
        at: float | None,
    ) -> None:
        shape = (len(parts), max(len(day) for day, _ in parts))
        self.days = [day for day, _ in parts]
        self.when, self.value, self.inside, self.weight = np.zeros((4, *shape))
        self.able = np.zeros(shape, dtype=bool)
        for k, ((day, value), line) in enumerate(zip(parts, lines, strict=True)):
            n = len(day)
            self.when[k, :n], self.value[k, :n], self.inside[k, :n] = day - day[-1], value, 1.0
            self.weight[k, :n], self.able[k, :n] = line.inlier_weight, able[k]
        self.judged_by = np.array([[line.judged_by] for line in lines])
        self.own = np.array([[float(line.days >= LEAST_FOR_OWN_SPREAD)] for line in lines])
        # The lines meet midway between the days that they part, or on the known day.
        self.knot = self.when.copy()
        self.knot[:, 1:] = (self.when[:, 1:] + self.when[:, :-1]) / 2
        if at is not None:
            self.knot[:] = at - np.array([[day[-1]] for day in self.days])

    def converge(self) -> None:
        """Weigh the days and search the bend in turns."""
        self._solve()
        for _ in range(_ROUNDS):
            self.weight = self.inside * chance_usual(self.left, self.variance, self.judged_by)
            self._solve()

    def _solve(self) -> None:
        """Find the best bend of each series for the present weights, by sums from each day on."""
        weight = self.weight
        total = weight.sum(axis=1, keepdims=True)
        centre = (weight * self.when).sum(axis=1, keepdims=True) / total
        off = (self.when - centre) * self.inside
        knot = self.knot - centre
        level = (weight * self.value).sum(axis=1, keepdims=True) / total
        value = (self.value - level) * self.inside
        square = (weight * off**2).sum(axis=1, keepdims=True)
        rise = (weight * off * value).sum(axis=1, keepdims=True)
        later = (weight, weight * off, weight * off**2, weight * value, weight * off * value)
        count, first, second, values, products = (
            np.cumsum(item[:, ::-1], axis=1)[:, ::-1] for item in later
        )
        # The hinge is 0 before a knot and rises by 1 a day after it.
        hinge_sum = first - knot * count
        hinge_off = second - knot * first
        hinge_square = second - 2 * knot * first + knot**2 * count
        hinge_square = hinge_square - hinge_sum**2 / total - hinge_off**2 / square
        hinge_square = np.where(self.able, np.maximum(hinge_square, 1e-9), 1.0)
        hinge_value = values * -knot + products - hinge_off * rise / square
        self.gain = np.where(self.able, hinge_value**2 / hinge_square, -1.0)
        self.best = np.argmax(self.gain, axis=1)[:, None]

        def at_best(item: FloatArray) -> FloatArray:
            return np.take_along_axis(item, self.best, axis=1)

        self.square, self.hinge_square = square, at_best(hinge_square)
        self.hinge_off = at_best(hinge_off)
        self.change = at_best(hinge_value) / self.hinge_square
        self.before = (rise - self.change * self.hinge_off) / square
        hinge = np.maximum(off - at_best(knot), 0.0) - at_best(hinge_sum) / total
        self.left = (value - self.before * off - self.change * hinge) * self.inside
        # Two lines and their meeting day are four parameters.
        self.freedom = np.maximum(total - 4.0, 1.0)
        own = (weight * self.left**2).sum(axis=1, keepdims=True) / self.freedom
        days = self.freedom * self.own
        self.variance = (PRIOR_DAYS * self.judged_by**2 + days * own) / (PRIOR_DAYS + days)

    def bend(self, row: int) -> Bend:
        """Return the bend of one series after convergence."""
        day = self.days[row]
        n = len(day)
        weight, left = self.weight[row, :n].copy(), self.left[row, :n]
        variance, square, hinge_square, hinge_off, change, before, freedom = (
            float(item[row, 0])
            for item in (
                self.variance,
                self.square,
                self.hinge_square,
                self.hinge_off,
                self.change,
                self.before,
                self.freedom,
            )
        )
        related = autocorrelation(day, left, weight, variance, TAKEN_BY_BEND)
        total = float(weight.sum())
        doubt = float(weight * (1 - weight) @ left**2) / variance
        scaled = variance * widening(related) / max((total - doubt) / total, LEAST_INFORMATION)
        gain = self.gain[row, :n]
        near = self.knot[row, :n][gain >= gain.max() - _PROFILE_95 * scaled]
        share = hinge_off / square
        return Bend(
            day=float(day[-1] + self.knot[row, self.best[row, 0]]),
            low=float(day[-1] + near[0]),
            high=float(day[-1] + near[-1]),
            before_per_day=before,
            after_per_day=before + change,
            before_error=math.sqrt(scaled * (1 / square + share**2 / hinge_square)),
            after_error=math.sqrt(scaled * (1 / square + (1 - share) ** 2 / hinge_square)),
            change_error=math.sqrt(scaled / hinge_square),
            degrees_of_freedom=PRIOR_DAYS + freedom,
            spread=math.sqrt(variance),
            related=related,
            judged_by=float(self.judged_by[row, 0]),
            level=float(self.value[row, n - 1] - left[-1]),
            inlier_weight=weight,
        )
