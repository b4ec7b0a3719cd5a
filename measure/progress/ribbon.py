"""Ribbons of a chart: the likely course of a side, and of pain, with their 95 % bands."""

from collections import defaultdict
from collections.abc import Iterable

import numpy as np

from measure.domain.records import MeasurementRecord
from measure.progress.shoulder import SideProgress
from measure.trend.local_trend import Ribbon, local_trend

#: Standard deviation of one day's rating of pain about its course, points of 10. [project]
PAIN_SPREAD = 1.2


def course_ribbons(side: SideProgress) -> tuple[Ribbon, ...]:
    """Return the likely course of a side; nothing is drawn across a break of its series.

    Sessions of practice are left out. The band shows the scatter from day to day; what all days of
    an instrument share, such as a camera that stands askew, it cannot show.
    """
    series, scatter = side.series.counted(), side.scatter
    ribbons: list[Ribbon] = []
    for number in np.unique(series.segment):
        part = series.where(series.segment == number)
        ribbons += local_trend(
            part.day,
            part.value,
            spread=scatter.spread,
            related=scatter.related,
            degrees_of_freedom=scatter.degrees_of_freedom,
        )
    return tuple(ribbons)


def pain_ribbons(records: Iterable[MeasurementRecord]) -> tuple[Ribbon, ...]:
    """Return the likely course of pain during these movements, the worst of each day, 0..10."""
    worst: dict[int, int] = defaultdict(int)
    for record in records:
        if record.pain_during is not None:
            day = record.taken.day.toordinal()
            worst[day] = max(worst[day], record.pain_during)
    days = np.array(sorted(worst), dtype=np.float64)
    ratings = np.array([worst[int(day)] for day in days], dtype=np.float64)
    return tuple(
        Ribbon(
            day=ribbon.day,
            value=ribbon.value.clip(0, 10),
            low=ribbon.low.clip(0, 10),
            high=ribbon.high.clip(0, 10),
        )
        for ribbon in local_trend(days, ratings, spread=PAIN_SPREAD)
    )
