"""Deficit of an affected shoulder to the other one: now, month by month, and over movements.

Facts about ranges, no diagnosis. The intervals join those of both sides' readings, as after one
session: :func:`measure.domain.session_comparison.difference_between`.
"""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.session_comparison import difference_between, half_width, shown_difference
from measure.progress.comparison import Block, Change, Scatter, block_of
from measure.progress.series import Series
from measure.trend.ratio_interval import ratio_interval

#: Fewest days of either side from which a month's deficit is given. [project]
LEAST_DAYS_OF_MONTH = 2
#: Movements whose shares are compared with each other, in the order of their names here.
PATTERN_MOVEMENTS = (
    Movement.EXTERNAL_ROTATION,
    Movement.ABDUCTION,
    Movement.HAND_BEHIND_BACK,
    Movement.FLEXION,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """One side's range as a share of the other's, in per cent, with its 95 % interval."""

    percent: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Deficit:
    """What one side lacks of the other, in the same days or months.

    Attributes
    ----------
    this, other
        The blocks of days that are compared.
    difference
        Other side minus this one, in the movement's unit; below 0 where this one reaches further.
    share
        This side's range as a share of the other's; None where the other is too near 0 for one.
        Of the reach: of the height above the hips.
    """

    this: Block
    other: Block
    difference: Change
    share: Share | None

    def shown(self, movement: Movement) -> Change:
        """Return the difference as it is shown beside the values of both sides."""
        unit = MOVEMENTS[movement].unit
        value = shown_difference(self.this.value, self.other.value, unit)
        return replace(self.difference, value=value)

    @classmethod
    def between(cls, this: Block, other: Block) -> "Deficit":
        """Return the deficit of a block to one of the other side."""
        mine, theirs = (this.value, this.low, this.high), (other.value, other.low, other.high)
        value, low, high = difference_between(mine, theirs)
        ratio = ratio_interval(this.value, half_width(mine), other.value, half_width(theirs))
        share = None
        if ratio is not None:
            share = Share(percent=100 * ratio[0], low=100 * ratio[1], high=100 * ratio[2])
        return cls(
            this=this,
            other=other,
            difference=Change(value=value, low=low, high=high),
            share=share,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthDeficit:
    """The deficit in one calendar month; `month` is its first day."""

    month: dt.date
    deficit: Deficit


@dataclass(frozen=True, slots=True, kw_only=True)
class SideDeficit:
    """The deficit of one movement of the affected side: now, and in each month.

    Attributes
    ----------
    months
        Months in which both sides were measured in the same way, the earliest first.
    """

    now: Deficit
    months: tuple[MonthDeficit, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """Shares of the other side over movements, the smallest first.

    Attributes
    ----------
    smallest
        The movement whose share is smaller than every other one's beyond chance, or None.
    """

    side: Side
    shares: tuple[tuple[Movement, Share], ...]
    smallest: Movement | None


def monthly_deficits(
    this: Series, other: Series, scatter: Scatter, other_scatter: Scatter
) -> tuple[MonthDeficit, ...]:
    """Return the deficit in every month with enough days of both sides.

    Days of practice are left out, and of each month those not measured as on its last day.
    """
    deficits = []
    this, other = this.counted(), other.counted()
    for month in sorted({this.date(k).replace(day=1) for k in range(len(this))}):
        mine = _within(this, month)
        instrument = mine.instrument[-1]
        mine = mine.where(mine.instrument == instrument)
        theirs = _within(other, month)
        theirs = theirs.where(theirs.instrument == instrument)
        if min(len(mine), len(theirs)) < LEAST_DAYS_OF_MONTH:
            continue
        deficit = Deficit.between(block_of(mine, scatter), block_of(theirs, other_scatter))
        deficits.append(MonthDeficit(month=month, deficit=deficit))
    return tuple(deficits)


def pattern_of(side: Side, deficits: Iterable[tuple[Movement, SideDeficit]]) -> Pattern | None:
    """Return the pattern over the movements of PATTERN_MOVEMENTS, or None for fewer than two."""
    shares = [
        (movement, deficit.now.share)
        for movement, deficit in deficits
        if movement in PATTERN_MOVEMENTS and deficit.now.share is not None
    ]
    if len(shares) < 2:
        return None
    shares.sort(key=lambda item: item[1].percent)
    return Pattern(side=side, shares=tuple(shares), smallest=_smallest(shares))


def _smallest(shares: Sequence[tuple[Movement, Share]]) -> Movement | None:
    """Return the movement whose interval lies below all others'.

    That asks for more than a difference beyond chance of two chosen beforehand, and has to: the
    smallest of several was picked because it is small.
    """
    (first, lowest), *others = shares
    return first if all(lowest.high < share.low for _, share in others) else None


def _within(series: Series, month: dt.date) -> Series:
    """Return the days of a calendar month."""
    following = (month + dt.timedelta(days=31)).replace(day=1)
    first, end = month.toordinal(), following.toordinal()
    return series.where((series.day >= first) & (series.day < end))
