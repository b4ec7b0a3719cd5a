"""Tables of the report as HTML: movements, events, everyday tasks, refusals."""

from collections import Counter
from collections.abc import Collection, Sequence
from html import escape

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.reasons import SENTENCES
from measure.domain.records import History, MeasurementRecord
from measure.progress.before_after import TreatmentEvent
from measure.progress.comparison import Block
from measure.progress.dates import date_words
from measure.progress.milestones import LEAST_DAYS as LEAST_FOR_TASKS
from measure.progress.overview import Progress
from measure.progress.sentences import (
    OTHER_CAUSES,
    also_seen,
    counted_from,
    doubt_sentence,
    effect_words,
    plain_verdict_words,
    short_name,
    shown_change,
)
from measure.progress.shoulder import SideProgress
from measure.progress.side_wording import amount_words, share_words
from measure.progress.weekly_verdicts import LEAST_DAYS, LEAST_WEEKS, Verdict
from measure.progress.wording import VERDICT_WORDS, Translate, block_words, change_words, signed
from measure.report.choices import ReportChoices
from measure.report.figures import band_diagram, empty_frame
from measure.report.measurement_wording import refusal_sentences
from measure.report.svg import Draw
from measure.report.wording import side_text, times_words
from measure.trend.event_effect import EffectEstimate

#: Number of refusal reasons listed, so that a report fits two pages. [technical]
MOST_REASONS = 5

#: Widths of the columns of the movements, per cent, on a high page and on a wide one.
#: [technical]
_WIDTHS = (13.0, 13.0, 13.0, 10.3, 14.8, 12.9, 23.0)
_WIDE = (12.0, 11.5, 11.5, 7.0, 21.0, 10.5, 26.5)


def movement_table(
    progress: Progress,
    history: History,
    sides: Collection[Side],
    draw: Draw,
    choices: ReportChoices,
) -> str:
    """Return first and last readings, the other side, change and verdict of these sides."""
    tr, affected = choices.tr, history.person.affected
    latest_refused = _latest_refused(history)
    rows: list[tuple[str, ...]] = []
    for movement in Movement:
        for side in sorted(sides, key=lambda shoulder: shoulder not in affected):
            progress_of_side = progress.of(movement, side)
            refused = latest_refused.get((movement, side))
            if progress_of_side:
                rows.append(_row(progress_of_side, refused, affected, draw, choices))
            elif refused:
                rows.append(_refused_row(refused, affected, draw, tr))
    if not rows:
        return ""
    heads = (
        tr("Movement, side"),
        tr("First days"),
        tr("Last days"),
        "",
        tr("Other side, deficit"),
        tr("Overall change"),
        tr("Verdict, change per month"),
    )
    notes = (_picture_words(tr), _too_early_words(progress, tr), _anew_words(progress, tr))
    noted = f"<p>{' '.join(filter(None, notes))}</p>"
    if choices.reading_px:
        return "".join(_lines(row, heads) for row in rows) + noted
    widths = _WIDE if choices.landscape else _WIDTHS
    cells = "".join(
        f'<th width="{width}%">{head}</th>' for head, width in zip(heads, widths, strict=True)
    )
    body = "".join(_table_row(row, len(heads)) for row in rows)
    return f'<table class="data" width="100%"><tr>{cells}</tr>{body}</table>{noted}'


def _table_row(cells: Sequence[str], columns: int) -> str:
    """Return the row of a movement; its last cell takes the columns that are left."""
    *others, last = cells
    spans = columns - len(others)
    span = f' colspan="{spans}"' if spans > 1 else ""
    words = "".join(f"<td>{cell}</td>" for cell in others)
    return f"<tr>{words}<td{span}>{last}</td></tr>"


def _lines(cells: Sequence[str], heads: Sequence[str]) -> str:
    """Return a movement for reading on a screen: its name, and each value in a line of its own."""
    name, *values = cells
    rows = "".join(
        f'<tr><td width="34%">{head}</td><td>{value}</td></tr>'
        for head, value in zip(heads[1:], values, strict=False)
        if value
    )
    return f'<h3>{name.replace("<br>", ", ")}</h3><table class="data" width="100%">{rows}</table>'


def _picture_words(tr: Translate) -> str:
    return tr(
        "Brackets: 95 % intervals. Drawings: upright line, last days; box, their interval; ring, "
        "first days."
    )


def _too_early_words(progress: Progress, tr: Translate) -> str:
    if all(side.verdict is not Verdict.TOO_EARLY for side in progress.usual):
        return ""
    return tr("A trend needs at least {weeks} weeks and {days} days with readings.").format(
        weeks=f"{LEAST_WEEKS:.0f}", days=LEAST_DAYS
    )


def _anew_words(progress: Progress, tr: Translate) -> str:
    """Return the days from which trends count where a break started a new series."""
    begun = {
        (side.side, side.series.breaks[-1].day, side.series.breaks[-1].why)
        for side in progress.usual
        if side.series.breaks
    }
    return " ".join(
        escape(
            tr("Trends of the {side} side are counted from {day} ({why}).").format(
                side=tr(side.value), day=date_words(day, tr), why=tr(why)
            )
        )
        for side, day, why in sorted(begun)
    )


def event_table(sides: Sequence[SideProgress], tr: Translate) -> str:
    """Return what is seen before and after events, or nothing without any."""
    events = sorted({item.event for side in sides for item in side.events}, key=_latest_first)
    if not events:
        return ""
    heads = (
        tr("Before and after, by fitted lines"),
        tr("Change since"),
        tr("At once"),
        tr("Per month before"),
        tr("Per month after"),
    )
    head = "".join(f'<th width="20%">{words}</th>' for words in heads)
    rows = "".join(_event_rows(sides, event, tr) for event in events)
    assumed = tr("*: too few days yet, so this is mostly what is usual.")
    return (
        f'<table class="data" width="100%"><tr>{head}</tr>{rows}</table>'
        f"<p>{tr(OTHER_CAUSES)} {assumed}</p>"
    )


def _latest_first(event: TreatmentEvent) -> int:
    return -event.day.toordinal()


def _event_rows(sides: Sequence[SideProgress], event: TreatmentEvent, tr: Translate) -> str:
    cells = [
        f"<td>{_subject(side, tr)}</td>"
        + "".join(
            f"<td>{_estimate(part, side.movement, tr)}</td>"
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
    title = escape(f"{_capital(tr(event.what))}, {date_words(event.day, tr)}")
    head = f'<tr><td colspan="5"><b>{title}</b></td></tr>'
    return head + "".join(f"<tr>{row}</tr>" for row in cells)


def _subject(side: SideProgress, tr: Translate) -> str:
    return f"{short_name(side.movement, tr)}, {tr(side.side.value)}"


def _estimate(estimate: EffectEstimate, movement: Movement, tr: Translate) -> str:
    words = effect_words(estimate, movement, tr)
    return f"{words}*" if estimate.mostly_assumed else words


def milestone_table(progress: Progress, tr: Translate) -> str:
    """Return which everyday ranges the recent readings pass for certain, by side."""
    rows = []
    for movement in Movement:
        sides = {side: progress.of(movement, side) for side in Side}
        measured = next((side for side in sides.values() if side), None)
        if measured is None:
            continue
        for k, milestone in enumerate(measured.milestones):
            task = milestone.task
            cells = "".join(f"<td>{_reached(sides[side], k, tr)}</td>" for side in Side)
            where = tr("{movement} from {range}").format(
                movement=tr(MOVEMENTS[movement].name), range=task.range_in(tr)
            )
            words = _capital(tr(task.words))
            rows.append(f"<tr><td>{words}</td><td>{where}</td>{cells}</tr>")
    note = tr(
        "Yes: even the lower end of the intervals of the last days is enough. Not shown: it is "
        "not enough, which says nothing about what the person can do. Few days: fewer than "
        "{days} days with a reading in the last weeks."
    ).format(days=LEAST_FOR_TASKS)
    sides_heads = "".join(f"<th>{tr(side.value)}</th>" for side in Side)
    head = tr("Range usually enough to")
    return (
        f'<table class="data" width="100%"><tr><th>{head}</th><th></th>'
        f"{sides_heads}</tr>{''.join(rows)}</table><p>{note}</p>"
    )


def refusal_table(history: History, tr: Translate) -> str:
    """Return how many measurements were refused, and the most frequent reasons in words."""
    refused = [
        record.measurement
        for record in history.measurements
        if record.measurement.status is Status.REFUSED
    ]
    whole = len(history.measurements)
    if not refused:
        none = tr("All {count} measurements gave a reading.").format(count=whole)
        if whole == 1:
            none = tr("The only measurement gave a reading.")
        return f"<p>{none}</p>"
    counts = Counter(measurement.reasons[0] for measurement in refused if measurement.reasons)
    items = "".join(
        f"<tr><td>{times_words(count, tr)}</td><td>{escape(tr(SENTENCES[reason]))}</td></tr>"
        for reason, count in counts.most_common(MOST_REASONS)
    )
    words = tr(
        "{refused} of {count} measurements gave no reading: no reading is safer than a wrong "
        "one. First reasons:"
    ).format(refused=len(refused), count=whole)
    if whole == 1:
        words = tr(
            "The only measurement gave no reading: no reading is safer than a wrong one. First "
            "reason:"
        )
    return f'<p>{words}</p><table class="bare">{items}</table>'


def _row(
    side: SideProgress,
    refused: MeasurementRecord | None,
    affected: tuple[Side, ...],
    draw: Draw,
    choices: ReportChoices,
) -> tuple[str, ...]:
    tr, movement, change = choices.tr, side.movement, side.change
    picture = draw(band_diagram(movement, side.recent, side.baseline if change else None, tr))
    seen = tr("secondary") if also_seen(side) else ""
    return (
        _name(movement, side.side, affected, seen, tr),
        _block(side.baseline, movement, tr) if change else tr("not comparable yet"),
        _block(side.recent, movement, tr, _refused_later(side, refused, tr)),
        picture,
        _other(side, "; " if choices.landscape else "<br>", tr),
        change_words(change, movement, tr) if change else tr("too early to say"),
        _trend(side, "; " if choices.landscape else "<br>", tr),
    )


def _refused_row(
    refused: MeasurementRecord, affected: tuple[Side, ...], draw: Draw, tr: Translate
) -> tuple[str, ...]:
    measurement = refused.measurement
    why = escape(refusal_sentences(measurement, tr))
    name = _name(measurement.movement, measurement.side, affected, "", tr)
    when = tr("not measured {day}").format(day=date_words(refused.taken.day, tr))
    return name, "", when, draw(empty_frame(tr)), why


def _name(
    movement: Movement, side: Side, affected: tuple[Side, ...], seen: str, tr: Translate
) -> str:
    below = ", ".join(filter(None, (side_text(side, affected, tr), seen)))
    return _two_lines(f"<b>{short_name(movement, tr)}</b>", below)


def _block(block: Block, movement: Movement, tr: Translate, more: str = "") -> str:
    last = date_words(block.last, tr).replace(" ", "\N{NO-BREAK SPACE}")
    if block.days == 1:
        below = last
    else:
        below = tr("{count} days to {day}").format(count=block.days, day=last)
    return _two_lines(block_words(block, movement, tr), "; ".join(filter(None, (below, more))))


def _refused_later(side: SideProgress, refused: MeasurementRecord | None, tr: Translate) -> str:
    """Return when the movement was last refused, where that was after its latest reading."""
    if refused is None or refused.taken.day <= side.series.date(-1):
        return ""
    return tr("not measured {day}").format(day=date_words(refused.taken.day, tr))


def _two_lines(above: str, below: str) -> str:
    return f"{above}<br>{below}" if below else above


def _other(side: SideProgress, between: str, tr: Translate) -> str:
    """Return the other side's last days, and below what this side lacks, and its share."""
    if side.deficit is None:
        return ""
    now, movement = side.deficit.now, side.movement
    amount = amount_words(now.shown(movement), movement, tr)
    lines = [block_words(now.other, movement, tr), tr("deficit {amount}").format(amount=amount)]
    if now.share is not None:
        lines.append(tr("{share} of it").format(share=share_words(now.share, tr)))
    # No line breaks inside a number with its interval.
    return between.join(
        line.replace(" ", "\u00a0") if between != "<br>" else line for line in lines
    )


def _trend(side: SideProgress, between: str, tr: Translate) -> str:
    words = f"<b>{escape(_verdict(side, tr))}</b>"
    if side.drifted_by is not None:
        moved = signed(side.drifted_by, MOVEMENTS[side.movement].unit, 0, tr)
        doubt = tr(
            "Both shoulders changed together, the other by {amount}: has the set-up changed?"
        )
        return _two_lines(words, doubt.format(amount=moved))
    slope, shown = shown_change(side), side.current.shown
    if slope is None or shown is None:
        return words
    change = change_words(slope, side.movement, tr)
    if shown.shrunk:
        change = tr("{change}, probably no more: new").format(change=change)
    doubt = doubt_sentence(side, tr)
    if between == "<br>":
        return _two_lines(f"{words}<br>{change}", doubt)
    return between.join(filter(None, (words, change, doubt)))


def _verdict(side: SideProgress, tr: Translate) -> str:
    """Return a verdict without what is said once below the table: what it takes, a break."""
    anew = bool(side.series.breaks) and counted_from(side) == side.series.breaks[-1].day
    brief = side.verdict is Verdict.TOO_EARLY or (side.verdict is Verdict.NO_CLEAR_CHANGE and anew)
    if brief and side.current.turn is None:
        return tr(VERDICT_WORDS[side.verdict])
    return plain_verdict_words(side, tr)


def _reached(side: SideProgress | None, number: int, tr: Translate) -> str:
    if side is None:
        return tr("not measured")
    if side.recent.days < LEAST_FOR_TASKS:
        return tr("few days")
    return tr("yes") if side.milestones[number].reached else tr("not shown")


def _latest_refused(history: History) -> dict[tuple[Movement, Side], MeasurementRecord]:
    return {
        (record.measurement.movement, record.measurement.side): record
        for record in history.measurements
        if record.measurement.status is Status.REFUSED
    }


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
