"""Pain ratings whose truth is known: stable ones, and ones that rise for good.

Three sessions a week, the worst pain in 24 hours as a whole number of 0 to 10; asked about on every
day of a session and the day after the second week.
"""

import datetime as dt
import math

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.records import Pain, SessionRecord
from measure.system.clock import Timestamp
from measure.trend.pain_course import more_pain
from tests.bench.progress_people import Course, planned_days

_MEAN, _RELATED = 4.0, 0.55
_FIRST = dt.date(2026, 4, 6)


def pain_rates(sd: float, people: int, seed: int) -> dict[str, float]:
    """Return the shares told of more pain: falsely in 26 weeks; of a lasting rise in two weeks."""
    random = np.random.default_rng(seed)
    false = told = 0
    stable, rising = planned_days(Course(weeks=26)), planned_days(Course(weeks=14))
    for _ in range(people):
        ratings = _ratings(stable, random, sd)
        false += any(_told(stable, ratings, float(day)) for day in stable)
        ratings = _ratings(rising, random, sd, 3.0 * (rising >= 84).astype(np.float64))
        asked = [float(day) for day in rising if day >= 84] + [97.0]
        told += any(_told(rising, ratings, day) for day in asked)
    return {"stable, told in 26 weeks": 100 * false / people, "+3, told": 100 * told / people}


def _ratings(
    day: FloatArray, random: np.random.Generator, sd: float, rise: FloatArray | float = 0.0
) -> FloatArray:
    noise = random.normal(size=len(day))
    for k in range(1, len(day)):
        noise[k] = _RELATED * noise[k - 1] + math.sqrt(1 - _RELATED**2) * noise[k]
    rounded: FloatArray = np.clip(np.round(_MEAN + sd * noise + rise), 0, 10)
    return rounded


def _told(days: FloatArray, ratings: FloatArray, today: float) -> bool:
    near = (days <= today) & (days > today - 56)
    sessions = [
        _session(int(day), int(rating))
        for day, rating in zip(days[near], ratings[near], strict=True)
    ]
    return more_pain(sessions, _FIRST + dt.timedelta(days=int(today))) is not None


def _session(number: int, rating: int) -> SessionRecord:
    start = dt.datetime.combine(_FIRST + dt.timedelta(days=number), dt.time(9), dt.UTC)
    return SessionRecord(
        id=f"{number:032x}",
        person_id=f"{1:032x}",
        started=Timestamp(utc=start),
        pain=Pain(worst_24h=rating),
        finished=True,
    )
