"""Tables of the report as HTML: movements, everyday tasks, refusals."""

from collections import Counter
from collections.abc import Callable, Sequence
from html import escape

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.reasons import SENTENCES
from measure.domain.records import History, MeasurementRecord
from measure.progress.before_after import TreatmentEvent
from measure.progress.comparison import Block, Change
from measure.progress.dates import date_words
from measure.progress.milestones import LEAST_DAYS as LEAST_FOR_TASKS
from measure.progress.overview import Progress
from measure.progress.sentences import (
    OTHER_CAUSES,
    also_seen,
    effect_words,
    plain_verdict_words,
    shown_change,
    unproven,
)
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import LEAST_DAYS, LEAST_WEEKS, Verdict
from measure.progress.wording import (
    block_words,
    change_words,
    signed,
    with_interval,
)
from measure.report.figures import band_diagram, empty_frame
from measure.report.measurement_wording import refusal_sentences
from measure.report.svg import Diagram
from measure.report.wording import short_date, side_text, times_words
from measure.trend.event_effect import EffectEstimate

#: Number of refusal reasons listed, so that a report fits two pages. [technical]
MOST_REASONS = 5

#: Meaning of the mark beside an estimate.
ASSUMED_MEANS = "*: mostly an assumption, until there are more days."

#: Heads of the columns and their widths in per cent.
_HEADS = (
    ("Movement, side", 14.5),
    ("First days", 13.5),
    ("Last days", 14),
    ("", 13),
    ("Latest", 13),
    ("Change", 13.5),
    ("Verdict, change a month", 18.5),
)


def movement_table(progress: Progress, history: History, draw: Callable[[Diagram], str]) -> str:
    """Return first and last readings, their change and the verdict, one row per side."""
    affected = history.person.affected
    latest_refused = _latest_refused(history)
    rows = []
    for movement in Movement:
        for side in sorted(Side, key=lambda shoulder: shoulder not in affected):
            progress_of_side = progress.of(movement, side)
            refused = latest_refused.get((movement, side))
            if progress_of_side:
                rows.append(_row(progress_of_side, refused, affected, draw))
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
    if all(side.verdict is not Verdict.TOO_EARLY for side in progress.usual):
        return ""
    return (
        f" A trend is told after {LEAST_WEEKS:.0f} weeks and {LEAST_DAYS} days with readings at "
        "the earliest."
    )


def _anew_words(progress: Progress) -> str:
    """Return the days from which trends count where a break started a new series."""
    begun = {
        (side.side.value, side.series.breaks[-1].day, side.series.breaks[-1].why)
        for side in progress.usual
        if side.series.breaks
    }
    return "".join(
        f" Trends of the {side} side count from {short_date(day)} on ({escape(why)})."
        for side, day, why in sorted(begun)
    )


def event_table(sides: Sequence[SideProgress]) -> str:
    """Return what is seen before and after events, or nothing without any."""
    events = sorted({item.event for side in sides for item in side.events}, key=_latest_first)
    if not events:
        return ""
    heads = ("Before and after", "Change since", "At once", "A month before", "A month after")
    head = "".join(f'<th width="20%">{words}</th>' for words in heads)
    rows = "".join(_event_rows(sides, event) for event in events)
    return (
        f'<table class="data" width="100%"><tr>{head}</tr>{rows}</table>'
        f'<p class="small">{OTHER_CAUSES} {ASSUMED_MEANS}</p>'
    )


def _latest_first(event: TreatmentEvent) -> int:
    return -event.day.toordinal()


def _event_rows(sides: Sequence[SideProgress], event: TreatmentEvent) -> str:
    cells = [
        f"<td>{_subject(side)}</td>"
        + "".join(
            f"<td>{_estimate(part, side.movement)}</td>"
            for part in (
                item.effect.change_since,
                item.effect.step,
                item.effect.slope_before,
                item.effect.slope_after,
            )
        )
        for side in sides
        for item in side.events
        if item.event == event
    ]
    title = f"{escape(event.what.capitalize())}, {date_words(event.day)}"
    head = f'<tr><td colspan="5"><b>{title}</b></td></tr>'
    return head + "".join(f"<tr>{row}</tr>" for row in cells)


def _subject(side: SideProgress) -> str:
    return f"{MOVEMENTS[side.movement].name.removesuffix(' at the side')}, {side.side.value}"


def _estimate(estimate: EffectEstimate, movement: Movement) -> str:
    words = effect_words(estimate, movement)
    return f"{words}*" if estimate.mostly_assumed else words


def milestone_table(progress: Progress) -> str:
    """Return which everyday ranges the recent readings pass for certain, by side."""
    rows = []
    for movement in Movement:
        sides = {side: progress.of(movement, side) for side in Side}
        measured = next((side for side in sides.values() if side), None)
        if measured is None:
            continue
        for k, milestone in enumerate(measured.milestones):
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
        record.measurement
        for record in history.measurements
        if record.measurement.status is Status.REFUSED
    ]
    whole = len(history.measurements)
    if not refused:
        return f"<p>None of {whole} measurements was refused.</p>"
    counts = Counter(measurement.reasons[0] for measurement in refused if measurement.reasons)
    items = "".join(
        f"<tr><td>{times_words(count)}</td><td>{escape(SENTENCES[reason])}</td></tr>"
        for reason, count in counts.most_common(MOST_REASONS)
    )
    return (
        f"<p>{len(refused)} of {whole} measurements were refused: no number is better than a "
        f'wrong one. First reasons:</p><table class="bare">{items}</table>'
    )


def _row(
    side: SideProgress,
    refused: MeasurementRecord | None,
    affected: tuple[Side, ...],
    draw: Callable[[Diagram], str],
) -> str:
    movement, change = side.movement, side.change
    picture = draw(band_diagram(movement, side.recent, side.baseline if change else None))
    cells = (
        _name(movement, side.side, affected) + (", also seen" if also_seen(side) else ""),
        _block(side.baseline, movement) if change else "not apart yet",
        _block(side.recent, movement),
        picture,
        _latest(side, refused),
        _change(side),
        _trend(side),
    )
    return "<tr>" + "".join(f"<td>{cell}</td>" for cell in cells) + "</tr>"


def _refused_row(
    refused: MeasurementRecord, affected: tuple[Side, ...], draw: Callable[[Diagram], str]
) -> str:
    measurement = refused.measurement
    why = escape(refusal_sentences(measurement))
    return (
        f"<tr><td>{_name(measurement.movement, measurement.side, affected)}</td><td></td><td></td>"
        f"<td>{draw(empty_frame())}</td><td>refused<br>"
        f'<span class="small">{short_date(refused.taken.day)}</span></td>'
        f'<td colspan="2">{why}</td></tr>'
    )


def _name(movement: Movement, side: Side, affected: tuple[Side, ...]) -> str:
    name = MOVEMENTS[movement].name.removesuffix(" at the side")
    return f"<b>{name}</b><br>{side_text(side, affected)}"


def _block(block: Block, movement: Movement) -> str:
    days = f"{block.days} day{'s' if block.days > 1 else ''} to {short_date(block.last)}"
    return _two_lines(block_words(block, movement), days)


def _latest(side: SideProgress, refused: MeasurementRecord | None) -> str:
    """Return the latest reading, and a later refusal where there was one."""
    series = side.series
    value, low, high = (float(column[-1]) for column in (series.value, series.low, series.high))
    below = short_date(series.date(-1))
    if refused is not None and refused.taken.day > series.date(-1):
        below += f"; refused {short_date(refused.taken.day)}"
    return _two_lines(with_interval(value, low, high, side.movement), below)


def _two_lines(above: str, below: str) -> str:
    return f'{above}<br><span class="small">{below}</span>'


def _change(side: SideProgress) -> str:
    if side.change is None:
        return "too early to say"
    return _perhaps_unproven(side, side.change, change_words(side.change, side.movement))


def _trend(side: SideProgress) -> str:
    words = f"<b>{escape(plain_verdict_words(side))}</b>"
    if side.drifted_by is not None:
        moved = signed(side.drifted_by, MOVEMENTS[side.movement].unit)
        return _two_lines(
            words, f"Both shoulders moved together, the other by {moved}: has the set-up changed?"
        )
    slope, shown = shown_change(side), side.current.shown
    if slope is None or shown is None:
        return words
    change = change_words(slope, side.movement)
    line = _two_lines(change, "probably not more: new") if shown.shrunk else change
    return f"{words}<br>{_perhaps_unproven(side, slope, line)}"


def _perhaps_unproven(side: SideProgress, change: Change, words: str) -> str:
    return _two_lines(words, "pointwise; not yet proven") if unproven(side, change) else words


def _reached(side: SideProgress | None, number: int) -> str:
    if side is None:
        return "not measured"
    if side.recent.days < LEAST_FOR_TASKS:
        return "few days"
    return "yes" if side.milestones[number].reached else "not shown"


def _latest_refused(history: History) -> dict[tuple[Movement, Side], MeasurementRecord]:
    return {
        (record.measurement.movement, record.measurement.side): record
        for record in history.measurements
        if record.measurement.status is Status.REFUSED
    }
