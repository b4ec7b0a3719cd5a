"""Flags of the history chart: events and turns with their words, and where each flag stands."""

import datetime as dt
from typing import NamedTuple

from PySide6.QtGui import QFontMetricsF

from gui.drawing.chart_scales import DayScale
from gui.drawing.curves import ChartContent
from gui.drawing.flag_places import spread, words_before
from gui.text.chart_wording import flag_word
from gui.text.wording import event_mark, side_title, tr
from measure.domain.records import EventKind

#: Most characters of a note beside a flag. [technical]
_NOTE = 44
#: Space between a flag's disc and its word, and after it, in heights of the words. [technical]
_BESIDE, _AFTER = 0.2, 0.5


class Flag(NamedTuple):
    """A day of the chart, what it was in the legend, and in one word beside its number."""

    day: dt.date
    words: str
    short: str


class PlacedFlag(NamedTuple):
    """The number of a flag, its day, the middle of its disc in pixels, its word if any.

    The word stands after the disc, or before it.
    """

    number: int
    day: dt.date
    middle_px: float
    short: str
    before: bool


def flags(content: ChartContent) -> list[Flag]:
    """Return the days of events and turns with their words, the earliest first."""
    marks = []
    for event in content.events:
        words = event_mark(event.kind)
        if event.kind is EventKind.OTHER and event.note:
            words = event.note if len(event.note) <= _NOTE else f"{event.note[:_NOTE].rstrip()}..."
        if event.side is not None:
            words = tr("{event}, {side}").format(event=words, side=side_title(event.side).lower())
        marks.append(Flag(event.day, words, flag_word(event.kind)))
    for side, day in content.turns:
        words = tr("turn, {side}").format(side=side_title(side).lower())
        marks.append(Flag(day, words, tr("turn")))
    return sorted(marks)


def placed_flags(
    content: ChartContent,
    days: DayScale,
    right_px: float,
    metrics: QFontMetricsF,
) -> list[PlacedFlag]:
    """Return the flags in sight; their words are left out where there is no room for all.

    Parameters
    ----------
    right_px
        Where the words end at the latest, pixels.
    """
    line = metrics.height()
    shown = [item for item in enumerate(flags(content), start=1) if days.holds(item[1].day)]
    wanted = [days.x(flag.day) for _, flag in shown]
    beside = [line * (_BESIDE + _AFTER) + metrics.horizontalAdvance(f.short) for _, f in shown]
    named = sum(beside) + line * len(shown) <= right_px - days.left_px
    widths = [line * 1.1 + (wide if named else 0.0) for wide in beside]
    most = right_px - widths[-1] + line * 1.05 if named and widths else days.right_px
    middles = spread(
        wanted, widths, left_px=days.left_px, right_px=min(most, days.right_px + line / 2)
    )
    before = words_before(
        wanted, beside, line / 2, left_px=days.left_px, right_px=right_px + line * _AFTER
    )
    if before is not None:
        middles, named = wanted, True
    return [
        PlacedFlag(number, flag.day, middle, flag.short if named else "", aside)
        for (number, flag), middle, aside in zip(
            shown, middles, before or [False] * len(shown), strict=True
        )
    ]


def word_left_px(flag: PlacedFlag, metrics: QFontMetricsF) -> float:
    """Return where the word of a flag begins, pixels."""
    away = metrics.height() * (0.5 + _BESIDE)
    if flag.before:
        return flag.middle_px - away - metrics.horizontalAdvance(flag.short)
    return flag.middle_px + away
