"""What ended movements, month by month: pain, stiffness or something else. Facts, no phases."""

import datetime as dt
from collections import Counter
from collections.abc import Collection, Mapping
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.records import History, LimitingFactor


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthEnds:
    """What the person said ended their movements in one calendar month.

    Attributes
    ----------
    month
        Its first day.
    times
        How often each was said; only what was said at least once.
    """

    month: dt.date
    times: Mapping[LimitingFactor, int]

    @property
    def total(self) -> int:
        """How often anything was said."""
        return sum(self.times.values())


def ends_by_month(history: History, sides: Collection[Side]) -> tuple[MonthEnds, ...]:
    """Return what ended the movements of these sides, for months in which it was said.

    Refused measurements count too: what stopped an arm was felt, not seen.
    """
    months: dict[dt.date, Counter[LimitingFactor]] = {}
    for record in history.measurements:
        if record.stopped_by is not None and record.measurement.side in sides:
            month = record.taken.day.replace(day=1)
            months.setdefault(month, Counter())[record.stopped_by] += 1
    return tuple(
        MonthEnds(month=month, times={kind: times[kind] for kind in LimitingFactor if times[kind]})
        for month, times in sorted(months.items())
    )
