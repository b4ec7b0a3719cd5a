"""Wording of the history chart: single readings, the chart as a whole, the time shown."""

from gui.drawing.chart_scales import ChartRange
from gui.drawing.curves import ChartContent, CurvePoint
from gui.text.wording import (
    measurement_words,
    movement_name,
    movement_plainly,
    side_title,
    tr,
)
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.progress.dates import date_words


def range_name(chosen: ChartRange) -> str:
    return {
        ChartRange.FOUR_WEEKS: tr("4 weeks"),
        ChartRange.THREE_MONTHS: tr("3 months"),
        ChartRange.ALL: tr("All dates"),
    }[chosen]


def point_words(point: CurvePoint) -> str:
    """Return a measurement as one line, "12 Nov 2026, left: 118° (110 to 126). Pain 3 of 10."."""
    line = tr("{day}, {side}: {reading}").format(
        day=date_words(point.day, tr),
        side=side_title(point.side).lower(),
        reading=measurement_words(point.record.measurement).rstrip("."),
    )
    parts = [line]
    if point.practice:
        parts.append(tr("Practice: shown, not counted"))
    if point.apart and point.value is not None:
        parts.append(tr("On another line: measured after exercises, or before them"))
    if point.pain is not None:
        parts.append(tr("Pain {pain} of 10").format(pain=point.pain))
    return ". ".join(parts) + "."


def chart_name(content: ChartContent) -> str:
    return tr("Chart: {movement}").format(movement=movement_name(content.movement))


def chart_title(movement: Movement) -> str:
    """Return the trade's name and the plain one."""
    return tr("{movement}: {plainly}").format(
        movement=movement_name(movement), plainly=movement_plainly(movement)
    )


def chart_sentence(content: ChartContent) -> str:
    """Return what the chart shows, in one sentence, for who does not see it."""
    points = content.points
    arms = {Side.LEFT: tr("the left arm"), Side.RIGHT: tr("the right arm")}
    both = len(content.curves) > 1
    sides = tr("both arms") if both else arms[content.curves[0].side]
    refused = sum(point.value is None for point in points)
    if points[0].day == points[-1].day:
        words = tr("Readings of {sides} on {first}: {count}; without a result: {refused}.")
    else:
        words = tr(
            "Readings of {sides} from {first} to {last}: {count}; without a result: {refused}."
        )
    return words.format(
        count=len(points),
        sides=sides,
        first=date_words(points[0].day, tr),
        last=date_words(points[-1].day, tr),
        refused=refused,
    )


def keys_hint() -> str:
    return tr("Left and right arrow keys go from reading to reading; Enter opens the session.")
