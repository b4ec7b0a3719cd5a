"""Test-retest repeatability of one person: typical error, drift, minimal detectable change.

The same person, shoulder, movement and set-up, measured in several sessions while the shoulder
itself is not expected to change much. This is repeatability, not agreement: a camera that is
always 10 degrees off repeats perfectly. Recovery over months is judged in
:mod:`measure.progress`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import stats

from calibration.statistics.estimate import TAIL, Estimate, sd_with_interval
from calibration.statistics.icc import Z90, Z95
from calibration.statistics.pooled_variance import pooled_variance
from measure.domain.landmarks import FloatArray
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.errors import InputError

#: Sessions from which the person's own scatter replaces the usual one: with 8 a standard
#: deviation is known to within about a factor of two. [project]
ENOUGH_SESSIONS = 8
#: Fewest sessions that scatter about a straight line at all. [technical]
FEWEST_SESSIONS = 3
#: Correlation of neighbouring sessions above which the drift's interval is widened. [project]
NOTED_CORRELATION = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class RetestSession:
    """One session of a test-retest series.

    Attributes
    ----------
    day
        Days since any fixed day; fractions allowed.
    trials
        Scored trials, at least one, in the movement's unit; the session's value is their
        median.
    """

    day: float
    trials: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeatability:
    """Repeatability of one person's test-retest series; all in the movement's unit.

    Attributes
    ----------
    sessions
        Number of sessions.
    typical_error
        Standard deviation of session values about their own straight line in time, with its
        chi-square interval (n - 2). None below three sessions.
    drift_per_week
        Slope of that line with its t interval, widened where neighbouring sessions resemble
        each other. None below three sessions, or when all fell on one day.
    trial_sd
        Standard deviation of trials within a session, pooled; None without repeated trials.
    own
        True when the person's own scatter is used for change, False for the usual one.
    error_for_change
        The standard deviation used for judging change.
    """

    movement: Movement
    sessions: int
    typical_error: Estimate | None
    drift_per_week: Estimate | None
    trial_sd: Estimate | None
    own: bool
    error_for_change: float

    @property
    def mdc90(self) -> float:
        """Minimal detectable change between two single sessions at 90 %."""
        return self._quantile(0.90) * math.sqrt(2) * self.error_for_change

    @property
    def mdc95(self) -> float:
        """Minimal detectable change between two single sessions at 95 %."""
        return self._quantile(0.95) * math.sqrt(2) * self.error_for_change

    def change(self, before: Sequence[float], after: Sequence[float]) -> Estimate:
        """Return the change between two blocks of session values with its 95 % interval.

        The mean of a block of m sessions has the variance of one over m.

        Raises
        ------
        ValueError
            For an empty block or a value that is not finite.
        """
        if not before or not after or not np.isfinite([*before, *after]).all():
            raise ValueError("a block has no sessions, or a session no value")
        value = float(np.mean(after) - np.mean(before))
        spread = math.sqrt(1 / len(before) + 1 / len(after))
        half = self._quantile(0.95) * self.error_for_change * spread
        return Estimate(value=value, low=value - half, high=value + half)

    def _quantile(self, confidence: float) -> float:
        """Return the two-sided quantile: t for the person's own scatter, normal for the usual."""
        if self.own:
            return float(stats.t.isf((1 - confidence) / 2, self.sessions - 2))
        return {0.90: Z90, 0.95: Z95}[confidence]


def repeatability(movement: Movement, sessions: Sequence[RetestSession]) -> Repeatability:
    """Return the repeatability of a test-retest series; the sessions may come in any order.

    Scatter is taken about the person's own line, so that a slow true change does not count as
    error. The movement's usual scatter is assumed until there are 8 sessions.

    Raises
    ------
    InputError
        For no sessions, a session without trials, or a number that is not finite.
    """
    _check(movement, sessions)
    ordered = sorted(sessions, key=lambda session: session.day)
    day = np.array([session.day for session in ordered], dtype=np.float64)
    value = np.array([float(np.median(session.trials)) for session in ordered], dtype=np.float64)
    typical, drift = _residuals_from_trend(day, value)
    trial_variance, trial_degrees = pooled_variance(
        [np.array(session.trials, dtype=np.float64) for session in ordered]
    )
    own = typical is not None and len(ordered) >= ENOUGH_SESSIONS
    return Repeatability(
        movement=movement,
        sessions=len(ordered),
        typical_error=typical,
        drift_per_week=drift,
        trial_sd=sd_with_interval(trial_variance, trial_degrees) if trial_degrees else None,
        own=own,
        error_for_change=typical.value if own and typical else MOVEMENTS[movement].usual_spread,
    )


def repeatability_paragraph(result: Repeatability) -> str:
    """Return a series' repeatability in plain sentences."""
    facts = MOVEMENTS[result.movement]
    digits, unit = (1, " degrees") if facts.unit is Unit.DEGREES else (2, "")

    def shown(number: float) -> str:
        return f"{round(number, digits) + 0.0:.{digits}f}{unit}"

    many = f"{result.sessions} session{'s' * (result.sessions != 1)}"
    sentences = [f"{facts.name}: {many} of one shoulder."]
    if result.typical_error is not None:
        error = result.typical_error
        sentences.append(
            f"Sessions scatter by {shown(error.value)} about their own line "
            f"(95 % interval {shown(error.low)} to {shown(error.high)})."
        )
    if result.trial_sd is not None:
        sentences.append(f"Trials within a session scatter by {shown(result.trial_sd.value)}.")
    if result.drift_per_week is not None:
        drift = result.drift_per_week
        slope = f"{shown(drift.value)} a week, {shown(drift.low)} to {shown(drift.high)}"
        sentences.append(
            f"No drift is shown ({slope})."
            if drift.holds(0.0)
            else f"The values drift ({slope}): the shoulder or the set-up changed."
        )
    if not result.own:
        sentences.append(
            f"Until there are {ENOUGH_SESSIONS} sessions, a typical scatter of "
            f"{shown(result.error_for_change)} is assumed."
        )
    sentences.append(
        f"Two single sessions must differ by {shown(result.mdc90)} (90 %) or "
        f"{shown(result.mdc95)} (95 %) for the difference to be more than scatter."
    )
    return " ".join(sentences)


def _residuals_from_trend(
    day: FloatArray, value: FloatArray
) -> tuple[Estimate | None, Estimate | None]:
    """Return the scatter about the least-squares line and the line's slope per week."""
    n = len(day)
    if n < FEWEST_SESSIONS:
        return None, None
    spread = float(np.sum((day - day.mean()) ** 2))
    if spread <= 0:  # all on one day: a mean instead of a line
        return sd_with_interval(float(value.var(ddof=1)), n - 1), None
    slope = float(np.sum((day - day.mean()) * value)) / spread
    residuals = value - value.mean() - slope * (day - day.mean())
    variance = float(np.sum(residuals**2)) / (n - 2)
    error = math.sqrt(variance / spread) * _widening(residuals)
    half = float(stats.t.isf(TAIL, n - 2)) * error
    drift = Estimate(value=7 * slope, low=7 * (slope - half), high=7 * (slope + half))
    return sd_with_interval(variance, n - 2), drift


def _widening(residuals: FloatArray) -> float:
    """Return the factor on a standard error for correlated neighbours, 1 to 3.

    The root of (1 + r) / (1 - r), r the correlation of neighbours: the share of independent
    sessions in a first-order autoregressive series.
    """
    squares = float(np.sum(residuals**2))
    if squares <= 0:
        return 1.0
    r = float(np.sum(residuals[1:] * residuals[:-1])) / squares
    if r <= NOTED_CORRELATION:
        return 1.0
    return math.sqrt((1 + min(r, 0.8)) / (1 - min(r, 0.8)))


def _check(movement: Movement, sessions: Sequence[RetestSession]) -> None:
    name = MOVEMENTS[movement].name
    if not sessions:
        raise InputError(f"{name}: there are no sessions yet. Measure first.")
    for number, session in enumerate(sessions, start=1):
        if not session.trials:
            raise InputError(f"{name}: session {number} has no scored trial. Leave it out.")
        if not np.isfinite([session.day, *session.trials]).all():
            raise InputError(f"{name}: session {number} contains something that is not a number.")
