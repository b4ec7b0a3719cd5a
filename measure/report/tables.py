"""The tables of a report, as HTML."""

from collections import Counter
from collections.abc import Callable
from html import escape

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.reasons import SENTENCES
from measure.domain.records import History, MeasurementRecord
from measure.progress.comparison import Block
from measure.progress.milestones import LEAST_DAYS as LEAST_FOR_TASKS
from measure.progress.overview import Progress
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import LEAST_DAYS, LEAST_WEEKS, Verdict
from measure.progress.wording import (
    VERDICT_WORDS,
    block_words,
    change_words,
    signed,
    slope_words,
    with_interval,
)
from measure.report.figures import band_picture, empty_frame
from measure.report.svg import Diagram
from measure.report.wording import short_date, side_words, times_words

#: How many reasons of refusals are spelled out. Ours: a report has a page or two.
MOST_REASONS = 5

#: Heads of the columns and their widths in per cent.
_HEADS = (
    ("Movement, side", 17),
    ("First days", 14),
    ("Last days", 14),
    ("", 13),
    ("Latest", 14),
    ("Change", 14),
    ("Trend a month", 14),
)


def movement_table(progress: Progress, history: History, draw: Callable[[Diagram], str]) -> str:
    """Return first and last readings, their change and the verdict, a row each side."""
    affected = history.person.affected
    latest_refused = _latest_refused(history)
    rows = []
    for movement in Movement:
        for side in sorted(Side, key=lambda each: each not in affected):
            found = progress.of(movement, side)
            refused = latest_refused.get((movement, side))
            if found:
                rows.append(_row(found, refused, affected, draw))
            elif refused:
                rows.append(_refused_row(refused, affected, draw))
    heads = "".join(f'<th width="{width}%">{head}</th>' for head, width in _HEADS)
    return (
        f'<table class="data" width="100%"><tr>{heads}</tr>{"".join(rows)}</table>'
        '<p class="small">Pictures: upright line, the last days; box, their interval; ring, the '
        "first days. Marks every 60°, for extension and external rotation every 30°; behind the "
        "back at the buttock, S2, L3, T12 and T7."
        f"{_too_early_words(progress)}{_anew_words(progress)}</p>"
    )


def _too_early_words(progress: Progress) -> str:
    if all(each.verdict is not Verdict.TOO_EARLY for each in progress.usual):
        return ""
    return (
        f" A trend is told after {LEAST_WEEKS:.0f} weeks and {LEAST_DAYS} days with readings at "
        "the earliest."
    )


def _anew_words(progress: Progress) -> str:
    """Return from when on the trends count where something broke the series."""
    begun = {
        (each.side.value, each.series.breaks[-1].day, each.series.breaks[-1].why)
        for each in progress.usual
        if each.series.breaks
    }
    return "".join(
        f" Trends of the {side} side count from {short_date(day)} on ({escape(why)})."
        for side, day, why in sorted(begun)
    )


def milestone_table(progress: Progress) -> str:
    """Return which everyday ranges the recent readings pass for certain, side by side."""
    rows = []
    for movement in Movement:
        sides = {side: progress.of(movement, side) for side in Side}
        found = next((each for each in sides.values() if each), None)
        if found is None:
            continue
        for k, milestone in enumerate(found.milestones):
            task = milestone.task
            cells = "".join(f"<td>{_reached(sides[side], k)}</td>" for side in Side)
            where = f"{MOVEMENTS[movement].name} from {task.range_words}"
            words = task.words[0].upper() + task.words[1:]
            rows.append(f"<tr><td>{words}</td><td>{where}</td>{cells}</tr>")
    return (
        '<table class="data" width="100%"><tr><th>Range usually enough to</th><th></th>'
        f"<th>left</th><th>right</th></tr>{''.join(rows)}</table>"
        '<p class="small">Yes: even the lower end of the intervals of the last days passes. Not '
        "shown: it does not, which is no statement about what the person can do. Few days: fewer "
        f"than {LEAST_FOR_TASKS} days with a reading in the last weeks.</p>"
    )


def refusal_table(history: History) -> str:
    """Return how many measurements were refused, and the most frequent reasons in words."""
    refused = [
        each.measurement
        for each in history.measurements
        if each.measurement.status is Status.REFUSED
    ]
    whole = len(history.measurements)
    if not refused:
        return f"<p>None of {whole} measurements was refused.</p>"
    counts = Counter(each.reasons[0] for each in refused if each.reasons)
    items = "".join(
        f"<tr><td>{times_words(count)}</td><td>{escape(SENTENCES[reason])}</td></tr>"
        for reason, count in counts.most_common(MOST_REASONS)
    )
    return (
        f"<p>{len(refused)} of {whole} measurements were refused: no number is better than a "
        f'wrong one. First reasons:</p><table class="bare">{items}</table>'
    )


def _row(
    found: SideProgress,
    refused: MeasurementRecord | None,
    affected: tuple[Side, ...],
    draw: Callable[[Diagram], str],
) -> str:
    movement, change = found.movement, found.change
    picture = draw(band_picture(movement, found.recent, found.baseline if change else None))
    cells = (
        _name(movement, found.side, affected),
        _block(found.baseline, movement) if change else "not apart yet",
        _block(found.recent, movement),
        picture,
        _latest(found, refused),
        change_words(change, movement) if change else "too early to say",
        _trend(found),
    )
    return "<tr>" + "".join(f"<td>{cell}</td>" for cell in cells) + "</tr>"


def _refused_row(
    refused: MeasurementRecord, affected: tuple[Side, ...], draw: Callable[[Diagram], str]
) -> str:
    found = refused.measurement
    why = escape(SENTENCES[found.reasons[0]]) if found.reasons else ""
    return (
        f"<tr><td>{_name(found.movement, found.side, affected)}</td><td></td><td></td>"
        f"<td>{draw(empty_frame())}</td><td>refused<br>"
        f'<span class="small">{short_date(refused.taken.day)}</span></td>'
        f'<td colspan="2">{why}</td></tr>'
    )


def _name(movement: Movement, side: Side, affected: tuple[Side, ...]) -> str:
    name = MOVEMENTS[movement].name.removesuffix(" at the side")
    return f"<b>{name}</b><br>{side_words(side, affected)}"


def _block(block: Block, movement: Movement) -> str:
    days = f"{block.days} day{'s' if block.days > 1 else ''} to {short_date(block.last)}"
    return _two_lines(block_words(block, movement), days)


def _latest(found: SideProgress, refused: MeasurementRecord | None) -> str:
    """Return the latest reading, and a later refusal where there was one."""
    series = found.series
    value, low, high = (float(each[-1]) for each in (series.value, series.low, series.high))
    below = short_date(series.date(-1))
    if refused is not None and refused.taken.day > series.date(-1):
        below += f"; refused {short_date(refused.taken.day)}"
    return _two_lines(with_interval(value, low, high, found.movement), below)


def _two_lines(above: str, below: str) -> str:
    return f'{above}<br><span class="small">{below}</span>'


def _trend(found: SideProgress) -> str:
    words = f"<b>{VERDICT_WORDS[found.verdict]}</b>"
    if found.drifted_by is not None:
        moved = signed(found.drifted_by, MOVEMENTS[found.movement].unit)
        return _two_lines(
            words, f"Both shoulders moved together, the other by {moved}: has the set-up changed?"
        )
    if found.verdict is Verdict.TOO_EARLY:
        return _two_lines(words, f"told from {LEAST_WEEKS:.0f} weeks on")
    slope = found.weekly_checks[-1].slope if found.weekly_checks else None
    return _two_lines(words, slope_words(slope, found.movement)) if slope else words


def _reached(found: SideProgress | None, number: int) -> str:
    if found is None:
        return "not measured"
    if found.recent.days < LEAST_FOR_TASKS:
        return "few days"
    return "yes" if found.milestones[number].reached else "not shown"


def _latest_refused(history: History) -> dict[tuple[Movement, Side], MeasurementRecord]:
    return {
        (record.measurement.movement, record.measurement.side): record
        for record in history.measurements
        if record.measurement.status is Status.REFUSED
    }
