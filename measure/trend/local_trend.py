"""Local trend: a smooth course through single days, with its 95 % band.

For looking at, not for verdicts: those rest on :mod:`measure.trend.trend_line`. The course bends as
the days do, so nothing about its form is assumed but that it is nearly straight for some weeks.
"""

import math
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.trend.trend_line import widening

#: Days on each side that a place of the course rests on at least, and at most. [project]
_REACH_DAY = (21.0, 42.0)
#: Days with a value within this reach; where they are sparser it grows to hold as many. [project]
_WANTED_DAYS = 6
#: Days with a value that every place rests on, however far they are. [project]
_NEEDED_DAYS = 4
#: Fewest days with a value for a course at all. [project]
_LEAST_DAYS = 4
#: After so many days without a value the course is broken off: nothing is known of them. [project]
LONGEST_GAP_DAY = 28.0
#: Spreads beyond which a day counts for nothing (Tukey's biweight).
#: [source: 10.1080/01621459.1979.10481038]
_BIWEIGHT = 6.0
#: Rounds of weighing days by their distance from the course. [technical]
_ROUNDS = 3


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ribbon:
    """A stretch of a course: arrays of shape (n,), a place for every day.

    Attributes
    ----------
    day
        Increasing by 1.
    value, low, high
        The course, and its pointwise 95 % interval from the scatter of the days alone.
    """

    day: FloatArray
    value: FloatArray
    low: FloatArray
    high: FloatArray


def local_trend(
    day: FloatArray,
    value: FloatArray,
    *,
    spread: float,
    related: float = 0.0,
    degrees_of_freedom: float = 1000.0,
) -> tuple[Ribbon, ...]:
    """Return the course through days with a value, in stretches without a long gap.

    Locally weighted lines with tricube weights, days far from the course weighed down
    (Cleveland 1979, J Am Stat Assoc 74:829).

    Parameters
    ----------
    day, value
        Shape (n,); days increase.
    spread
        Standard deviation of one day about the course, in the unit of `value`.
    related
        Autocorrelation of neighbouring days.
    degrees_of_freedom
        With which the spread is known.
    """
    from scipy import special  # loaded when first needed: the window starts without it

    starts = np.flatnonzero(np.diff(day) > LONGEST_GAP_DAY) + 1
    reach = float(special.stdtrit(degrees_of_freedom, 0.975)) * spread
    reach *= math.sqrt(widening(related))
    return tuple(
        _stretch(days, values, spread, reach)
        for days, values in zip(np.split(day, starts), np.split(value, starts), strict=True)
        if len(days) >= _LEAST_DAYS
    )


def _stretch(day: FloatArray, value: FloatArray, spread: float, reach: float) -> Ribbon:
    trust = np.ones(len(day))
    at_days = _hat(day, day)
    for _ in range(_ROUNDS):
        residual = value - _smoothed(at_days, trust) @ value
        trust = np.maximum(1 - (residual / (_BIWEIGHT * spread)) ** 2, 0.0) ** 2
    place = np.arange(day[0], day[-1] + 1)
    weights = _smoothed(_hat(place, day), trust)
    middle = weights @ value
    half = reach * np.sqrt((weights**2).sum(axis=1))
    return Ribbon(day=place, value=middle, low=middle - half, high=middle + half)


@dataclass(frozen=True, slots=True, eq=False)
class _Hat:
    """Tricube weights, and the distance of each day from each place; shape (places, days)."""

    tricube: FloatArray
    away: FloatArray


def _hat(place: FloatArray, day: FloatArray) -> _Hat:
    away = day[None, :] - place[:, None]
    nearest = np.sort(np.abs(away), axis=1)
    # A day at the end of the reach weighs nothing, so the last wanted one lies well within. One
    # reach for the whole stretch keeps the course smooth; only where days are rarest it grows.
    wanted = 1.3 * np.median(nearest[:, min(_WANTED_DAYS, len(day)) - 1])
    needed = 1.3 * nearest[:, _NEEDED_DAYS - 1]
    reach = np.maximum(np.clip(wanted, *_REACH_DAY), needed)[:, None]
    return _Hat(np.clip(1 - np.abs(away / reach) ** 3, 0, None) ** 3, away)


def _smoothed(hat: _Hat, trust: FloatArray) -> FloatArray:
    """Return the weights, shape (places, days), with which values make the course."""
    weight = hat.tricube * np.maximum(trust, 1e-3)
    total = weight.sum(axis=1, keepdims=True)
    centre = (weight * hat.away).sum(axis=1, keepdims=True) / total
    away = hat.away - centre
    moment = (weight * away**2).sum(axis=1, keepdims=True)
    tilt = np.where(moment > 1e-9, -centre * away / np.maximum(moment, 1e-9), 0.0)
    result: FloatArray = weight * (1 / total + tilt)
    return result
