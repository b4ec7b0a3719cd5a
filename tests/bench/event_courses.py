"""Made-up courses before and after an event, to find out how often the intervals hold.

Shared by the bench and by the tests. Degrees of flexion throughout; the event is on day 0.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import Unit
from measure.trend.event_effect import PRIOR_SLOPE_DEG, PRIOR_STEP_SD_DEG, EffectPrior
from measure.trend.event_effect import event_effect as effect_of
from measure.trend.trend_line import DAYS_A_MONTH

#: Standard deviation of a session about the truth, degrees.
SPREAD = 5.0
_DAYS_OF_WEEK = {1: (0,), 2: (0, 3), 3: (0, 2, 4)}
QUANTITIES = ("step", "slope_before", "slope_after", "change_since")


@dataclass(frozen=True, slots=True, kw_only=True)
class EventTruth:
    """What truly happens: degrees, and degrees a month."""

    step: float
    slope_before: float
    slope_after: float

    @classmethod
    def drawn(cls, random: np.random.Generator) -> "EventTruth":
        """Return a truth as likely as what is assumed until there are data."""
        before, after = random.normal(*PRIOR_SLOPE_DEG, 2)
        step = random.normal(0.0, PRIOR_STEP_SD_DEG)
        return cls(step=float(step), slope_before=float(before), slope_after=float(after))

    def of(self, quantity: str, last_day: float) -> float:
        if quantity == "change_since":
            return self.step + self.slope_after * last_day / DAYS_A_MONTH
        truth: float = getattr(self, quantity)
        return truth


@dataclass(frozen=True, slots=True, kw_only=True)
class EventCourse:
    """How a course around an event is measured; the fields of the same name as in `Course`.

    Attributes
    ----------
    truth
        None for another one for every person, as likely as what is assumed.
    clothes
        Degrees by which the clothes of a week raise or lower all its sessions.
    """

    truth: EventTruth | None = None
    weeks_before: int = 10
    weeks_after: int = 8
    related: float = 0.0
    odd: float = 0.0
    missed: float = 0.0
    clothes: float = 0.0
    a_week: int = 3

    def measured(
        self, truth: EventTruth, random: np.random.Generator
    ) -> tuple[FloatArray, FloatArray]:
        """Return days from the event on and values of one person, shape (n,) each."""
        weeks = range(-self.weeks_before, self.weeks_after)
        day = np.array([7.0 * week + d for week in weeks for d in _DAYS_OF_WEEK[self.a_week]])
        noise = random.normal(size=len(day))
        for k in range(1, len(day)):
            noise[k] = self.related * noise[k - 1] + math.sqrt(1 - self.related**2) * noise[k]
        months = day / DAYS_A_MONTH
        before, after = truth.slope_before * months, truth.step + truth.slope_after * months
        value = 90.0 + np.where(day < 0, before, after) + SPREAD * noise
        worn = random.choice([-1.0, 1.0], size=len(weeks))
        value += self.clothes * worn[((day - day[0]) // 7).astype(int)]
        value -= 20.0 * (random.random(len(day)) < self.odd)
        seen = random.random(len(day)) >= self.missed
        seen[[0, 1, 2, -1]] = True
        return day[seen], value[seen]


def coverage(course: EventCourse, people: int, seed: int) -> Mapping[str, float]:
    """Return for each quantity the share of people whose interval holds the truth."""
    random = np.random.default_rng(seed)
    prior = EffectPrior.of(Unit.DEGREES)
    held = dict.fromkeys(QUANTITIES, 0)
    for _ in range(people):
        truth = course.truth or EventTruth.drawn(random)
        found = effect_of(*course.measured(truth, random), 0.0, SPREAD, prior)
        assert found is not None
        for quantity in QUANTITIES:
            estimate = getattr(found, quantity)
            held[quantity] += estimate.low <= truth.of(quantity, found.last_day) <= estimate.high
    return {quantity: count / people for quantity, count in held.items()}
