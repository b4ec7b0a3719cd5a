"""Scales of the history chart: days and values to pixels, and what their axes name.

No Qt and no words in a language.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, StrEnum

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import LEVEL_TICKS, scale_of

#: Steps between named angles on the long scale and on the short one, degrees. [technical]
_LONG_STEP_DEG, _SHORT_STEP_DEG = 45, 30
#: The long scale ends above this, degrees. [technical]
_LONG_DEG = 90.0
#: Fewest days that a chart spans. [technical]
_LEAST_SPAN_DAY = 14
#: Days kept free at both ends, as a share of the span. [technical]
_MARGIN = 0.02


class ChartRange(Enum):
    """How many days before today a chart shows; None for all."""

    FOUR_WEEKS = 28
    THREE_MONTHS = 91
    ALL = None


class TickUnit(StrEnum):
    """What the ticks of days stand for."""

    DAY = "day"
    MONTH = "month"
    YEAR = "year"


@dataclass(frozen=True, slots=True, kw_only=True)
class DayScale:
    """Days from left to right; both ends belong to it."""

    first: dt.date
    last: dt.date
    left_px: float
    right_px: float

    def x(self, day: dt.date) -> float:
        """Return where a day lies, in pixels; the same for every moment of that day."""
        return self.x_of(day.toordinal())

    def x_of(self, ordinal: float) -> float:
        """Return where a day lies that is counted as :meth:`datetime.date.toordinal` counts."""
        span = (self.last - self.first).days
        share = (ordinal - self.first.toordinal()) / span
        room = self.right_px - self.left_px
        return self.left_px + room * (_MARGIN + (1 - 2 * _MARGIN) * share)

    def holds(self, day: dt.date) -> bool:
        return self.first <= day <= self.last

    def ticks(
        self, label_px: float, month_px: float | None = None
    ) -> tuple[TickUnit, list[dt.date]]:
        """Return the days to name where a name is `label_px` wide, and how.

        Parameters
        ----------
        month_px
            Width of the name of a month alone, where it is less.
        """
        day_px = self.x_of(1) - self.x_of(0)
        for weeks in (1, 2):
            if 7 * weeks * day_px >= label_px:
                return TickUnit.DAY, self._mondays(weeks)
        for months in (1, 2, 3, 6):
            if 30 * months * day_px >= (month_px or label_px):
                return TickUnit.MONTH, self._firsts(months)
        years = next(step for step in (1, 2, 5, 10, 100) if 365 * step * day_px >= label_px)
        return TickUnit.YEAR, [day for day in self._firsts(12) if day.year % years == 0]

    def _mondays(self, weeks: int) -> list[dt.date]:
        # Counted back from the last day, so that the ticks stay as a range grows.
        day = self.last - dt.timedelta(days=self.last.weekday())
        days = []
        while day >= self.first:
            days.append(day)
            day -= dt.timedelta(weeks=weeks)
        return days[::-1]

    def _firsts(self, months: int) -> list[dt.date]:
        days = []
        for month in range(self.first.year * 12, self.last.year * 12 + 12, months):
            day = dt.date(month // 12, month % 12 + 1, 1)
            if self.holds(day):
                days.append(day)
        return days


@dataclass(frozen=True, slots=True, kw_only=True)
class ValueScale:
    """Values from bottom to top; those beyond an end lie at it."""

    low: float
    high: float
    top_px: float
    bottom_px: float

    def y(self, value: float) -> float:
        share = min(1.0, max(0.0, (value - self.low) / (self.high - self.low)))
        return self.bottom_px - (self.bottom_px - self.top_px) * share

    def beyond(self, value: float) -> bool:
        """Return whether a value lies beyond the scale."""
        return not self.low <= value <= self.high


def value_ticks(movement: Movement) -> list[tuple[float, str]]:
    """Return the values that the axis of a movement names, each with its name."""
    if MOVEMENTS[movement].unit is Unit.FRACTION:
        return list(LEVEL_TICKS)
    _, high = scale_of(movement)
    step = _LONG_STEP_DEG if high > _LONG_DEG else _SHORT_STEP_DEG
    return [(float(angle), f"{angle}°") for angle in range(0, round(high) + 1, step)]


def first_day(days: Sequence[dt.date], today: dt.date, chosen: ChartRange) -> dt.date:
    """Return the first day that a chart shows; for all, that of the first measurement."""
    if chosen.value is not None:
        return today - dt.timedelta(days=chosen.value)
    least = today - dt.timedelta(days=_LEAST_SPAN_DAY)
    return min((*days, least))
