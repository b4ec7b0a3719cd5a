"""Diagrams of the report: intervals, readings over months, pain and exercises."""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import LEVEL_TICKS, paleness, scale_of, share_of_scale
from measure.domain.records import History, Pain
from measure.progress.comparison import Block
from measure.progress.dates import MONTHS
from measure.progress.series import Series
from measure.progress.shoulder import SideProgress
from measure.progress.wording import Translate, english, number_words
from measure.report.choices import ReportChoices
from measure.report.svg import Box, Diagram, Dot, Line, Mark, Shape, Words

#: Longest time that the curves show, days. [technical]
CURVE_DAY = 365
#: Most bands of a curve; of more days a band stands for a week. [technical]
MOST_BANDS = 90

#: Shades of thin marks and of grid lines, 0 black to 1 white. [technical]
_PALE, _LIGHT = 0.55, 0.85
#: Shade of the marks of the side that is not the affected one, and of pain during movements.
#: [technical]
_OTHER_SIDE = 0.5
#: Half of the size of the cross of a measurement without a reading, and of the dash of a rating at
#: night, points. [technical]
_CROSS, _DASH = 1.6, 2.0
#: Least space between the words of two events, points. [technical]
_BETWEEN = 4.0

#: Height of the dates below a plot, points. [technical]
_BELOW = 14.0
#: Height of the strip of days with exercises, points. [technical]
_LOGGED = 23.0
#: Room beside a plot for the names of the sides, points. [technical]
_NAMES = 40.0
#: Distance of two such names, points. [technical]
_APART = 8.5
#: Height of the strokes of the days with exercises, points. [technical]
_STROKE = 8.0


def ticks_of(movement: Movement, tr: Translate = english) -> tuple[tuple[float, str], ...]:
    """Return the named positions on a movement's scale: value and label."""
    if MOVEMENTS[movement].unit is Unit.FRACTION:
        return tuple((value, tr(level)) for value, level in LEVEL_TICKS)
    low, high = scale_of(movement)
    return tuple((value, f"{value:.0f}°") for value in np.linspace(low, high, 4))


def band_diagram(
    movement: Movement, now: Block, then: Block | None, tr: Translate = english
) -> Diagram:
    """Return the recent block as a band with a mark; the baseline as an open mark."""
    width, height = 54.0, 16.0
    middle = height / 2

    def at(value: float) -> float:
        return 4 + (width - 8) * share_of_scale(value, movement)

    marks: list[Mark] = [Line(x1=4, y1=middle, x2=width - 4, y2=middle, width=0.5, shade=0.4)]
    for value, _ in ticks_of(movement):
        marks.append(Line(x1=at(value), y1=middle - 2, x2=at(value), y2=middle + 2, shade=0.4))
    left, right = at(now.low), at(now.high)
    marks.append(
        Box(
            x=left,
            y=middle - 5,
            width=max(right - left, 2.0),
            height=10,
            fill=_shade(now.low, now.high, movement),
        )
    )
    if then is not None:
        marks.append(Dot(x=at(then.value), y=middle, size=4.5, filled=False))
    marks.append(Line(x1=at(now.value), y1=middle - 8, x2=at(now.value), y2=middle + 8, width=2.2))
    return Diagram(
        width=width,
        height=height,
        marks=tuple(marks),
        description=tr("{value}, from {low} to {high}").format(
            value=number_words(now.value, 2, tr),
            low=number_words(now.low, 2, tr),
            high=number_words(now.high, 2, tr),
        ),
    )


def empty_frame(tr: Translate = english) -> Diagram:
    """Return the diagram of a refusal: an empty frame."""
    frame = Box(x=4, y=3, width=46, height=10, edge=0.3, dashed=True)
    return Diagram(width=54, height=16, marks=(frame,), description=tr("no reading"))


#: How far the line of a named day reaches above the plot, points. [technical]
_ABOVE_PLOT = 8.0
#: Width of a letter of such words and of a plot's name, at most, points. [technical]
_LETTER_WIDTH, _NAME_LETTER_WIDTH = 4.2, 5.2


@dataclass(frozen=True, slots=True)
class NamedDay:
    """A day with an event, and what happened in a few words."""

    day: dt.date
    words: str


@dataclass(frozen=True, slots=True)
class _Plot:
    """Axes of a plot: days and values to points of the diagram.

    Attributes
    ----------
    name_end
        Where the plot's name above it ends.
    """

    first: int
    last: int
    low: float
    high: float
    tr: Translate
    height: float
    name_end: float = 0.0
    left: float = 37.0
    top: float = 14.0
    width: float = 182.0

    def x(self, day: float) -> float:
        return self.left + self.width * (day - self.first) / max(self.last - self.first, 1)

    def y(self, value: float) -> float:
        share = min(1.0, max(0.0, (value - self.low) / (self.high - self.low)))
        return self.top + self.height * (1 - share)

    def frame(self, ticks: Iterable[tuple[float, str]]) -> list[Mark]:
        right = self.left + self.width
        marks: list[Mark] = []
        for value, name in ticks:
            y = self.y(value)
            marks.append(Line(x1=self.left, y1=y, x2=right, y2=y, width=0.4, shade=_LIGHT))
            marks.append(Words(x=self.left - 3, y=y + 2.5, text=name, anchor="end"))
        foot = self.top + self.height
        marks.append(Line(x1=self.left, y1=foot, x2=right, y2=foot))
        for day, name in _dates(self.first, self.last, self.tr):
            x = self.x(day)
            marks.append(Line(x1=x, y1=foot, x2=x, y2=foot + 2.5))
            marks.append(Words(x=x, y=foot + 10.5, text=name, anchor="middle"))
        return marks


def span_of(days: Iterable[float], today: dt.date) -> tuple[int, int]:
    """Return the first and last day of a time axis that shows these days up to today."""
    last = today.toordinal()
    first = max(min(days, default=float(last)), last - CURVE_DAY)
    return min(int(first) - 2, last - 28), last + 2


def curve_diagram(
    sides: Sequence[SideProgress],
    refused: Sequence[tuple[Side, dt.date]],
    span: tuple[int, int],
    choices: ReportChoices,
    events: Sequence[NamedDay] = (),
) -> Diagram:
    """Return the readings of one movement over time: both sides, events, breaks and refusals.

    The affected side is drawn as filled bands with black marks, the other as thin lines with
    grey marks; where both are affected, or none, the left one is black. Left marks are round, right
    ones square, and each side is named beside its latest readings. An open mark is practice, on
    either side. A refusal is a cross at the foot, in the upper row for the left side.
    """
    movement = sides[0].movement
    low, high = scale_of(movement)
    tr = choices.tr
    name = tr(MOVEMENTS[movement].name)
    name_end = 2 + _NAME_LETTER_WIDTH * len(name)
    plot = _Plot(*span, low, high, tr, height=choices.plot_height, name_end=name_end)
    marks = plot.frame(ticks_of(movement, tr))
    marks.append(Words(x=2, y=8.5, text=name, size=9.0, bold=True))
    for side, day in refused:
        if plot.first <= day.toordinal() <= plot.last:
            y = plot.top + plot.height - (8 if side is Side.LEFT else 3)
            marks.extend(_cross(plot.x(day.toordinal()), y))
    alike = len({side.affected for side in sides}) == 1
    # The affected side last, on top.
    for side_progress in sorted(sides, key=lambda side: side.affected):
        solid = side_progress.side is Side.LEFT if alike else side_progress.affected
        marks.extend(_bands(plot, side_progress, solid=solid))
    marks.extend(_side_names(plot, sides))
    main = [side for side in sides if side.affected or len(sides) == 1]
    begun = [named for side in main for named in _breaks(plot, side.series)]
    marks.extend(_named_days(plot, begun, events))
    for side_progress in main:
        marks.extend(_turn(plot, side_progress))
        marks.extend(_trend(plot, side_progress))
    return Diagram(
        width=plot.left + plot.width + _NAMES,
        height=plot.top + plot.height + _BELOW,
        marks=tuple(marks),
        description=tr("{movement} over time").format(movement=name),
    )


def pain_diagram(
    history: History,
    span: tuple[int, int],
    choices: ReportChoices,
    events: Sequence[NamedDay] = (),
) -> Diagram:
    """Return pain before and during each session, and below it the days with exercises logged."""
    tr = choices.tr
    name = tr("Pain, 0 to 10")
    height = choices.plot_height - _LOGGED
    plot = _Plot(*span, 0.0, 10.0, tr, height=height, name_end=2 + _NAME_LETTER_WIDTH * len(name))
    marks = plot.frame(((0, "0"), (5, "5"), (10, "10")))
    marks.append(Words(x=2, y=8.5, text=name, size=8.5, bold=True))
    marks.extend(_named_days(plot, (), events))
    foot = plot.top + plot.height
    worst: dict[int, int] = {}
    for record in history.measurements:
        day, rating = record.taken.day.toordinal(), record.pain_during
        if rating is not None and plot.first <= day <= plot.last:
            worst[day] = max(rating, worst.get(day, 0))
    for day, rating in worst.items():
        x, y = plot.x(day), plot.y(rating)
        marks.append(Dot(x=x, y=y, size=3.4, shape=Shape.TRIANGLE, shade=_OTHER_SIDE))
    for session in history.sessions:
        day = session.started.day.toordinal()
        if plot.first <= day <= plot.last:
            marks.extend(_pain_before(plot, day, session.pain))
    logged = sorted({log.done.day for log in history.exercises_done})
    days = [day.toordinal() for day in logged if plot.first <= day.toordinal() <= plot.last]
    if days:
        words = tr("Days with exercises logged")
        marks.append(Words(x=plot.left, y=foot + 20.5, text=words))
    for number in days:
        x = plot.x(number)
        marks.append(Line(x1=x, y1=foot + 24, x2=x, y2=foot + 24 + _STROKE, width=0.9, shade=0.3))
    return Diagram(
        width=plot.left + plot.width + _NAMES,
        height=foot + _LOGGED + _BELOW,
        marks=tuple(marks),
        description=tr("pain over time, and days with exercises logged"),
    )


def _pain_before(plot: _Plot, day: int, pain: Pain) -> Iterable[Mark]:
    """Yield the ratings of a session: their range, the worst in 24 hours, a dash at night."""
    x = plot.x(day)
    ratings = [rating for rating in (pain.rest, pain.night, pain.worst_24h) if rating is not None]
    if len(ratings) > 1:
        ends = plot.y(min(ratings)), plot.y(max(ratings))
        yield Line(x1=x, y1=ends[0], x2=x, y2=ends[1], width=0.5, shade=_PALE)
    if pain.night is not None:
        y = plot.y(pain.night)
        yield Line(x1=x - _DASH, y1=y, x2=x + _DASH, y2=y, width=1.0)
    if pain.worst_24h is not None:
        yield Dot(x=x, y=plot.y(pain.worst_24h), size=2.2, shape=Shape.DIAMOND)


def _cross(x: float, y: float) -> Iterable[Mark]:
    """Yield a cross, which no reading is drawn as."""
    for rise in (_CROSS, -_CROSS):
        yield Line(x1=x - _CROSS, y1=y - rise, x2=x + _CROSS, y2=y + rise, width=0.7, shade=0.25)


def _shade(low: float, high: float, movement: Movement) -> float:
    """Return the shade of a band: dark for a narrow, pale for a wide interval."""
    return 0.5 + 0.35 * paleness(low, high, MOVEMENTS[movement].unit)


def _bands(plot: _Plot, side: SideProgress, *, solid: bool) -> Iterable[Mark]:
    series = side.series
    days, values, lows, highs, practice = _thinned(series, plot.first)
    shape = Shape.SQUARE if side.side is Side.RIGHT else Shape.ROUND
    ink = 0.0 if solid else _OTHER_SIDE
    for day, low, high in zip(days, lows, highs, strict=True):
        x, top, bottom = plot.x(day), plot.y(high), plot.y(low)
        if solid:
            shade = _shade(low, high, series.movement)
            height = max(bottom - top, 0.5)
            yield Box(x=x - 1.3, y=top, width=2.6, height=height, fill=shade, edge=None)
        else:
            yield Line(x1=x, y1=top, x2=x, y2=bottom, width=0.4, shade=_PALE)
    for day, value, hollow in zip(days, values, practice, strict=True):
        x, y = plot.x(day), plot.y(value)
        yield Dot(x=x, y=y, size=2.8, shape=shape, filled=not hollow, shade=ink)


def _side_names(plot: _Plot, sides: Sequence[SideProgress]) -> Iterable[Mark]:
    """Yield the name of each side beside the plot, at the height of its latest readings."""
    if len(sides) == 1:
        return
    below, above = sorted(sides, key=lambda side: side.recent.value)
    low, high = plot.y(below.recent.value), plot.y(above.recent.value)
    middle, apart = (low + high) / 2, max((low - high) / 2, _APART / 2)
    for side, y in ((above, middle - apart), (below, middle + apart)):
        words = plot.tr(side.side.value)
        yield Words(x=plot.left + plot.width + 3, y=y + 3, text=words, bold=side.affected)


def _thinned(series: Series, first: int) -> tuple[np.ndarray, ...]:
    """Return days, values, lows, highs and what is practice from a day on.

    Weekly medians where there are many.
    """
    shown = series.day >= first
    columns = np.stack([series.day, series.value, series.low, series.high, series.practice])
    columns = columns[:, shown]
    if columns.shape[1] > MOST_BANDS:
        week = columns[0] // 7
        columns = np.stack(
            [np.median(columns[:, week == number], axis=1) for number in np.unique(week)], axis=1
        )
    return tuple(columns)


def _breaks(plot: _Plot, series: Series) -> Iterable[NamedDay]:
    for point in series.breaks:
        why = ", ".join(plot.tr(reason) for reason in point.why.split(" and "))
        yield NamedDay(point.day, why)


def _named_days(
    plot: _Plot, begun: Iterable[NamedDay], events: Iterable[NamedDay]
) -> Iterable[Mark]:
    """Yield the days on which a series begins anew, and thinner those of other events.

    Where the words of several events would run into each other, the first of them stands.
    """
    began = {named.day: named for named in begun}
    # A series begins anew on the day after an event that breaks it.
    after = {day - dt.timedelta(days=1) for day in began}
    others = {named.day: named for named in events if named.day not in after | began.keys()}
    taken: list[tuple[float, float]] = []
    for named in (*began.values(), *others.values()):
        place, new = named.day.toordinal() - 0.5, named.day in began
        if not plot.first <= place <= plot.last:
            continue
        begin, end = _words_reach(plot, place, named.words)
        free = all(end + _BETWEEN < left or right + _BETWEEN < begin for left, right in taken)
        words = named.words if free else ""
        yield from _named_day(plot, place, words, dashed=True, width=0.7 if new else 0.4)
        if free:
            taken.append((begin, end))


def _turn(plot: _Plot, side: SideProgress) -> Iterable[Mark]:
    if side.current.turn is not None:
        day = side.current.turn.day.toordinal()
        if plot.first <= day <= plot.last:
            yield from _named_day(plot, day, plot.tr("turn"), dashed=False, width=0.4)


def _late(plot: _Plot, day: float) -> bool:
    """Return whether the words of a day stand before its line, where there is room for them."""
    return plot.x(day) > plot.left + plot.width * 0.7


def _words_reach(plot: _Plot, day: float, words: str) -> tuple[float, float]:
    """Return where the words beside a day's line begin and end."""
    x, wide = plot.x(day), _LETTER_WIDTH * len(words)
    return (x - 2 - wide, x) if _late(plot, day) else (x, x + 2 + wide)


def _named_day(
    plot: _Plot, day: float, words: str, *, dashed: bool, width: float
) -> Iterable[Mark]:
    """Yield an upright line on a day of the plot, with words beside it if there are any."""
    x, foot = plot.x(day), plot.top + plot.height
    late = _late(plot, day)
    begin, _ = _words_reach(plot, day, words)
    # Above the readings, unless the plot's name stands there.
    above = begin + (0 if late else 2) > plot.name_end
    top = plot.top - (_ABOVE_PLOT if above else 2)
    yield Line(x1=x, y1=top, x2=x, y2=foot, width=width, dashed=dashed)
    if words:
        beside = (x - 2, "end") if late else (x + 2, "start")
        yield Words(x=beside[0], y=plot.top + (-4 if above else 4), text=words, anchor=beside[1])


def _trend(plot: _Plot, side: SideProgress) -> Iterable[Mark]:
    """Yield the trend line of the latest weekly check."""
    slope = side.weekly_checks[-1].slope if side.weekly_checks else None
    if slope is None:
        return
    start = max(slope.first_day, plot.first)
    ends = [
        (at, slope.level + slope.per_day * (at - slope.last_day)) for at in (start, slope.last_day)
    ]
    (x1, y1), (x2, y2) = ((plot.x(at), plot.y(level)) for at, level in ends)
    yield Line(x1=x1, y1=y1, x2=x2, y2=y2, width=1.0)


def _dates(first: int, last: int, tr: Translate) -> list[tuple[int, str]]:
    """Return the dates of an axis: first days of months, or Mondays where the span is short."""
    days = [dt.date.fromordinal(day) for day in range(first + 3, last - 2)]
    firsts = [day for day in days if day.day == 1]
    step = -(-len(firsts) // 6)
    if len(firsts) >= 3:
        return [(day.toordinal(), tr(MONTHS[day.month - 1])) for day in firsts[::step]]
    mondays = [day for day in days if day.weekday() == 0]
    step = max(1, -(-len(mondays) // 5))
    return [(day.toordinal(), f"{day.day} {tr(MONTHS[day.month - 1])}") for day in mondays[::step]]
