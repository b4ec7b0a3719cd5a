"""How often the intervals of a deficit to the other side hold the truth."""

import datetime as dt
import math
from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from measure.domain.landmarks import Side
from measure.progress.comparison import Block
from measure.progress.person_evidence import PersonEvidence
from measure.progress.series import Series
from measure.progress.shoulder import side_progress
from measure.progress.side_deficit import Deficit, pattern_of
from tests.bench.progress_people import FIRST_DAY, MOVEMENTS_OF_ONE, Course, person_of

#: Where the affected side starts and where the other one stays, degrees: as in external rotation,
#: where a share is least certain.
AFFECTED_DEG, OTHER_DEG = 25.0, 65.0
#: A course starts at so many degrees.
_START_DEG = 90.0


def deficit_coverage(course: Course, people: int, seed: int) -> Mapping[str, float]:
    """Return how often deficits now and of a month hold the truth, the other side weekly.

    All movements truly have the same share, so none is the smallest.
    """
    random = np.random.default_rng(seed)
    other = replace(course, a_month=0.0, a_week=1)
    named = []
    now: list[tuple[float, float]] = []
    months: list[tuple[float, float]] = []
    for _ in range(people):
        affected = _moved(person_of(course, random), AFFECTED_DEG)
        healthy = _moved(person_of(other, random, MOVEMENTS_OF_ONE, Side.RIGHT), OTHER_DEG)
        everything = (*affected, *healthy)
        today = dt.date.fromordinal(FIRST_DAY + 7 * course.weeks)
        evidence = PersonEvidence.of(everything, today, MOVEMENTS_OF_ONE)
        deficits = []
        for series in affected:
            progress = side_progress(
                series, everything, (Side.LEFT,), series.conduct, evidence, today
            )
            assert progress.deficit is not None
            deficits.append((series.movement, progress.deficit))
            now.append(_held(progress.deficit.now, course, series))
            months.extend(_held(month.deficit, course, series) for month in progress.deficit.months)
        pattern = pattern_of(Side.LEFT, deficits)
        named.append(pattern is not None and pattern.smallest is not None)
    figures = {"falsely named as the smallest share": 100 * float(np.mean(named))}
    for name, held in (("now", now), ("of a month", months)):
        difference, share = 100 * np.nanmean(np.array(held), axis=0)
        figures[f"difference {name}"] = float(difference)
        figures[f"share {name}"] = float(share)
    return figures


def _moved(series: tuple[Series, ...], start: float) -> tuple[Series, ...]:
    """Return series that start at another level."""
    by = start - _START_DEG
    return tuple(
        replace(item, value=item.value + by, low=item.low + by, high=item.high + by)
        for item in series
    )


def _held(deficit: Deficit, course: Course, series: Series) -> tuple[float, float]:
    """Return whether difference and share hold the truth of their days; NaN without a share."""
    ability = _truth(deficit.this, course, series)
    difference, share = deficit.difference, deficit.share
    percent = 100 * ability / OTHER_DEG
    return (
        float(difference.low <= OTHER_DEG - ability <= difference.high),
        math.nan if share is None else float(share.low <= percent <= share.high),
    )


def _truth(block: Block, course: Course, series: Series) -> float:
    first, last = block.first.toordinal(), block.last.toordinal()
    days = series.day[(series.day >= first) & (series.day <= last)] - FIRST_DAY
    return float(course.truth(days).mean()) + AFFECTED_DEG - _START_DEG
